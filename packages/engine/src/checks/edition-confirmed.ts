import type { Check } from "./finding.js";
import { caution, pass } from "./outcome.js";

export const editionConfirmed: Check = {
  id: "edition-confirmed",
  title: "The adopted edition is confirmed",
  rule: null,
  run: ({ job, basis }) =>
    job.code.confirmed_with_authority
      ? [pass("Code", `${basis.edition} edition, confirmed`)]
      : [
          caution(
            "Code",
            `the ${basis.edition} edition is not confirmed with the authority`,
            "ask the building department which edition and amendments are in force on the permit date",
          ),
        ],
};
