import { everyEdition } from "../basis/edition.js";
import type { Check } from "./finding.js";
import { eachRun, needsPerson } from "./outcome.js";

export const torque: Check = {
  id: "torque",
  title: "Terminals are tightened to their marked torque",
  rule: { sections: everyEdition("110.14(D)"), standing: "published" },
  run: eachRun(({ run }) =>
    needsPerson(run.name, "torque is made on site", "write the torque marked on breaker and outlet in the test record, and the tool used"),
  ),
};
