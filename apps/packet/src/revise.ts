import { basename, extname } from "node:path";
import { changesBetween } from "@branchwork/engine";
import { composePacket, type Packet, type PacketSet, revisePacket } from "@branchwork/sheets";
import { type BuildOptions, dateOf, formatsOf, packetFiles, paperOf, setsOf, withPrinter } from "./build.js";
import { EXIT } from "./exit-codes.js";
import { packetFonts } from "./fonts.js";
import { InputError, loadDesign, readText } from "./load-design.js";
import { pricesOf } from "./price-book.js";
import { writeWhole } from "./print/atomic-write.js";
import { withExit } from "./report.js";

export interface ReviseOptions extends BuildOptions {
  readonly number: string;
  readonly what?: string;
  /** The earlier overlay, where it was another. */
  readonly oldOverlay?: string;
}

/** `revise`: the packet of the new job with what is otherwise than in the old one told and marked. */
export function revise(old: string, job: string, options: ReviseOptions): Promise<number> {
  return withExit(async () => {
    const formats = formatsOf(options.format);
    const sets = setsOf(options.set);
    const date = dateOf(options.date);
    if (!/^[A-Za-z0-9]{1,3}$/.test(options.number))
      throw new InputError("--number", [
        { path: "", what: `"${options.number}" is not a revision's number`, mend: "write one to three digits or letters, as 1 or B" },
      ]);
    const say = process.stderr.isTTY ? (text: string) => process.stderr.write(`${text}\n`) : () => undefined;
    say("computing");
    const oldOverlay = options.oldOverlay ?? options.overlay;
    const { overlay: _, ...rest } = options;
    const before = await loadDesign(old, { ...rest, ...(oldOverlay === undefined ? {} : { overlay: oldOverlay }) });
    const loaded = await loadDesign(job, options);
    const paper = paperOf(options.paper, loaded.overlay);
    const changes = changesBetween(before.design, loaded.design);
    const prices = options.prices === undefined ? undefined : pricesOf({ file: options.prices, text: await readText(options.prices) });
    const inputs = changes.filter(({ kind }) => kind === "input").map(({ says }) => says);
    const told =
      inputs.length === 0
        ? "Nothing was entered otherwise"
        : `Entered otherwise: ${inputs.slice(0, MOST_NAMED).join(", ")}${inputs.length > MOST_NAMED ? ` and ${inputs.length - MOST_NAMED} more` : ""}`;
    const revision = { number: options.number, date, says: options.what ?? told };
    let sheets: readonly string[] = [];
    const given = {
      name: basename(job, extname(job)),
      loaded,
      date,
      edition: options.edition,
      formats,
      fonts: await packetFonts(),
      sets,
      paper,
      ...(prices === undefined ? {} : { prices }),
      revise: (packet: Packet, set: PacketSet) => {
        const was = composePacket({
          design: before.design,
          overlay: before.overlay,
          date,
          targets: before.targets,
          set,
          paper,
          ...(prices === undefined ? {} : { prices: prices.book }),
        });
        const revised = revisePacket({ packet, was, revision, changes });
        sheets = [...sheets, ...revised.sheets.filter(({ title }) => title.startsWith("Δ")).map(({ id, title }) => `${id} ${title}`)];
        return revised;
      },
    };
    const files = await withPrinter(options.browser, say, (print) => packetFiles({ ...given, print }));
    const written = await writeWhole(options.out, files, { force: options.force });
    const fails = loaded.design.findings.filter(({ verdict }) => verdict === "fail").length;
    if (options.json)
      console.log(JSON.stringify({ format: "branchwork-revision/1", revision, ready: loaded.design.ready, fails, changes, sheets, files: written }, null, 2));
    else {
      for (const { kind, says, was: before, now } of changes) console.log(`${kind}: ${says}: ${before ?? "nothing"} -> ${now ?? "nothing"}`);
      console.log(sheets.length === 0 ? "No sheet changed." : `\nSheets:\n${sheets.map((sheet) => `  ${sheet}`).join("\n")}`);
      for (const path of written) console.log(path);
    }
    return loaded.design.ready ? EXIT.ready : EXIT.findings;
  });
}

const MOST_NAMED = 4;
