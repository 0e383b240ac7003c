import { everyEdition } from "../basis/edition.js";
import { OUTLETS } from "../outlet.js";
import type { Check } from "./finding.js";
import { eachCircuit, fail, pass } from "./outcome.js";

export const breakerPoles: Check = {
  id: "breaker-poles",
  title: "The breaker has the poles the outlet needs",
  rule: { sections: everyEdition("240.15(B)"), standing: "published" },
  run: eachCircuit(({ circuit }) => {
    const needs = OUTLETS[circuit.serves];
    if (circuit.breaker.poles === needs.poles) return pass(circuit.name, `${needs.poles} pole, ${needs.volts} V`);
    return circuit.serves === "rv-30"
      ? fail(
          circuit.name,
          "a two-pole breaker on a TT-30R puts 240 V on a 120 V outlet and destroys what is plugged in",
          "use a one-pole 30 A breaker: one hot, one neutral, one equipment ground",
        )
      : fail(circuit.name, `a ${circuit.breaker.poles}-pole breaker does not open both hots of a ${needs.volts} V outlet`, `use a ${needs.poles}-pole breaker`);
  }),
};
