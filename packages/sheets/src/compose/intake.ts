import type { Overlay } from "../overlay/schema.js";
import type { Named } from "./packet.js";
import type { SheetName } from "./sheet-titles.js";

type Mode = NonNullable<Overlay["intake"]>["mode"];

/** What each way of handing in takes besides the cover and what is to be signed; null takes the whole submittal. Common practice, no source. */
const TAKEN: Readonly<Record<Mode, readonly SheetName[] | null>> = {
  "over-the-counter": ["oneLine", "load", "schedules"],
  "small-plan-set": null,
  "affidavit-and-schematic": ["oneLine", "card"],
};
const ALWAYS: readonly SheetName[] = ["refusal", "cover", "statements"];

/**
 * The sheets of a submittal and those it leaves out: the cover and what is to be signed, then the sheets that the intake's list names
 * in the list's order, then what this way of handing in takes besides, unless the list alone is wanted. `offered` holds every sheet
 * of the job, in order.
 */
export function takenBy(
  intake: Overlay["intake"],
  offered: readonly Named[],
  whole: readonly SheetName[],
): { readonly taken: readonly Named[]; readonly left: readonly Named[] } {
  const mode = intake === undefined ? null : TAKEN[intake.mode];
  const signed = offered.filter(({ name }) => ALWAYS.includes(name));
  const listed = (intake?.sheets ?? []).flatMap(({ sheet }) => (sheet === undefined ? [] : offered.filter(({ draft }) => draft.title.startsWith(sheet))));
  const besides = intake?.nothing_else === true ? [] : offered.filter(({ name }) => (mode ?? whole).includes(name));
  const taken = [...new Set([...signed, ...listed, ...besides])];
  return { taken, left: offered.filter((one) => whole.includes(one.name) && !taken.includes(one)) };
}
