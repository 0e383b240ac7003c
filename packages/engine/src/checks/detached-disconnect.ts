import { STRUCTURE_DISCONNECT } from "../equipment/own-structure.js";
import type { Check } from "./finding.js";
import { fail, needsPerson, notApplicable, pass } from "./outcome.js";

const MEND = "set a main breaker in the panel, or a switch where the feeder comes in, marked as the disconnect";

export const detachedDisconnect: Check = {
  id: "detached-disconnect",
  title: "A feeder to another building or a pedestal has its disconnect there",
  rule: STRUCTURE_DISCONNECT,
  run: ({ design }) =>
    design.feeders.map(({ feeder }) => {
      if (feeder.building === "same") return notApplicable(feeder.panel.name, "in the same building as its supply");
      if (feeder.panel.main !== undefined) return pass(feeder.panel.name, `main breaker ${feeder.panel.main} A in the panel`);
      if (feeder.disconnect === undefined) return needsPerson(feeder.panel.name, "no main breaker and no disconnect named", MEND);
      return feeder.disconnect
        ? pass(feeder.panel.name, "disconnect at the supply, as entered")
        : fail(feeder.panel.name, "no means to disconnect it there", MEND);
    }),
};
