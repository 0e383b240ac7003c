import { everyEdition } from "../basis/edition.js";
import type { Check, Outcome } from "./finding.js";
import { eachPull, fail, pass } from "./outcome.js";

export const racewayBends: Check = {
  id: "raceway-bends",
  title: "Bends between pull points stay within 360°",
  rule: { sections: everyEdition("342.26, 344.26, 348.26, 350.26, 352.26, 356.26, 358.26, 362.26"), standing: "published" },
  run: eachPull(
    ({ degrees }, subject): Outcome =>
      degrees > 360
        ? fail(subject, `${degrees}° of bends between pull points`, "add a pull box or conduit body")
        : pass(subject, `${degrees}° of bends between pull points`),
  ),
};
