import { readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { design } from "../src/design.js";
import { USUAL_ALLOWANCES } from "../src/materials/allowances.js";
import { priceMaterials } from "../src/materials/cost.js";
import { csvField, materialsCsv } from "../src/materials/csv.js";
import { materialsList } from "../src/materials/materials-list.js";
import { orderOfWork } from "../src/materials/order-of-work.js";
import { readPriceBook } from "../src/materials/price-book.js";
import { regrets } from "../src/materials/regrets.js";
import { plainJob } from "./plain-job.js";
import { readWritten } from "./read-written.js";
import { redo } from "./redo.js";

const demo = readFileSync(new URL("../../../fixtures/prices/demo.yaml", import.meta.url), "utf8");
const book = () => {
  const reading = readPriceBook(demo);
  if (!reading.ok) throw new Error(JSON.stringify(reading.issues));
  return reading.book;
};

interface Bent {
  readonly route?: readonly object[];
  readonly boxes?: readonly object[];
}
const stretch = (name: string, more: object = {}) => ({ name, place: "indoors", method: "EMT", length: "20 ft", conductors: { size: "6" }, ...more });

function made({ route = [stretch("way")], boxes = [] }: Bent = {}) {
  const circuit = { id: "c", name: "C", serves: "rv-50", current: "50 A", breaker: { poles: 2, spaces: [1, 3], gfci: true }, route, boxes };
  return design({ job: readWritten(plainJob({ panel: { circuits: [circuit] } })) });
}
const row = (of: Bent, key: string | RegExp, allowances = USUAL_ALLOWANCES) =>
  materialsList({ design: made(of), allowances }).rows.filter((r) => (typeof key === "string" ? r.key === key : key.test(r.key)));
const bought = (of: Bent, key: string | RegExp) => row(of, key).map((r) => Number(r.quantity.value));

describe("lengths (arithmetic by hand; slack 3 %, make-up 3 ft, waste 10 %: common practice, no source; 6 in free, 300.14, memory)", () => {
  it("two hots of one stretch from panel to equipment: 2 × (20 × 1.03 + 3 + 0.5) × 1.1 = 53.02, up to 54 ft; neutral and ground 26.51, up to 27", () => {
    expect(row({}, /^wire/).map((r) => [r.item.split(", ")[1], r.quantity.value])).toEqual([
      ["hots", "54"],
      ["neutral", "27"],
      ["equipment ground", "27"],
    ]);
  });
  it("a cable is bought once for its length", () => expect(bought({ route: [stretch("way", { method: "NM-B" })] }, "cable NM-B 6/3")).toEqual([27]));
  it("no make-up where the pull goes on: (20 + 20) × 1.03 + 3.5, × 1.1 = 49.17", () =>
    expect(row({ route: [stretch("a"), stretch("b")] }, /^wire/)[1]!.quantity.value).toBe("50"));
  it("a box adds its free conductor to both sides: 49.17 + 2 × 0.5 × 1.1 = 50.27", () =>
    expect(row({ route: [stretch("a"), stretch("b")], boxes: [{ name: "j", after: "a", volume: "200 in3" }] }, /^wire/)[1]!.quantity.value).toBe("51"));
  it("spools: 53.02 ft of a 50 ft spool is two", () =>
    expect(row({}, /^wire/, { ...USUAL_ALLOWANCES, spoolFt: 50 })[0]).toMatchObject({ sold: "2 spools of 50 ft", quantity: { value: "100" } }));
  it("an allowance less than nothing is refused", () =>
    expect(() => materialsList({ design: made(), allowances: { ...USUAL_ALLOWANCES, wastePercent: -1 } })).toThrow(/wastePercent/));
});

describe("sticks of 10 ft with 10 % waste (common practice, no source)", () => {
  it.each([
    ["9 ft", 10],
    ["9.09 ft", 10],
    ["9.1 ft", 20],
  ])("%s: %d ft", (length, feet) => expect(bought({ route: [stretch("way", { length })] }, /^raceway/)).toEqual([feet]));
});

describe("supports after 358.30 (EMT within 3 ft of each end, 10 ft apart: published in the support table)", () => {
  it.each([
    ["6 ft", 1],
    ["6.1 ft", 2],
    ["16 ft", 2],
    ["16.1 ft", 3],
  ])("%s: %d", (length, count) => expect(bought({ route: [stretch("way", { length })] }, /^strap/)).toEqual([count]));
  it("none underground", () => expect(bought({ route: [stretch("way", { place: "buried", method: "PVC-40", cover: "18 in" })] }, /^strap/)).toEqual([]));
});

describe("fittings (common practice, no source)", () => {
  it("elbows by their angle; an odd angle is bent from the stick", () =>
    expect(row({ route: [stretch("way", { bends: [90, 90, 45, 20] })] }, /^elbow/).map((r) => [r.key.split(" ").at(-1), r.quantity.value])).toEqual([
      ["45", "1"],
      ["90", "2"],
    ]));
  it("joints: 20 ft is two sticks, one joint; with one elbow two", () => {
    expect(bought({}, /^coupling/)).toEqual([1]);
    expect(bought({ route: [stretch("way", { bends: [90] })] }, /^coupling/)).toEqual([2]);
  });
  it("where an unlike raceway goes on without a box, one fitting made for both in place of the coupling (300.15(F), memory)", () => {
    const at = (more: object, boxes: readonly object[] = []) => {
      const trench = { method: "PVC-40", place: "buried", cover: "18 in", length: "8 ft", trade_size: "1" };
      const route = [stretch("a", trench), stretch("b", { method: "PVC-80", place: "outdoors", length: "4 ft", trade_size: "1", ...more })];
      return row({ route, boxes }, /^(coupling|adapter)/).map(({ key, quantity }) => `${key}: ${quantity.value}`);
    };
    expect(at({})).toEqual(["coupling PVC-80 1: 1"]);
    expect(at({ trade_size: "1-1/4" })).toEqual(["adapter PVC-40 1 to PVC-80 1-1/4: 1"]);
    expect(at({ method: "LFMC" })).toEqual(["adapter PVC-40 1 to LFMC 1: 1"]);
    expect(at({ method: "EMT" })).toEqual(["adapter PVC-40 1 to EMT 1: 1"]);
    expect(at({ method: "EMT" }, [{ name: "joint", after: "a", volume: "64 in3" }])).toEqual([]);
  });
  it("expansion fitting from 1/4 in of movement, 352.44: 0.0000338 × 12 × 100 °F × feet; 6.16 ft is under, 6.17 ft over", () => {
    const at = (length: string) => bought({ route: [stretch("way", { method: "PVC-80", place: "outdoors", length })] }, /^expansion/);
    expect(at("6.16 ft")).toEqual([]);
    expect(at("6.17 ft")).toEqual([1]);
  });
  it("an expansion fitting told for a riser is bought, once and not besides the one for heat", () => {
    const at = (more: object) => bought({ route: [stretch("way", { place: "outdoors", earth_movement: "expansion-fitting", ...more })] }, /^expansion/);
    expect(at({ method: "PVC-80", length: "6.16 ft" })).toEqual([1]);
    expect(at({ method: "PVC-80", length: "6.17 ft" })).toEqual([1]);
    expect(at({ method: "RMC", length: "6 ft" })).toEqual([1]);
    expect(at({ method: "RMC", length: "6 ft", earth_movement: "flexible-connection" })).toEqual([]);
    expect(at({ method: "LFNC-B", length: "6 ft" })).toEqual([]);
    expect(at({ method: "RMC", length: "6 ft", place: "indoors" })).toEqual([]);
  });
  it("insulating bushings from 4 AWG in metal raceway (300.4(G), memory)", () => {
    expect(bought({ route: [stretch("way", { conductors: { size: "6" } })] }, /bushing/)).toEqual([]);
    expect(bought({ route: [stretch("way", { conductors: { size: "4" } })] }, /bushing/)).toEqual([2]);
  });
  it("ribbon, and seal at the ends of what comes from the ground", () => {
    const buried = { route: [stretch("way", { place: "buried", method: "PVC-40", cover: "18 in" })] };
    expect(bought(buried, "warning ribbon")).toEqual([20]);
    expect(bought(buried, "duct seal")).toEqual([2]);
    expect(bought({}, "duct seal")).toEqual([]);
  });
});

describe("rows", () => {
  it("each expression gives at most what is bought, and within one unit or pack of it", () => {
    for (const r of materialsList({ design: made({ route: [stretch("a", { bends: [90] }), stretch("b")] }) }).rows) {
      if (/rounded/.test(r.quantity.expression)) continue;
      const exact = redo(r.quantity.expression);
      expect(Number(r.quantity.value)).toBeGreaterThanOrEqual(exact - 1e-6);
      expect(Number(r.quantity.value) - exact).toBeLessThan(r.sold ? 10 : 1);
    }
  });
  it("longer is never less (property)", () =>
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 400 }), fc.integer({ min: 0, max: 60 }), (feet, more) => {
        const total = (n: number) => bought({ route: [stretch("way", { length: `${n} ft` })] }, /^(wire|raceway|strap|coupling)/).reduce((a, b) => a + b, 0);
        expect(total(feet + more)).toBeGreaterThanOrEqual(total(feet));
      }),
      { numRuns: 25 },
    ));
});

describe("price book", () => {
  const text = (items: string) => `format: branchwork-prices/1\ncurrency: USD\ndate: "2026-03-01"\nsource: invented demo prices\nitems:\n${items}`;
  it("says it is invented", () => expect(book().source).toBe("invented demo prices"));
  it.each([
    ["low over likely", "  label: { unit: each, low: 2, likely: 1, high: 3 }", 6],
    ["high under likely", "  label: { unit: each, low: 1, likely: 2, high: 1.9 }", 6],
    ["a unit that is none", "  label: { unit: yard, low: 1, likely: 2, high: 3 }", 6],
    ["less than nothing", "  label: { unit: each, low: -1, likely: 2, high: 3 }", 6],
    ["a field that is none", "  label: { unit: each, low: 1, likely: 2, high: 3, colour: red }", 6],
    ["the same name twice", "  label: { unit: each, low: 1, likely: 2, high: 3 }\n  label: { unit: each, low: 1, likely: 2, high: 3 }", 7],
    ["an alias", "  a: &x { unit: each, low: 1, likely: 2, high: 3 }\n  b: *x", 7],
    ["__proto__", "  __proto__: { unit: each, low: 1, likely: 2, high: 3 }", 6],
  ])("%s: an issue at its line", (_what, items, line) => {
    const reading = readPriceBook(text(items));
    expect(reading.ok).toBe(false);
    if (!reading.ok) expect(reading.issues[0]).toMatchObject({ line, mend: expect.stringMatching(/./) });
  });
  it("low = likely = high is allowed", () => expect(readPriceBook(text("  label: { unit: each, low: 1, likely: 1, high: 1 }")).ok).toBe(true));
  it("never throws on any text (property)", () => fc.assert(fc.property(fc.string({ maxLength: 300 }), (any) => void readPriceBook(any))));

  it("a missing price leaves its row unpriced and named, and out of the total", () => {
    const { rows } = materialsList({ design: made() });
    const full = priceMaterials({ rows, book: book() });
    expect(full.unpriced).toEqual([]);
    const { label: _, ...rest } = book().items;
    const short = priceMaterials({ rows, book: { ...book(), items: rest } });
    expect(short.unpriced).toEqual(["Label or directory entry"]);
    expect(short.rows.find((r) => r.key === "label")).toMatchObject({ cost: null, unpriced: "not in the price book" });
    expect(Number(full.total.likely) - Number(short.total.likely)).toBeCloseTo(1.2, 9);
  });
  it("a price by the wrong unit is no price", () => {
    const items = { ...book().items, label: { unit: "ft" as const, low: 1, likely: 1, high: 1 } };
    expect(priceMaterials({ rows: materialsList({ design: made() }).rows, book: { ...book(), items } }).unpriced).toEqual(["Label or directory entry"]);
  });
  it("the range is in order", () => {
    const { total } = priceMaterials({ rows: materialsList({ design: made() }).rows, book: book() });
    expect(Number(total.low)).toBeLessThanOrEqual(Number(total.likely));
    expect(Number(total.likely)).toBeLessThanOrEqual(Number(total.high));
  });
});

describe("CSV", () => {
  it.each(["=1+1", "+1+1", "-1+cmd", "@SUM(A1)", "\t=1", "\r=1", " =1", "＝1"])("%j cannot run as a formula", (text) =>
    expect(csvField(text).replace(/^"/, "")).toMatch(/^'/),
  );
  it.each(["-12.5", "0", "6 AWG", "3/4 in"])("%j stays itself", (text) => expect(csvField(text)).toBe(text));
  it("quotes what must be", () => expect(csvField('a "b", c')).toBe('"a ""b"", c"'));
  it("no field begins as a formula (property)", () =>
    fc.assert(fc.property(fc.string(), (text) => !/^"?[=+@|]/.test(csvField(text)) && !/^"?-(?!\d+(\.\d+)?"?$)/.test(csvField(text)))));
  it("one line a row and a head", () => {
    const { rows } = materialsList({ design: made() });
    expect(materialsCsv(rows).split("\r\n")).toHaveLength(rows.length + 2);
  });
});

describe("order of work", () => {
  const buried = { route: [stretch("way", { place: "buried", method: "PVC-40", cover: "18 in" })] };
  it("before the trench the call, after it the inspection, then the backfill; each a hold", () => {
    const steps = orderOfWork(made(buried));
    const ids = steps.map(({ id }) => id);
    const order = [
      "permit",
      "call",
      "trench",
      "trench-inspection",
      "backfill",
      "pull",
      "dead",
      "terminate",
      "torque",
      "dead-readings",
      "energize",
      "live-readings",
      "final-inspection",
    ];
    expect(ids.filter((id) => order.includes(id))).toEqual(order);
    for (const id of ["call", "trench-inspection", "rough-inspection", "dead", "final-inspection"]) expect(steps.find((s) => s.id === id)?.hold).toBe(true);
  });
  it("no trench, no call", () => expect(orderOfWork(made()).map(({ id }) => id)).not.toContain("call"));
  it("cable alone is not pulled through raceway", () =>
    expect(orderOfWork(made({ route: [stretch("way", { method: "NM-B" })] })).map(({ id }) => id)).not.toContain("pull"));
});

describe("what to regret beforehand (thresholds: common practice, no source)", () => {
  const kinds = (of: Bent) => regrets(made(of)).map(({ kind }) => kind);
  it("6 AWG through an elbow right after the panel; 8 AWG passes, and so does 6 AWG straight or at 45°", () => {
    expect(kinds({ route: [stretch("way", { bends: [90] })] })).toContain("tight elbow");
    expect(kinds({ route: [stretch("way", { bends: [90], conductors: { size: "8" } })] })).not.toContain("tight elbow");
    expect(kinds({ route: [stretch("way", { bends: [45] })] })).not.toContain("tight elbow");
    expect(kinds({})).not.toContain("tight elbow");
  });
  it("270° of bends, not 269°", () => {
    expect(kinds({ route: [stretch("way", { bends: [90, 90, 90] })] })).toContain("many bends");
    expect(kinds({ route: [stretch("way", { bends: [90, 90, 89] })] })).not.toContain("many bends");
  });
  it("a box with less than a quarter more than it needs: 3 × 5 in³ for 6 AWG and 2.5 in³ for a 10 AWG ground (Table 314.16(B), published in box-allowance) is 17.5, so 21.8 is small and 21.9 is not", () => {
    const at = (volume: string) => kinds({ boxes: [{ name: "b", after: "way", volume }] });
    expect(at("21.8 in3")).toContain("small box");
    expect(at("21.9 in3")).not.toContain("small box");
  });
  it("short pigtails where thick wire ends", () => {
    expect(kinds({ boxes: [{ name: "b", after: "way", volume: "90 in3" }] })).toContain("short pigtail");
    expect(kinds({ route: [stretch("way", { conductors: { size: "8" } })], boxes: [{ name: "b", after: "way", volume: "90 in3" }] })).not.toContain(
      "short pigtail",
    );
  });
});
