// Builds the documentation from the repository's markdown into out/site: pages that read from disk, a search, no dead link.
// --write renews the pages that come from the program; --verify only says whether they are up to date.
import { createHash } from "node:crypto";
import { copyFileSync, existsSync, mkdirSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from "node:fs";
import { dirname, join, posix, relative, sep } from "node:path";
import { fileURLToPath } from "node:url";
import { referencePages, stalePages } from "./reference-pages.mjs";

const root = dirname(dirname(fileURLToPath(import.meta.url)));
const site = join(root, "out", "site");
const read = (path) => readFileSync(join(root, path), "utf8").replaceAll("\r\n", "\n");

const SHELVES = [
  ["", (path) => path === "README.md"],
  ["Guides", (path) => path.startsWith("docs/guides/") && !/\/(job-file|checks|calculations)\.md$/.test(path)],
  ["Reference", (path) => /^docs\/(guides\/(job-file|checks|calculations)|overlays)\.md$/.test(path) || /^(packages|apps)\//.test(path)],
  ["Working on it", (path) => path === "DEVELOPERS.md" || /^docs\/[^/]+\.md$/.test(path)],
  ["Decisions", (path) => path.startsWith("docs/decisions/")],
];

/** In the order of their readers' need. */
const GUIDES = ["householder.md", "electrician.md", "importer.md", "overlay-author.md"];

/** Every page of the site, from the root of the repository, in the order of the shelves. */
function pagePaths() {
  const under = (folder) =>
    existsSync(join(root, folder))
      ? readdirSync(join(root, folder), { recursive: true, withFileTypes: true })
          .filter((entry) => entry.isFile() && entry.name.endsWith(".md"))
          .map((entry) => relative(root, join(entry.parentPath, entry.name)).split(sep).join("/"))
      : [];
  const packages = ["packages/engine", "packages/sheets", "apps/packet"].flatMap((folder) => [`${folder}/README.md`, `${folder}/docs/api.md`]);
  const all = ["README.md", "DEVELOPERS.md", ...under("docs"), ...packages].filter((path) => existsSync(join(root, path)));
  const wanted = (path) => GUIDES.indexOf(path.split("/").at(-1));
  return all.sort((a, b) => shelfOf(a) - shelfOf(b) || wanted(a) - wanted(b) || (a < b ? -1 : 1));
}
const shelfOf = (path) => SHELVES.findIndex(([, holds]) => holds(path));
const pageFor = (path) => (path === "README.md" ? "index.html" : path.replace(/README\.md$/, "index.html").replace(/\.md$/, ".html"));

const escaped = (text) => text.replaceAll("&", "&amp;").replaceAll("<", "&lt;").replaceAll(">", "&gt;").replaceAll('"', "&quot;");
/** The text of a run of inline tokens, without their marks. */
const plain = (tokens) => (tokens ?? []).map((token) => (token.tokens ? plain(token.tokens) : token.type === "html" ? "" : (token.text ?? ""))).join("");

function slugger() {
  const seen = new Map();
  return (text) => {
    const slug = text
      .toLowerCase()
      .replace(/[^\p{L}\p{N}\s_-]/gu, "")
      .trim()
      .replace(/\s/g, "-");
    const times = seen.get(slug) ?? 0;
    seen.set(slug, times + 1);
    return times === 0 ? slug : `${slug}-${times}`;
  };
}

/** Reads one page: its tokens, its title, and its headings with the name each is linked by. */
function readPage(marked, path) {
  const tokens = marked.lexer(read(path));
  const slug = slugger();
  const headings = tokens.filter(({ type }) => type === "heading").map((token) => ({ token, text: plain(token.tokens), id: slug(plain(token.tokens)) }));
  if (headings.length === 0) throw new Error(`${path} has no heading`);
  return { path, tokens, headings, title: headings[0].text, url: pageFor(path) };
}

/** Where a link leads on the site; a link that leads nowhere is added to `dead`, a file that is no page to `extras`. */
function resolveLink(href, page, { pages, dead, extras }) {
  if (/^https?:\/\//.test(href)) return href;
  if (/^[a-z][a-z0-9+.-]*:|^\/\//i.test(href)) {
    dead.push(`${page.path}: ${href}: only http and https addresses and files`);
    return "#";
  }
  const [file, anchor] = href.split("#");
  const path = file === "" ? page.path : posix.normalize(posix.join(posix.dirname(page.path), decodeURIComponent(file)));
  const target = pages.get(path);
  if (!target) {
    if (path.startsWith("..") || !existsSync(join(root, path)) || !statSync(join(root, path)).isFile())
      dead.push(`${page.path}: ${href}: there is no such file`);
    else extras.add(path);
  } else if (anchor && !target.headings.some(({ id }) => id === anchor)) dead.push(`${page.path}: ${href}: ${path} has no such heading`);
  const url = posix.relative(posix.dirname(page.url), target ? target.url : path) || posix.basename(page.url);
  return anchor ? `${url}#${anchor}` : url;
}

/** Markup of the page's own markdown. HTML in it is printed as text, not obeyed; a comment is left out. */
function bodyOf(marked, page, links) {
  const ids = new Map(page.headings.map(({ token, id }) => [token, id]));
  const renderer = new marked.Renderer();
  renderer.html = ({ text }) => (/^\s*<!--[\s\S]*-->\s*$/.test(text) ? "" : escaped(text));
  renderer.heading = function (token) {
    return `<h${token.depth} id="${escaped(ids.get(token) ?? "")}">${this.parser.parseInline(token.tokens)}</h${token.depth}>\n`;
  };
  renderer.link = function ({ href, tokens }) {
    return `<a href="${escaped(resolveLink(href, page, links))}">${this.parser.parseInline(tokens)}</a>`;
  };
  renderer.image = ({ href, text }) => `<img src="${escaped(resolveLink(href, page, links))}" alt="${escaped(text)}">`;
  const table = renderer.table;
  renderer.table = function (token) {
    return `<div class="wide" tabindex="0" role="region" aria-label="Table">${table.call(this, token)}</div>`;
  };
  return marked.parser(page.tokens, { renderer });
}

/** One entry a heading: address, page, heading, and the beginning of what stands under it. */
function indexOf(page) {
  const entries = [];
  for (const token of page.tokens) {
    const heading = page.headings.find((each) => each.token === token);
    if (heading) entries.push([`${page.url}#${heading.id}`, page.title, heading.text, ""]);
    else if (entries.length > 0 && token.type !== "space" && token.type !== "html")
      entries.at(-1)[3] += ` ${token.type === "table" ? tableText(token) : plain([token])}`;
  }
  return entries.map(([url, title, heading, text]) => [
    url,
    title,
    heading,
    text
      .replace(/\s+/g, " ")
      .trim()
      .slice(0, title === "The checks" ? 20_000 : 400),
  ]);
}
const tableText = ({ header, rows }) =>
  [header, ...rows]
    .flat()
    .map((cell) => plain(cell.tokens))
    .join(" ");

const hash = (text) => `'sha256-${createHash("sha256").update(text).digest("base64")}'`;

function document({ title, url, body, shelves, style, script = "" }) {
  const up = "../".repeat(url.split("/").length - 1);
  const policy = `default-src 'none'; style-src ${hash(style)}; script-src ${script === "" ? "'none'" : hash(script)}; img-src 'self'; base-uri 'none'; form-action 'self' file:`;
  const shelf = ([name, entries]) =>
    `${name === "" ? "" : `<h2>${escaped(name)}</h2>`}<ul>${entries.map((page) => `<li><a href="${up}${page.url}"${page.url === url ? ' aria-current="page"' : ""}>${escaped(page.title)}</a></li>`).join("")}</ul>`;
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${policy}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="referrer" content="no-referrer">
<title>${escaped(title === "Branchwork" ? title : `${title} – Branchwork`)}</title>
<style>${style}</style>
</head>
<body>
<a class="skip" href="#main">To the text</a>
<header><a href="${up}index.html">Branchwork</a><form role="search" action="${up}search.html"><input type="search" name="q" aria-label="Words to search for"><button>Search</button></form></header>
<div class="frame">
<nav aria-label="Pages">${shelves.map(shelf).join("\n")}</nav>
<main id="main">
${body}
</main>
</div>
${script === "" ? "" : `<script>${script}</script>\n`}</body>
</html>
`;
}

function put(path, text) {
  mkdirSync(dirname(join(site, path)), { recursive: true });
  writeFileSync(join(site, path), text);
}

async function build() {
  const marked = await import("marked");
  const list = pagePaths().map((path) => readPage(marked, path));
  const links = { pages: new Map(list.map((page) => [page.path, page])), dead: [], extras: new Set() };
  const shelves = SHELVES.map(([name], at) => [name, list.filter(({ path }) => shelfOf(path) === at)]).filter(([, entries]) => entries.length > 0);
  const style = read("scripts/docs-site/style.css");
  const script = read("scripts/docs-site/search.js");
  const made = list.map((page) => [page.url, document({ ...page, body: bodyOf(marked, page, links), shelves, style })]);
  // Inside a script element nothing but its own end tag is read as markup.
  const index = JSON.stringify(list.flatMap(indexOf)).replaceAll("<", "\\u003c");
  const search = `<h1>Search</h1>
<form><input type="search" name="q" aria-label="Words to search for"></form>
<p id="count" role="status"></p>
<ol id="found"></ol>
<noscript><p>The search needs scripts; the list of pages does not.</p></noscript>
<script type="application/json" id="index">${index}</script>`;
  made.push(["search.html", document({ title: "Search", url: "search.html", body: search, shelves, style, script })]);
  if (links.dead.length > 0) {
    console.error(`dead links:\n  ${links.dead.join("\n  ")}`);
    return 1;
  }
  rmSync(site, { recursive: true, force: true });
  for (const [url, text] of made) put(url, text);
  for (const path of links.extras) {
    mkdirSync(dirname(join(site, path)), { recursive: true });
    copyFileSync(join(root, path), join(site, path));
  }
  console.log(
    `out/site: ${made.length} pages, ${links.extras.size} files they link to, ${(index.length / 1000).toFixed(0)} kB of search; open out/site/index.html`,
  );
  return 0;
}

function write() {
  for (const { path, text } of referencePages()) {
    mkdirSync(dirname(join(root, path)), { recursive: true });
    writeFileSync(join(root, path), text);
    console.log(path);
  }
  return 0;
}

function verify() {
  const stale = stalePages().map(({ path }) => path);
  if (stale.length > 0) console.error(`not up to date: ${stale.join(", ")}; run: node scripts/docs-site.mjs --write`);
  return stale.length > 0 ? 1 : 0;
}

if (process.argv.includes("--write")) process.exitCode = write();
else if (process.argv.includes("--verify")) process.exitCode = verify();
else process.exitCode = await build();
