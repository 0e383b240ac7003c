import { changesBetween } from "@branchwork/engine";
import { composePacket, renderHtml } from "@branchwork/sheets";
import { EXIT } from "../exit-codes.js";
import { packetFonts } from "../fonts.js";
import { designText } from "../load-design.js";
import { pricesOf } from "../price-book.js";
import { withExit } from "../report.js";
import { designJson, sha256 } from "./carried-files.js";
import { markRevision } from "./mark-revision.js";
import { editionOf, type ReadPacket, readPacket } from "./read-packet.js";

/** A number that comes out another way now. */
interface Changed {
  readonly at: string;
  readonly printed: string;
  readonly now: string;
}
export interface Verification {
  readonly format: "branchwork-verification/1";
  /** The pages are byte for byte as they were printed. */
  readonly pagesIntact: boolean;
  /** Every worked value, finding and assumption comes out the same. */
  readonly numbersHold: boolean;
  /** The sheets come out the same, word for word. */
  readonly sheetsHold: boolean;
  readonly changed: readonly Changed[];
}

const MOST_SHOWN = 40;

/** `verify`: works the job inside a packet again and says whether each printed number still holds. */
export function verify(file: string, options: { readonly json?: boolean }): Promise<number> {
  return withExit(async () => {
    const result = await verification(file, await readPacket(file));
    const holds = result.pagesIntact && result.numbersHold && result.sheetsHold;
    if (options.json) console.log(JSON.stringify(result, null, 2));
    else {
      console.log(result.pagesIntact ? "The pages are as they were printed." : "The pages are NOT as they were printed: the file was changed after printing.");
      console.log(
        result.numbersHold ? "Every number holds." : `${result.changed.length} value${result.changed.length === 1 ? " comes" : "s come"} out otherwise now:`,
      );
      for (const one of result.changed.slice(0, MOST_SHOWN)) console.log(`  ${one.at}: printed ${one.printed}, now ${one.now}`);
      if (result.numbersHold && !result.sheetsHold)
        console.log("The numbers hold, but the sheets are worded or laid out otherwise now: build the packet again.");
    }
    return holds ? EXIT.ready : EXIT.findings;
  });
}

async function verification(file: string, packet: ReadPacket): Promise<Verification> {
  const { manifest } = packet;
  const loaded = designText({
    job: { file: `${file}: ${manifest.job}`, text: packet.job },
    ...(packet.overlay === null ? {} : { overlay: { file: `${file}: ${manifest.overlay}`, text: packet.overlay } }),
    edition: editionOf(manifest.edition),
  });
  const { date, set, paper, was, revisions } = manifest;
  const prices = packet.prices === null ? undefined : pricesOf({ file: `${file}: ${manifest.prices}`, text: packet.prices }).book;
  const plain = composePacket({
    design: loaded.design,
    overlay: loaded.overlay,
    date,
    targets: loaded.targets,
    set,
    paper,
    ...(prices === undefined ? {} : { prices }),
  });
  const before =
    packet.was === null
      ? null
      : designText({
          job: { file: `${file}: ${was?.job}`, text: packet.was.job },
          ...(packet.was.overlay === null ? {} : { overlay: { file: `${file}: ${was?.overlay}`, text: packet.was.overlay } }),
          edition: editionOf(was?.edition),
        });
  const asPrinted =
    before === null || revisions === undefined
      ? plain
      : markRevision({ packet: plain, before, changes: changesBetween(before.design, loaded.design), revisions, set, paper, date, prices });
  const html = renderHtml({ packet: asPrinted, fonts: await packetFonts() });
  const now = JSON.parse(designJson(loaded.design)) as unknown;
  const changed = differences(parsed(packet.design), now, "");
  return {
    format: "branchwork-verification/1",
    pagesIntact: pagesIntact(packet),
    numbersHold: changed.length === 0,
    sheetsHold: sha256(html) === manifest.html_sha256,
    changed,
  };
}

/** The bytes as printed lead the file, and nothing but the carried files follows them. */
function pagesIntact({ pdf, manifest }: ReadPacket): boolean {
  if (sha256(pdf.subarray(0, manifest.pages.bytes)) !== manifest.pages.sha256) return false;
  const after = Buffer.from(pdf.subarray(manifest.pages.bytes)).toString("latin1");
  return after.split("%%EOF").length === 2;
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch (error) {
    if (error instanceof SyntaxError) return null;
    throw error;
  }
}

/** Every leaf that differs, by its place. */
function differences(was: unknown, is: unknown, at: string): readonly Changed[] {
  if (Object.is(was, is)) return [];
  const group = (value: unknown): value is Readonly<Record<string, unknown>> => typeof value === "object" && value !== null;
  if (group(was) && group(is)) {
    const keys = new Set([...Object.keys(was), ...Object.keys(is)]);
    return [...keys].flatMap((key) => differences(was[key], is[key], at === "" ? key : `${at}.${key}`));
  }
  return [{ at, printed: brief(was), now: brief(is) }];
}

const brief = (value: unknown): string => {
  const text = value === undefined ? "nothing" : JSON.stringify(value);
  return text.length > 60 ? `${text.slice(0, 57)}…` : text;
};
