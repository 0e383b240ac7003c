import type { Edition } from "@branchwork/engine";
import type { Revision } from "@branchwork/sheets";
import { designText, InputError, type Loaded, type LoadOptions, loadDesign, type NamedText } from "../load-design.js";
import { type CarriedRevision, MOST_REVISIONS } from "./carried-files.js";
import { editionOf, isPdf, readPacket } from "./read-packet.js";

/** The set before a revision. */
export interface Earlier {
  readonly before: Loaded;
  readonly was: CarriedRevision["was"];
  /** The rows its revision table had, oldest first. */
  readonly revisions: readonly Revision[];
  /** The overlay and prices it carries, where it is a packet. */
  readonly overlay?: NamedText;
  readonly prices?: NamedText;
}

/** The earlier set, of a job file (which tells of no revisions before it) or of a packet PDF (which carries them). */
export async function readEarlier(old: string, options: LoadOptions & { readonly oldOverlay?: string }): Promise<Earlier> {
  const edition = options.edition;
  if (!(await isPdf(old))) {
    const overlay = options.oldOverlay ?? options.overlay;
    const before = await loadDesign(old, { ...(overlay === undefined ? {} : { overlay }), ...(edition === undefined ? {} : { edition }) });
    return { before, was: { ...before.sources, edition }, revisions: [] };
  }
  if (options.oldOverlay !== undefined)
    throw new InputError("--old-overlay", [{ path: "", what: `${old} carries the overlay it was made with`, mend: "leave --old-overlay out" }]);
  const packet = await readPacket(old);
  const { manifest } = packet;
  const named = (name: string | undefined, text: string | null): NamedText | undefined =>
    text === null || name === undefined ? undefined : { file: name, text };
  const job = { file: manifest.job, text: packet.job };
  const overlay = named(manifest.overlay?.replace(/^overlay-/, ""), packet.overlay);
  const prices = named(manifest.prices?.replace(/^prices-/, ""), packet.prices);
  const own: Edition | undefined = editionOf(manifest.edition);
  const inside = (source: NamedText): NamedText => ({ ...source, file: `${old}: ${source.file}` });
  const before = designText({ job: inside(job), ...(overlay === undefined ? {} : { overlay: inside(overlay) }), edition: own });
  return {
    before,
    was: { job, ...(overlay === undefined ? {} : { overlay }), edition: own },
    revisions: manifest.revisions ?? [],
    ...(overlay === undefined ? {} : { overlay }),
    ...(prices === undefined ? {} : { prices }),
  };
}

/** The number of the next revision: the one asked for, else the one after the last. Throws InputError where it is none or there already. */
export function nextNumber(asked: string | undefined, revisions: readonly Revision[]): string {
  const refuse = (what: string, mend: string): never => {
    throw new InputError("--number", [{ path: "", what, mend }]);
  };
  if (revisions.length >= MOST_REVISIONS) refuse(`the packet carries ${revisions.length} revisions`, "begin anew with build");
  const last = revisions.at(-1)?.number;
  const number = asked ?? (last === undefined ? "1" : after(last));
  if (number === null) return refuse(`it is not plain what follows revision ${last}`, "give --number");
  if (!/^[A-Za-z0-9]{1,3}$/.test(number)) refuse(`"${number}" is not a revision's number`, "write one to three digits or letters, as 1 or B");
  const there = revisions.find((one) => one.number === number);
  if (there !== undefined) refuse(`revision ${number} of ${there.date} is in the packet's table already`, "leave --number out, or give another");
  return number;
}

function after(last: string): string | null {
  if (/^\d+$/.test(last)) return String(Number(last) + 1);
  return /^[A-Ya-y]$/.test(last) ? String.fromCharCode(last.charCodeAt(0) + 1) : null;
}
