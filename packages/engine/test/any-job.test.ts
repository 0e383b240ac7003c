import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { stringify } from "yaml";
import { unamended } from "../src/basis/basis.js";
import { EDITIONS } from "../src/basis/edition.js";
import { design } from "../src/design.js";
import type { Design } from "../src/designed.js";
import { readJob } from "../src/job/read.js";
import { CABLES, EARTH_MOVEMENT, INSULATIONS, RACEWAYS, SEGMENT_TRADE_SIZES } from "../src/job/segment.js";
import { DROP_METHODS } from "../src/sizing/drop-method.js";
import { SIZES } from "../src/tables/size.js";
import type { Worked } from "../src/worked.js";
import { again, chosen } from "./redo.js";

const maybe = <T>(arbitrary: fc.Arbitrary<T>) => fc.option(arbitrary, { nil: undefined });

const segment = fc.record({
  place: fc.constantFrom("indoors", "attic", "outdoors", "buried"),
  method: fc.constantFrom(...CABLES, ...RACEWAYS),
  length: fc.integer({ min: 0, max: 5000 }).map((n) => `${n} ft`),
  conductors: fc.record({
    size: maybe(fc.constantFrom(...SIZES)),
    insulation: fc.constantFrom(...INSULATIONS),
    material: fc.constantFrom("copper", "aluminum"),
    stranding: maybe(fc.constantFrom("concentric", "compact")),
    grounding: maybe(fc.constantFrom(...SIZES)),
  }),
  sets: maybe(fc.integer({ min: 1, max: 6 })),
  trade_size: maybe(fc.constantFrom(...SEGMENT_TRADE_SIZES)),
  rooftop_height: maybe(fc.integer({ min: 0, max: 4 }).map((n) => `${n}/4 in`)),
  neutral_nonlinear: maybe(fc.boolean()),
  temperature_span: maybe(
    fc.record({
      coldest: fc.integer({ min: -60, max: 10 }).map((n) => `${n} °C`),
      hottest: fc.integer({ min: 10, max: 85 }).map((n) => `${n} °C`),
      in_sun: maybe(fc.boolean()),
    }),
  ),
  earth_movement: maybe(fc.constantFrom(...EARTH_MOVEMENT)),
  expansion_travel: maybe(fc.integer({ min: 1, max: 24 }).map((n) => `${n} in`)),
  bend_radius: maybe(fc.integer({ min: 1, max: 240 }).map((n) => `${n} in`)),
  climb: maybe(fc.integer({ min: -100, max: 100 })),
  pull: maybe(
    fc.record({
      from: maybe(fc.constantFrom("start", "end")),
      grip: maybe(fc.constantFrom("basket", "eye")),
      friction: maybe(fc.integer({ min: 1, max: 10 }).map((n) => n / 10)),
      elbows: maybe(
        fc.array(
          fc.record({
            kind: fc.constantFrom("body", "swept"),
            radius: maybe(fc.integer({ min: 0, max: 120 }).map((n) => `${n} in`)),
            from_wall: fc.integer({ min: 0, max: 60 }).map((n) => `${n} in`),
          }),
          { maxLength: 3 },
        ),
      ),
    }),
  ),
  ambient: maybe(fc.integer({ min: -60, max: 85 }).map((n) => `${n} °C`)),
  bends: fc.array(fc.integer({ min: 1, max: 180 }), { maxLength: 6 }),
  others: maybe(fc.record({ current_carrying: fc.integer({ min: 0, max: 60 }), area_in2: fc.integer({ min: 0, max: 20 }) })),
  cover: maybe(fc.integer({ min: 0, max: 120 }).map((n) => `${n} in`)),
  over: fc.constantFrom("general", "under-concrete-2in", "under-building", "under-slab-4in", "under-street", "under-dwelling-driveway"),
  exposed_to_damage: fc.boolean(),
});

const inches = (max: number) => maybe(fc.integer({ min: 0, max }).map((n) => `${n} in`));
const box = fc.record({
  kind: maybe(fc.constantFrom("box", "conduit-body")),
  volume: fc.integer({ min: 0, max: 2000 }),
  device: fc.boolean(),
  clamps: fc.boolean(),
  wet_location: fc.boolean(),
  spliced: maybe(fc.boolean()),
  entries: maybe(
    fc.array(
      fc.record({
        of: fc.constantFrom("before", "after", "other"),
        wall: fc.constantFrom("left", "right", "top", "bottom", "back"),
        row: maybe(fc.integer({ min: 1, max: 3 })),
        trade_size: maybe(fc.constantFrom(...SEGMENT_TRADE_SIZES)),
      }),
      { maxLength: 5 },
    ),
  ),
  width: inches(120),
  height: inches(120),
  depth: inches(60),
  entry_distance: inches(120),
});

const power = (max: number) => fc.integer({ min: 0, max }).map((n) => `${n} VA`);
const named = <T extends object>(fields: T) => fc.record({ name: fc.constant("one"), load: power(30000), ...fields });
const dwelling = fc.record({
  floor_area: fc.integer({ min: 50, max: 50000 }).map((n) => `${n} ft2`),
  small_appliance_circuits: fc.integer({ min: 2, max: 20 }),
  laundry_circuits: fc.integer({ min: 0, max: 5 }),
  appliances: fc.array(named({ count: fc.integer({ min: 1, max: 9 }), motor: fc.boolean(), neutral: fc.boolean() }), { maxLength: 6 }),
  cooking: fc.array(named({ count: fc.integer({ min: 1, max: 9 }) }), { maxLength: 3 }),
  dryers: fc.array(named({ count: fc.integer({ min: 1, max: 9 }) }), { maxLength: 3 }),
  ev: fc.array(fc.record({ name: fc.constant("ev"), load: maybe(power(20000)) }), { maxLength: 2 }),
  climate: fc.array(
    named({
      kind: fc.constantFrom("cooling", "heat-pump", "space-heating", "thermal-storage"),
      supplement: maybe(power(20000)),
      interlocked: fc.boolean(),
      controls: fc.integer({ min: 1, max: 9 }),
    }),
    { maxLength: 4 },
  ),
});
const material = fc.constantFrom("copper", "aluminum");
const size = fc.constantFrom(...SIZES);
const least = {
  least_kA: maybe(fc.integer({ min: 1, max: 4000 }).map((n) => n / 20)),
  loop_ohms: maybe(fc.integer({ min: 1, max: 5000 }).map((n) => n / 1000)),
};
const fault = fc.oneof(
  fc.record({ loop_ohms: least.loop_ohms }),
  fc.record({ least_kA: least.least_kA }),
  fc.record({
    loop_ohms: least.loop_ohms,
    utility: fc.record({
      kA: fc.integer({ min: 1, max: 200 }),
      line_to_neutral_kA: maybe(fc.integer({ min: 1, max: 200 })),
      x_over_r: maybe(fc.integer({ min: 1, max: 50 })),
    }),
  }),
  fc.record({
    loop_ohms: least.loop_ohms,
    transformer: fc.record({
      kva: fc.integer({ min: 1, max: 5000 }),
      percent_z: fc.integer({ min: 1, max: 20 }),
      conductors: fc.array(
        fc.record({
          size,
          neutral: maybe(size),
          material,
          sets: fc.integer({ min: 1, max: 12 }),
          length: fc.integer({ min: 0, max: 5000 }).map((n) => `${n} ft`),
          raceway: fc.constantFrom("PVC", "aluminum", "steel"),
        }),
        { maxLength: 3 },
      ),
    }),
  }),
);
const serviceParts = fc.record({
  load_method: fc.constantFrom("existing-dwelling", "standard", "optional"),
  dwelling,
  fault: maybe(fault),
  conductors: maybe(fc.record({ size, material, sets: fc.integer({ min: 1, max: 12 }) })),
  electrode: maybe(
    fc.record({
      electrodes: fc.uniqueArray(fc.constantFrom("rod", "pipe", "plate", "concrete-encased", "ring", "water-pipe", "structural-metal"), { minLength: 1 }),
      material,
      size: maybe(size),
    }),
  ),
  managed: maybe(fc.record({ setpoint: fc.integer({ min: 1, max: 600 }).map((n) => `${n} A`), citation: fc.constant("listing") })),
});

const job = fc
  .record({
    serviceParts,
    power_factor: maybe(fc.integer({ min: 1, max: 10 }).map((n) => n / 10)),
    conductor_temperature: maybe(fc.integer({ min: -60, max: 85 }).map((n) => `${n} °C`)),
    required: fc.boolean(),
    edition: fc.constantFrom(...EDITIONS),
    rating: fc.integer({ min: 30, max: 600 }),
    area: fc.integer({ min: 50, max: 50000 }),
    appliance: fc.integer({ min: 0, max: 100000 }),
    serves: fc.constantFrom("rv-50", "rv-30", "ev-supply"),
    current: fc.integer({ min: 1, max: 400 }),
    gfci_device: maybe(fc.constantFrom("none", "dead-front", "disconnect")),
    stands_on: maybe(fc.constantFrom("same-building", "post", "other-building")),
    disconnect_there: maybe(fc.boolean()),
    breaker: maybe(fc.integer({ min: 10, max: 400 })),
    poles: fc.constantFrom(1, 2),
    spaces: fc.array(fc.integer({ min: 1, max: 84 }), { minLength: 1, maxLength: 2 }),
    terminals: fc.boolean(),
    route: fc.array(segment, { minLength: 1, maxLength: 4 }),
    box,
    method: fc.constantFrom(...DROP_METHODS),
  })
  .map((a) => ({
    format: "branchwork-job/1",
    project: { title: "T", owner: "O", site: "S", preparer: { name: "N", role: "owner" } },
    code: { edition: a.edition },
    service: {
      rating: `${a.rating} A`,
      ...a.serviceParts,
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
            gfci_device: a.gfci_device,
            stands_on: a.stands_on,
            disconnect_there: a.disconnect_there,
            terminals_75C: a.terminals,
            breaker: { ...(a.breaker === undefined ? {} : { rating: `${a.breaker} A` }), poles: a.poles, spaces: a.spaces, gfci: false },
            route: a.route.map(({ climb, ...s }, i) => ({
              name: `s${i}`,
              ...s,
              // No stretch climbs more than its length.
              ...(climb === undefined ? {} : { rise: `${Math.sign(climb) * Math.min(Math.abs(climb), Number.parseInt(s.length, 10))} ft` }),
            })),
            boxes: [{ name: "b", after: "s0", ...a.box, volume: `${a.box.volume} in3` }],
          },
        ],
      },
    },
    drop: { method: a.method, power_factor: a.power_factor, conductor_temperature: a.conductor_temperature, required: a.required },
  }))
  .chain((written) => fc.tuple(fc.boolean(), maybe(size)).map(([fed, neutral]) => (fed ? behindFeeder(written, neutral) : written)));

interface WrittenStretch {
  readonly method: string;
  readonly sets?: number | undefined;
  readonly conductors: object;
}
/** A neutral of its own size, where a feeder may have one. */
const withNeutral = (stretch: WrittenStretch, neutral: string | undefined): WrittenStretch =>
  (CABLES as readonly string[]).includes(stretch.method) || (stretch.sets ?? 1) > 1 ? stretch : { ...stretch, conductors: { ...stretch.conductors, neutral } };

/** The same circuit behind a feeder to a panel of its own. */
function behindFeeder<T extends { service: { panel: { circuits: { route: WrittenStretch[] }[] } } }>(written: T, neutral: string | undefined): T {
  const { panel } = written.service;
  const feeder = {
    id: "f",
    name: "F",
    breaker: { poles: 2, spaces: [1, 3], gfci: false },
    building: "detached",
    route: panel.circuits[0]!.route.map((stretch) => withNeutral(stretch, neutral)),
    panel: { ...panel, id: "b", name: "B" },
  };
  return { ...written, service: { ...written.service, panel: { ...panel, circuits: [], feeders: [feeder] } } };
}

function made(written: object) {
  const read = readJob(stringify(written, { keepUndefined: false, aliasDuplicateObjects: false }));
  if (!read.ok) throw new Error(JSON.stringify(read.issues));
  return { read, result: design({ job: read.job }) };
}

describe("any job the schema takes", () => {
  it("designs without a throw, every value finite, same in every repeat", () =>
    fc.assert(
      fc.property(job, (written) => {
        const { read, result } = made(written);
        for (const step of everyStep(result)) {
          if (step.unit !== "AWG/kcmil" && !/^-?\d+(\.\d+)?$/.test(step.value)) throw new Error(`${step.id} = ${step.value}`);
        }
        expect(JSON.stringify(design({ job: read.job }))).toBe(JSON.stringify(result));
        for (const edition of EDITIONS) design({ job: read.job, basis: unamended(edition) });
      }),
      { numRuns: Number(process.env.BRANCHWORK_RUNS ?? 80) },
    ));
});

/** Every worked line that the paper prints: of the service, of each feeder and of each circuit. */
function everyStep({ service, feeders, circuits }: Design): readonly Worked[] {
  return [...service.steps, ...[...feeders, ...circuits].flatMap((run) => run.steps)];
}

describe("every printed expression, redone by mathjs, gives its value", () => {
  it("in the service's, the feeders' and the circuits' lines of twenty jobs, 95 of 100 of the numeric ones and more", () => {
    const steps = fc.sample(job, { seed: 7, numRuns: 20 }).flatMap((written) => everyStep(made(written).result).filter((step) => !chosen(step)));
    const unread: string[] = [];
    for (const step of steps) {
      const value = again(step);
      if (value === null) unread.push(`${step.id}: ${step.expression}`);
      // A line prints its inputs rounded to a few digits, so the pencil agrees to about one part in two hundred.
      else
        expect(Math.abs(value - Number(step.value)), `${step.id}: ${step.expression} = ${step.value}`).toBeLessThanOrEqual(
          Math.max(0.006, Math.abs(Number(step.value)) * 0.005),
        );
    }
    expect(steps.length).toBeGreaterThan(1000);
    expect(unread.length / steps.length, [...new Set(unread)].slice(0, 40).join("\n")).toBeLessThan(0.05);
  });
});
