import { everyEdition } from "../basis/edition.js";
import type { DesignedCircuit } from "../designed.js";
import { print } from "../quantity.js";
import { PRACTICE_TRIP_MULTIPLES } from "../service/fault-loop.js";
import type { Check } from "./finding.js";
import { caution, eachRun, needsPerson, notApplicable, pass } from "./outcome.js";

const [LEAST, SURE] = PRACTICE_TRIP_MULTIPLES;

/** Judged by when a molded-case breaker trips at once, which is common practice: the section asks a path of low impedance, no multiple. */
export const faultLoop: Check = {
  id: "fault-loop",
  title: "A ground fault at the end trips the breaker at once",
  rule: { sections: everyEdition("250.4(A)(5)"), standing: "published" },
  run: eachRun((designed, { design }) => {
    const { run, rating, fault } = designed;
    if ("circuit" in designed && (designed as DesignedCircuit).circuit.serves === "generator-inlet")
      return notApplicable(run.name, "fed from its far end by a generator, whose fault current is not worked here");
    const loop = fault?.loop ?? null;
    if (loop === null)
      return needsPerson(
        run.name,
        fault === null
          ? "ground-fault current not worked: the source is not given"
          : "ground-fault current not worked: the tables lack a conductor of the path",
        "ask the utility for the available fault current or the transformer's kVA and impedance; measure the ground-fault loop at the end",
      );
    const says = `${print(loop.amperes.value, 0)} A of ground-fault current at the end, ${print(loop.multiple.value, 1)} times the ${rating} A breaker`;
    if (loop.result === "delayed" && design.serviceFault?.leastBasis === "bound")
      return needsPerson(
        run.name,
        `${says} behind the weakest source this service may have, under ${LEAST} times (common practice): by what the source is, it may open only after seconds`,
        "measure the loop at the service panel (fault.loop_ohms), or ask the utility for the least fault current (fault.least_kA)",
      );
    if (loop.result === "delayed")
      return caution(
        run.name,
        `${says}, under ${LEAST} times (common practice): it may open only after seconds`,
        "a larger equipment grounding conductor and hots, a shorter run, or a breaker whose curve trips at less",
      );
    return loop.result === "at-once"
      ? pass(run.name, says)
      : needsPerson(
          run.name,
          `${says}: between ${LEAST} and ${SURE} times (common practice) it turns on the breaker's own curve`,
          "see the maker's curve for this breaker: where its instantaneous trip begins above this current, it opens only after seconds",
        );
  }),
};
