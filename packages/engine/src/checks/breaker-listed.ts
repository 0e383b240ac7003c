import { everyEdition } from "../basis/edition.js";
import type { Check } from "./finding.js";
import { eachRun, fail, needsPerson, pass } from "./outcome.js";

export const breakerListed: Check = {
  id: "breaker-listed",
  title: "The breaker is listed for the panel",
  rule: { sections: everyEdition("110.3(B)"), standing: "published" },
  run: eachRun(({ run }) => {
    if (run.breaker.listed_for_panel === false)
      return fail(run.name, "the breaker is not of a kind the panel's label lists", "buy a breaker the panel's label names");
    if (run.breaker.listed_for_panel) return pass(run.name, "listed for the panel, as entered");
    return needsPerson(run.name, "not said whether the breaker is listed for this panel", "compare the breaker's type with the list on the panel's label");
  }),
};
