import { everyEdition } from "../basis/edition.js";
import type { Check } from "./finding.js";
import { eachCircuit, fail, pass } from "./outcome.js";

export const breakerPoles: Check = {
  id: "breaker-poles",
  title: "The breaker has the poles the outlet needs",
  rule: { sections: everyEdition("240.15(B)"), standing: "published" },
  run: eachCircuit(({ circuit, equipment: { poles, volts } }) => {
    if (circuit.breaker.poles === poles) return pass(circuit.name, `${poles} pole, ${volts} V`);
    if (circuit.serves === "rv-30")
      return fail(
        circuit.name,
        "a two-pole breaker on a TT-30R puts 240 V on a 120 V outlet and destroys what is plugged in",
        "use a one-pole 30 A breaker: one hot, one neutral, one equipment ground",
      );
    return poles === 1
      ? fail(circuit.name, `a two-pole breaker on a ${volts} V outlet puts 240 V within reach of it`, "use a one-pole breaker: one hot, one neutral")
      : fail(circuit.name, `a ${circuit.breaker.poles}-pole breaker does not open both hots of a ${volts} V outlet`, `use a ${poles}-pole breaker`);
  }),
};
