import type { Edition } from "../basis/edition.js";
import { Decimal, decimal, print } from "../quantity.js";
import { worked } from "../worked.js";
import { ordinaryProtection } from "./conductor-protection.js";
import { COOKING_DEMAND, type CookingAppliance, cookingDemand } from "./cooking-demand.js";
import { type EquipmentCircuit, equipmentCircuit } from "./equipment-circuit.js";
import { gfciNeed, type OutletPlace } from "./gfci-need.js";
import { citeKnown, type KnownRule, unseen2026 } from "./known-rule.js";
import { boundAsGiven, boundUp } from "./overcurrent-bound.js";

/** Two published sources for its place to 2020; its new place from 2023 is from memory. */
const FORTY: KnownRule = {
  sections: { "2017": "210.19(A)(3)", "2020": "210.19(A)(3)", "2023": "210.19(C)", "2026": "210.19(C)" },
  standing: { "2017": "published", "2020": "published", "2023": "memory", "2026": "memory" },
};
const FOUR_WIRE = unseen2026("250.140", "published");
const FIFTY = unseen2026("422.11(B)", "memory");
const DISCONNECT = unseen2026("422.33", "memory");

/**
 * The circuit of a household range, one oven or cooktop, or a cooktop with one or two ovens on one circuit in one room; kW at
 * 240 V. `marked`: the device the nameplate or instructions name. Null for any other set: each then has its own circuit.
 */
export function rangeCircuit(given: {
  readonly id: string;
  readonly appliances: readonly CookingAppliance[];
  readonly receptacle?: number;
  readonly marked?: number;
  readonly place?: OutletPlace;
  readonly edition: Edition;
}): EquipmentCircuit | null {
  const { id, appliances, edition, receptacle } = given;
  const found = cookingDemand(`${id}.demand`, appliances, edition);
  if (found === null) return null;
  const demand = found.total;
  const amperes = decimal(demand.value).div(240);
  const expression = `${print(demand.value)} VA / 240 V`;
  const table = citeKnown(COOKING_DEMAND, edition);
  const ampacity = worked({
    id: `${id}.ampacity`,
    label: "Minimum circuit ampacity",
    value: amperes.toFixed(),
    unit: "A",
    expression,
    inputs: [demand.id],
    citations: [table],
    edition,
  });
  const large = appliances.length === 1 && appliances[0]!.is === "range" && decimal(appliances[0]!.kW).gte("8.75");
  const floor = Math.max(large ? 40 : 0, given.marked ?? 0);
  const least = boundUp({
    id: `${id}.overcurrent.least`,
    label: large ? "Overcurrent device, least; 40 A for a range of 8.75 kW or more" : "Overcurrent device, least",
    amperes: Decimal.max(amperes, floor),
    expression: floor > 0 ? `max(${floor} A; ${expression})` : expression,
    inputs: [ampacity.id],
    citations: large ? [table, citeKnown(FORTY, edition)] : [table],
    edition,
  });
  const limit = Math.min(given.marked ?? 50, receptacle ?? Number.POSITIVE_INFINITY);
  const place = given.place ?? "kitchen";
  return equipmentCircuit({
    id,
    edition,
    says: "Range or cooking equipment",
    volts: 240,
    poles: 2,
    neutral: true,
    before: found.steps,
    ampacity,
    overcurrent: {
      least,
      most: boundAsGiven({
        id: `${id}.overcurrent.most`,
        label: "Overcurrent device, most",
        amperes: limit,
        expression: `${limit} A`,
        citations: [citeKnown(FIFTY, edition)],
        edition,
      }),
    },
    ...ordinaryProtection(edition),
    disconnect: {
      required: "yes",
      says: "the cord and plug, reached by taking out the drawer, serve; hard-wired: the breaker in sight or lockable",
      citation: citeKnown(DISCONNECT, edition),
    },
    gfci: gfciNeed({ place, receptacle: receptacle !== undefined, rating: least?.rating ?? 50, volts: 240, listedAppliance: true, edition }),
    notes: [
      {
        says: "a new circuit has four wires: the frame is grounded by the equipment grounding conductor, never by the neutral",
        citation: citeKnown(FOUR_WIRE, edition),
      },
      ...(large ? [{ says: "the neutral may be 70 % of the branch-circuit rating, not under 10 AWG", citation: citeKnown(FORTY, edition) }] : []),
    ],
  });
}
