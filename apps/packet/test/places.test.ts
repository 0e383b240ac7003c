import { PAPERS } from "@branchwork/sheets";
import { describe, expect, it } from "vitest";
import { openPdf } from "../src/print/pdf-file.js";
import { LEAST_SIZE, overlaps, type Printed, placeFaults, printedPlaces } from "./printed-places.js";
import { htmlOf, loadFixture, packetOf, printing } from "./printing.js";

const printer = printing();

describe.each(PAPERS)("on %s", (paper) => {
  it.each(["garage-subpanel", "rv-50-carport"])(
    "%s has no words on one another, and its title block and page number in one place on every page",
    async (name) => {
      const pdf = openPdf(await printer.packet(packetOf(await loadFixture(name), { paper })));
      expect(placeFaults(pdf)).toEqual([]);
      const pages = printedPlaces(pdf);
      // The lowest line is the foot; the title block's labels stand at the same places on every page, whatever its size.
      const lowest = (lines: readonly Printed[]) => [...lines].sort((a, b) => a.bottom - b.bottom || a.left - b.left);
      const block = (lines: readonly Printed[]) =>
        lowest(lines)
          .slice(0, 14)
          .map(({ left, bottom, codes }) => `${left.toFixed(0)} ${bottom.toFixed(0)} ${codes.slice(0, 11)}`)
          .filter((line) => !/ 2\d /.test(line));
      const common = block(pages[0]!.lines);
      for (const [i, { lines }] of pages.entries()) {
        const here = new Set(block(lines));
        expect({ page: i + 1, shared: common.filter((line) => here.has(line)).length }).toEqual({ page: i + 1, shared: common.length });
      }
    },
  );
});

it("a caption drawn over the line before it, and a page shrunk to hold a wide table, would be found", async () => {
  const packet = packetOf(await loadFixture("hot-tub"));
  const html = await htmlOf(packet);
  const pagesWith = async (css: string) => printedPlaces(openPdf(await printer.html(html.replace("</style>", `${css}</style>`), packet.title)));
  expect((await pagesWith(".caption { margin-top: -16pt; }")).flatMap(({ lines }) => overlaps(lines)).length).toBeGreaterThan(5);
  const shrunk = await pagesWith("table.grid { width: 800pt !important; }");
  expect(Math.min(...shrunk.flatMap(({ lines }) => lines.map(({ size }) => size)))).toBeLessThan(LEAST_SIZE);
});

it("words laid on one another would be found", () => {
  const line = (left: number, bottom: number): Printed => ({ left, right: left + 50, bottom, top: bottom + 6, size: 10, turn: 0, codes: "1" });
  expect(overlaps([line(10, 10), line(70, 10), line(10, 18)])).toEqual([]);
  expect(overlaps([line(10, 10), line(40, 12)])).toHaveLength(1);
});
