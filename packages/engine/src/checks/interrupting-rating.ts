import { everyEdition } from "../basis/edition.js";
import type { Check } from "./finding.js";
import { eachRun, fail, needsPerson, pass } from "./outcome.js";

export const interruptingRating: Check = {
  id: "interrupting-rating",
  title: "The breaker interrupts the fault current available",
  rule: { sections: everyEdition("110.9"), standing: "published" },
  run: eachRun(({ run }, { job }) => {
    const available = job.service.fault_current_kA;
    const rated = run.breaker.interrupting_kA;
    if (available === undefined || rated === undefined)
      return needsPerson(
        run.name,
        "available fault current or interrupting rating not given",
        "ask the utility for the available fault current; read the kA on the breaker",
      );
    return rated < available
      ? fail(run.name, `${rated} kA breaker, ${available} kA available`, `use a breaker rated ${available} kA or more, or a listed series rating`)
      : pass(run.name, `${rated} kA breaker, ${available} kA available`);
  }),
};
