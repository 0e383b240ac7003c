import type { Edition } from "../basis/edition.js";
import { decimal, type Numeric, print } from "../quantity.js";
import { worked } from "../worked.js";
import { ordinaryProtection } from "./conductor-protection.js";
import { type EquipmentCircuit, equipmentCircuit } from "./equipment-circuit.js";
import { citeKnown, unseen2026 } from "./known-rule.js";
import { type NeutralSwitching, neutralSwitching, type TransferMeans } from "./neutral-switching.js";
import { boundAsGiven } from "./overcurrent-bound.js";
import type { Required } from "./statement.js";

const CAPACITY = unseen2026("702.4", "one-source");
const TRANSFER = unseen2026("702.5", "one-source");
const SIGN = unseen2026("702.7(A)", "one-source");
const INLET_SIGN = unseen2026("702.7(C)", "one-source");
const CONDUCTORS = unseen2026("445.13", "memory");
const DISCONNECT = unseen2026("445.18, 702.12", "memory");
const GFCI = unseen2026("210.8(A)", "memory");
/** An inlet is used within its marked rating. */
const MARKED = unseen2026("110.3(B)", "memory");
const BACKFED = unseen2026("408.36(D)", "memory");

export interface GeneratorInletCircuit extends EquipmentCircuit {
  readonly transfer: Required;
  readonly neutralSwitching: NeutralSwitching;
  readonly capacity: Required & { readonly short: boolean };
}

/**
 * The circuit from a power inlet (20, 30 or 50 A, 125/250 V, four wires) to its transfer equipment. A generator whose neutral is
 * bonded to its frame is a separately derived source: its neutral is switched; a floating one keeps the neutral solid.
 * `generatorWatts` and `loadVa` are compared when an automatic means takes the load without anyone choosing (702.4).
 */
export function generatorInletCircuit(given: {
  readonly id: string;
  readonly inlet: 20 | 30 | 50;
  readonly generatorWatts: Numeric;
  readonly loadVa: Numeric;
  readonly neutralBonded: boolean;
  readonly transfer: TransferMeans;
  readonly edition: Edition;
}): GeneratorInletCircuit {
  const { id, inlet, generatorWatts, loadVa, neutralBonded, transfer, edition } = given;
  const transferRule = citeKnown(TRANSFER, edition);
  const output = worked({
    id: `${id}.output`,
    label: "Generator's rated current at 240 V",
    value: decimal(generatorWatts).div(240).toFixed(),
    unit: "A",
    expression: `${print(generatorWatts)} W / 240 V`,
    citations: [citeKnown(CAPACITY, edition)],
    edition,
  });
  const ampacity = worked({
    id: `${id}.ampacity`,
    label: "Minimum circuit ampacity, the inlet's rating",
    value: String(inlet),
    unit: "A",
    expression: `${inlet} A`,
    citations: [citeKnown(CONDUCTORS, edition)],
    edition,
  });
  const most = boundAsGiven({
    id: `${id}.overcurrent.most`,
    label: "Backfed breaker, most: the inlet's rating",
    amperes: inlet,
    expression: `${inlet} A`,
    citations: [citeKnown(MARKED, edition)],
    edition,
  });
  const automatic = transfer === "automatic" || transfer === "automatic-with-neutral";
  const short = decimal(loadVa).gt(generatorWatts);
  return {
    ...equipmentCircuit({
      id,
      edition,
      says: `Generator inlet, ${inlet} A 125/250 V`,
      volts: 240,
      poles: 2,
      neutral: true,
      before: [output],
      ampacity,
      overcurrent: { least: null, most },
      ...ordinaryProtection(edition),
      disconnect: {
        required: "ask",
        says: "the generator's own breaker and the cord's plug serve a portable set of 15 kW or less",
        citation: citeKnown(DISCONNECT, edition),
      },
      gfci: {
        required: "no",
        says: "an inlet is not a receptacle outlet; the generator's own ground-fault protection is upstream of it",
        citation: citeKnown(GFCI, edition),
      },
      notes: [
        { says: "a sign at the service tells the kind and place of the standby source", citation: citeKnown(SIGN, edition) },
        {
          says: `a sign at the inlet tells that the generator is to have its neutral ${neutralBonded ? "bonded to" : "not bonded to"} its frame`,
          citation: citeKnown(INLET_SIGN, edition),
        },
        { says: "a backfed breaker of plug-on kind is held down by a fastener", citation: citeKnown(BACKFED, edition) },
      ],
    }),
    transfer: {
      required: "yes",
      says: "listed transfer equipment, or an interlock listed for this panel, so that generator and utility can never be connected together: a backfeed kills line workers",
      citation: transferRule,
    },
    neutralSwitching: neutralSwitching({ neutralBonded, transfer, edition }),
    capacity: {
      required: automatic ? "yes" : "no",
      short: automatic && short,
      says: automatic
        ? short
          ? `the load transferred is ${print(decimal(loadVa).minus(generatorWatts))} VA more than the generator gives: shed load by listed means or take a larger one`
          : "the generator carries the load transferred to it"
        : "the user chooses what to run: the generator need not carry it all",
      citation: citeKnown(CAPACITY, edition),
    },
  };
}
