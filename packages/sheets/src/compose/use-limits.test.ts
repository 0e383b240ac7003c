import { describe, expect, it } from "vitest";
import { designWith } from "../../test/plain-job.js";
import { labelsSheet } from "./labels.js";
import type { Block } from "./packet.js";
import { useLimitsSheet } from "./use-limits.js";

function designOf(serves: string, more: object = {}) {
  const poles = serves === "rv-30" ? 1 : 2;
  return designWith(
    [
      {
        id: "rv",
        name: "Outlet by the drive",
        serves,
        current: serves === "rv-30" ? "30 A" : "50 A",
        breaker: { poles, spaces: poles === 1 ? [5] : [5, 7], gfci: true },
        route: [{ name: "Wall", place: "outdoors", method: "PVC-80", length: "40 ft" }],
        ...more,
      },
    ],
    { name: "House <panel> & more" },
  );
}
const all = (blocks: readonly Block[]): Block[] => blocks.flatMap((b) => (b.kind === "together" ? all(b.blocks) : [b]));

describe("what may run together", () => {
  it("on 15, 30 and 50 A and through the adapter, at the volts computed for the outlet", () => {
    const made = designOf("rv-50");
    const tables = all(useLimitsSheet(made)!.blocks).flatMap((b) => (b.kind === "table" ? [b] : []));
    expect(tables.slice(1).map((t) => t.caption)).toEqual([
      expect.stringContaining("50 A 125/250 V"),
      expect.stringContaining("adapter"),
      expect.stringContaining("30 A 125 V"),
      expect.stringContaining("15 A 120 V"),
    ]);
    // 120 V less the drop of the worst leg, by subtraction.
    const volts = (120 - Number(made.circuits[0]!.drop.worstLeg.value)).toFixed(1);
    expect(JSON.stringify(useLimitsSheet(made))).toContain(`Volts taken: ${Number(volts)} V`);
  });
  it("two air conditioners are never together on the one leg of 30 A (1.25 × 1500 W / 120 V = 15.6 A each, and the converter: Ohm's law, 210.20(A) memory)", () => {
    const thirty = all(useLimitsSheet(designOf("rv-30"))!.blocks).flatMap((b) => (b.kind === "table" ? [b] : []));
    for (const t of thirty.slice(1)) for (const row of t.rows) expect(row.cells[0]!.includes("front") && row.cells[0]!.includes("rear")).toBe(false);
  });
  it("no sheet where no vehicle is fed", () => expect(useLimitsSheet(designOf("ev-supply", { current: "40 A" }))).toBeNull());
});

describe("labels", () => {
  const figures = (serves: string) => all(labelsSheet(designOf(serves)).blocks).flatMap((b) => (b.kind === "drawing" ? [b] : []));
  it("are drawn at their own size: 3.5 in is 252 points, and the bar is 3 in or 216 points (72 points to the inch)", () => {
    const [bar, ...labels] = figures("rv-50");
    expect(bar!.svg).toContain('points="1,10 217,10"');
    for (const { svg } of labels) expect(svg).toMatch(/^<svg[^>]* width="252pt"/);
    const heads = all(labelsSheet(designOf("rv-50")).blocks).flatMap((b) => (b.kind === "heading" ? [b.text] : []));
    for (const head of heads) expect(head).toMatch(/: 3\.5 in × \d(\.\d+)? in; /);
    expect(heads).toHaveLength(labels.length);
  });
  it("take no stamp and no markup from names", () => {
    for (const { svg, stamp } of figures("rv-50")) {
      expect(stamp).toBe(false);
      expect(svg).not.toContain("<panel>");
    }
  });
  it("a 125 V outlet says 120 V only", () => {
    expect(figures("rv-30").some(({ svg }) => svg.includes("120 V ONLY"))).toBe(true);
    expect(figures("rv-50").some(({ svg }) => svg.includes("120 V ONLY"))).toBe(false);
  });
});
