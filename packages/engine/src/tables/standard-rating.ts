import { everyEdition, type PerEdition } from "../basis/edition.js";

/** Standard ampere ratings of fuses and inverse-time breakers, 240.6(A), to 600 A. The 10 A rating came in 2023. */
const TO_2020 = [15, 20, 25, 30, 35, 40, 45, 50, 60, 70, 80, 90, 100, 110, 125, 150, 175, 200, 225, 250, 300, 350, 400, 450, 500, 600] as const;

export const STANDARD_RATINGS: PerEdition<readonly number[]> = {
  ...everyEdition<readonly number[]>(TO_2020),
  "2023": [10, ...TO_2020],
  "2026": [10, ...TO_2020],
};
