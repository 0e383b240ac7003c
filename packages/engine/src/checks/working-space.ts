import { everyEdition } from "../basis/edition.js";
import { panelsOf } from "../job/tree.js";
import type { Check } from "./finding.js";
import { fail, needsPerson, pass } from "./outcome.js";

export const workingSpace: Check = {
  id: "working-space",
  title: "The panel has its working space",
  rule: { sections: everyEdition("110.26(A)"), standing: "published" },
  run: ({ job }) =>
    panelsOf(job).map(({ panel }) => {
      if (panel.working_space_clear === false)
        return fail(panel.name, "the working space is not clear", "clear 30 in wide, 36 in deep, 6 ft 6 in high in front of the panel");
      return panel.working_space_clear
        ? pass(panel.name, "clear, as entered")
        : needsPerson(panel.name, "not said whether the working space is clear", "30 in wide, 36 in deep, 6 ft 6 in high, nothing stored in it");
    }),
};
