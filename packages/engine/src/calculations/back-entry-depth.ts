import { backEntryDepth } from "../sizing/pull-box.js";
import { calculation } from "./calculation.js";
import * as field from "./fields.js";

export const backEntryDepthCalculation = calculation({
  name: "back-entry-depth",
  title: "Depth behind a removable cover",
  about: "From an entry in the back to the cover: the bending space of one wire a terminal. 314.28(A)(2) exception, Table 312.6(A).",
  fields: { largest: field.size, edition: field.edition },
  example: { largest: "2/0", edition: "2023" },
  none: "Table 312.6(A) names no figure for the size.",
  run: backEntryDepth,
});
