import { describe, expect, it } from "vitest";
import { designWith } from "../../test/plain-job.js";
import type { Block } from "./packet.js";
import { faultTableSheet, readingsSheet } from "./readings.js";

const breaker = (spaces: readonly number[], more: object = {}) => ({
  poles: spaces.length,
  spaces,
  gfci: true,
  listed_for_panel: true,
  interrupting_kA: 10,
  ...more,
});
const route = [{ name: "Wall", place: "outdoors", method: "PVC-80", length: "40 ft" }];
const designOf = (...circuits: readonly object[]) => designWith(circuits);
const RV50 = { id: "rv", name: "RV 50", serves: "rv-50", current: "50 A", breaker: breaker([5, 7]), route };
const RV30 = { id: "tt", name: "RV 30", serves: "rv-30", current: "30 A", breaker: breaker([2]), route };
const EV = { id: "ev", name: "Charger", serves: "ev-supply", current: "32 A", breaker: breaker([9, 11]), route };
const INLET = {
  id: "inlet",
  name: "Generator inlet",
  serves: "generator-inlet",
  current: "30 A",
  nameplate: { load: "7000 W", neutral_bonded: false, transfer: "interlock", transfer_listed: true },
  breaker: breaker([13, 15], { gfci: false }),
  route,
};
const all = (blocks: readonly Block[]): Block[] => blocks.flatMap((b) => (b.kind === "together" ? all(b.blocks) : [b]));
const tables = (blocks: readonly Block[]) => all(blocks).flatMap((b) => (b.kind === "table" ? [b] : []));

describe("the record of readings", () => {
  // ANSI C84.1 Range A, service voltage 120/240: 114–126 and 228–252 V (Maryland COMAR 20.50.07.02).
  it("six at four wires, three at one hot, three at two hots, each with its band and a blank", () => {
    const idle = tables(readingsSheet(designOf(RV50, RV30, EV)).blocks).filter((t) => t.caption.includes("nothing connected"));
    expect(idle.map((t) => t.rows.map((r) => r.cells.slice(0, 3)))).toEqual([
      [
        ["Line 1 to neutral", "114–126 V", ""],
        ["Line 2 to neutral", "114–126 V", ""],
        ["Line 1 to line 2", "228–252 V", ""],
        ["Line 1 to ground", "114–126 V", ""],
        ["Line 2 to ground", "114–126 V", ""],
        ["Neutral to ground", "under 1 V", ""],
      ],
      [
        ["Hot to neutral", "114–126 V", ""],
        ["Hot to ground", "114–126 V", ""],
        ["Neutral to ground", "under 1 V", ""],
      ],
      [
        ["Line 1 to line 2", "228–252 V", ""],
        ["Line 1 to ground", "114–126 V", ""],
        ["Line 2 to ground", "114–126 V", ""],
      ],
    ]);
  });
  it("a loaded set for each leg, and what was assumed", () => {
    const sheet = readingsSheet(designOf(RV50));
    expect(tables(sheet.blocks).filter((t) => t.caption.includes("heater"))).toHaveLength(2);
    expect(JSON.stringify(sheet)).toContain("Earth electrodes 25 Ω");
  });
  it("an inlet is never given live bands: it must be dead", () => {
    const sheet = readingsSheet(designOf(RV50, INLET));
    expect(tables(sheet.blocks).some((t) => t.caption.includes("Generator inlet"))).toBe(false);
    expect(JSON.stringify(sheet)).toContain("must read 0 V");
    expect(faultTableSheet(designOf(INLET))).toBeNull();
  });
  it("an inlet alone has no bands, and no remark on what they rest on", () => {
    expect(JSON.stringify(readingsSheet(designOf(INLET)))).not.toMatch(/Bands:|computed bands/);
    expect(JSON.stringify(readingsSheet(designOf(RV50)))).toMatch(/Bands: .*computed bands: /);
  });
});

describe("the fault table", () => {
  const rows = (...circuits: readonly object[]) => tables(faultTableSheet(designOf(...circuits))!.blocks).map((t) => t.rows.map((r) => r.cells));
  it("one for each kind of wiring", () => expect(rows(RV50, { ...RV50, id: "rv-2", breaker: breaker([17, 19]) }, RV30, EV)).toHaveLength(3));
  it("about 240 V on a 125 V outlet: likely two hots, stop (https://www.rvtravel.com/rv-electricity-dryer-and-welder-outlet-dangers/)", () => {
    const row = rows(RV30)[0]!.find(([reads]) => reads!.includes("hot to neutral about 240 V"))!;
    expect(row[1]).toContain("two hots");
    expect(row[3]).toMatch(/^Stop/);
  });
  it("0 V between the lines: both hots on one leg (http://rvtravel.com/how-do-you-know-when-you-have-a-miswired-power-pedestal/)", () =>
    expect(rows(RV50)[0]!.find(([reads]) => reads!.endsWith("line 1 to line 2 about 0 V"))![1]).toContain("same leg"));
  it("says of a bond at the outlet that a pass does not prove it absent", () =>
    expect(JSON.stringify(faultTableSheet(designOf(RV50)))).toMatch(
      /does not prove absent.*"title":"Neutral and equipment ground are joined at the outlet","text":"Shown by: /,
    ));
});
