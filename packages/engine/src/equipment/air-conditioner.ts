import { type Edition, everyEdition, type PerEdition } from "../basis/edition.js";
import { decimal, type Numeric, print } from "../quantity.js";
import { worked } from "../worked.js";
import { ownArticleProtection } from "./conductor-protection.js";
import { type EquipmentCircuit, equipmentCircuit } from "./equipment-circuit.js";
import { citeKnown, type KnownRule, unseen2026 } from "./known-rule.js";
import { boundAsGiven, boundDown, boundUp, type OvercurrentBound } from "./overcurrent-bound.js";
import type { Required } from "./statement.js";

const CONDUCTORS = unseen2026("440.32, 440.33", "published");
const DEVICE = unseen2026("440.22", "published");
const MARKED = unseen2026("440.4(B)", "published");
const DISCONNECT = unseen2026("440.14", "memory");
const OUTLETS: KnownRule = { sections: { ...everyEdition<string | null>("210.8(F)"), "2017": "210.8(A)" }, standing: everyEdition("published") };
const SERVICE_OUTLET = unseen2026("210.63", "memory");

/** The exception for listed heating and air-conditioning units turns on dates and amendments, so it is asked. */
const GFCI: PerEdition<Pick<Required, "required" | "says">> = {
  "2017": { required: "no", says: "not asked of a hard-wired unit" },
  "2020": { required: "ask", says: "asked of outdoor outlets to 50 A; Tentative Interim Amendment 20-13 put it off for some units until 1 January 2023" },
  "2023": { required: "ask", says: "asked of outdoor outlets to 50 A; the exception for listed units ends on 1 September 2026" },
  "2026": { required: "ask", says: "asked of outdoor outlets to 60 A; see whether the adopted text still exempts listed units" },
};

/** What is on the nameplate: minimum circuit ampacity and largest device, or the rated currents to reckon them from. */
export type AirConditionerRating =
  | { readonly minimumCircuit: Numeric; readonly largestDevice: number }
  | { readonly compressor: Numeric; readonly others: Numeric };

export interface AirConditionerCircuit extends EquipmentCircuit {
  /** The most a device may be raised to where the usual one will not let the unit start; null when marked. */
  readonly ceiling: OvercurrentBound | null;
}

/**
 * The circuit of a heat pump or air conditioner, 240 V, outdoors. As marked, or 125 % of the compressor + other motors (A) for the
 * conductors, and 175 % (225 % at the most) + others for the device, rounded down, but never under the ampacity needed. 440.22, 440.33.
 */
export function airConditionerCircuit(given: { readonly id: string; readonly rating: AirConditionerRating; readonly edition: Edition }): AirConditionerCircuit {
  const { id, rating, edition } = given;
  const conductors = citeKnown(CONDUCTORS, edition);
  const device = citeKnown(DEVICE, edition);
  const isMarked = "minimumCircuit" in rating;
  const needed = isMarked ? decimal(rating.minimumCircuit) : decimal(rating.compressor).times("1.25").plus(rating.others);
  const expression = isMarked ? `${print(rating.minimumCircuit)} A` : `${print(rating.compressor)} A × 1.25 + ${print(rating.others)} A`;
  const ampacity = worked({
    id: `${id}.ampacity`,
    label: isMarked ? "Minimum circuit ampacity, as marked" : "Minimum circuit ampacity",
    value: needed.toFixed(),
    unit: "A",
    expression,
    citations: [isMarked ? citeKnown(MARKED, edition) : conductors],
    edition,
  });
  const least = boundUp({
    id: `${id}.overcurrent.least`,
    label: "Overcurrent device, least",
    amperes: needed,
    expression,
    inputs: [ampacity.id],
    citations: [conductors],
    edition,
  });
  const computed = (factor: "1.75" | "2.25", which: string, label: string): OvercurrentBound | null => {
    if (isMarked) return null;
    const amperes = decimal(rating.compressor).times(factor).plus(rating.others);
    const bound = boundDown({
      id: `${id}.overcurrent.${which}`,
      label,
      amperes,
      expression: `${print(rating.compressor)} A × ${factor} + ${print(rating.others)} A`,
      citations: [device],
      edition,
    });
    // Rounding down may land under the ampacity needed: then the standard rating that carries it serves.
    return least !== null && bound.rating < least.rating ? least : bound;
  };
  const marked = isMarked
    ? boundAsGiven({
        id: `${id}.overcurrent.most`,
        label: "Overcurrent device, most, as marked",
        amperes: rating.largestDevice,
        expression: `${rating.largestDevice} A`,
        citations: [citeKnown(MARKED, edition)],
        edition,
      })
    : null;
  const most = marked ?? computed("1.75", "most", "Overcurrent device, most");
  const ceiling = computed("2.25", "ceiling", "Overcurrent device, ceiling where the unit will not start");
  return {
    ...equipmentCircuit({
      id,
      edition,
      says: "Air conditioner or heat pump",
      volts: 240,
      poles: 2,
      neutral: false,
      ampacity,
      overcurrent: { least, most },
      after: ceiling && ceiling !== least ? [ceiling.worked] : [],
      ...ownArticleProtection("440", edition),
      disconnect: {
        required: "yes",
        says: "in sight of the unit and readily accessible, not behind it nor on a panel that must come off",
        citation: citeKnown(DISCONNECT, edition),
      },
      gfci: { ...GFCI[edition], citation: citeKnown(OUTLETS, edition) },
      notes: [{ says: "a 125 V receptacle within 25 ft on the same level, for servicing", citation: citeKnown(SERVICE_OUTLET, edition) }],
    }),
    ceiling,
  };
}
