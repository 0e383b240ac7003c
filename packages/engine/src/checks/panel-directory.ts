import { everyEdition } from "../basis/edition.js";
import type { Check } from "./finding.js";
import { eachRun, needsPerson } from "./outcome.js";

export const panelDirectory: Check = {
  id: "panel-directory",
  title: "The directory names the new circuit",
  rule: { sections: everyEdition("408.4(A)"), standing: "published" },
  run: eachRun(({ run }) =>
    needsPerson(run.name, "the directory is written on site", `write "${run.name}" at space ${run.breaker.spaces.join(" and ")}, and where it is`),
  ),
};
