import type { DesignedCircuit } from "../designed.js";
import { ownStructure, STRUCTURE_DISCONNECT } from "../equipment/own-structure.js";
import type { Check, Outcome } from "./finding.js";
import { eachCircuit, fail, needsPerson, notApplicable, pass } from "./outcome.js";

/** What of its own is disconnected in sight by its article, or is a source. */
const JUDGED_ELSEWHERE: readonly DesignedCircuit["equipment"]["kind"][] = ["spa", "air-conditioner", "motor", "heat", "water-heater", "generator-inlet"];

const MEND = "set a breaker or switch there, readily reached where the circuit comes in; a listed power outlet with a breaker of its own has one";
const ELECTRODE = "no electrode is asked where this one circuit, with its grounding conductor, is all that goes there (250.32(A) exception)";

export const outletStructure: Check = {
  id: "outlet-structure",
  title: "A circuit to a post or another building can be opened there",
  rule: STRUCTURE_DISCONNECT,
  run: eachCircuit(judge),
};

function judge({ circuit, equipment, segments }: DesignedCircuit): Outcome {
  const { name, stands_on: on, disconnect_there: opened } = circuit;
  if (JUDGED_ELSEWHERE.includes(equipment.kind)) return notApplicable(name, "its disconnect is judged by its own article");
  if (on === "same-building") return notApplicable(name, "on the building of its panel");
  if (on === undefined && !segments.some(({ segment }) => segment.place === "buried")) return notApplicable(name, "does not go through the ground");
  const where = ownStructure(circuit)?.says ?? "what it stands on is not told";
  if (opened === true) return pass(name, `${where}: opened there, as entered; ${ELECTRODE}`);
  if (on === undefined) return needsPerson(name, where, `if on a post or another building: ${MEND}; ${ELECTRODE}`);
  if (on === "post") return needsPerson(name, `${where}, which may count as a structure; nothing named that opens it there`, `${MEND}; ${ELECTRODE}`);
  return opened === undefined
    ? needsPerson(name, `${where}: nothing named that opens it there`, `${MEND}; ${ELECTRODE}`)
    : fail(name, `${where}: nothing opens it there`, MEND);
}
