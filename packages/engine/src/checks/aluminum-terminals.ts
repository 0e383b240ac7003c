import { everyEdition } from "../basis/edition.js";
import { isCable } from "../tables/cable.js";
import { printSize } from "../tables/size.js";
import type { Check } from "./finding.js";
import { eachSegment, needsPerson } from "./outcome.js";

export const aluminumTerminals: Check = {
  id: "aluminum-terminals",
  title: "Aluminum ends on terminals made for it",
  rule: { sections: everyEdition("110.14"), standing: "published" },
  run: eachSegment((s, _run, subject) =>
    s.segment.conductors.material === "aluminum" && !isCable(s.segment.method)
      ? needsPerson(
          subject,
          `aluminum ${printSize(s.conductor.size)}`,
          "read AL on every terminal and splice it meets (AL9CU for 90 °C; on breakers and lugs CU-AL); strands brushed, antioxidant where the maker asks for it, torqued to the marked figure; never joined to copper but in a connector listed for both",
        )
      : null,
  ),
};
