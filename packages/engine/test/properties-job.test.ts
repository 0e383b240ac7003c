import { readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { stringify } from "yaml";
import { unamended } from "../src/basis/basis.js";
import { EDITIONS } from "../src/basis/edition.js";
import { chooseSizes } from "../src/choosing/choose.js";
import { marked, runsIn, withRun } from "../src/choosing/lone-run.js";
import { trial } from "../src/choosing/trial.js";
import { design } from "../src/design.js";
import type { Design } from "../src/designed.js";
import { readJob } from "../src/job/read.js";
import type { Job } from "../src/job/schema.js";
import { CABLES, INSULATIONS, RACEWAYS } from "../src/job/segment.js";
import { readPriceBook } from "../src/materials/price-book.js";
import { Decimal } from "../src/quantity.js";
import { DROP_METHODS } from "../src/sizing/drop-method.js";
import { TRADE_SIZES } from "../src/sizing/raceway-fill.js";
import { SIZES, type Size } from "../src/tables/size.js";

/** Cases of each property: a few in every run, as many as BRANCHWORK_CASES says at night. */
const numRuns = Number(process.env.BRANCHWORK_CASES ?? 40);

const segment = fc.record({
  place: fc.constantFrom("indoors", "attic", "outdoors", "buried"),
  method: fc.constantFrom(...CABLES, ...RACEWAYS),
  feet: fc.integer({ min: 0, max: 1500 }),
  insulation: fc.constantFrom(...INSULATIONS),
  material: fc.constantFrom("copper", "aluminum"),
  celsius: fc.option(fc.integer({ min: -40, max: 60 })),
  others: fc.option(fc.integer({ min: 1, max: 20 })),
  bends: fc.array(fc.constantFrom(30, 45, 90), { maxLength: 4 }),
  cover: fc.integer({ min: 6, max: 40 }),
});
const asked = fc.record({
  edition: fc.constantFrom(...EDITIONS),
  serves: fc.constantFrom("rv-50", "rv-30", "ev-supply", "subpanel"),
  amperes: fc.integer({ min: 6, max: 160 }),
  route: fc.array(segment, { minLength: 1, maxLength: 3 }),
  area: fc.integer({ min: 300, max: 8000 }),
  appliance: fc.integer({ min: 0, max: 20000 }),
  volume: fc.integer({ min: 10, max: 400 }),
  method: fc.constantFrom(...DROP_METHODS),
  limit: fc.constantFrom(2, 3, 5),
  fault: fc.boolean(),
});
type Asked = typeof asked extends fc.Arbitrary<infer T> ? T : never;

/** The same quantities in two sets of units, each a finite decimal, so that neither is rounded. */
interface Units {
  readonly length: (feet: number) => string;
  readonly depth: (inches: number) => string;
  readonly area: (feet2: number) => string;
  readonly volume: (inches3: number) => string;
  readonly power: (va: number) => string;
  readonly air: (celsius: number) => string;
  readonly current: (amperes: number) => string;
}
const times = (value: number, factor: string) => new Decimal(value).times(factor).toFixed();
const CUSTOMARY: Units = {
  length: (n) => `${n} ft`,
  depth: (n) => `${n} in`,
  area: (n) => `${n} ft2`,
  volume: (n) => `${n} in3`,
  power: (n) => `${n} VA`,
  air: (n) => `${new Decimal(n).times("1.8").plus(32).toFixed()} °F`,
  current: (n) => `${n} A`,
};
const METRIC: Units = {
  length: (n) => `${times(n, "0.3048")} m`,
  depth: (n) => `${times(n, "2.54")} cm`,
  area: (n) => `${times(n, "0.09290304")} m2`,
  volume: (n) => `${times(n, "16.387064")} cm3`,
  power: (n) => `${times(n, "0.001")} kVA`,
  air: (n) => `${n} °C`,
  current: (n) => `${times(n, "0.001")} kA`,
};

function textOf(a: Asked, u: Units): string {
  const route = a.route.map((s, i) => ({
    name: `s${i}`,
    place: s.place,
    method: s.method,
    length: u.length(s.feet),
    conductors: { insulation: s.insulation, material: s.material },
    ...(s.celsius === null ? {} : { ambient: u.air(s.celsius) }),
    ...(s.others === null ? {} : { others: { current_carrying: s.others, area_in2: 0.1 } }),
    bends: s.bends,
    cover: u.depth(s.cover),
  }));
  const run = {
    name: "C",
    terminals_75C: true,
    breaker: { poles: a.serves === "rv-30" ? 1 : 2, spaces: a.serves === "rv-30" ? [1] : [1, 3], gfci: true },
    route,
    boxes: [{ name: "box", after: "s0", volume: u.volume(a.volume), wet_location: true, device: true }],
  };
  const circuit = { id: "c", ...run, serves: a.serves === "subpanel" ? "ev-supply" : a.serves, current: u.current(a.serves === "rv-50" ? 50 : a.amperes) };
  const house = { id: "p", name: "P", bus: u.current(400), spaces: 40 };
  const panel =
    a.serves === "subpanel"
      ? { ...house, feeders: [{ id: "f", ...run, name: "F", building: "detached", panel: { ...house, id: "b", name: "B", circuits: [circuit] } }] }
      : { ...house, circuits: [circuit] };
  return stringify(
    {
      format: "branchwork-job/1",
      project: { title: "T", owner: "O", site: "S", preparer: { name: "N", role: "owner" } },
      code: { edition: a.edition },
      service: {
        rating: u.current(400),
        ...(a.fault ? { fault: { utility: { kA: 10 } } } : {}),
        load_method: "existing-dwelling",
        existing: { floor_area: u.area(a.area), appliances: [{ name: "one", load: u.power(a.appliance) }] },
        panel,
      },
      drop: { method: a.method, limit_percent: a.limit },
    },
    { aliasDuplicateObjects: false },
  );
}

function read(a: Asked, units: Units = CUSTOMARY): Job {
  const found = readJob(textOf(a, units));
  if (!found.ok) throw new Error(JSON.stringify(found.issues));
  return found.job;
}

function frozen<T>(value: T): T {
  if (typeof value === "object" && value !== null && !Object.isFrozen(value)) {
    Object.freeze(value);
    for (const inside of Object.values(value)) frozen(inside);
  }
  return value;
}

const runsOf = (made: Design) => [...made.feeders, ...made.circuits];
const holds = (property: (a: Asked) => void) => fc.assert(fc.property(asked, property), { numRuns });

describe("any job", () => {
  it("in feet or metres, °F or °C, VA or kVA: the same job and the same design", () =>
    holds((a) => {
      const [one, other] = [read(a, CUSTOMARY), read(a, METRIC)];
      expect(other).toEqual(one);
      expect(JSON.stringify(design({ job: other }))).toBe(JSON.stringify(design({ job: one })));
    }));

  it("every worked value is a finite numeral, a size or words; again gives the same; nothing given is changed", () =>
    holds((a) => {
      const job = frozen(read(a));
      const basis = frozen(unamended(a.edition));
      const made = design({ job, basis });
      for (const step of [...made.service.steps, ...runsOf(made).flatMap((run) => run.steps)])
        if (step.unit !== "AWG/kcmil" && step.unit !== "text") expect(step.value, step.id).toMatch(/^-?\d+(\.\d+)?$/);
      const text = JSON.stringify(made);
      expect(text).not.toMatch(/NaN|Infinity|undefined/);
      expect(JSON.stringify(design({ job, basis }))).toBe(text);
    }));
});

const rank = (size: Size) => SIZES.indexOf(size);
const trade = (size: string | null) => (size === null ? -1 : TRADE_SIZES.indexOf(size as (typeof TRADE_SIZES)[number]));

describe("a longer, hotter, more crowded run never has a smaller wire or raceway", () => {
  // Not past the length that no size keeps within the limit: there the least sizes stay and the drop is a finding.
  // A cable or a raceway ends somewhere, and Table 9 as well: beyond, nothing larger is listed.
  const kept = (made: Design, limit: number) => runsOf(made).every((run) => Number(run.drop.worstLegPercent.value) <= limit);
  const notSmaller = (before: Design, after: Design, raceways: boolean) => {
    for (const [r, run] of runsOf(before).entries())
      for (const [i, was] of run.segments.entries()) {
        const is = runsOf(after)[r]!.segments[i]!;
        expect(rank(is.conductor.size), `${run.run.name} ${was.segment.name}`).toBeGreaterThanOrEqual(rank(was.conductor.size));
        if (raceways && was.tradeSize !== null && is.tradeSize !== null) expect(trade(is.tradeSize)).toBeGreaterThanOrEqual(trade(was.tradeSize));
      }
  };
  const changed = (a: Asked, change: (s: Asked["route"][number]) => Partial<Asked["route"][number]>): Asked => ({
    ...a,
    route: a.route.map((s) => ({ ...s, ...change(s) })),
  });

  it("longer", () =>
    fc.assert(
      fc.property(asked, fc.integer({ min: 0, max: 300 }), (a, longer) => {
        const before = design({ job: read(a) });
        const after = design({ job: read(changed(a, ({ feet }) => ({ feet: feet + longer }))) });
        if (kept(before, a.limit) && kept(after, a.limit)) notSmaller(before, after, true);
      }),
      { numRuns },
    ));

  // One floor under all stretches answers for the drop: heat that asks a larger wire of one stretch eases the others, whose wire may then be
  // smaller. So each stretch is held to its own least wire, and the wire used only where there is one stretch. Where the hots are raised for
  // drop alone the ground is raised with them in proportion (250.122(B)); heat that makes the larger hots needful takes that raise off, and
  // some of the fill with it: the raceway is not held to be as large.
  it("hotter and more crowded", () =>
    fc.assert(
      fc.property(asked, fc.nat(25), fc.nat(10), (a, hotter, others) => {
        const warm = changed(a, ({ celsius }) => ({ celsius: celsius ?? 30 }));
        const before = design({ job: read(warm) });
        const after = design({ job: read(changed(warm, (s) => ({ celsius: s.celsius! + hotter, others: (s.others ?? 0) + others || null }))) });
        const least = (made: Design) =>
          runsOf(made).map((run) => run.segments.map(({ requiredSize }) => (requiredSize === null ? SIZES.length : rank(requiredSize))));
        for (const [r, run] of least(before).entries()) for (const [i, was] of run.entries()) expect(least(after)[r]![i]).toBeGreaterThanOrEqual(was);
        // Where no size serves, the largest that is raised stays, or what the cable comes in.
        const served = [before, after].every((made) => runsOf(made).every((run) => run.segments.every((s) => s.requiredSize !== null)));
        if (a.route.length === 1 && served && kept(before, a.limit) && kept(after, a.limit)) notSmaller(before, after, false);
      }),
      { numRuns },
    ));
});

const booked = readPriceBook(readFileSync(new URL("../../../fixtures/prices/demo.yaml", import.meta.url), "utf8"));
if (!booked.ok) throw new Error(JSON.stringify(booked.issues));

describe("a way tried in a run", () => {
  it("gives that run and the findings about it as a design of the whole job does", () =>
    fc.assert(
      fc.property(asked, fc.constantFrom(...SIZES.slice(2)), (a, size) => {
        const job = read(a);
        const basis = unamended(a.edition);
        for (const { run } of runsIn(job)) {
          const named = withRun(job, run.id, marked);
          const tried = withRun(named, run.id, (now) => ({ route: now.route.map((s) => ({ ...s, conductors: { ...s.conductors, size } })) }));
          const lean = trial({ job: tried, basis, id: run.id, like: design({ job: named, basis }) });
          const whole = design({ job: tried, basis });
          expect(JSON.stringify(lean.run)).toBe(JSON.stringify(runsOf(whole).find((one) => one.run.id === run.id)));
          const about = (findings: Design["findings"]) => findings.filter(({ subject }) => subject.includes("\u27e6"));
          expect(about(lean.findings)).toEqual(about(whole.findings));
        }
      }),
      { numRuns },
    ));

  it("choosing again gives the same, and changes nothing given", () => {
    const job = frozen(read({ ...fc.sample(asked, { seed: 3, numRuns: 1 })[0]!, serves: "rv-50" }));
    const book = frozen(booked.book);
    expect(JSON.stringify(chooseSizes({ job, book }))).toBe(JSON.stringify(chooseSizes({ job, book })));
  });
});
