import * as z from "zod";
import { cableBendRadius } from "../sizing/bend-radius.js";
import { calculation } from "./calculation.js";
import * as field from "./fields.js";

export const cableBendRadiusCalculation = calculation({
  name: "cable-bend-radius",
  title: "Least radius of a cable bend",
  about: "Least radius of a cable bend at its inner edge: five times the cable.",
  fields: {
    cable: z.enum(["NM-B", "UF-B", "SE"]).describe("cable"),
    minorIn: field.inches("lesser outside dimension"),
    majorIn: field.inches("greater outside dimension; the same for a round cable"),
    bentOn: z.enum(["flat", "edge"]).describe("which way a flat cable is bent"),
    edition: field.edition,
  },
  example: { cable: "NM-B", minorIn: 0.3, majorIn: 0.9, bentOn: "flat", edition: "2023" },
  run: cableBendRadius,
});
