import { type Counts, countRows, OUTCOMES, type Row } from "./row.js";

const WORDS: Readonly<Record<keyof Counts, string>> = { failed: "Failed", "bad-input": "Bad input", findings: "Findings", ready: "Ready" };

/** Text made safe between tags and in quoted attributes; control and direction characters, which could disguise it, are shown as □. */
export function escapeHtml(text: string): string {
  return text
    .replace(/[\p{Cc}\u061c\u200e\u200f\u2028-\u202e\u2066-\u2069]/gu, (c) => (c === "\n" || c === "\t" ? c : "□"))
    .replace(/[&<>"'`]/g, (c) => `&#${c.charCodeAt(0)};`);
}

/** A batch's result as a page that needs nothing else. What needs a person comes first. `left`: jobs that have no row yet. */
export function printSummary(rows: Iterable<Row>, { date, left }: { readonly date: string; readonly left: number }): string {
  const all = [...rows].sort((a, b) => (a.job < b.job ? -1 : a.job > b.job ? 1 : 0));
  const counts = countRows(all);
  const worstFirst = [...OUTCOMES].reverse();
  const total = worstFirst.map((outcome) => `<tr><th scope="row">${WORDS[outcome]}</th><td>${counts[outcome]}</td></tr>`).join("");
  const sections = worstFirst
    .filter((outcome) => counts[outcome] > 0)
    .map(
      (outcome) =>
        `<h2>${WORDS[outcome]} (${counts[outcome]})</h2>\n<ul>\n${all
          .filter((row) => row.outcome === outcome)
          .map(item)
          .join("\n")}\n</ul>`,
    );
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'">
<meta name="viewport" content="width=device-width">
<title>Batch of packets, ${escapeHtml(date)}</title>
<style>body{font:1rem/1.45 system-ui,sans-serif;max-width:60rem;margin:2rem auto;padding:0 1rem}th{text-align:left;padding-right:2rem}td{text-align:right}li{margin:.4rem 0;overflow-wrap:anywhere}li ul{font-size:.9rem}</style>
</head>
<body>
<h1>Batch of packets, dated ${escapeHtml(date)}</h1>
<table>${total}<tr><th scope="row">All</th><td>${all.length}</td></tr></table>
${left > 0 ? `<p><strong>Not finished: ${left} jobs have no row. Run the same command again to go on.</strong></p>` : ""}
<p>A packet is a preparer's aid, not an approval. The authority having jurisdiction decides.</p>
${sections.join("\n")}
</body>
</html>
`;
}

function item({ job, folder, files, says }: Row): string {
  const links = files.map(({ name }) => {
    const address = ["." /* never a scheme */, ...folder.split("/"), name].map(encodeURIComponent).join("/");
    return `<a href="${escapeHtml(address)}" aria-label="${escapeHtml(name)}">${escapeHtml(shortName(name, job))}</a>`;
  });
  const lines = says.map((text) => `<li>${escapeHtml(placed(text, job))}</li>`).join("");
  return `<li>${escapeHtml(job)}${links.length > 0 ? ` – ${links.join(", ")}` : ""}${lines ? `<ul>${lines}</ul>` : ""}</li>`;
}

/** A file's name without the job's, which stands before it: "pdf", "field.pdf". */
function shortName(name: string, job: string): string {
  const stem = (job.split("/").at(-1) ?? "").replace(/\.[^.]+$/, "");
  const rest = stem !== "" && name.startsWith(stem) ? name.slice(stem.length).replace(/^[.-]/, "") : "";
  return rest === "" ? name : rest;
}

/** What is said, with the place in the job's own file in words; another file's keeps its name. */
function placed(text: string, job: string): string {
  if (!text.startsWith(`${job}:`)) return text;
  return text
    .slice(job.length + 1)
    .trimStart()
    .replace(/^(\d+):(\d+): /, "line $1, column $2: ");
}
