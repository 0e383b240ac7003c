import { readdirSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { composePacket, PACKET_SETS, renderHtml } from "@branchwork/sheets";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { packetFonts } from "../src/fonts.js";
import { loadDesign } from "../src/load-design.js";
import { openPdf } from "../src/print/pdf-file.js";
import { printedText } from "../src/print/pdf-text.js";
import { openPrinter, type Printer } from "../src/print/printer.js";
import { overlaps, printedPlaces } from "./printed-places.js";
import { bare, endsOn, lastWords } from "./printed-words.js";

const fixtures = fileURLToPath(new URL("../../../fixtures/", import.meta.url));
const yamlIn = (folder: string) => readdirSync(`${fixtures}${folder}`).filter((name) => name.endsWith(".yaml"));
const jobs = yamlIn("jobs");
const overlays = yamlIn("overlays");

/** Every job under every overlay with one of the sets, so that each job and each overlay meets all three; the nightly run prints all. */
const CASES = jobs.flatMap((job, i) =>
  overlays.map((overlay, j) => ({ job, overlay, sets: process.env.BRANCHWORK_EVERY === "1" ? PACKET_SETS : [PACKET_SETS[(i + j) % PACKET_SETS.length]!] })),
);
/** The style sets nothing under 8 pt; the browser shrinks a whole page to hold what is too wide. */
const LEAST_SIZE = 7.9;

let printer: Printer;
beforeAll(async () => {
  printer = await openPrinter({ warn: () => undefined, printsPerPage: 8 });
}, 60_000);
afterAll(() => printer?.close());

describe("each packet prints whole, nothing lost, nothing on anything else", () => {
  it.each(CASES)("$job under $overlay: $sets", async ({ job, overlay: town, sets }) => {
    const loaded = await loadDesign(`${fixtures}jobs/${job}`, { overlay: `${fixtures}overlays/${town}` });
    for (const set of sets) {
      const packet = composePacket({ ...loaded, date: "2026-11-25", set });
      const pdf = openPdf(
        await printer.print(renderHtml({ packet, fonts: await packetFonts() }), { date: new Date("2026-11-25T00:00:00Z"), expectText: packet.title }),
      );
      const printed = printedText(pdf).map(bare);
      const lost = packet.sheets.flatMap(({ id, blocks }) =>
        blocks
          .flatMap(lastWords)
          .filter((text) => !endsOn(printed, text))
          .map((text) => `${id}: ${text}`),
      );
      const faults = printedPlaces(pdf).flatMap(({ lines }, i) => {
        const smallest = Math.min(...lines.map(({ size }) => size));
        return [
          ...overlaps(lines).map(([a]) => `page ${i + 1}: words on one another at ${a.left.toFixed(0)}, ${a.bottom.toFixed(0)}`),
          ...(smallest < LEAST_SIZE ? [`page ${i + 1}: shrunk, its smallest letters are ${smallest.toFixed(1)} pt`] : []),
        ];
      });
      expect({ set, lost, faults }).toEqual({ set, lost: [], faults: [] });
    }
  });
});
