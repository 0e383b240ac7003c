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

/** The sheets of a submittal as the intake takes them, and those it leaves out. `offered` holds every sheet of the job, in order. */
export function takenBy(
  intake: Overlay["intake"],
  offered: readonly Named[],
  whole: readonly SheetName[],
): { readonly taken: readonly Named[]; readonly left: readonly Named[] } {
  const mode = intake === undefined ? null : TAKEN[intake.mode];
  const asked = (intake?.sheets ?? []).flatMap(({ sheet }) => sheet ?? []);
  const names = new Set<SheetName>([...ALWAYS, ...(mode ?? whole)]);
  const isTaken = ({ name, draft }: Named) => names.has(name) || asked.some((title) => draft.title.startsWith(title));
  return { taken: offered.filter(isTaken), left: offered.filter((one) => whole.includes(one.name) && !isTaken(one)) };
}
