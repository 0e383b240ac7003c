import type { Edition } from "../basis/edition.js";
import { decimal, type Numeric, print } from "../quantity.js";
import { type Worked, worked } from "../worked.js";
import { citeKnown, unseen2026 } from "./known-rule.js";
import type { Statement } from "./statement.js";

const DISCONNECT = unseen2026("210.4(B)", "published");
const LINE_LOADS = unseen2026("210.4(C)", "published");
const GROUPING = unseen2026("210.4(D)", "published");
const TIES = unseen2026("240.15(B)", "published");
/** By its definition its hots have a voltage between them, and the same to the neutral. */
const OPPOSITE = unseen2026("Article 100, multiwire branch circuit", "memory");
const SPLICED = unseen2026("300.13(B)", "memory");

export type MultiwireBreaker = "common-trip" | "identified-handle-tie" | "separate";

export interface MultiwireCircuit {
  /** Current in the shared neutral, 60 Hz resistive loads. */
  readonly neutral: Worked;
  readonly faults: readonly Statement[];
  readonly notes: readonly Statement[];
}

/**
 * A multiwire branch circuit: two hot conductors with one neutral, 120/240 V. Leg currents in A. Its breaker poles open together,
 * by a common trip where it also serves 240 V loads of more than one piece of equipment; its conductors are grouped. 210.4, 240.15(B).
 */
export function multiwireCircuit(given: {
  readonly id: string;
  readonly legA: Numeric;
  readonly legB: Numeric;
  readonly oppositeLegs: boolean;
  readonly breaker: MultiwireBreaker;
  readonly lineToLineLoads: boolean;
  readonly onlyOneEquipment: boolean;
  readonly groupedOrOwnCable: boolean;
  readonly neutralSplicedThrough: boolean;
  readonly edition: Edition;
}): MultiwireCircuit {
  const { id, legA, legB, edition } = given;
  const larger = decimal(legA).gte(legB) ? legA : legB;
  const smaller = larger === legA ? legB : legA;
  const value = given.oppositeLegs ? decimal(larger).minus(smaller) : decimal(larger).plus(smaller);
  const neutral = worked({
    id: `${id}.neutral`,
    label: given.oppositeLegs ? "Neutral current, legs opposite" : "Neutral current, both hots on one leg",
    value: value.toFixed(),
    unit: "A",
    expression: `${print(larger)} A ${given.oppositeLegs ? "−" : "+"} ${print(smaller)} A`,
    citations: [citeKnown(OPPOSITE, edition)],
    edition,
  });
  const faults: Statement[] = [];
  if (!given.oppositeLegs)
    faults.push({
      says: `both hots are on one leg: the neutral carries ${print(value)} A with nothing to trip on it; move one pole to the other leg`,
      citation: citeKnown(OPPOSITE, edition),
    });
  if (given.breaker === "separate")
    faults.push({ says: "the two poles open apart: use a two-pole breaker or an identified handle tie", citation: citeKnown(DISCONNECT, edition) });
  if (given.lineToLineLoads && !given.onlyOneEquipment && given.breaker !== "common-trip")
    faults.push({
      says: "it serves 240 V loads too: a handle tie does not trip both poles; use a common-trip two-pole breaker",
      citation: citeKnown(LINE_LOADS, edition),
    });
  if (!given.groupedOrOwnCable)
    faults.push({
      says: "tie its hot and neutral conductors together in the panel, once at the least, unless they come in a cable or raceway of their own",
      citation: citeKnown(GROUPING, edition),
    });
  if (!given.neutralSplicedThrough)
    faults.push({
      says: "the neutral runs through a device: splice it with a pigtail, so that taking the device out does not open it",
      citation: citeKnown(SPLICED, edition),
    });
  return {
    neutral,
    faults,
    notes: [
      { says: "with identified handle ties single-pole breakers serve line-to-neutral loads", citation: citeKnown(TIES, edition) },
      { says: "an open neutral puts up to 240 V on the lighter leg: open both poles before working on it", citation: citeKnown(DISCONNECT, edition) },
    ],
  };
}
