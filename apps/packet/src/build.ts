import { basename, extname } from "node:path";
import { composePacket, renderHtml } from "@branchwork/sheets";
import { EXIT } from "./exit-codes.js";
import { packetFonts } from "./fonts.js";
import { InputError, type LoadOptions, loadDesign } from "./load-design.js";
import { type OutputFile, writeWhole } from "./print/atomic-write.js";
import { printFinding, withExit } from "./report.js";

const FORMATS = ["pdf", "html", "json", "svg"] as const;
type Format = (typeof FORMATS)[number];

export interface BuildOptions extends LoadOptions {
  readonly out: string;
  readonly format: string;
  readonly date?: string;
  readonly browser?: string;
  readonly force: boolean;
  readonly json?: boolean;
}

function formatsOf(list: string): readonly Format[] {
  const asked = list.split(",").map((name) => name.trim());
  const wrong = asked.filter((name) => !FORMATS.includes(name as Format));
  if (wrong.length > 0)
    throw new InputError("--format", [{ path: "", what: `"${wrong.join(", ")}" is not a format`, mend: `use any of ${FORMATS.join(",")}` }]);
  return FORMATS.filter((format) => asked.includes(format));
}

function dateOf(text: string | undefined): string {
  const date = text ?? new Date().toISOString().slice(0, 10);
  const parsed = new Date(`${date}T00:00:00Z`);
  if (!/^\d{4}-\d{2}-\d{2}$/.test(date) || Number.isNaN(parsed.getTime()) || parsed.toISOString().slice(0, 10) !== date)
    throw new InputError("--date", [{ path: "", what: `"${date}" is not a date`, mend: "write it as 2026-11-25" }]);
  return date;
}

/** `build`: the packet in the formats asked, all files or none. Progress on standard error when that is a terminal. */
export function build(job: string, options: BuildOptions): Promise<number> {
  return withExit(async () => {
    const formats = formatsOf(options.format);
    const date = dateOf(options.date);
    const say = process.stderr.isTTY ? (text: string) => process.stderr.write(`${text}\n`) : () => undefined;
    say("computing");
    const { design, overlay, targets } = await loadDesign(job, options);
    const packet = composePacket({ design, overlay, date, targets });
    const html = renderHtml({ packet, fonts: await packetFonts() });
    const name = basename(job, extname(job));
    const drawings = packet.sheets.flatMap((sheet) => sheet.blocks).flatMap((block) => (block.kind === "drawing" ? [block.svg] : []));
    const files: OutputFile[] = [];
    if (formats.includes("pdf")) {
      say("printing");
      const { openPrinter } = await import("./print/printer.js");
      const printer = await openPrinter({ ...(options.browser === undefined ? {} : { browser: options.browser }), warn: (message) => console.error(message) });
      try {
        files.push({ name: `${name}.pdf`, bytes: await printer.print(html, { date: new Date(`${date}T00:00:00Z`), expectText: packet.title }) });
      } finally {
        await printer.close();
      }
    }
    if (formats.includes("html")) files.push({ name: `${name}.html`, bytes: html });
    if (formats.includes("json")) files.push({ name: `${name}.json`, bytes: `${JSON.stringify({ format: "branchwork-design/1", ...design }, null, 2)}\n` });
    if (formats.includes("svg")) for (const [i, svg] of drawings.entries()) files.push({ name: i === 0 ? `${name}.svg` : `${name}-${i + 1}.svg`, bytes: svg });
    const written = await writeWhole(options.out, files, { force: options.force });
    const fails = design.findings.filter((finding) => finding.verdict === "fail");
    if (options.json) console.log(JSON.stringify({ format: "branchwork-build/1", ready: design.ready, files: written, fails: fails.length }, null, 2));
    else {
      for (const path of written) console.log(path);
      for (const finding of fails) console.error(printFinding(finding));
    }
    return design.ready ? EXIT.ready : EXIT.findings;
  });
}
