import { changesBetween } from "@branchwork/engine";
import type { Packet, PacketSet, Revision } from "@branchwork/sheets";
import { type BuildOptions, dateOf, formatsOf, packetFiles, paperOf, setsOf, withPrinter } from "./build.js";
import { nextNumber, readEarlier } from "./carried/earlier.js";
import { markRevision } from "./carried/mark-revision.js";
import { EXIT } from "./exit-codes.js";
import { packetFonts } from "./fonts.js";
import { designText, loadDesign, readText } from "./load-design.js";
import { namedPrices, pricesOf } from "./price-book.js";
import { writeWhole } from "./print/atomic-write.js";
import { withExit } from "./report.js";
import { stemOf } from "./stem.js";

export interface ReviseOptions extends BuildOptions {
  /** The next after the earlier packet's, 1 after a job file, when left out. */
  readonly number?: string;
  readonly what?: string;
  /** The earlier overlay, where it was another. */
  readonly oldOverlay?: string;
}

/**
 * `revise`: the packet of the new job with what is otherwise than in the old one told and marked. `old` is the earlier job file, or
 * the earlier packet's PDF, which carries its job, its overlay and the revisions before this one.
 */
export function revise(old: string, job: string, options: ReviseOptions): Promise<number> {
  return withExit(async () => {
    const formats = formatsOf(options.format);
    const sets = setsOf(options.set);
    const date = dateOf(options.date);
    const say = process.stderr.isTTY ? (text: string) => process.stderr.write(`${text}\n`) : () => undefined;
    say("computing");
    const earlier = await readEarlier(old, options);
    const number = nextNumber(options.number, earlier.revisions);
    const { before } = earlier;
    const loaded =
      options.overlay === undefined && earlier.overlay !== undefined
        ? designText({ job: { file: job, text: await readText(job) }, overlay: earlier.overlay, edition: options.edition })
        : await loadDesign(job, options);
    const paper = paperOf(options.paper, loaded.overlay);
    const changes = changesBetween(before.design, loaded.design);
    const prices = (await namedPrices(options.prices)) ?? (earlier.prices && pricesOf(earlier.prices));
    const inputs = changes.filter(({ kind }) => kind === "input").map(({ says }) => says);
    const told =
      inputs.length === 0
        ? "Nothing was entered otherwise"
        : `Entered otherwise: ${inputs.slice(0, MOST_NAMED).join(", ")}${inputs.length > MOST_NAMED ? ` and ${inputs.length - MOST_NAMED} more` : ""}`;
    const revision = { number, date, says: options.what ?? told };
    const revisions: readonly Revision[] = [...earlier.revisions, revision];
    let sheets: readonly string[] = [];
    const mark = (packet: Packet, set: PacketSet) => {
      const revised = markRevision({ packet, before, changes, revisions, set, paper, date, prices: prices?.book });
      sheets = [...sheets, ...revised.sheets.filter(({ title }) => title.startsWith("Δ")).map(({ id, title }) => `${id} ${title}`)];
      return revised;
    };
    const given = {
      name: stemOf(job),
      loaded,
      date,
      edition: options.edition,
      formats,
      fonts: await packetFonts(),
      sets,
      paper,
      ...(prices === undefined ? {} : { prices }),
      revise: { mark, carried: { revisions, was: earlier.was } },
    };
    const files = await withPrinter(options.browser, say, (print) => packetFiles({ ...given, print }));
    const written = await writeWhole(options.out, files, { force: options.force });
    const fails = loaded.design.findings.filter(({ verdict }) => verdict === "fail").length;
    if (options.json)
      console.log(
        JSON.stringify(
          {
            format: "branchwork-revision/1",
            revision,
            earlier: earlier.revisions,
            ready: loaded.design.ready,
            fails,
            changes,
            sheets,
            files: written,
          },
          null,
          2,
        ),
      );
    else {
      for (const { kind, says, was: before, now } of changes) console.log(`${kind}: ${says}: ${before ?? "nothing"} -> ${now ?? "nothing"}`);
      console.log(sheets.length === 0 ? "No sheet changed." : `\nSheets:\n${sheets.map((sheet) => `  ${sheet}`).join("\n")}`);
      for (const path of written) console.log(path);
    }
    return loaded.design.ready ? EXIT.ready : EXIT.findings;
  });
}

const MOST_NAMED = 4;
