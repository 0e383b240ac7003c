import { type Design, orderOfWork } from "@branchwork/engine";
import { type Draft, paragraph, table, withWidths } from "./packet.js";
import { SHEETS } from "./sheet-titles.js";

/** The steps in order, those heavy at which nothing goes on until somebody has come or answered. */
export function workSheet(design: Design): Draft {
  const steps = orderOfWork(design);
  return {
    title: SHEETS.work,
    blocks: [
      paragraph(
        "At a HOLD nothing goes on until somebody has come or answered. Main off does not make the panel dead: the service conductors and the lugs ahead of the main stay energized. Order: common practice, no source; the authority's own order goes first.",
      ),
      withWidths(
        table(
          "Steps",
          ["No.", "What", "Hold", "Done, date"],
          steps.map(({ says, hold }, i) => [String(i + 1), says, hold ? "HOLD" : "", ""]),
          (i) => steps[i]?.hold ?? false,
        ),
        ...[7, 67, 9, 17],
      ),
    ],
  };
}
