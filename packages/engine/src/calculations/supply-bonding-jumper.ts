import { supplyBonding } from "../sizing/supply-bonding.js";
import { calculation } from "./calculation.js";
import * as field from "./fields.js";

export const supplyBondingJumperCalculation = calculation({
  name: "supply-bonding-jumper",
  title: "Supply-side bonding jumper",
  about: "Least grounded service conductor, main or system bonding jumper, or supply-side bonding jumper. Table 250.102(C)(1).",
  fields: { supply: field.supply, material: field.material, edition: field.edition },
  example: { supply: { size: "4/0", material: "aluminum", sets: 1 }, material: "copper", edition: "2023" },
  none: "Above the table jumper and supply differ in metal, or no size is large enough.",
  run: (given) => supplyBonding({ ...given, label: "Supply-side bonding jumper" }),
});
