import * as z from "zod";
import { dropPercent, voltageDrop } from "../sizing/voltage-drop.js";
import { calculation } from "./calculation.js";
import * as field from "./fields.js";

export const voltageDropCalculation = calculation({
  name: "voltage-drop",
  title: "Voltage drop",
  about:
    "Volts lost out and back along a chain of segments, and as a per cent of the volts: Σ 2·I·R·L. Advisory unless the jurisdiction makes it a rule. 210.19(A) note.",
  fields: {
    current: field.amperes("load current"),
    volts: field.volts("circuit, the base of the per cent"),
    segments: field.list(z.strictObject({ size: field.size, material: field.material, feet: field.feet("one way") }), "segments in order from the source"),
    method: z.enum(["K", "dc-resistance"]).describe("K constant, or Table 8 resistance"),
    edition: field.edition,
  },
  example: { current: 40, volts: 240, segments: [{ size: "6", material: "copper", feet: 120 }], method: "dc-resistance", edition: "2023" },
  run: ({ volts, ...given }) => {
    const drop = voltageDrop({ ...given, id: `${given.id}.volts`, label: "Voltage drop" });
    return { drop, percent: dropPercent({ id: given.id, label: "Voltage drop, per cent", drop, volts, edition: given.edition }) };
  },
});
