import { type Edition, everyEdition, type PerEdition } from "../basis/edition.js";
import { decimal, type Numeric, print } from "../quantity.js";
import { worked } from "../worked.js";
import { ordinaryProtection } from "./conductor-protection.js";
import { type EquipmentCircuit, equipmentCircuit } from "./equipment-circuit.js";
import { gfciNeed, type OutletPlace } from "./gfci-need.js";
import { citeKnown, knownAlike, unseen2026 } from "./known-rule.js";
import { boundAsGiven, boundUp } from "./overcurrent-bound.js";
import type { Required } from "./statement.js";

const OVERCURRENT = unseen2026("625.41", "published");
const CONTINUOUS = unseen2026("625.42", "published");
const INDIVIDUAL = unseen2026("625.40", "published");
const DISCONNECT = knownAlike("625.43", "published");
const RECEPTACLE_GFCI = unseen2026("625.54", "published");
const OUTLET_RATING = unseen2026("210.21(B)(1)", "memory");
const INSTRUCTIONS = unseen2026("110.3(B)", "published");
const LISTED_OUTLET = knownAlike({ ...everyEdition<string | null>(null), "2026": "625.44" }, "published");

/** Over 60 A (or over 150 V to ground) to 2023; every permanently connected unit in 2026. */
const over60 = (amperes: Numeric) => decimal(amperes).gt(60);
const DISCONNECT_ASKED: PerEdition<(amperes: Numeric, hardWired: boolean) => boolean> = {
  "2017": over60,
  "2020": over60,
  "2023": over60,
  "2026": (amperes, hardWired) => hardWired || over60(amperes),
};

/** 2017 had no such section as first printed: Tentative Interim Amendment 17-2 added it, for receptacles to 50 A. */
const RECEPTACLE_ASKED: PerEdition<Pick<Required, "required" | "says">> = {
  ...everyEdition({ required: "yes", says: "a receptacle for charging an electric vehicle" }),
  "2017": { required: "ask", says: "asked of charging receptacles to 50 A where Tentative Interim Amendment 17-2 is in force" },
};

/**
 * The circuit of EV supply equipment. `amperes` is the equipment's rating, or the setting it is locked to; `receptacle` the
 * outlet's rating in A when it plugs in; `marked` the largest device its nameplate or instructions allow. 625.40 to 625.54.
 */
export function evSupplyCircuit(given: {
  readonly id: string;
  readonly amperes: Numeric;
  readonly receptacle?: number;
  readonly marked?: number;
  readonly place: OutletPlace;
  readonly edition: Edition;
}): EquipmentCircuit {
  const { id, amperes, receptacle, marked, place, edition } = given;
  const needed = decimal(amperes).times("1.25");
  const expression = `${print(amperes)} A × 1.25`;
  const ampacity = worked({
    id: `${id}.ampacity`,
    label: "Minimum circuit ampacity, continuous load",
    value: needed.toFixed(),
    unit: "A",
    expression,
    citations: [citeKnown(CONTINUOUS, edition)],
    edition,
  });
  const least = boundUp({
    id: `${id}.overcurrent.least`,
    label: "Overcurrent device, least",
    amperes: needed,
    expression,
    inputs: [ampacity.id],
    citations: [citeKnown(OVERCURRENT, edition)],
    edition,
  });
  const limit = Math.min(marked ?? Number.POSITIVE_INFINITY, receptacle ?? Number.POSITIVE_INFINITY);
  const most = Number.isFinite(limit)
    ? boundAsGiven({
        id: `${id}.overcurrent.most`,
        label: "Overcurrent device, most",
        amperes: limit,
        expression: `${limit} A`,
        citations: [citeKnown(limit === marked ? INSTRUCTIONS : OUTLET_RATING, edition)],
        edition,
      })
    : null;
  const hardWired = receptacle === undefined;
  const general = gfciNeed({ place, receptacle: !hardWired, rating: least?.rating ?? Number(needed), volts: 240, edition });
  const asked = DISCONNECT_ASKED[edition](amperes, hardWired);
  return equipmentCircuit({
    id,
    edition,
    says: hardWired ? "EV supply equipment, hard-wired" : `EV supply equipment on a ${receptacle} A receptacle`,
    volts: 240,
    poles: 2,
    neutral: false,
    ampacity,
    overcurrent: { least, most },
    ...ordinaryProtection(edition),
    disconnect: {
      required: asked ? "yes" : "no",
      says: asked ? "readily accessible, lockable open" : "60 A or less and 150 V to ground or less: no disconnect of its own asked",
      citation: citeKnown(DISCONNECT, edition),
    },
    gfci: hardWired || general.required === "yes" ? general : { ...RECEPTACLE_ASKED[edition], citation: citeKnown(RECEPTACLE_GFCI, edition) },
    notes: [
      { says: "the outlet is on a branch circuit of its own", citation: citeKnown(INDIVIDUAL, edition) },
      ...(!hardWired && receptacle > 20 && LISTED_OUTLET.sections[edition] !== null
        ? [{ says: "a 30, 50 or 60 A charging receptacle is listed for EV supply use", citation: citeKnown(LISTED_OUTLET, edition) }]
        : []),
    ],
  });
}
