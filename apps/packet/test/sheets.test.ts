import { fileURLToPath } from "node:url";
import { PACKET_SETS, type Packet } from "@branchwork/sheets";
import { beforeAll, describe, expect, it } from "vitest";
import { loadPrices } from "../src/price-book.js";
import { openPdf } from "../src/print/pdf-file.js";
import { printedText } from "../src/print/pdf-text.js";
import { bare, lastWords, tail } from "./printed-words.js";
import { loadFixture, packetOf, printing } from "./printing.js";

const demoPrices = fileURLToPath(new URL("../../../fixtures/prices/demo.yaml", import.meta.url));
const CASES = [
  ["rv-50-carport", "saltmarsh-point"],
  ["rv-50-carport", "quillback-county"],
  ["garage-subpanel", null],
  ["generator-inlet", "tamarack-hollow"],
].flatMap(([job, overlay]) => PACKET_SETS.map((set) => ({ job: job!, overlay: overlay ?? null, set })));
/** Fewer than these and a page is nearly empty; a drawing has few words. */
const FEWEST_WORDS = 90;

const printer = printing();

async function printed({ job, overlay, set }: (typeof CASES)[number]): Promise<{ readonly packet: Packet; readonly pages: readonly string[] }> {
  const { book: prices } = await loadPrices(demoPrices);
  const packet = packetOf(await loadFixture(job, overlay), { set, prices });
  return { packet, pages: printedText(openPdf(await printer.packet(packet))) };
}

describe.each(CASES)("$job, $overlay, $set set in print", (given) => {
  let packet: Packet;
  let pages: readonly string[];
  /** The sheet a page belongs to, by what its head prints. */
  const sheetAt = (page: number) => packet.sheets.findIndex(({ number, of }) => bare(pages[page]!).includes(bare(`${packet.set}, sheet ${number} of ${of}`)));
  beforeAll(async () => {
    ({ packet, pages } = await printed(given));
  }, 30_000);

  it("every page says page n of N", () => {
    for (const [i, page] of pages.entries()) expect(bare(page)).toContain(bare(`page ${i + 1} of ${pages.length}`));
  });

  it("the sheets follow one another as the index lists them, none missing", () => {
    const order = pages.map((_, i) => sheetAt(i));
    expect([...new Set(order)]).toEqual(packet.sheets.map((_, i) => i));
    expect(order).toEqual([...order].sort((a, b) => a - b));
    const index = bare(pages.slice(0, order.lastIndexOf(packet.sheets.findIndex(({ title }) => title === "Cover")) + 1).join(""));
    for (const { id, title } of packet.sheets) expect(index).toContain(bare(`${id} ${title}`));
  });

  it("every page has its head and its title block", () => {
    for (const [i, page] of pages.entries()) {
      const { id, title } = packet.sheets[sheetAt(i)]!;
      for (const words of [`${id} ${title}`, "Project", "Permit number", "Prepared by", "Signature", "Code edition", packet.foot.edition])
        expect(bare(page)).toContain(bare(words));
    }
  });

  it("nothing is cut: the last words of every block are on the pages of its sheet", () => {
    for (const [n, { id, blocks }] of packet.sheets.entries()) {
      const own = bare(pages.filter((_, i) => sheetAt(i) === n).join(""));
      const missing = blocks.flatMap(lastWords).filter((text) => !own.includes(tail(text)));
      expect({ id, missing }).toEqual({ id, missing: [] });
    }
  });

  it("no page is nearly empty, but those of drawings and the last of a set", () => {
    const sparse = pages.slice(0, -1).flatMap((page, i) => {
      const draws = packet.sheets[sheetAt(i)]!.blocks.flatMap((b) => (b.kind === "together" ? b.blocks : [b])).some((b) => b.kind === "drawing");
      const words = page.split(/\s+/).filter(Boolean).length;
      return draws || words >= FEWEST_WORDS ? [] : [{ page: i + 1, words }];
    });
    expect(sparse).toEqual([]);
  });
});

describe("the checklist of one RV outlet", () => {
  it("takes three pages at most", async () => {
    for (const overlay of ["saltmarsh-point", null]) {
      const { packet, pages } = await printed({ job: "rv-50-carport", overlay, set: "field" });
      const { number, of } = packet.sheets.find(({ title }) => title === "Inspection checklist")!;
      expect(pages.filter((page) => bare(page).includes(bare(`${packet.set}, sheet ${number} of ${of}`))).length).toBeLessThanOrEqual(3);
    }
  }, 30_000);
});
