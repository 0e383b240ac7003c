// The project names no host of its own: whoever publishes says where its source is kept, and nothing is published without.
// `node scripts/publishable.mjs` in a package's folder ends with 1 where its manifest does not say it; npm and pnpm run it before they publish.
import { readFileSync } from "node:fs";
import { basename, dirname, resolve } from "node:path";
import { fileURLToPath } from "node:url";

const root = dirname(dirname(fileURLToPath(import.meta.url)));

/** The address of a repository, checked: https, owner and name, nothing secret in it, no name that stands for none. */
export function repositoryAddress(text) {
  let url;
  try {
    url = new URL(text);
  } catch {
    throw new RangeError(`"${text}" is not an address; write it as https://host/owner/name`);
  }
  const path = url.pathname.replace(/\/+$/, "").replace(/\.git$/, "");
  const unreal = /(^|\.)(example|example\.(com|net|org)|invalid|test|localhost)$/i.test(url.hostname) || !url.hostname.includes(".");
  if (url.protocol !== "https:" || url.username || url.password || url.search || url.hash || !/^(\/[\w.~-]+){2,}$/.test(path))
    throw new RangeError("the address of the repository is https://host/owner/name and nothing more");
  if (unreal) throw new RangeError(`${url.hostname} is no host that others reach`);
  return `https://${url.host}${path}`;
}

/** What a manifest says of its origin; `folder` is the package's in the repository. */
export function originOf(address, folder) {
  return {
    homepage: `${address}/tree/HEAD/${folder}#readme`,
    bugs: { url: `${address}/issues` },
    repository: { type: "git", url: `git+${address}.git`, directory: folder },
  };
}

/** What stands in the way of publishing a package with this manifest; empty when nothing. */
export function lackingIn(manifest, folder) {
  const lacking = ["name", "version", "description", "license", "engines", "files", "exports"].filter((field) => manifest[field] === undefined);
  if (manifest.private) lacking.push("leave to be published: it is private");
  const url = manifest.repository?.url;
  if (typeof url !== "string") return [...lacking, "repository", "bugs", "homepage"];
  try {
    const wanted = originOf(repositoryAddress(url.replace(/^git\+/, "")), folder);
    for (const field of Object.keys(wanted))
      if (JSON.stringify(manifest[field]) !== JSON.stringify(wanted[field])) lacking.push(`${field} as ${JSON.stringify(wanted[field])}`);
  } catch (error) {
    lacking.push(`repository: ${error.message}`);
  }
  return lacking;
}

if (resolve(process.argv[1] ?? "") === fileURLToPath(import.meta.url)) {
  const here = process.cwd();
  const folder = here.slice(root.length + 1).replaceAll("\\", "/");
  const lacking = lackingIn(JSON.parse(readFileSync(resolve(here, "package.json"), "utf8")), folder);
  for (const what of lacking) console.error(`${basename(here)} is not published: it lacks ${what}`);
  if (lacking.length > 0) console.error("docs/release.md says how the publisher sets where the source is kept");
  process.exitCode = lacking.length > 0 ? 1 : 0;
}
