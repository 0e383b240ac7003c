import { everyEdition } from "../basis/edition.js";
import { gfciProtection } from "../equipment/gfci-device.js";
import type { Check } from "./finding.js";
import { eachCircuit, fail, needsPerson, notApplicable, protectedBy } from "./outcome.js";

export const spaGfci: Check = {
  id: "spa-gfci",
  title: "The outlet of a spa has ground-fault protection",
  rule: { sections: everyEdition("680.44"), standing: "one-source" },
  run: eachCircuit((designed, { design, basis }) => {
    const { circuit } = designed;
    const { kind, gfci } = designed.equipment;
    if (kind !== "spa") return notApplicable(circuit.name, "not a spa");
    const protection = gfciProtection(designed, design.feeders, basis.edition);
    if (protection !== null) return protectedBy(circuit.name, protection);
    if (gfci.required === "yes") return fail(circuit.name, `no GFCI: ${gfci.says}`, "use a GFCI breaker here or in the disconnect near the spa");
    return gfci.required === "ask"
      ? needsPerson(circuit.name, gfci.says, "ask the authority, or use a GFCI breaker, which settles it")
      : notApplicable(circuit.name, gfci.says);
  }),
};
