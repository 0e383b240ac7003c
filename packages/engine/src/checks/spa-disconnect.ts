import { everyEdition } from "../basis/edition.js";
import { print } from "../quantity.js";
import type { Check } from "./finding.js";
import { eachCircuit, fail, needsPerson, notApplicable, pass } from "./outcome.js";

const LEAST_FT = 5;
/** In sight is visible and not over 50 ft away, Article 100. */
const IN_SIGHT_FT = 50;

export const spaDisconnect: Check = {
  id: "spa-disconnect",
  title: "A spa's disconnect is in sight and 5 ft or more from the water",
  rule: { sections: { ...everyEdition("680.13"), "2017": "680.12" }, standing: "memory" },
  run: eachCircuit(({ circuit, equipment: { kind, disconnect } }) => {
    if (kind !== "spa") return notApplicable(circuit.name, "not a spa");
    if (circuit.disconnect === "none") return fail(circuit.name, "no disconnecting means", `add one: ${disconnect.says}`);
    const feet = circuit.nameplate?.disconnect_distance;
    if (feet === undefined) return needsPerson(circuit.name, "the disconnect's distance from the water is not given", disconnect.says);
    if (feet < LEAST_FT)
      return fail(
        circuit.name,
        `${print(feet)} ft from the water's edge`,
        `stand it ${LEAST_FT} ft or more away, or behind a permanent barrier that gives that reach`,
      );
    return feet > IN_SIGHT_FT
      ? fail(
          circuit.name,
          `${print(feet)} ft away is not in sight, which ends at ${IN_SIGHT_FT} ft`,
          `stand it between ${LEAST_FT} ft and ${IN_SIGHT_FT} ft, in view`,
        )
      : pass(circuit.name, `${print(feet)} ft from the water's edge; it must also be seen from the spa`);
  }),
};
