import { everyEdition } from "../basis/edition.js";
import { decimal, print } from "../quantity.js";
import type { Check } from "./finding.js";
import { eachSegment, fail, needsPerson, pass } from "./outcome.js";

export const burialCover: Check = {
  id: "burial-cover",
  title: "Buried wiring has its cover",
  rule: { sections: everyEdition("300.5(A)"), standing: "published" },
  run: eachSegment(({ segment, leastCover: least }, _run, subject) => {
    if (segment.place !== "buried" || least === null || ["EMT", "ENT", "FMC", "NM-B"].includes(segment.method)) return null;
    if (segment.method === "UF-B" && segment.over === "under-building")
      return fail(subject, "cable under a building without a raceway, 300.5(C)", "run it in a raceway that goes past the outside walls");
    if (segment.cover === undefined)
      return needsPerson(subject, `cover not given; ${least.value} in is the least`, `measure ${least.value} in from the top of the raceway to finished grade`);
    return decimal(segment.cover).lt(least.value)
      ? fail(subject, `${print(segment.cover)} in of cover, ${least.value} in needed`, `dig to ${least.value} in of cover`)
      : pass(subject, `${print(segment.cover)} in of cover, least ${least.value} in`);
  }),
};
