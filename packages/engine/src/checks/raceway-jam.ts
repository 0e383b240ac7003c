import { everyEdition } from "../basis/edition.js";
import { print } from "../quantity.js";
import type { Check, Outcome } from "./finding.js";
import { caution, eachPull, pass } from "./outcome.js";

export const racewayJam: Check = {
  id: "raceway-jam",
  title: "Three like conductors do not wedge in the raceway",
  rule: { sections: everyEdition("Chapter 9 Table 1, informational note on jamming"), standing: "published" },
  run: eachPull(({ jam }, subject): Outcome | null => {
    if (jam === null) return null;
    if (jam.count < 3) return pass(subject, "fewer than three conductors of one size");
    const ratio = `bore is ${print(jam.straight.value)} times the conductor, ${print(jam.bent.value)} in a bend`;
    return jam.jam === "likely"
      ? caution(subject, `${ratio}: three like conductors can wedge from 2.8 to 3.2`, "another trade size, or conductors factory-twisted")
      : pass(subject, jam.jam === "unlikely" ? `${ratio}: in the band, with four or more conductors it is unlikely` : ratio);
  }),
};
