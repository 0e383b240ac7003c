import { print } from "../quantity.js";
import type { Check } from "./finding.js";
import { eachSegment, needsPerson } from "./outcome.js";

/** The section is that of each method's article, in the worked lines. */
export const racewaySupports: Check = {
  id: "raceway-supports",
  title: "Raceways and cables are fastened",
  rule: null,
  run: eachSegment(({ segment, supports }, _run, subject) => {
    if (supports === null) return null;
    const { within, apart, count } = supports;
    const section = within.citations[0]?.section ?? "";
    return needsPerson(
      subject,
      `${segment.method} of ${print(segment.length)} ft: at least ${count.value} ${count.value === "1" ? "support" : "supports"} (${section})`,
      `count ${count.value} or more: within ${print(within.value)} ft of each end, at most ${print(apart.value)} ft apart`,
    );
  }),
};
