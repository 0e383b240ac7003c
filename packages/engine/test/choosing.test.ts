import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { lawfulAlternatives } from "../src/choosing/alternatives.js";
import { chooseSizes } from "../src/choosing/choose.js";
import { combinations } from "../src/choosing/search.js";
import { design } from "../src/design.js";
import type { Job } from "../src/job/schema.js";
import { USUAL_ALLOWANCES } from "../src/materials/allowances.js";
import { stretchPieces } from "../src/materials/materials-list.js";
import { type PriceBook, readPriceBook } from "../src/materials/price-book.js";
import { stretchesOf } from "../src/materials/stretch.js";
import { plainJob } from "./plain-job.js";
import { readWritten } from "./read-written.js";

const reading = readPriceBook(readFileSync(new URL("../../../fixtures/prices/demo.yaml", import.meta.url), "utf8"));
if (!reading.ok) throw new Error(JSON.stringify(reading.issues));
const demo = reading.book;

const METHODS = ["EMT", "PVC-80"] as const;
const TRADES = ["1", "1-1/4"] as const;
// 8 AWG aluminum and smaller are priced for grounds; at 40 A and less (Table 310.16, 75 °C) they cannot be hots of a 50 A circuit.
const WIRES = [
  ["copper", "8"],
  ["copper", "6"],
  ["copper", "4"],
  ["aluminum", "4"],
  ["aluminum", "2"],
] as const;

/** Only what the small grid holds is priced, so that grid and search look at the same ways. Grounds of every size stay priced. */
const small: PriceBook = {
  ...demo,
  items: Object.fromEntries(
    Object.entries(demo.items).filter(([key]) => {
      const [kind, what = "", size = "", last = ""] = key.split(" ");
      if (kind === "raceway") return METHODS.some((m) => m === what) && TRADES.some((t) => t === size);
      if (kind === "cable") return false;
      return kind !== "wire" || WIRES.some(([material, of]) => material === what && of === last) || ["8", "10"].includes(last);
    }),
  ),
};

function jobOf(given: { readonly limit: number; readonly box: string | null; readonly feet: readonly [number, number] }): Job {
  return readWritten({
    ...plainJob({
      panel: {
        circuits: [
          {
            id: "c",
            name: "C",
            serves: "rv-50",
            current: "50 A",
            terminals_75C: true,
            breaker: { rating: "50 A", poles: 2, spaces: [1, 3], gfci: true, listed_for_panel: true },
            cover_plate: "weatherproof-in-use",
            route: [
              { name: "a", place: "indoors", method: "EMT", length: `${given.feet[0]} ft`, bends: [90] },
              { name: "b", place: "outdoors", method: "PVC-80", length: `${given.feet[1]} ft`, bends: [90] },
            ],
            boxes: [
              ...(given.box === null ? [] : [{ name: "joint", after: "a", volume: given.box }]),
              { name: "outlet", after: "b", volume: "200 in3", wet_location: true, device: true },
            ],
          },
        ],
      },
    }),
    drop: { limit_percent: given.limit },
  });
}

/** Likely cost of every lawful way of the small grid, each by a design of its own: no shared step, no pruning. */
function bruteForce(job: Job, joined: boolean): readonly number[] {
  const circuit = job.service.panel.circuits[0]!;
  const ways = METHODS.flatMap((method) => TRADES.flatMap((trade_size) => WIRES.map(([material, size]) => ({ method, trade_size, material, size }))));
  const costs: number[] = [];
  for (const one of ways)
    for (const two of ways) {
      if (joined && (one.material !== two.material || one.size !== two.size)) continue;
      const route = [one, two].map((way, i) => ({
        ...circuit.route[i]!,
        method: way.method,
        trade_size: way.trade_size,
        conductors: { ...circuit.route[i]!.conductors, material: way.material, size: way.size },
      }));
      const made = design({ job: { ...job, service: { ...job.service, panel: { ...job.service.panel, circuits: [{ ...circuit, route }] } } } });
      const run = made.circuits[0]!;
      const fails = made.findings.some((f) => f.verdict === "fail" && (f.subject === "C" || f.subject.startsWith("C: ")));
      if (fails || Number(run.drop.worstLegPercent.value) > job.drop.limit_percent) continue;
      let cost = 0;
      let priced = true;
      for (const piece of stretchesOf(run, USUAL_ALLOWANCES, "2023").flatMap(stretchPieces)) {
        const price = small.items[piece.key];
        if (price === undefined) priced = false;
        else cost += price.likely * Number(piece.quantity);
      }
      if (priced) costs.push(cost);
    }
  return costs.sort((a, b) => a - b);
}

describe("the cheapest lawful set is that of a grid worked whole, each way by a design of its own", () => {
  it.each([
    ["ample limit, box between", 5, "200 in3", [20, 30]],
    ["tight limit couples the two", 1.4, "200 in3", [40, 60]],
    ["one pull", 3, null, [40, 60]],
    ["a box that holds 6 AWG on both sides and no more", 5, "35 in3", [20, 30]],
    ["no way keeps the limit", 0.5, "200 in3", [200, 200]],
  ] as const)("%s", (_what, limit, box, feet) => {
    const job = jobOf({ limit, box, feet });
    const costs = bruteForce(job, box === null);
    const [run] = chooseSizes({ job, book: small }).runs;
    if (costs.length === 0) expect(run).toMatchObject({ found: false });
    else {
      expect(run?.found).toBe(true);
      if (run?.found) expect(Number(run.cost.likely)).toBeCloseTo(costs[0]!, 1);
    }
  });
});

describe("search", () => {
  const offer = (wire: string, drop: number, weight: number) =>
    ({
      wire,
      drop,
      weight,
      method: "EMT",
      material: "copper",
      size: "6",
      grounding: "10",
      tradeSize: "1",
      cost: { low: "0", likely: "0", high: "0" },
    }) as const;
  const bySegment = [
    [offer("x", 5, 1), offer("y", 2, 4), offer("z", 1, 9)],
    [offer("x", 6, 2), offer("y", 3, 3), offer("z", 1, 7)],
    [offer("x", 4, 1), offer("y", 1, 6)],
  ];
  it.each([
    [[0, 1, 2], 15],
    [[0, 1, 2], 8],
    [[0, 0, 2], 9],
    [[0, 0, 0], 11],
    [[0, 1, 1], 3],
  ])("groups %j, limit %d: every combination within the limit, cheapest first", (groups, limit) => {
    // The search allows a rounding of one a segment.
    const allowed = limit + 3;
    const whole = bySegment[0]!
      .flatMap((a) => bySegment[1]!.flatMap((b) => bySegment[2]!.map((c) => [a, b, c])))
      .filter((way) => way.every((one, i) => i === 0 || groups[i] !== groups[i - 1] || one.wire === way[i - 1]!.wire))
      .filter((way) => way.reduce((sum, one) => sum + one.drop, 0) <= allowed)
      .map((way) => way.reduce((sum, one) => sum + one.weight, 0))
      .sort((a, b) => a - b);
    expect([...combinations({ bySegment, groups, limit })].map(({ weight }) => weight)).toEqual(whole);
  });
});

describe("choosing", () => {
  it("what is chosen passes: no finding of the run fails and the drop is within the limit", () => {
    const chosen = chooseSizes({ job: jobOf({ limit: 3, box: null, feet: [40, 60] }), book: small });
    expect(chosen.design.findings.filter((f) => f.verdict === "fail" && f.subject.startsWith("C"))).toEqual([]);
    expect(Number(chosen.design.circuits[0]!.drop.worstLegPercent.value)).toBeLessThanOrEqual(3);
  });
  it("held method and material stay", () => {
    const [run] = chooseSizes({ job: jobOf({ limit: 5, box: "200 in3", feet: [20, 30] }), book: small, held: ["method", "material"] }).runs;
    expect(run?.found && run.segments.map((s) => `${s.method} ${s.material}`)).toEqual(["EMT copper", "PVC-80 copper"]);
  });
  it("a finding that no choice mends is named, not searched for", () => {
    const job = jobOf({ limit: 5, box: "200 in3", feet: [20, 30] });
    const circuit = job.service.panel.circuits[0]!;
    const bent = { ...circuit, breaker: { ...circuit.breaker, poles: 1 as const, spaces: [1] } };
    const [run] = chooseSizes({ job: { ...job, service: { ...job.service, panel: { ...job.service.panel, circuits: [bent] } } }, book: small }).runs;
    expect(run?.found).toBe(false);
    expect(run !== undefined && !run.found && run.standing.map((f) => f.check)).toContain("breaker-poles");
  });
  it("an empty price book chooses nothing and names what it lacks", () => {
    const [run] = chooseSizes({ job: jobOf({ limit: 5, box: null, feet: [20, 30] }), book: { ...small, items: {} } }).runs;
    expect(run).toMatchObject({ found: false, why: expect.stringContaining("not priced: ") });
  });
  it("alternatives: those of a pull that design without a failing finding; the one in use is marked", () => {
    const job = jobOf({ limit: 3, box: null, feet: [40, 60] });
    const [run] = lawfulAlternatives({ job, book: demo });
    const used = run!.alternatives.filter((way) => way.chosen);
    expect(used).toHaveLength(1);
    expect(used[0]!.size).toBe(design({ job }).circuits[0]!.segments[0]!.conductor.size);
    for (const way of run!.alternatives) expect(Number(way.dropPercent)).toBeLessThanOrEqual(3);
  });
});
