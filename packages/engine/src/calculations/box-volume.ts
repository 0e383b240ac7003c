import * as z from "zod";
import { boxVolume } from "../sizing/box-fill.js";
import { calculation } from "./calculation.js";
import * as field from "./fields.js";

export const boxVolumeCalculation = calculation({
  name: "box-volume",
  title: "Least volume of a box",
  about: "Box fill: least volume for conductors up to 6 AWG, devices, clamps, fittings and grounds. 314.16(B).",
  fields: {
    contents: z
      .strictObject({
        conductors: field.list(
          z.strictObject({ size: field.size, count: field.count("how many of them", 0) }),
          "conductors that are spliced or end in the box, or pass through",
          0,
        ),
        grounds: z.strictObject({ size: field.size, count: field.count("how many", 0) }).describe("equipment grounding conductors, the largest size of them"),
        devices: field.list(
          z.strictObject({ size: field.size, gangs: field.count("gangs: 1 up to 2 in wide, 2 for a wider device") }),
          "devices, each with its largest conductor",
          0,
        ),
        internalClamps: field.yesNo("whether the box has clamps inside"),
        fittingKinds: field.count("kinds of stud and hickey", 0).optional(),
      })
      .describe("what is in the box"),
    edition: field.edition,
  },
  example: {
    contents: { conductors: [{ size: "12", count: 4 }], grounds: { size: "12", count: 2 }, devices: [{ size: "12", gangs: 1 }], internalClamps: true },
    edition: "2023",
  },
  none: "The box is empty, or holds a conductor larger than 6 AWG or smaller than the table lists: 314.28 sizes such a box.",
  run: boxVolume,
});
