import { acceptanceTest, type Design, type FaultRow, faultTable } from "@branchwork/engine";
import { type Block, type Draft, paragraph, table, withWidths } from "./packet.js";
import { fedByHouse, SHAPES } from "./readings.js";
import { SHEETS } from "./sheet-titles.js";

const capital = (text: string): string => `${text.charAt(0).toUpperCase()}${text.slice(1)}`;

/** How an owner comes to know of it, without a meter in hand. */
const SHOWS: Readonly<Record<FaultRow["shows"], string>> = {
  idle: "A meter shows it at once, with nothing plugged in.",
  loaded: "It shows only when something draws current.",
  "low-impedance": "An ordinary meter may miss it; a low-impedance meter shows it.",
  nothing: "No reading at the outlet shows it.",
};

/** What may be wrong with an outlet in plain words, for whoever uses it; null where the job has no outlet to read. */
export function troubleSheet(design: Design): Draft | null {
  const tests = design.circuits.filter(fedByHouse).map((c) => ({ c, test: acceptanceTest(design, c) }));
  const shapes = tests.filter(({ test }, i) => tests.findIndex((other) => other.test.shape === test.shape) === i);
  if (shapes.length === 0) return null;
  return {
    title: SHEETS.trouble,
    blocks: [
      paragraph(
        "Unplug what is plugged in and turn its breaker off if any of these shows itself: lights that flicker, glow too bright or go dim; a smell of heat or a warm outlet; a tingle from metal; a breaker or GFCI that trips again. Do not try it once more. The readings sheet of the field set says how a meter tells them apart; what is behind a cover is for a licensed electrician.",
      ),
      ...shapes.map(({ test }): Block => {
        const rows = faultTable(test.circuit, test.loaded[0]!.load);
        return withWidths(
          table(
            `${SHAPES[test.shape]}: ${tests
              .filter((other) => other.test.shape === test.shape)
              .map((other) => other.c.circuit.name)
              .join(", ")}`,
            ["What may be wrong", "How it shows", "What it does, and what to stop"],
            rows.map((row) => [capital(row.likely), SHOWS[row.shows], row.stop]),
          ),
          ...[40, 24, 36],
        );
      }),
    ],
  };
}
