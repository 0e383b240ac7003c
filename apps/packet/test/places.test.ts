import { readdirSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { composePacket, PACKET_SETS, PAPERS, type PacketSet, type Paper, renderHtml } from "@branchwork/sheets";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { packetFonts } from "../src/fonts.js";
import { loadDesign } from "../src/load-design.js";
import { openPdf } from "../src/print/pdf-file.js";
import { openPrinter, type Printer } from "../src/print/printer.js";
import { overlaps, type Printed, printedPlaces } from "./printed-places.js";

const jobs = fileURLToPath(new URL("../../../fixtures/jobs/", import.meta.url));
const names = readdirSync(jobs).filter((name) => name.endsWith(".yaml"));

/** The style sets nothing under 8 pt; the browser shrinks a whole page to hold what is too wide. */
const LEAST_SIZE = 7.9;

let printer: Printer;
beforeAll(async () => {
  printer = await openPrinter({ warn: () => undefined });
}, 60_000);
afterAll(() => printer?.close());

async function pagesOf(name: string, set: PacketSet, paper: Paper) {
  const { design, overlay, targets } = await loadDesign(`${jobs}${name}`, {});
  const packet = composePacket({ design, overlay, targets, date: "2026-11-25", set, paper });
  const pdf = await printer.print(renderHtml({ packet, fonts: await packetFonts() }), { date: new Date("2026-11-25T00:00:00Z"), expectText: packet.title });
  return printedPlaces(openPdf(pdf));
}

describe.each(names)("%s", (name) => {
  it.each(PACKET_SETS)("%s set: no words lie on one another, and none is smaller than set", async (set) => {
    for (const [i, { lines }] of (await pagesOf(name, set, "letter")).entries()) {
      expect(lines.length).toBeGreaterThan(10);
      expect({ page: i + 1, overlaps: overlaps(lines) }).toEqual({ page: i + 1, overlaps: [] });
      expect(Math.min(...lines.map(({ size }) => size))).toBeGreaterThan(LEAST_SIZE);
    }
  });
});

describe.each(PAPERS)("on %s", (paper) => {
  it.each(["garage-subpanel.yaml", "rv-50-carport.yaml"])("%s has its title block and page number in one place on every page", async (name) => {
    const pages = await pagesOf(name, "submittal", paper);
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
  });
});

it("a caption drawn over the line before it, and a page shrunk to hold a wide table, would be found", async () => {
  const { design, overlay, targets } = await loadDesign(`${jobs}hot-tub.yaml`, {});
  const packet = composePacket({ design, overlay, targets, date: "2026-11-25" });
  const html = renderHtml({ packet, fonts: await packetFonts() });
  const pagesWith = async (css: string) =>
    printedPlaces(
      openPdf(await printer.print(html.replace("</style>", `${css}</style>`), { date: new Date("2026-11-25T00:00:00Z"), expectText: packet.title })),
    );
  expect((await pagesWith(".caption { margin-top: -16pt; }")).flatMap(({ lines }) => overlaps(lines)).length).toBeGreaterThan(5);
  const shrunk = await pagesWith("table.grid { width: 800pt !important; }");
  expect(Math.min(...shrunk.flatMap(({ lines }) => lines.map(({ size }) => size)))).toBeLessThan(LEAST_SIZE);
});

it("words laid on one another would be found", () => {
  const line = (left: number, bottom: number): Printed => ({ left, right: left + 50, bottom, top: bottom + 6, size: 10, turn: 0, codes: "1" });
  expect(overlaps([line(10, 10), line(70, 10), line(10, 18)])).toEqual([]);
  expect(overlaps([line(10, 10), line(40, 12)])).toHaveLength(1);
});
