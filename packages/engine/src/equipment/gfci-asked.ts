import type { Circuit } from "../job/schema.js";
import type { EquipmentNeeds } from "./equipment.js";
import type { EquipmentCircuit } from "./equipment-circuit.js";
import { gfciNeed, type OutletPlace } from "./gfci-need.js";
import type { Required } from "./statement.js";

/** Kinds that 210.8(F) alone bears on where they are hard-wired. */
const GENERAL_RULE: readonly Circuit["serves"][] = ["ev-supply", "welder", "water-heater", "heat", "motor"];

/** Whether ground-fault protection is asked, by the breaker in use and not by the least one; the equipment's own article where it has a say. */
export function gfciAsked(given: {
  readonly circuit: Circuit;
  readonly equipment: EquipmentCircuit;
  readonly needs: EquipmentNeeds;
  readonly place: OutletPlace;
  readonly rating: number;
}): Required {
  const { circuit, equipment, needs, place, rating } = given;
  const of = (receptacle: boolean) => gfciNeed({ place, receptacle, rating, volts: needs.volts, edition: equipment.edition });
  if (GENERAL_RULE.includes(circuit.serves) && needs.receptacle === null) return of(false);
  if (circuit.serves === "spa" && equipment.gfci.required === "no") {
    const outlet = of(false);
    return outlet.required === "yes" ? { ...outlet, required: "ask", says: `${equipment.gfci.says}; ${outlet.says}` } : equipment.gfci;
  }
  if (circuit.serves === "general") {
    const receptacles = of(true);
    return receptacles.required === "no" ? of(false) : { ...receptacles, required: "ask", says: `where it has receptacles: ${receptacles.says}` };
  }
  return equipment.gfci;
}
