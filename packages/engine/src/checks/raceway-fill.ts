import { everyEdition } from "../basis/edition.js";
import { decimal, print } from "../quantity.js";
import { isCable } from "../tables/cable.js";
import type { Check } from "./finding.js";
import { eachSegment, fail, needsPerson, pass } from "./outcome.js";
import { notRead, standsAlready } from "./standing.js";

export const racewayFill: Check = {
  id: "raceway-fill",
  title: "The raceway holds its conductors",
  rule: { sections: everyEdition("Chapter 9 Table 1"), standing: "published" },
  run: eachSegment((s, run, subject) => {
    if (isCable(s.segment.method)) return null;
    const { others } = s.segment;
    if (others && others.current_carrying > 0 && others.area_in2 === 0)
      return needsPerson(
        subject,
        "the area of the other circuits' conductors is not given, so fill is not known",
        "add others.area_in2 from Chapter 9 Table 5, or count and size them on site",
      );
    if (s.fill === null) return fail(subject, "no trade size in the table holds these conductors", "divide the conductors over two raceways");
    if (s.segment.trade_size === undefined && standsAlready(run)) return notRead(subject, `${s.tradeSize} in`, "trade_size");
    return decimal(s.fill.area.value).gt(s.fill.limit.value)
      ? fail(
          subject,
          `${print(s.fill.area.value, 4)} in² in ${s.tradeSize} in, limit ${print(s.fill.limit.value, 4)} in²`,
          s.fill.smallest ? `use ${s.fill.smallest} in or larger` : "divide the conductors",
        )
      : pass(subject, `${print(s.fill.percent.value, 1)} % of ${s.tradeSize} in ${s.segment.method}`);
  }),
};
