import { describe, expect, it } from "vitest";
import { designWith } from "../../test/plain-job.js";
import { pullBlocks } from "./pulls.js";

const trench = { name: "Trench", place: "buried", method: "PVC-40", trade_size: "2", cover: "18 in", bends: [90, 90] };
function blocksOf(route: readonly unknown[]) {
  const breaker = { rating: "50 A", poles: 2, spaces: [1, 3], gfci: true };
  const made = designWith([{ id: "c", name: "C", serves: "rv-50", current: "50 A", breaker, route, boxes: [] }]);
  return pullBlocks(made.circuits[0]!, (what) => what);
}

describe("pulls in print", () => {
  it("a light one is a row that tells tension and pressure beside their limits", () => {
    const [block, ...more] = blocksOf([{ ...trench, length: "20 ft" }]);
    expect(more).toEqual([]);
    const [table] = block?.kind === "together" ? block.blocks : [];
    expect(table).toMatchObject({
      kind: "table",
      rows: [{ cells: ["Trench", expect.any(String), expect.stringMatching(/lbf of .* lbf$/), expect.stringMatching(/lbf\/ft of 300 lbf\/ft/)] }],
    });
  });
  it("one that strains is worked line by line", () => {
    const blocks = blocksOf([{ ...trench, length: "300 ft" }]);
    expect(blocks).toMatchObject([{ kind: "calc", caption: "Pull: Trench" }]);
  });
  it("one that may wedge is worked, however light", () => {
    const blocks = blocksOf([{ ...trench, trade_size: "3/4", length: "10 ft" }]);
    expect(blocks).toMatchObject([{ kind: "calc", caption: "Pull: Trench" }]);
  });
});
