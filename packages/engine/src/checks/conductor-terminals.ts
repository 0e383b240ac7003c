import { everyEdition } from "../basis/edition.js";
import { decimal, print } from "../quantity.js";
import { isCable } from "../tables/cable.js";
import { printSize } from "../tables/size.js";
import type { Check } from "./finding.js";
import { eachSegment, fail, pass } from "./outcome.js";

export const conductorTerminals: Check = {
  id: "conductor-terminals",
  title: "The conductor suits the terminals it ends on",
  rule: { sections: everyEdition("110.14(C)(1)"), standing: "published" },
  run: eachSegment((s, { terminalC: ofRun, terminalLoad }, subject) => {
    const terminalC = isCable(s.segment.method) ? 60 : ofRun;
    if (s.requiredSize === null) return fail(subject, "no size in the tables serves here", "choose another wiring method or a cooler way");
    if (s.terminal === null || decimal(s.terminal.value).lt(terminalLoad))
      return fail(
        subject,
        `${printSize(s.conductor.size)} at ${terminalC} °C terminals is good for ${s.terminal?.value ?? "no"} A of ${print(terminalLoad)} A`,
        `use ${printSize(s.requiredSize)}, or show that breaker and outlet are both marked for 75 °C where the cable allows it`,
      );
    return pass(subject, `${s.terminal.value} A at ${terminalC} °C terminals, ${print(terminalLoad)} A needed`);
  }),
};
