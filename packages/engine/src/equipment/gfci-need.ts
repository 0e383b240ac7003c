import { type Edition, everyEdition, type PerEdition } from "../basis/edition.js";
import { citeKnown, type KnownRule, knownAlike, unseen2026 } from "./known-rule.js";
import type { Required } from "./statement.js";

/** Where at a dwelling the outlet is. A garage counts as one with its floor at or below grade. */
export type OutletPlace = "indoors" | "outdoors" | "garage" | "accessory-building" | "basement" | "crawl-space" | "kitchen" | "laundry" | "bathroom";

export interface GfciGiven {
  readonly place: OutletPlace;
  /** A receptacle, or false for hard-wired equipment. */
  readonly receptacle: boolean;
  /** Rating of the branch circuit in A. */
  readonly rating: number;
  readonly volts: 120 | 240;
  /** Appliances that 210.8(D) lists by name from 2023. */
  readonly listedAppliance?: boolean;
  readonly edition: Edition;
}

const RECEPTACLES = knownAlike("210.8(A)", "published");
const APPLIANCES: KnownRule = unseen2026({ ...everyEdition<string | null>("210.8(D)"), "2017": null, "2020": null }, "published");
const OUTLETS: KnownRule = { sections: { ...everyEdition<string | null>("210.8(F)"), "2017": null }, standing: everyEdition("published") };

/** 2017: 125 V, 15 and 20 A alone. From 2020: 125 to 250 V, 150 V to ground or less, whatever the amperes. */
const small2017 = (o: GfciGiven) => o.volts === 120 && o.rating <= 20;
const RECEPTACLE_REACH: PerEdition<(o: GfciGiven) => boolean> = { "2017": small2017, "2020": () => true, "2023": () => true, "2026": () => true };

const ALWAYS: readonly OutletPlace[] = ["outdoors", "garage", "accessory-building", "crawl-space", "laundry", "bathroom"];
/** Basements: unfinished in 2017 (asked), all from 2020. Kitchens: countertop receptacles to 2020 (asked), all from 2023. */
const PLACES: PerEdition<{ readonly certain: readonly OutletPlace[]; readonly asked: readonly OutletPlace[] }> = {
  "2017": { certain: ALWAYS, asked: ["basement", "kitchen"] },
  "2020": { certain: [...ALWAYS, "basement"], asked: ["kitchen"] },
  "2023": { certain: [...ALWAYS, "basement", "kitchen"], asked: [] },
  "2026": { certain: [...ALWAYS, "basement", "kitchen"], asked: [] },
};

/** Hard-wired outlets of 210.8(F): outdoors to 50 A in 2020, garages and accessory buildings too from 2023, to 60 A in 2026. */
const HARD_WIRED: PerEdition<{ readonly places: readonly OutletPlace[]; readonly upTo: number }> = {
  "2017": { places: [], upTo: 0 },
  "2020": { places: ["outdoors"], upTo: 50 },
  "2023": { places: ["outdoors", "garage", "accessory-building"], upTo: 50 },
  "2026": { places: ["outdoors", "garage", "accessory-building"], upTo: 60 },
};

/** Whether 210.8 asks ground-fault protection of an outlet at a dwelling. An amendment of the jurisdiction may say otherwise. */
export function gfciNeed(given: GfciGiven): Required {
  const { edition, place } = given;
  const receptacles = citeKnown(RECEPTACLES, edition);
  if (given.listedAppliance && APPLIANCES.sections[edition] !== null)
    return { required: "yes", says: `the ${edition} edition lists this appliance, plugged in or hard-wired`, citation: citeKnown(APPLIANCES, edition) };
  if (given.receptacle && RECEPTACLE_REACH[edition](given)) {
    if (PLACES[edition].certain.includes(place)) return { required: "yes", says: `a receptacle in this place: ${place}`, citation: receptacles };
    if (PLACES[edition].asked.includes(place))
      return {
        required: "ask",
        says: place === "basement" ? "asked where the basement is unfinished" : "asked where it serves a countertop or is within 6 ft of a sink",
        citation: receptacles,
      };
    return { required: "ask", says: "asked only within 6 ft of a sink, or in a damp or wet place", citation: receptacles };
  }
  const hardWired = HARD_WIRED[edition];
  if (!given.receptacle && hardWired.places.includes(place) && given.rating <= hardWired.upTo)
    return { required: "yes", says: `an outlet of ${hardWired.upTo} A or less in this place: ${place}`, citation: citeKnown(OUTLETS, edition) };
  return { required: "no", says: `the ${edition} edition does not ask it of this outlet`, citation: receptacles };
}
