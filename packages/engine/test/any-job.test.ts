import fc from "fast-check";
import { evaluate } from "mathjs";
import { describe, expect, it } from "vitest";
import { stringify } from "yaml";
import { unamended } from "../src/basis/basis.js";
import { EDITIONS } from "../src/basis/edition.js";
import { design } from "../src/design.js";
import { readJob } from "../src/job/read.js";
import { CABLES, INSULATIONS, RACEWAYS } from "../src/job/schema.js";
import { SIZES } from "../src/tables/size.js";

const maybe = <T>(arbitrary: fc.Arbitrary<T>) => fc.option(arbitrary, { nil: undefined });

const segment = fc.record({
  place: fc.constantFrom("indoors", "attic", "outdoors", "buried"),
  method: fc.constantFrom(...CABLES, ...RACEWAYS),
  length: fc.integer({ min: 0, max: 5000 }).map((n) => `${n} ft`),
  conductors: fc.record({
    size: maybe(fc.constantFrom(...SIZES)),
    insulation: fc.constantFrom(...INSULATIONS),
    material: fc.constantFrom("copper", "aluminum"),
    grounding: maybe(fc.constantFrom(...SIZES)),
  }),
  trade_size: maybe(fc.constantFrom("1/2", "3/4", "1", "2", "3")),
  ambient: maybe(fc.integer({ min: -60, max: 85 }).map((n) => `${n} °C`)),
  bends: fc.array(fc.integer({ min: 1, max: 180 }), { maxLength: 6 }),
  others: maybe(fc.record({ current_carrying: fc.integer({ min: 0, max: 60 }), area_in2: fc.integer({ min: 0, max: 20 }) })),
  cover: maybe(fc.integer({ min: 0, max: 120 }).map((n) => `${n} in`)),
  over: fc.constantFrom("general", "under-concrete-2in", "under-building", "under-slab-4in", "under-street", "under-dwelling-driveway"),
  exposed_to_damage: fc.boolean(),
});

const job = fc
  .record({
    edition: fc.constantFrom(...EDITIONS),
    rating: fc.integer({ min: 30, max: 600 }),
    area: fc.integer({ min: 50, max: 50000 }),
    appliance: fc.integer({ min: 0, max: 100000 }),
    serves: fc.constantFrom("rv-50", "rv-30", "ev-supply"),
    current: fc.integer({ min: 1, max: 400 }),
    breaker: maybe(fc.integer({ min: 10, max: 400 })),
    poles: fc.constantFrom(1, 2),
    spaces: fc.array(fc.integer({ min: 1, max: 84 }), { minLength: 1, maxLength: 2 }),
    terminals: fc.boolean(),
    route: fc.array(segment, { minLength: 1, maxLength: 4 }),
    box: fc.record({ volume: fc.integer({ min: 0, max: 2000 }), device: fc.boolean(), clamps: fc.boolean(), wet_location: fc.boolean() }),
    method: fc.constantFrom("K", "dc-resistance"),
  })
  .map((a) => ({
    format: "branchwork-job/1",
    project: { title: "T", owner: "O", site: "S", preparer: { name: "N", role: "owner" } },
    code: { edition: a.edition },
    service: {
      rating: `${a.rating} A`,
      load_method: "existing-dwelling",
      existing: { floor_area: `${a.area} ft2`, appliances: [{ name: "one", load: `${a.appliance} VA` }] },
      panel: {
        id: "p",
        name: "P",
        bus: "200 A",
        spaces: 30,
        circuits: [
          {
            id: "c",
            name: "C",
            serves: a.serves,
            current: `${a.current} A`,
            terminals_75C: a.terminals,
            breaker: { ...(a.breaker === undefined ? {} : { rating: `${a.breaker} A` }), poles: a.poles, spaces: a.spaces, gfci: false },
            route: a.route.map((s, i) => ({ name: `s${i}`, ...s })),
            boxes: [{ name: "b", after: "s0", ...a.box, volume: `${a.box.volume} in3` }],
          },
        ],
      },
    },
    drop: { method: a.method },
  }));

function made(written: object) {
  const read = readJob(stringify(written, { keepUndefined: false }));
  if (!read.ok) throw new Error(JSON.stringify(read.issues));
  return { read, result: design({ job: read.job }) };
}

describe("any job the schema takes", () => {
  it("designs without a throw, every value finite, same in every repeat", () =>
    fc.assert(
      fc.property(job, (written) => {
        const { read, result } = made(written);
        for (const step of [...result.service.steps, ...result.circuits.flatMap((c) => c.steps)]) {
          if (step.unit !== "AWG/kcmil" && !/^-?\d+(\.\d+)?$/.test(step.value)) throw new Error(`${step.id} = ${step.value}`);
        }
        expect(JSON.stringify(design({ job: read.job }))).toBe(JSON.stringify(result));
        for (const edition of EDITIONS) design({ job: read.job, basis: unamended(edition) });
      }),
      { numRuns: Number(process.env.BRANCHWORK_RUNS ?? 150) },
    ));
});

/** An expression as printed, made readable for an independent evaluator: units, commas and signs of the page taken off. */
function plain(expression: string): string {
  return expression
    .split(" = ")[0]!
    .replace(/\([^)]*AWG\)/g, "")
    .replaceAll(",", "")
    .replaceAll("×", "*")
    .replaceAll("²", "2")
    .replaceAll("³", "3")
    .replace(/Ω \/ 1000 ft/g, "/ 1000")
    .replace(/(\d) %/g, "$1 / 100")
    .replace(/\b(VA\/ft2|in2|in3|VA|ft2|ft|cmil|in|A|V)\b/g, "")
    .replace(/of other circuits/g, "");
}

describe("every printed expression, redone by mathjs, gives its value", () => {
  it("for a job with every kind of line", () => {
    const { result } = made(fc.sample(job, { seed: 7, numRuns: 1 })[0]!);
    const steps = [...result.service.steps, ...result.circuits.flatMap((c) => c.steps)];
    let redone = 0;
    for (const step of steps) {
      if (/least of|by |as entered|in place of|max\(/.test(step.expression) || step.unit === "AWG/kcmil" || step.id.endsWith(".overcurrent") || step.rounding)
        continue;
      const value = Number(evaluate(plain(step.expression)));
      // A line prints its inputs rounded to a few digits, so the pencil agrees to about one part in two hundred.
      expect(Math.abs(value - Number(step.value)), `${step.id}: ${step.expression} = ${step.value}`).toBeLessThanOrEqual(
        Math.max(0.006, Math.abs(Number(step.value)) * 0.005),
      );
      redone++;
    }
    expect(redone).toBeGreaterThan(12);
  });
});
