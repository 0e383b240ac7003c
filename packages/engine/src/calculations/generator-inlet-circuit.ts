import * as z from "zod";
import { generatorInletCircuit } from "../equipment/generator-inlet.js";
import { calculation } from "./calculation.js";
import * as field from "./fields.js";

export const generatorInletCircuitCalculation = calculation({
  name: "generator-inlet-circuit",
  title: "Circuit of a generator inlet",
  about: "From a power inlet to its transfer equipment, whether the neutral is switched, and the capacity. 702.4, 702.5, 250.30.",
  fields: {
    inlet: z.literal([20, 30, 50]).describe("inlet, A"),
    generatorWatts: field.watts("generator"),
    loadVa: field.voltAmperes("load it takes"),
    neutralBonded: field.yesNo("whether the neutral of the generator is bonded to its frame"),
    transfer: z.enum(["interlock", "manual-switch", "manual-switch-with-neutral", "automatic", "automatic-with-neutral"]).describe("transfer means"),
    edition: field.edition,
  },
  example: { inlet: 30, generatorWatts: 7500, loadVa: 6000, neutralBonded: false, transfer: "interlock", edition: "2023" },
  run: generatorInletCircuit,
});
