import { everyEdition } from "../basis/edition.js";
import type { DesignedCircuit } from "../designed.js";
import type { EquipmentKind } from "../equipment/equipment.js";
import type { Check } from "./finding.js";
import { eachCircuit, fail, needsPerson, notApplicable, pass } from "./outcome.js";

type Means = NonNullable<DesignedCircuit["circuit"]["disconnect"]>;

/** Means that serve each kind by themselves; another one is for a person to judge, none is a failure. */
const SERVES: Readonly<Partial<Record<EquipmentKind, readonly Means[]>>> = {
  range: ["plug", "in-sight", "lockable-breaker"],
  dryer: ["plug", "in-sight"],
  heat: ["in-sight", "lockable-breaker"],
  welder: ["plug", "in-sight"],
  // In sight, 440.14: a breaker that can be locked does not take its place.
  "air-conditioner": ["in-sight"],
  motor: ["in-sight"],
  "generator-inlet": ["plug", "in-sight"],
};
const ELSEWHERE: readonly EquipmentKind[] = ["spa", "ev-supply", "water-heater"];

export const equipmentDisconnect: Check = {
  id: "equipment-disconnect",
  title: "The equipment can be disconnected where its article asks",
  rule: { sections: everyEdition("422.31, 422.33, 424.19, 430.102, 440.14, 630.13"), standing: "memory" },
  run: eachCircuit(({ circuit, equipment: { kind, disconnect, receptacle } }) => {
    if (ELSEWHERE.includes(kind)) return notApplicable(circuit.name, "judged by the check of its own article");
    if (disconnect.required === "no") return notApplicable(circuit.name, disconnect.says);
    // Cord and plug of what stands on a receptacle are its disconnect, unless the job says otherwise.
    const means = circuit.disconnect ?? (receptacle === null ? undefined : "plug");
    if (means === undefined) return needsPerson(circuit.name, "the disconnecting means is not named", disconnect.says);
    if (SERVES[kind]?.includes(means)) return pass(circuit.name, `${means}: ${disconnect.says}`);
    if (kind === "air-conditioner" || means === "none") return fail(circuit.name, `its disconnecting means: ${means}`, `add one: ${disconnect.says}`);
    return needsPerson(circuit.name, `its disconnecting means: ${means}`, disconnect.says);
  }),
};
