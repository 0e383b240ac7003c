import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { EDITIONS } from "../src/basis/edition.js";
import { Decimal, decimal } from "../src/quantity.js";
import { faultBehind } from "../src/service/fault-current.js";
import { type AcDropGiven, acDrop, acLostVolts } from "../src/sizing/ac-drop.js";
import { type AmpacityGiven, ampacity } from "../src/sizing/ampacity.js";
import { boxVolume } from "../src/sizing/box-fill.js";
import { type ConductorDemand, leastConductor, leastSize, shortfalls } from "../src/sizing/conductor.js";
import type { AcDropMethod } from "../src/sizing/drop-method.js";
import { groundingConductor } from "../src/sizing/grounding.js";
import { magnitude } from "../src/sizing/impedance.js";
import { multiplied } from "../src/sizing/pulling-tension.js";
import { conductorArea, leastRaceway, TRADE_SIZES } from "../src/sizing/raceway-fill.js";
import { type DropGiven, lostVolts, voltageDrop } from "../src/sizing/voltage-drop.js";
import { readCell } from "../src/tables/code-table.js";
import { CONDUCTOR } from "../src/tables/conductor.js";
import { INSULATIONS } from "../src/tables/insulation-rating.js";
import { SIZES, type Size } from "../src/tables/size.js";
import { STANDARD_RATINGS } from "../src/tables/standard-rating.js";

/** Cases of each property: a few in every run, as many as BRANCHWORK_CASES says at night. */
const numRuns = Number(process.env.BRANCHWORK_CASES ?? 300);
const holds = <T extends [unknown, ...unknown[]]>(...given: Parameters<typeof fc.property<T>>) => fc.assert(fc.property<T>(...given), { numRuns });

const OPEN = SIZES.slice(SIZES.indexOf("14"));
const edition = fc.constantFrom(...EDITIONS);
const material = fc.constantFrom("copper" as const, "aluminum" as const);
const size = fc.constantFrom(...OPEN);
const hundredths = (max: number) => fc.integer({ min: 1, max: max * 100 }).map((n) => n / 100);
const more = fc.integer({ min: 0, max: 4000 }).map((n) => n / 100);

const place: fc.Arbitrary<Omit<AmpacityGiven, "size">> = fc.record({
  id: fc.constant("p"),
  material,
  insulation: fc.constantFrom(...INSULATIONS, "NM-B" as const, "UF-B" as const),
  ambientC: fc.integer({ min: -60, max: 85 }),
  currentCarrying: fc.integer({ min: 1, max: 60 }),
  terminalC: fc.constantFrom(60 as const, 75 as const),
  wet: fc.boolean(),
  edition,
});
const demand: fc.Arbitrary<ConductorDemand> = fc
  .record({
    load: hundredths(600),
    extra: fc.constantFrom("1", "1.25"),
    overcurrent: fc.constantFrom(...STANDARD_RATINGS["2023"]),
    smallConductorCap: fc.boolean(),
    limit: fc.constantFrom("ampacity" as const, "next-size-up" as const, "twice" as const, "own-article" as const),
  })
  .map(({ load, extra, overcurrent, ...protection }) => ({ load, terminalLoad: new Decimal(load).times(extra), overcurrent, protection }));

/** No size in the tables is above every size. */
const rank = (found: Size | null) => (found === null ? SIZES.length : SIZES.indexOf(found));
const amperes = (given: AmpacityGiven) => Number(ampacity(given)?.allowed.value ?? 0);

describe("never a smaller wire, a bigger ampacity or a smaller box or raceway", () => {
  it("hotter air, more conductors: no bigger ampacity", () =>
    holds(place, size, fc.nat(60), fc.nat(30), (at, of, hotter, others) => {
      const before = amperes({ ...at, size: of });
      expect(amperes({ ...at, size: of, ambientC: at.ambientC + hotter })).toBeLessThanOrEqual(before);
      expect(amperes({ ...at, size: of, currentCarrying: at.currentCarrying + others })).toBeLessThanOrEqual(before);
    }));

  it("hotter air, more conductors, more load, a larger device: no smaller wire", () =>
    holds(place, demand, fc.nat(60), fc.nat(30), more, fc.nat(8), (at, asked, hotter, others, load, up) => {
      const before = rank(leastSize(at, asked));
      const ratings = STANDARD_RATINGS[at.edition];
      const rating = ratings.find((one) => one >= asked.overcurrent)!;
      const larger = ratings[Math.min(ratings.indexOf(rating) + up, ratings.length - 1)]!;
      expect(rank(leastSize({ ...at, ambientC: at.ambientC + hotter }, asked))).toBeGreaterThanOrEqual(before);
      expect(rank(leastSize({ ...at, currentCarrying: at.currentCarrying + others }, asked))).toBeGreaterThanOrEqual(before);
      const loaded = { ...asked, load: new Decimal(asked.load).plus(load), terminalLoad: new Decimal(asked.terminalLoad).plus(load) };
      expect(rank(leastSize(at, loaded))).toBeGreaterThanOrEqual(before);
      expect(rank(leastSize(at, { ...asked, overcurrent: larger }))).toBeGreaterThanOrEqual(before);
    }));

  it("a larger device or larger hots on the same least size: no smaller grounding conductor", () =>
    holds(edition, material, fc.nat(15), fc.nat(15), size, fc.nat(10), fc.nat(10), (of, metal, at, up, least, larger, stillLarger) => {
      const ratings = STANDARD_RATINGS[of];
      const sizeAt = (rating: number, used: number) =>
        rank(
          groundingConductor({
            id: "g",
            overcurrent: ratings[Math.min(rating, ratings.length - 1)]!,
            material: metal,
            leastSize: least,
            usedSize: OPEN[Math.min(used, OPEN.length - 1)]!,
            edition: of,
          }).size,
        );
      const used = OPEN.indexOf(least) + larger;
      expect(sizeAt(at + up, used)).toBeGreaterThanOrEqual(sizeAt(at, used));
      expect(sizeAt(at, used + stillLarger)).toBeGreaterThanOrEqual(sizeAt(at, used));
    }));

  // From two conductors to three the limit goes from 31 to 40 % of the raceway (Chapter 9 Table 1), so only three and more are held to it,
  // as every run of two wires and a ground has.
  it("more conductors, or larger ones: no smaller raceway", () =>
    holds(
      edition,
      fc.constantFrom("EMT", "PVC-40", "PVC-80", "RMC", "IMC", "ENT", "LFNC-B", "LFMC", "FMC"),
      fc.constantFrom("THWN-2", "XHHW-2", "THHN"),
      fc.nat(OPEN.length - 1),
      fc.nat(6),
      fc.integer({ min: 3, max: 12 }),
      fc.nat(6),
      (of, raceway, insulation, at, larger, count, added) => {
        const least = (which: number, wires: number) => {
          const area = conductorArea({
            id: "a",
            conductors: [{ size: OPEN[Math.min(which, OPEN.length - 1)]!, insulation, count: wires }],
            othersIn2: 0,
            edition: of,
          });
          const found = area && leastRaceway({ raceway, areaIn2: area.value, count: wires, edition: of });
          return area === null ? null : found === null ? TRADE_SIZES.length : TRADE_SIZES.indexOf(found);
        };
        const [before, crowded, thicker] = [least(at, count), least(at, count + added), least(at + larger, count)];
        if (before === null) return;
        expect(crowded).toBeGreaterThanOrEqual(before);
        if (thicker !== null) expect(thicker).toBeGreaterThanOrEqual(before);
      },
    ));

  it("more conductors, larger ones, a device or clamps more: no smaller box", () =>
    holds(
      edition,
      fc.nat(4),
      fc.nat(4),
      fc.nat(12),
      fc.nat(6),
      fc.nat(6),
      fc.nat(4),
      fc.boolean(),
      (of, at, larger, count, added, grounds, devices, clamps) => {
        const boxed: readonly Size[] = ["14", "12", "10", "8", "6"];
        const volume = (which: number, wires: number, earths: number, gangs: number, internalClamps: boolean) => {
          const used = boxed[Math.min(which, boxed.length - 1)]!;
          const found = boxVolume({
            id: "b",
            contents: {
              conductors: [{ size: used, count: wires }],
              grounds: { size: used, count: earths },
              devices: Array.from({ length: gangs }, () => ({ size: used, gangs: 1 })),
              internalClamps,
            },
            edition: of,
          });
          return Number(found?.value ?? 0);
        };
        const before = volume(at, count, grounds, devices, false);
        expect(volume(at + larger, count, grounds, devices, false)).toBeGreaterThanOrEqual(before);
        expect(volume(at, count + added, grounds + added, devices, false)).toBeGreaterThanOrEqual(before);
        expect(volume(at, count, grounds, devices + 1, clamps)).toBeGreaterThanOrEqual(count + grounds === 0 ? 0 : before);
      },
    ));

  it("longer, hotter, more load: no less drop; a larger wire: no more", () =>
    holds(drop(), fc.nat(500), fc.nat(40), more, fc.nat(6), (given, longer, hotter, load, larger) => {
      const before = lostVolts(given);
      const each = (change: (one: DropGiven["segments"][number]) => Partial<DropGiven["segments"][number]>) =>
        lostVolts({ ...given, segments: given.segments.map((one) => ({ ...one, ...change(one) })) });
      expect(each(({ feet }) => ({ feet: Number(feet) + longer })).gte(before)).toBe(true);
      expect(lostVolts({ ...given, current: Number(given.current) + load }).gte(before)).toBe(true);
      expect(lostVolts({ ...given, celsius: Number(given.celsius) + hotter }).gte(before)).toBe(true);
      expect(each(({ size: of }) => ({ size: OPEN[Math.min(OPEN.indexOf(of) + larger, OPEN.length - 1)]! })).lte(before)).toBe(true);
    }));
});

function drop(): fc.Arbitrary<DropGiven> {
  return fc.record({
    current: hundredths(400),
    segments: fc.array(fc.record({ size, material, feet: hundredths(2000), parallel: fc.integer({ min: 1, max: 4 }) }), { minLength: 1, maxLength: 4 }),
    method: fc.constantFrom("K" as const, "dc-resistance" as const),
    celsius: fc.integer({ min: -40, max: 90 }),
    edition,
  });
}

describe("the lean way, for trying sizes, gives what the worked way prints", () => {
  it("least size: the first that falls short of nothing by its worked ampacity", () =>
    holds(place, demand, (at, asked) => {
      const slow = OPEN.find((of) => shortfalls({ ...at, size: of }, asked).short.length === 0) ?? null;
      expect(leastSize(at, asked)).toBe(slow);
      const found = leastConductor(at, asked);
      expect(found).toEqual(slow === null ? null : { size: slow, ampacity: ampacity({ ...at, size: slow }) });
    }));
  it("least size where the load is on the edge of an ampacity, or one part in 10¹² beside it", () =>
    holds(place, size, fc.constantFrom("-1e-12", "0", "1e-12"), (at, of, beside) => {
      const found = ampacity({ ...at, size: of });
      if (found === null) return;
      const load = new Decimal(found.allowed.value).times(new Decimal(beside).plus(1));
      const asked: ConductorDemand = { load, terminalLoad: load, overcurrent: 15, protection: { smallConductorCap: false, limit: "own-article" } };
      const exact = OPEN.find((one) => {
        const allowed = ampacity({ ...at, size: one })?.allowed.value;
        return allowed !== undefined && load.lte(allowed);
      });
      expect(leastSize(at, asked)).toBe(exact ?? null);
    }));
  it("volts lost, by resistance and by K", () =>
    holds(drop(), (given) => {
      expect(lostVolts(given).toFixed()).toBe(voltageDrop({ ...given, id: "d", label: "d" }).value);
    }));
  it("volts lost, by impedance", () =>
    holds(
      fc.record({
        current: hundredths(400),
        powerFactor: fc.integer({ min: 0, max: 100 }).map((n) => n / 100),
        sourceVolts: fc.constantFrom(120, 240),
        segments: fc.array(
          fc.record({
            size,
            material,
            feet: hundredths(2000),
            parallel: fc.integer({ min: 1, max: 4 }),
            conduit: fc.constantFrom("PVC" as const, "aluminum" as const, "steel" as const),
            celsius: fc.integer({ min: -40, max: 90 }),
          }),
          { minLength: 1, maxLength: 3 },
        ),
        method: fc.constantFrom<AcDropMethod[]>("ac-effective", "ac-exact"),
        edition,
      }),
      (given: AcDropGiven) => {
        const lean = acLostVolts(given)?.toSignificantDigits(16).toFixed();
        expect(lean).toBe(acDrop({ ...given, id: "d", label: "d" })?.drop.value);
      },
    ));
  it("a cell read again is the cell first read, and nobody can change it", () =>
    holds(size, edition, (of, year) => {
      const cell = readCell(CONDUCTOR, of, "cmil", year);
      expect(cell).toMatchObject({ row: of, value: CONDUCTOR.rows[of][0], citation: { edition: year, section: CONDUCTOR.sections[year] } });
      expect(readCell(CONDUCTOR, of, "cmil", year)).toEqual(cell);
      expect(Object.isFrozen(cell) && Object.isFrozen(cell?.citation)).toBe(true);
    }));
});

describe("doubles where they decide nothing", () => {
  it("tension behind a bend: the eight digits of decimals", () =>
    holds(hundredths(5000), fc.integer({ min: 1, max: 360 }), fc.integer({ min: 10, max: 300 }), (before, degrees, friction) => {
      const [tension, power] = [new Decimal(before), new Decimal(friction).div(100).times(degrees).times(Decimal.acos(-1)).div(180)];
      expect(multiplied(tension, power).toFixed()).toBe(tension.times(power.exp()).toSignificantDigits(8).toFixed());
    }));
  it("a point's impedance and its fault current: the ten digits of decimals", () =>
    holds(hundredths(5000), hundredths(5000), (r, x) => {
      const impedance = { r: decimal(r).div(1000), x: decimal(x).div(7000) };
      const found = faultBehind({ id: "p", at: "a box", path: "line-to-line", impedance, volts: decimal(240), steps: [], edition: "2023" });
      const ohms = magnitude(impedance);
      expect(found.total.value).toBe(ohms.toSignificantDigits(10).toFixed());
      expect(found.amperes.value).toBe(decimal(240).div(ohms).toSignificantDigits(10).toFixed());
    }));
});
