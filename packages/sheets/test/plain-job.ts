import { type Design, design, jobSchema } from "@branchwork/engine";
import { measured, plainJob } from "../../engine/test/plain-job.js";

/** The design of a plain house of 200 A with these circuits on its one panel; `panel` changes what the panel says. */
export const designWith = (circuits: readonly object[], panel: object = {}): Design =>
  design({
    job: jobSchema.parse(
      plainJob({
        code: { confirmed_with_authority: true },
        service: measured("9000 VA"),
        panel: { id: "a", name: "Panel", main: "200 A", spaces: 30, circuits, ...panel },
      }),
    ),
  });
