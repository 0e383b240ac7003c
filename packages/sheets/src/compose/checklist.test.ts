import { describe, expect, it } from "vitest";
import { designWith } from "../../test/plain-job.js";
import { overlaySchema } from "../overlay/schema.js";
import { checklistSheet, correctionResponseSheet, inspectionCardSheet } from "./checklist.js";
import type { Block } from "./packet.js";

const designOf = (route: readonly object[]) =>
  designWith([{ id: "rv", name: "RV", serves: "rv-50", current: "50 A", breaker: { poles: 2, spaces: [5, 7], gfci: true }, route }]);
const WALL = { name: "Wall", place: "outdoors", method: "PVC-80", length: "20 ft" };
const TRENCH = { name: "Trench", place: "buried", method: "PVC-40", length: "30 ft", cover: "24 in" };
const overlay = overlaySchema.parse({
  format: "branchwork-overlay/1",
  id: "sample",
  name: "Sample County",
  checked_on: "2026-01-31",
  notes: [],
  amendments: [],
  statements: [],
  checklist: (["trench", "rough", "final"] as const).map((stage) => ({ stage, section: "Local", look: `local ${stage}` })),
});
const looks = (blocks: readonly Block[], caption: RegExp) =>
  blocks.flatMap((b) => (b.kind === "checklist" && caption.test(b.caption) ? b.items.map((item) => item.look) : []));

describe("the checklist in print", () => {
  it("has the jurisdiction's lines in the part they belong to", () => {
    const { blocks } = checklistSheet(designOf([TRENCH, WALL]), overlay);
    for (const [stage, caption] of [
      ["trench", /^Trench/],
      ["rough", /^Rough/],
      ["final", /^Final/],
    ] as const)
      expect(looks(blocks, caption)).toContain(`local ${stage}`);
  });
  it("drops no rough-in line of the jurisdiction where the job has no rough-in", () => {
    const { blocks } = checklistSheet(designOf([TRENCH]), overlay);
    expect(looks(blocks, /^Rough/)).toEqual([]);
    expect(looks(blocks, /^Final/)).toContain("local rough");
  });
  it("asks of each line how it is shown", () => {
    const items = checklistSheet(designOf([TRENCH, WALL]), null).blocks.flatMap((b) => (b.kind === "checklist" ? b.items : []));
    expect(items.length).toBeGreaterThan(20);
    for (const item of items) expect(item.how).not.toBe("");
  });
});

describe("the inspection card and the reply to corrections", () => {
  it("a row for each visit of this job and two for coming again", () => {
    const card = (route: readonly object[]) =>
      inspectionCardSheet(designOf(route), null).blocks.flatMap((b) => (b.kind === "table" ? b.rows.map((r) => r.cells[0]) : []));
    expect(card([WALL])).toHaveLength(4);
    expect(card([TRENCH, WALL])).toEqual(["Trench, open", "Rough-in, before anything is covered", "Final", "Again, if corrected", "Again, if corrected"]);
  });
  it("names only corrections that this job has lines for", () => {
    const said = JSON.stringify(inspectionCardSheet(designOf([WALL]), null));
    expect(said).toMatch(/torque not shown/);
    expect(said).not.toMatch(/rock or debris in the backfill/i);
    expect(said).not.toMatch(/hot tub/i);
  });
  it("asks for item, reply and sheet", () => {
    const table = correctionResponseSheet().blocks.find((b) => b.kind === "table");
    expect(table?.kind === "table" && table.head).toEqual(["Item", "Correction", "Reply", "Sheet where changed", "Cleared, initials"]);
  });
});
