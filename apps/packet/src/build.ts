import type { Edition } from "@branchwork/engine";
import { composePacket, type Fonts, PACKET_SETS, PAPERS, type Packet, type PacketSet, type Paper, renderHtml } from "@branchwork/sheets";
import { type CarriedRevision, carriedFiles, designJson } from "./carried/carried-files.js";
import { EXIT } from "./exit-codes.js";
import { packetFonts } from "./fonts.js";
import { InputError, type Loaded, type LoadOptions, loadDesign } from "./load-design.js";
import { loadPrices, type Prices } from "./price-book.js";
import { type OutputFile, writeWhole } from "./print/atomic-write.js";
import { attachFiles } from "./print/attach.js";
import { MissingGlyphError } from "./print/print-error.js";
import type { Printer } from "./print/printer.js";
import { printFinding, withExit } from "./report.js";
import { stemOf } from "./stem.js";
import { oneLine } from "./terminal-text.js";
import { undrawnIn } from "./undrawn.js";

export const FORMATS = ["pdf", "html", "json", "svg"] as const;
export type Format = (typeof FORMATS)[number];

export interface BuildOptions extends LoadOptions {
  readonly out: string;
  readonly format: string;
  /** Sets of sheets, as --format lists; the submittal when left out. */
  readonly set?: string;
  /** Price book for the owner's set. */
  readonly prices?: string;
  /** One of PAPERS; letter when left out. */
  readonly paper?: string;
  readonly date?: string;
  readonly browser?: string;
  readonly force?: boolean;
  readonly json?: boolean;
}

/** The formats a --format list names. */
export function formatsOf(list: string): readonly Format[] {
  const asked = list.split(",").map((name) => name.trim());
  const wrong = asked.filter((name) => !FORMATS.includes(name as Format));
  if (wrong.length > 0)
    throw new InputError("--format", [{ path: "", what: `"${wrong.join(", ")}" is not a format`, mend: `use any of ${FORMATS.join(",")}` }]);
  return FORMATS.filter((format) => asked.includes(format));
}

/** The sets a --set list names, the submittal when left out. */
export function setsOf(list: string | undefined): readonly PacketSet[] {
  if (list === undefined) return ["submittal"];
  const asked = list.split(",").map((name) => name.trim());
  const wrong = asked.filter((name) => !PACKET_SETS.includes(name as PacketSet));
  if (wrong.length > 0)
    throw new InputError("--set", [{ path: "", what: `"${wrong.join(", ")}" is not a set of sheets`, mend: `use any of ${PACKET_SETS.join(",")}` }]);
  return PACKET_SETS.filter((set) => asked.includes(set));
}

/** The paper --paper names; none when left out. */
export function namedPaper(name: string | undefined): Paper | undefined {
  const found = PAPERS.find((paper) => paper === name);
  if (name !== undefined && found === undefined)
    throw new InputError("--paper", [{ path: "", what: `"${name}" is not a paper this prints on`, mend: `use one of ${PAPERS.join(", ")}` }]);
  return found;
}

/** The paper --paper names; else the one the overlay's intake asks, where this prints on it; else letter. */
export function paperOf(name: string | undefined, overlay: Loaded["overlay"]): Paper {
  return namedPaper(name) ?? PAPERS.find((paper) => paper === overlay?.intake?.sheet_size) ?? "letter";
}

/** The date of --date, today when left out. */
export function dateOf(text: string | undefined): string {
  const date = text ?? new Date().toISOString().slice(0, 10);
  const parsed = new Date(`${date}T00:00:00Z`);
  if (!/^\d{4}-\d{2}-\d{2}$/.test(date) || Number.isNaN(parsed.getTime()) || parsed.toISOString().slice(0, 10) !== date)
    throw new InputError("--date", [{ path: "", what: `"${date}" is not a date`, mend: "write it as 2026-11-25" }]);
  return date;
}

/** Prints a document; see Printer. */
export type PrintDocument = (html: string, options: { readonly date: Date; readonly expectText: string }) => Promise<Uint8Array>;

/** Gives the work a way to print. The browser is opened at the first document, serves all of them, and is closed at the end. */
export async function withPrinter<T>(browser: string | undefined, say: (text: string) => void, work: (print: PrintDocument) => Promise<T>): Promise<T> {
  let opening: Promise<Printer> | undefined;
  const open = async (): Promise<Printer> => {
    const { openPrinter } = await import("./print/printer.js");
    return openPrinter({ ...(browser === undefined ? {} : { browser }), warn: (message) => console.error(message) });
  };
  try {
    return await work(async (html, printing) => {
      say("printing");
      opening ??= open();
      return (await opening).print(html, printing);
    });
  } finally {
    await opening?.then(
      (printer) => printer.close(),
      () => undefined, // it never opened: the work has thrown that error
    );
  }
}

/** A packet's files, in memory, one document a set; `print` is asked only for a PDF. */
export async function packetFiles(given: {
  readonly name: string;
  readonly loaded: Loaded;
  readonly date: string;
  /** Of the command line, where it overrules overlay and job. */
  readonly edition: Edition | undefined;
  readonly formats: readonly Format[];
  readonly fonts: Fonts;
  readonly print: PrintDocument;
  /** The submittal alone when left out. */
  readonly sets?: readonly PacketSet[];
  readonly prices?: Prices;
  /** As the overlay asks when left out. */
  readonly paper?: Paper;
  /** Marks a revision on the packet; what it goes by is carried, so that the marked sheets can be made again. */
  readonly revise?: { readonly mark: (packet: Packet, set: PacketSet) => Packet; readonly carried: CarriedRevision };
}): Promise<OutputFile[]> {
  const { name, date, formats, fonts, prices, sets = ["submittal"] } = given;
  const { design, overlay, targets } = given.loaded;
  const paper = given.paper ?? paperOf(undefined, overlay);
  const files: OutputFile[] = [];
  for (const set of sets) {
    const stem = set === "submittal" ? name : `${name}-${set}`;
    const plain = composePacket({ design, overlay, date, targets, set, paper, ...(prices === undefined ? {} : { prices: prices.book }) });
    const packet = given.revise === undefined ? plain : given.revise.mark(plain, set);
    const html = renderHtml({ packet, fonts });
    if (formats.includes("pdf")) {
      const printedOn = new Date(`${date}T00:00:00Z`);
      const printed = (text: string, expectText: string) => given.print(text, { date: printedOn, expectText });
      const pdf = await printed(html, packet.title).catch(async (error: unknown) => {
        const { job, overlay: town } = given.loaded.sources;
        const texts = [job, ...(town === undefined ? [] : [town]), ...(prices === undefined ? [] : [prices.source])];
        throw error instanceof MissingGlyphError ? await undrawnIn({ texts, error, fonts, print: printed }) : error;
      });
      const carried = carriedFiles({
        loaded: given.loaded,
        date,
        edition: given.edition,
        set,
        paper,
        prices: prices?.source,
        html,
        pdf,
        revised: given.revise?.carried,
      });
      files.push({ name: `${stem}.pdf`, bytes: attachFiles(pdf, carried, { date: printedOn }) });
    }
    if (formats.includes("html")) files.push({ name: `${stem}.html`, bytes: html });
    if (formats.includes("svg") && set === "submittal") files.push(...drawingFiles(name, packet));
  }
  if (formats.includes("json")) files.push({ name: `${name}.json`, bytes: designJson(design, 2) });
  return files;
}

function drawingFiles(name: string, packet: Packet): readonly OutputFile[] {
  const drawings = packet.sheets.flatMap((sheet) => sheet.blocks).flatMap((block) => (block.kind === "drawing" ? [block.svg] : []));
  return drawings.map((svg, i) => ({ name: i === 0 ? `${name}.svg` : `${name}-${i + 1}.svg`, bytes: svg }));
}

/** `build`: the packet in the formats asked, all files or none. Progress on standard error when that is a terminal. */
export function build(job: string, options: BuildOptions): Promise<number> {
  return withExit(async () => {
    const formats = formatsOf(options.format);
    const sets = setsOf(options.set);
    const date = dateOf(options.date);
    const say = process.stderr.isTTY ? (text: string) => process.stderr.write(`${text}\n`) : () => undefined;
    say("computing");
    const loaded = await loadDesign(job, options);
    const { design } = loaded;
    const given = {
      name: stemOf(job),
      loaded,
      date,
      edition: options.edition,
      formats,
      sets,
      paper: paperOf(options.paper, loaded.overlay),
      ...(options.prices === undefined ? {} : { prices: await loadPrices(options.prices) }),
      fonts: await packetFonts(),
    };
    const files = await withPrinter(options.browser, say, (print) => packetFiles({ ...given, print }));
    const written = await writeWhole(options.out, files, { force: options.force });
    const fails = design.findings.filter((finding) => finding.verdict === "fail");
    if (options.json) console.log(JSON.stringify({ format: "branchwork-build/1", ready: design.ready, files: written, fails: fails.length }, null, 2));
    else {
      for (const path of written) console.log(process.stdout.isTTY ? oneLine(path) : path);
      for (const finding of fails) console.error(printFinding(finding));
    }
    return design.ready ? EXIT.ready : EXIT.findings;
  });
}
