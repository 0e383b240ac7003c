import { describe, expect, it } from "vitest";
import type { Block, Packet } from "./packet.js";
import { paragraph, table } from "./packet.js";
import { revisePacket } from "./revision.js";

const REVISION = { number: "2", date: "2026-03-01", says: "Moved the outlet" };
function packetOf(...sheets: readonly (readonly [string, readonly Block[]])[]): Packet {
  const titles = sheets.map(([title], i) => ({ id: `P-${i + 1}`, title }));
  return {
    title: "Any",
    set: "Submittal set",
    ready: true,
    foot: { project: "", owner: "", site: "", parcel: "", jurisdiction: "", edition: "", preparer: "", date: "", revision: { number: "", date: "", says: "" } },
    sheets: sheets.map(([title, blocks], i) => ({
      id: `P-${i + 1}`,
      title,
      number: String(i + 1),
      of: String(sheets.length),
      blocks: title === "Cover" ? [...blocks, { kind: "sheetIndex" as const, caption: "Sheet index", entries: titles }] : blocks,
    })),
  };
}
const rows = (...cells: readonly string[]) =>
  table(
    "Rows",
    ["Item", "Value"],
    cells.map((cell) => [cell, "x"]),
  );

describe("marking a revision", () => {
  const was = packetOf(["Cover", []], ["Schedules", [rows("a", "b")]], ["Old notes", []], ["Same", [paragraph("same")]]);
  const now = packetOf(["Cover", []], ["Schedules", [rows("a", "c")]], ["Same", [paragraph("same")]], ["New sheet", [paragraph("fresh")]]);
  const revised = revisePacket({ packet: now, was, revision: REVISION, changes: [{ kind: "input", id: "x", says: "length", was: "10", now: "12" }] });
  it("marks the changed row and no other", () => {
    const found = revised.sheets[2]!.blocks[0]!;
    expect(found.kind === "table" && found.rows.map((r) => r.cells[0])).toEqual(["a", "Δ2 c"]);
  });
  it("marks changed and new sheets, puts its own after the cover, and says what was withdrawn", () => {
    expect(revised.sheets.map(({ id, title }) => `${id} ${title}`)).toEqual([
      "P-1 Cover",
      "P-2 Δ2 Revisions",
      "P-3 Δ2 Schedules",
      "P-4 Same",
      "P-5 Δ2 New sheet",
    ]);
    expect(JSON.stringify(revised.sheets[1])).toContain('["—","Old notes","withdrawn"]');
  });
  it("the index and the title block go with it", () => {
    const index = revised.sheets[0]!.blocks.find((b) => b.kind === "sheetIndex");
    expect(index?.kind === "sheetIndex" && index.entries).toEqual(revised.sheets.map(({ id, title }) => ({ id, title })));
    expect(revised.foot.revision).toEqual({ number: "Δ2", date: "2026-03-01", says: "see P-2" });
  });
  it("has a reply for each entry with a blank for the reviewer's item", () =>
    expect(JSON.stringify(revised.sheets[1])).toContain('["","length: 10 is now 12","P-3, P-5"]'));
  it("earlier revisions keep their rows in the table, this one last; their triangles stand nowhere else", () => {
    const earlier = [{ number: "1", date: "2026-02-01", says: "First answer" }];
    const again = revisePacket({ packet: now, was, revision: REVISION, earlier, changes: [] });
    const [found] = again.sheets[1]!.blocks;
    expect(found?.kind === "table" && found.rows.map(({ cells, fresh }) => [...cells, fresh])).toEqual([
      ["Δ1", "2026-02-01", "First answer", false],
      ["Δ2", "2026-03-01", "Moved the outlet", true],
    ]);
    expect(JSON.stringify(again).split("Δ1")).toHaveLength(2);
  });
});
