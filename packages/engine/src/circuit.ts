import type { Assumption, DesignedCircuit } from "./designed.js";
import { chosenBreaker } from "./equipment/chosen-breaker.js";
import { circuitAssumptions } from "./equipment/circuit-assumptions.js";
import { needsOf, usualPlace } from "./equipment/circuit-needs.js";
import { EQUIPMENT, type EquipmentKind, type EquipmentNeeds, RECEPTACLES } from "./equipment/equipment.js";
import { type AskedCircuit, equipmentOf } from "./equipment/equipment-of.js";
import { gfciAsked } from "./equipment/gfci-asked.js";
import { workingCurrent } from "./equipment/working-current.js";
import type { Circuit } from "./job/schema.js";
import { buildingOf } from "./job/tree.js";
import { designRun, type RunGiven } from "./run.js";
import { outletLoad } from "./service/outlet-load.js";
import type { ConductorProtection } from "./sizing/conductor.js";

/** Settles one branch circuit: what its outlet or equipment asks, then the run that supplies it. */
export function designCircuit(
  asked: Circuit,
  given: Omit<RunGiven, "run" | "needs" | "load">,
): { readonly designed: DesignedCircuit; readonly assumptions: readonly Assumption[] } {
  const { edition } = given.basis;
  const needs = needsOf(asked);
  const place = asked.place ?? usualPlace(asked, buildingOf(given.job, given.panel.id));
  const equipment = equipmentOf({ ...asked, place }, edition);
  const circuit = { ...asked, current: workingCurrent(asked, equipment) };
  const says = saysOf(asked.serves, equipment, needs);
  const { breaker, byLoad } = chosenBreaker({ kind: asked.serves, equipment, needs, amperes: circuit.current });
  const { load, before } = outletLoad({ circuit: asked, amperes: circuit.current, edition });
  const { designed, assumptions } = designRun({
    ...given,
    run: circuit,
    needs: {
      ...needs,
      says,
      continuous: needs.continuous ? circuit.current : 0,
      noncontinuous: needs.continuous ? 0 : circuit.current,
      equipment: {
        load: LOAD_WITHOUT_QUARTER.includes(asked.serves) ? circuit.current : equipment.ampacity.value,
        terminalLoad: equipment.ampacity.value,
        breaker,
        protection: protectionOf(asked.serves, equipment),
        steps: byLoad ? [] : equipment.steps,
        loadSteps: before,
      },
    },
    load,
  });
  return {
    designed: {
      ...designed,
      kind: "circuit",
      circuit,
      equipment: {
        kind: asked.serves,
        says,
        volts: needs.volts,
        poles: needs.poles,
        neutral: needs.neutral,
        receptacle: needs.receptacle === null ? null : RECEPTACLES[needs.receptacle],
        place,
        placeAssumed: asked.place === undefined,
        source: asked.serves === "generator-inlet",
        ampacity: equipment.ampacity,
        overcurrent: equipment.overcurrent,
        smallConductorCap: equipment.smallConductorCap,
        nextSizeUp: equipment.nextSizeUp,
        disconnect: equipment.disconnect,
        gfci: gfciAsked({ circuit: asked, equipment, needs, place, rating: Number(designed.rating) }),
        generator: equipment.generator,
        notes: equipment.notes,
      },
    },
    assumptions: [...assumptions, ...circuitAssumptions({ asked, amperes: circuit.current, loadVA: load.value, place })],
  };
}

/** Continuous loads whose corrected ampacity carries the load itself, 210.19(A); in other articles, as 424.4(B) for heat, the 125 % is asked of it too. */
const LOAD_WITHOUT_QUARTER: readonly EquipmentKind[] = ["ev-supply", "water-heater"];

function protectionOf(kind: EquipmentKind, { smallConductorCap, nextSizeUp }: AskedCircuit): ConductorProtection {
  const own = kind === "welder" ? "twice" : "own-article";
  return {
    smallConductorCap: smallConductorCap.applies,
    limit: nextSizeUp.applies ? "next-size-up" : smallConductorCap.applies ? "ampacity" : own,
  };
}

/** The outlet as the record names it; equipment by its calculation, with the outlet it plugs into. */
function saysOf(kind: EquipmentKind, equipment: AskedCircuit, needs: EquipmentNeeds): string {
  if (needs.receptacle !== null && needs.receptacle === EQUIPMENT[kind].receptacle) return EQUIPMENT[kind].says;
  if (kind === "ev-supply" || needs.receptacle === null) return equipment.says;
  return `${equipment.says}, ${RECEPTACLES[needs.receptacle].says}`;
}
