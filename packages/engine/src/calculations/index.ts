export { type Calculated, calculate } from "./calculate.js";
export { type Calculation, calculation } from "./calculation.js";
export type { GivenProblem } from "./given-problem.js";
export { CALCULATIONS, calculationOf } from "./registry.js";
