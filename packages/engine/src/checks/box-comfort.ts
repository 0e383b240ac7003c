import { decimal, print } from "../quantity.js";
import type { Check } from "./finding.js";
import { caution, pass } from "./outcome.js";

export const boxComfort: Check = {
  id: "box-comfort",
  title: "Each box leaves room to work",
  rule: null,
  run: ({ design }) =>
    [...design.feeders, ...design.circuits].flatMap(({ run, boxes }) =>
      boxes
        .filter((b) => b.room !== null && !decimal(b.room.value).isNegative())
        .map((b) => {
          const subject = `${run.name}: ${b.box.name}`;
          return decimal(b.box.volume).lt(decimal(b.required.value).times("1.25"))
            ? caution(
                subject,
                `lawful, yet only ${print(b.room!.value)} in³ are left over`,
                `a box of ${b.nextBetter} gives a quarter more room (common practice, no source)`,
              )
            : pass(subject, `${print(b.room!.value)} in³ left over`);
        }),
    ),
};
