import { everyEdition } from "../basis/edition.js";
import { isOnePull } from "../sizing/pull-groups.js";
import { isCable } from "../tables/cable.js";
import type { Check, Outcome } from "./finding.js";
import { fail, notApplicable, pass } from "./outcome.js";

export const racewayBends: Check = {
  id: "raceway-bends",
  title: "Bends between pull points stay within 360°",
  rule: { sections: everyEdition("342.26, 344.26, 348.26, 352.26, 356.26, 358.26"), standing: "published" },
  run: ({ design }) =>
    design.circuits.flatMap(({ circuit, segments }) => {
      const pulls: { names: string[]; degrees: number }[] = [];
      for (const [i, { segment, bendTotal }] of segments.entries()) {
        if (isCable(segment.method)) continue;
        const before = segments[i - 1]?.segment;
        const pull = pulls.at(-1);
        if (pull && before && isOnePull(circuit, before, segment)) {
          pull.names.push(segment.name);
          pull.degrees += bendTotal;
        } else pulls.push({ names: [segment.name], degrees: bendTotal });
      }
      if (pulls.length === 0) return [notApplicable(circuit.name, "no raceway")];
      return pulls.map(({ names, degrees }): Outcome => {
        const subject = `${circuit.name}: ${names.join(", ")}`;
        return degrees > 360
          ? fail(subject, `${degrees}° of bends between pull points`, "add a pull box or conduit body")
          : pass(subject, `${degrees}° of bends between pull points`);
      });
    }),
};
