import type * as z from "zod";
import type { Calculation } from "./calculation.js";
import { type GivenProblem, givenProblems } from "./given-problem.js";

export type Calculated<Result> =
  | { readonly ok: true; readonly result: Result /** Why the result is null; null when there is one. */; readonly none: string | null }
  | { readonly ok: false; readonly problems: readonly GivenProblem[] };

/**
 * Reads raw input by a calculation's schema and runs it: the result, or one problem a field. Never throws for bad input; input that the
 * schema lets through and the rule's tables do not reach comes back as a problem of the whole.
 */
export function calculate<Given extends z.ZodObject, Result>(calculation: Calculation<Given, Result>, plain: unknown): Calculated<Result> {
  const read = calculation.given.safeParse(plain);
  if (!read.success) return { ok: false, problems: givenProblems(calculation, read.error.issues, plain) };
  if (typeof read.data.edition === "string" && !calculation.editions.some((edition) => edition === read.data.edition))
    return {
      ok: false,
      problems: [{ field: "edition", what: `${read.data.edition} has no such rule`, mend: `give one of ${calculation.editions.join(", ")}` }],
    };
  try {
    const result = calculation.run(read.data);
    return { ok: true, result, none: result === null ? calculation.none : null };
  } catch (error) {
    if (error instanceof RangeError) return { ok: false, problems: [{ field: "", what: error.message, mend: "give figures within the reach of the rule" }] };
    throw error;
  }
}
