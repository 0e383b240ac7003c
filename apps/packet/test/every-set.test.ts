import { readdirSync } from "node:fs";
import { basename } from "node:path";
import { PACKET_SETS, type PacketSet } from "@branchwork/sheets";
import { describe, expect, it } from "vitest";
import { openPdf } from "../src/print/pdf-file.js";
import { printedText } from "../src/print/pdf-text.js";
import { placeFaults } from "./printed-places.js";
import { bare, endsOn, lastWords } from "./printed-words.js";
import { loadFixture, packetOf, printing } from "./printing.js";

const namesIn = (folder: string) =>
  readdirSync(new URL(`../../../fixtures/${folder}`, import.meta.url))
    .filter((name) => name.endsWith(".yaml"))
    .map((name) => basename(name, ".yaml"));

/** Every job in each of the sets, and every overlay in all of them, once at least; the nightly run prints every job under every overlay in every set. */
const EVERY = process.env.BRANCHWORK_EVERY === "1";
const setsOf = (turn: number): readonly PacketSet[] => (EVERY ? PACKET_SETS : turn % 3 === 0 ? [PACKET_SETS[(turn / 3) % PACKET_SETS.length]!] : []);
const CASES = namesIn("jobs")
  .flatMap((job, i) => namesIn("overlays").map((overlay, j) => ({ job, overlay, sets: setsOf(i + j) })))
  .filter(({ sets }) => sets.length > 0);

const printer = printing();

describe("each packet prints whole, nothing lost, nothing on anything else", () => {
  it.each(CASES)("$job under $overlay: $sets", async ({ job, overlay, sets }) => {
    const loaded = await loadFixture(job, overlay);
    for (const set of sets) {
      const packet = packetOf(loaded, { set });
      const pdf = openPdf(await printer.packet(packet));
      const printed = printedText(pdf).map(bare);
      const lost = packet.sheets.flatMap(({ id, blocks }) =>
        blocks
          .flatMap(lastWords)
          .filter((text) => !endsOn(printed, text))
          .map((text) => `${id}: ${text}`),
      );
      expect({ set, lost, faults: placeFaults(pdf) }).toEqual({ set, lost: [], faults: [] });
    }
  });

  it("takes every job, every overlay and every set", () => {
    for (const [folder, key] of [
      ["jobs", "job"],
      ["overlays", "overlay"],
    ] as const)
      expect(new Set(CASES.map((one) => one[key]))).toEqual(new Set(namesIn(folder)));
    expect(new Set(CASES.flatMap(({ sets }) => sets))).toEqual(new Set(PACKET_SETS));
  });
});
