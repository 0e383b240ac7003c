import { cookingBranchLoad } from "../service/cooking-branch.js";
import { calculation } from "./calculation.js";
import * as field from "./fields.js";

export const cookingBranchLoadCalculation = calculation({
  name: "cooking-branch-load",
  title: "Branch-circuit load of cooking appliances",
  about: "One range by the table; one oven or cooktop at nameplate; a cooktop with one or two ovens taken as one range. Table 220.55 Note 4.",
  fields: {
    range: field.voltAmperes("one range, nameplate").optional(),
    cooktop: field.voltAmperes("one cooktop, nameplate").optional(),
    ovens: field.list(field.voltAmperes("one oven, nameplate"), "wall ovens", 0).optional(),
    edition: field.edition,
  },
  example: { cooktop: 6000, ovens: [4500], edition: "2023" },
  none: "The set is not one that Note 4 counts on one circuit.",
  run: cookingBranchLoad,
});
