import { decimal, print } from "../quantity.js";
import type { Check, Outcome } from "./finding.js";
import { caution, eachPull, pass } from "./outcome.js";

export const pullTension: Check = {
  id: "pull-tension",
  title: "The pull stays within tension and sidewall pressure",
  rule: null,
  run: eachPull(({ tension }, subject): Outcome | null => {
    if (tension === null) return null;
    const { end, limit, sidewall, sidewallLimit } = tension;
    const side = sidewall === null ? "" : `, ${print(sidewall.value, 0)} of ${print(sidewallLimit.value)} lbf/ft on the wall of a bend`;
    const other = tension.otherWayLbf === null ? "" : ` (the easier way: ${print(tension.otherWayLbf, 0)} lbf the other)`;
    const says = `${print(end.value, 0)} of ${print(limit.value, 0)} lbf${side}, pulled out at the ${tension.pulledFrom}${other}, ${tension.how}`;
    const over = decimal(end.value).gt(limit.value) || (sidewall !== null && decimal(sidewall.value).gt(sidewallLimit.value));
    if (!over) return pass(subject, says);
    return caution(
      subject,
      says,
      "one more pull point, sweeps of larger radius, lubricant, or the sidewall pressure the cable's maker allows where it is more",
    );
  }),
};
