import { createReadStream, createWriteStream } from "node:fs";
import { mkdir, mkdtemp, readFile, rename, rm, stat, writeFile } from "node:fs/promises";
import { createRequire } from "node:module";
import { dirname, join } from "node:path";
import { pipeline } from "node:stream/promises";
import { createBrotliDecompress } from "node:zlib";
import { extract, type Headers } from "tar-fs";
import { EnvironmentError } from "./environment-error.js";

/** An unpacked copy of the browser that came with the installation. */
export interface UnpackedBrowser {
  readonly executable: string;
  /** Shared libraries a bare system lacks (nss, nspr, expat). */
  readonly libraries: string;
  /** Holds fonts.conf and the fall-back fonts: without it the browser prints pages with no text and says nothing. */
  readonly fontConfig: string;
}

/** Where the packed browser lies and its version; undefined where none is installed or none exists for this machine. */
export async function findPacked(): Promise<{ bin: string; version: string } | undefined> {
  if (process.platform !== "linux" || process.arch !== "x64") return undefined;
  let entry: string;
  try {
    entry = createRequire(import.meta.url).resolve("@sparticuz/chromium");
  } catch {
    return undefined; // the package was left out of this installation; the search goes on to installed browsers
  }
  for (let dir = dirname(entry); dir !== dirname(dir); dir = dirname(dir)) {
    const manifest = await readFile(join(dir, "package.json"), "utf8").then(JSON.parse, () => undefined);
    if (manifest?.name === "@sparticuz/chromium") return { bin: join(dir, "bin"), version: manifest.version };
  }
  return undefined;
}

/**
 * Unpacks the packed browser into its own versioned directory below `cache`, once. Processes may race: each unpacks beside the
 * target and renames; the rename of a loser fails and the loser uses the winner's copy.
 */
export async function unpackBrowser(packed: { bin: string; version: string }, cache: string): Promise<UnpackedBrowser> {
  const target = join(cache, `chromium-${packed.version}-linux-x64`);
  if (await isWhole(target)) return layout(target);
  const work = await mkdtemp(join(cache, "unpacking-"));
  try {
    await fill(packed.bin, work);
    await moveIn(work, target);
  } catch (error) {
    throw new EnvironmentError(`the bundled browser could not be unpacked into ${cache}: ${error instanceof Error ? error.message : String(error)}`, {
      hint: "free about 250 MB there or set XDG_CACHE_HOME to another directory, or name an installed browser with BRANCHWORK_BROWSER",
      cause: error,
    });
  } finally {
    await rm(work, { recursive: true, force: true });
  }
  return layout(target);
}

function layout(dir: string): UnpackedBrowser {
  return { executable: join(dir, "chromium"), libraries: join(dir, "lib"), fontConfig: join(dir, "fontconfig") };
}

async function fill(bin: string, dir: string): Promise<void> {
  const { executable, fontConfig } = layout(dir);
  await mkdir(fontConfig, { mode: 0o700 });
  await Promise.all([
    pipeline(createReadStream(join(bin, "chromium.br")), createBrotliDecompress(), createWriteStream(executable, { mode: 0o700, flush: true })),
    pipeline(createReadStream(join(bin, "al2023.tar.br")), createBrotliDecompress(), extract(dir, asOurs)),
    pipeline(createReadStream(join(bin, "fonts.tar.br")), createBrotliDecompress(), extract(fontConfig, asOurs)),
  ]);
  // The packed fonts.conf names directories of a hosting service; ours names its neighbours, so the directory may be moved.
  await writeFile(join(fontConfig, "fonts.conf"), fontsConf);
  const { size } = await stat(executable);
  await writeFile(join(dir, "complete.json"), `${JSON.stringify({ executableBytes: size })}\n`, { flush: true });
}

// Run as root, the unpacker would otherwise give the files to the number of whoever packed them.
const asOurs = { map: (header: Headers) => ({ ...header, uid: process.getuid?.() ?? 0, gid: process.getgid?.() ?? 0 }) };

const fontsConf = `<?xml version="1.0"?>
<!DOCTYPE fontconfig SYSTEM "fonts.dtd">
<fontconfig>
  <dir prefix="relative">fonts</dir>
  <cachedir prefix="xdg">fontconfig</cachedir>
</fontconfig>
`;

async function isWhole(dir: string): Promise<boolean> {
  try {
    const { executableBytes } = JSON.parse(await readFile(join(dir, "complete.json"), "utf8"));
    return (await stat(layout(dir).executable)).size === executableBytes;
  } catch {
    return false; // absent or damaged: both are mended by unpacking
  }
}

async function moveIn(work: string, target: string): Promise<void> {
  for (let attempt = 0; ; attempt += 1) {
    try {
      await rename(work, target);
      return;
    } catch (error) {
      if (await isWhole(target)) return; // another process was first
      if (attempt > 0) throw error;
      // What stands there is damaged: out of the way with it, by rename so that a racer never sees half a removal.
      const aside = `${work}-damaged`;
      await rename(target, aside);
      await rm(aside, { recursive: true, force: true });
    }
  }
}
