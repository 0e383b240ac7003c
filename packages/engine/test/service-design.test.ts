import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { stringify } from "yaml";
import { unamended } from "../src/basis/basis.js";
import { EDITIONS, type Edition } from "../src/basis/edition.js";
import { design } from "../src/design.js";
import { readJob } from "../src/job/read.js";
import { leastService } from "../src/service/service-load.js";
import type { Worked } from "../src/worked.js";
import { redo } from "./redo.js";

// biome-ignore lint/suspicious/noExplicitAny: a job as written, bent by each row before it is read
type Written = any;

const stretch = (length = "100 ft", more: Written = {}) => ({ name: "way", place: "outdoors", method: "PVC-40", length, ...more });
const rv50 = (more: Written = {}): Written => ({
  id: "rv",
  name: "RV",
  serves: "rv-50",
  current: "50 A",
  terminals_75C: true,
  breaker: { rating: "50 A", poles: 2, spaces: [1, 3], gfci: true, interrupting_kA: 10 },
  route: [stretch("100 ft", { conductors: { size: "6", grounding: "10" } })],
  ...more,
});
const ev = { id: "ev", name: "EV", serves: "ev-supply", current: "32 A", breaker: { poles: 2, spaces: [5, 7], gfci: false }, route: [stretch("20 ft")] };

/** The house of Annex D example D1(a), after which the standard and the optional method below are worked by hand. */
const HOUSE = { floor_area: "1500 ft2", cooking: [{ name: "Range", load: "12 kVA" }], dryers: [{ name: "Dryer", load: "5.5 kVA" }] };

function job(service: Written = {}, circuits: Written[] = [rv50()], rest: Written = {}): Written {
  return {
    format: "branchwork-job/1",
    project: { title: "Test job", owner: "A. Nonesuch", site: "1 Example Way", preparer: { name: "A. Nonesuch", role: "owner" } },
    code: { edition: "2023" },
    service: {
      rating: "200 A",
      load_method: "standard",
      dwelling: HOUSE,
      ...service,
      panel: { id: "p", name: "Panel", bus: "200 A", spaces: 30, circuits, ...service.panel },
    },
    ...rest,
  };
}
function made(written: Written, edition?: Edition) {
  const read = readJob(stringify(written));
  if (!read.ok) throw new Error(JSON.stringify(read.issues));
  return design({ job: read.job, ...(edition ? { basis: unamended(edition) } : {}) });
}
const near = (actual: string | number | undefined, expected: number, tolerance = 1e-6) =>
  expect(Math.abs(Number(actual) - expected)).toBeLessThanOrEqual(tolerance);
const verdict = (written: Written, check: string, edition?: Edition) =>
  made(written, edition)
    .findings.filter((finding) => finding.check === check)
    .map((finding) => finding.verdict);

describe("the load of the whole house with the new work inside", () => {
  it("standard: 18,600 VA (Annex D example D1(a), flylib.com/books/en/2.419.1/) and a 50 A RV outlet whole", () => {
    const { service } = made(job());
    expect(service.without.value).toBe("18600");
    expect(service.with.value).toBe(String(18600 + 12000));
    expect(service.amperes.value).toBe("128"); // 30,600 / 240 = 127.5
    expect(service.leastRating?.value).toBe("150"); // 240.6(A)
  });
  it("existing dwelling to which the job adds an air conditioner: what heats and cools there already counts whole, 220.83(B), by hand", () => {
    const unit = {
      id: "ac",
      name: "AC",
      serves: "air-conditioner",
      nameplate: { minimum_ampacity: "20 A", largest_overcurrent: "30 A" },
      breaker: { poles: 2, spaces: [5, 7], gfci: false },
      route: [stretch("20 ft")],
    };
    const house = { floor_area: "2000 ft2", heating: { name: "Heat", load: "10 kVA" } };
    const { service } = made(job({ load_method: "existing-dwelling", existing: house, dwelling: undefined }, [unit]));
    // 6,000 + 4,500 + 10,000 VA: the first 8,000 whole, 12,500 at 40 %.
    expect(service.without.value).toBe("13000");
    // 8,000 + 0.4 × 2,500 + 10,000 VA whole, and 20 A × 240 V of the new unit.
    expect(service.with.value).toBe(String(9000 + 10000 + 4800));
    expect(made(job({ load_method: "existing-dwelling", existing: house, dwelling: undefined })).service.with.value).toBe(String(13000 + 12000));
  });
  it("standard: a heat pump that heats is a motor too, with its quarter (430.24), by hand", () => {
    const climate = [{ name: "Heat pump", kind: "heat-pump", load: "5 kVA", supplement: "10 kVA" }];
    // 18,600 VA of D1(a), 5,000 + 10,000 VA of heat and a quarter of 5,000 VA.
    for (const edition of EDITIONS.filter((each) => each !== "2026"))
      expect(Number(made(job({ dwelling: { ...HOUSE, climate } }, [rv50()]), edition).service.without.value), edition).toBe(18600 + 15000 + 1250);
    // Interlocked, the 10,000 VA of elements run alone: more than the pump, and no motor. In 2017 they alone; from 2020 5,000 × 1.25 is compared.
    const apart = [{ ...climate[0], interlocked: true }];
    expect(Number(made(job({ dwelling: { ...HOUSE, climate: apart } })).service.without.value)).toBe(18600 + 10000);
  });
  it("optional: 10,000 + 0.4 × the rest, the outlet among the appliances (220.82(B)), and that is said", () => {
    const { service, assumptions } = made(job({ load_method: "optional" }));
    expect(service.without.value).toBe(String(10000 + 0.4 * (4500 + 3000 + 1500 + 12000 + 5500 - 10000)));
    expect(service.with.value).toBe(String(10000 + 0.4 * (4500 + 3000 + 1500 + 12000 + 5500 + 12000 - 10000)));
    expect(assumptions.some(({ says }) => says.includes("RV counted among the appliances"))).toBe(true);
  });
  it("existing dwelling from the loads told by kind: 8,000 + 0.4 × (26,500 − 8,000), and the outlet whole (220.83(A))", () => {
    const { service } = made(job({ load_method: "existing-dwelling" }));
    expect(service.without.value).toBe("15400");
    expect(service.with.value).toBe("27400");
  });
  it("new equipment stands among its like: a second range by Table 220.55 column C for two, 11,000 VA, not 8,000 and a nameplate", () => {
    const range = { ...rv50(), id: "range", name: "Range 2", serves: "range", current: undefined, nameplate: { load: "12 kW" } };
    expect(made(job({}, [range])).service.with.value).toBe(String(18600 - 8000 + 11000));
  });
  it("EV supply is whole beside the 40 % of the optional method in 2026 (one report) and within it before", () => {
    const rest = 4500 + 3000 + 1500 + 12000 + 5500;
    expect(made(job({ load_method: "optional" }, [ev]), "2023").service.with.value).toBe(String(10000 + 0.4 * (rest + 7680 - 10000)));
    expect(made(job({ load_method: "optional" }, [ev]), "2026").service.with.value).toBe(String(8000 + 0.4 * (rest - 1500 - 8000) + 7680));
  });
  it("two coolers that run together are one selection, and the larger of heating and cooling counts", () => {
    const climate = [
      { name: "AC 1", kind: "cooling", load: "4 kVA" },
      { name: "AC 2", kind: "cooling", load: "3 kVA" },
      { name: "Heat", kind: "space-heating", load: "10 kVA" },
    ];
    const bare = made(job({ load_method: "optional" })).service.without;
    const found = made(job({ load_method: "optional", dwelling: { ...HOUSE, climate } })).service.without;
    expect(Number(found.value) - Number(bare.value)).toBe(7000); // 0.65 × 10,000 = 6,500 is less
  });
});

describe("the lines of the service load", () => {
  const line = (found: ReturnType<typeof made>, id: string) => found.service.steps.find((step) => step.id === id)!;
  it("each names the lines it comes from, and the rounding its rule", () => {
    const found = made(job({ load_method: "existing-dwelling" }));
    const comesFrom = (id: string) => line(found, id).inputs;
    expect(line(found, "service.with").expression).toBe("15,400 + 12,000");
    expect(comesFrom("service.with")).toEqual([found.service.without.id, expect.stringMatching(/^rv/)]);
    expect(comesFrom("service.amperes-without")).toEqual([found.service.without.id]);
    expect(comesFrom("service.amperes")).toEqual(["service.with"]);
    expect(comesFrom("service.margin")).toEqual(["service.amperes"]);
    expect(comesFrom("service.margin-va")).toEqual(["service.with"]);
    expect(comesFrom("service.margin-percent")).toEqual(["service.margin-va"]);
    for (const id of ["service.amperes", "service.amperes-without"]) expect(line(found, id).citations.map(({ section }) => section)).toEqual(["220.5(B)"]);
  });
  it("the method is named, and a least service asked where the whole house is counted anew", () => {
    const methods = ["standard", "optional", "existing-dwelling"] as const;
    const found = methods.map((load_method) => made(job({ load_method })).service);
    expect(found.map(({ method }) => method)).toEqual(["Dwelling, standard method", "Dwelling, optional method", "Existing dwelling"]);
    expect(found.map(({ leastRating }) => leastRating?.value ?? null)).toEqual(["150", "100", null]);
    expect(line(made(job()), "service.least-rating").inputs).toEqual(["service.amperes"]);
    expect(found[0]!.leastRating?.citations.map(({ section }) => section)).toEqual(["230.79(C)"]);
  });
  it.each([
    ["84", "100"],
    ["100", "100"],
    ["101", "110"],
    ["600", "600"],
    ["601", null],
  ])("%s A asks a service of %s A: 230.79(C), 240.6(A), as far as 600 A", (value, rating) =>
    expect(leastService({ id: "load", value } as Worked, "2023")?.value ?? null).toBe(rating),
  );
  it("only what is counted within the optional method's 40 % is asked about", () => {
    const asks = (load_method: string, circuits: Written[]) =>
      made(job({ load_method }, circuits)).assumptions.filter(({ path }) => path === "service.load_method");
    expect(asks("optional", [rv50(), ev]).map(({ says }) => says.split(" counted")[0])).toEqual(["RV"]);
    expect(asks("optional", [ev])).toEqual([]);
    expect(asks("standard", [rv50()])).toEqual([]);
  });
  it.each([
    ["one-year", "one year of record"],
    ["thirty-day", "a 30-day record: it must include the largest heating or cooling season or have it added"],
  ])("a measured peak of %s says so, and what it rests on", (basis, says) => {
    const found = made(job({ load_method: "measured-demand", measured: { peak: "9 kW", basis, from: "utility portal" }, dwelling: undefined }));
    expect(found.assumptions).toContainEqual({ path: "service.measured", says: `Peak from utility portal, ${says}` });
    // 220.87: 125 % of the peak.
    expect([found.service.without.value, found.service.method, found.service.steps[0]!.id]).toEqual(["11250", "Measured demand", "service.measured"]);
  });
  it("one new circuit of heating or cooling among others is enough to count what is there by 220.83(B)", () => {
    const heat = {
      id: "h",
      name: "Heat",
      serves: "heat",
      nameplate: { load: "5 kW" },
      breaker: { poles: 2, spaces: [9, 11], gfci: false },
      route: [stretch("20 ft")],
    };
    const existing = { floor_area: "2000 ft2", heating: { name: "Furnace", load: "10 kVA" } };
    // As above: 9,000 + 10,000 VA whole, then 12,000 VA of the outlet and 5,000 VA of the heat.
    expect(made(job({ load_method: "existing-dwelling", existing, dwelling: undefined }, [rv50(), heat])).service.with.value).toBe(
      String(19000 + 12000 + 5000),
    );
  });
  it("under a setpoint, EV supply and an outlet together are no EV supply alone: counted from 2023 and not before", () => {
    const both = (edition: Edition) => made(job({ managed: { setpoint: "20 A", citation: "listing" } }, [rv50(), ev]), edition).service;
    expect(both("2020").managed).toBeNull();
    expect(both("2020").with.value).toBe(String(18600 + 12000 + 7680));
    const { managed, steps } = both("2023");
    expect(managed?.value).toBe("4800");
    expect(steps.find(({ id }) => id === "service.managed.connected")?.inputs).toHaveLength(2);
    const evAlone = made(job({ managed: { setpoint: "20 A", citation: "listing" } }, [ev]), "2020").service;
    expect(evAlone.managed?.value).toBe("4800");
  });
});

describe("the service neutral, 220.61", () => {
  it("5,100 + 0.7 × 8,000 + 0.7 × 5,500 = 14,550 VA (Annex D example D1(a)), and 12,000 VA of the RV outlet: 110.625 A", () =>
    near(made(job()).service.neutral?.value, (14550 + 12000) / 240, 1e-6));
  it("a 120 V outlet is all on one leg: 30 A more, not 15", () => {
    const rv30 = { ...rv50(), serves: "rv-30", current: "30 A", breaker: { rating: "30 A", poles: 1, spaces: [1], gfci: true } };
    near(made(job({}, [rv30])).service.neutral?.value, 14550 / 240 + 30, 1e-6);
  });
  it("hard-wired EV supply has no neutral", () => near(made(job({}, [ev])).service.neutral?.value, 14550 / 240, 1e-6));
  it("is not worked where the loads are not told by kind", () =>
    expect(made(job({ load_method: "existing-dwelling", existing: { floor_area: "1500 ft2" }, dwelling: undefined })).service.neutral).toBeNull());
});

describe("an energy management system", () => {
  const managed = { setpoint: "20 A", citation: "listing and setpoint sheet" };
  it("holds the new load to 20 A × 240 V from 2023 (220.70)", () => {
    const { service } = made(job({ managed }));
    expect(service.managed?.value).toBe("4800");
    expect(service.with.value).toBe(String(18600 + 4800));
  });
  it("never raises a load that is less than the setpoint", () =>
    expect(made(job({ managed: { ...managed, setpoint: "100 A" } })).service.with.value).toBe("30600"));
  it("counts for EV supply alone before that (625.42), and for an outlet not", () => {
    expect(made(job({ managed }, [ev]), "2020").service.with.value).toBe(String(18600 + 4800));
    expect(made(job({ managed }), "2020").service.with.value).toBe("30600");
    expect(verdict(job({ managed }), "managed-load", "2020")).toEqual(["fail"]);
  });
});

describe("voltage drop by each method, worked by hand for 50 A through 100 ft of 6 AWG copper in PVC", () => {
  const of = (drop: Written, more: Written = {}) => made(job({}, [rv50(more)], { drop })).circuits[0]!.drop;
  it("K: 2 × 12.9 × 50 × 100 / 26,240 cmil", () => near(of({ method: "K" }).worstLeg.value, (2 * 12.9 * 50 * 100) / 26240, 1e-6));
  it("direct current: 2 × 50 A × 0.491 Ω / 1000 ft (Table 8)", () => near(of({}).worstLeg.value, 4.91));
  it("the same at 25 °C: × [1 + 0.00323 (25 − 75)] (Table 8 note)", () =>
    near(of({ conductor_temperature: "25 °C" }).worstLeg.value, 4.91 * (1 - 0.00323 * 50)));
  it("effective: 2 × 50 × 0.1 × (0.49 × 0.85 + 0.051 × 0.5268) (Table 9)", () =>
    near(of({ method: "ac-effective", power_factor: 0.85 }).worstLeg.value, 10 * (0.49 * 0.85 + 0.051 * Math.sqrt(1 - 0.85 ** 2))));
  it("exact on the leg: |120 V| = |V + I Z| solved by hand at unity power factor: 120 − (√(120² − 0.51²) − 4.9)", () =>
    near(of({ method: "ac-exact", power_factor: 1 }).worstLeg.value, 120 - (Math.sqrt(120 ** 2 - 0.51 ** 2) - 4.9)));
  it("balanced exact is on 240 V", () => near(of({ method: "ac-exact", power_factor: 1 }).balanced.value, 240 - (Math.sqrt(240 ** 2 - 0.51 ** 2) - 4.9)));
  it("two sets in parallel lose half (Kirchhoff)", () => {
    const route = [stretch("100 ft", { sets: 2, conductors: { size: "1/0" } })];
    const one = [stretch("100 ft", { conductors: { size: "1/0" } })];
    for (const method of ["K", "dc-resistance", "ac-effective"])
      near(of({ method }, { route }).worstLeg.value, Number(of({ method }, { route: one }).worstLeg.value) / 2);
  });
  it("steel conduit raises the reactance: 2 × 50 × 0.1 × 0.064 × sin θ (Table 9)", () => {
    const steel = of({ method: "ac-effective", power_factor: 0.85 }, { route: [stretch("100 ft", { method: "EMT", conductors: { size: "6" } })] });
    near(steel.worstLeg.value, 10 * (0.49 * 0.85 + 0.064 * Math.sqrt(1 - 0.85 ** 2)));
  });
  it("falls back on Table 8 where Table 9 lacks the conductor, and says so", () => {
    const route = [stretch("100 ft", { conductors: { size: "700" } })];
    const found = made(job({}, [rv50({ route })], { drop: { method: "ac-exact" } }));
    near(found.circuits[0]!.drop.worstLeg.value, 2 * 50 * 0.1 * 0.0184, 1e-6); // Table 8, 700 kcmil copper: 0.0184 Ω / 1000 ft
    expect(found.assumptions.some(({ says }) => says.includes("by direct-current resistance, since"))).toBe(true);
  });
  it("an alternating-current method lists no length for a size that Table 9 lacks, whole feet else", () => {
    const { longest } = of({ method: "ac-exact" });
    expect(longest.length).toBeGreaterThan(3);
    for (const { feet } of longest) expect(feet).toMatch(/^\d+$/);
  });
});

describe("the voltage drop check", () => {
  // 4.91 V of 120 V is 4.0917 %.
  it.each([
    [{ limit_percent: 4.1 }, "pass"],
    [{ limit_percent: 4.09 }, "caution"],
    [{ limit_percent: 4.09, required: true }, "fail"],
    [{ limit_percent: 4.1, required: true }, "pass"],
  ])("%j: %s", (drop, expected) => expect(verdict(job({}, [rv50()], { drop }), "voltage-drop")).toEqual([expected]));
});

/** A feeder of 100 ft of 4 AWG copper to a shed, the outlet 100 ft beyond. */
const behindFeeder = (service: Written = {}, feet = 100, kA = 10): Written =>
  job({
    ...service,
    panel: {
      circuits: [],
      feeders: [
        {
          id: "f",
          name: "Feeder",
          breaker: { rating: "60 A", poles: 2, spaces: [5, 7], gfci: false, interrupting_kA: kA },
          terminals_75C: true,
          building: "detached",
          route: [stretch(`${feet} ft`, { conductors: { size: "4", grounding: "8" } })],
          panel: { id: "b", name: "Shed", bus: "100 A", spaces: 8, circuits: [rv50()] },
        },
      ],
    },
  });
const TEN_KA = { fault_current_kA: 10 };

describe("fault current down the tree", () => {
  const rise = (copper: number, degrees: number) => copper * (1 + 0.00323 * (degrees - 75));
  it("the utility's figure at the service panel, then R + jX of both ways at 25 °C, by Table 9 in PVC", () => {
    const found = made(behindFeeder(TEN_KA));
    const [feeder, rv] = [found.feeders[0]!.fault!, found.circuits[0]!.fault!];
    near(feeder.atStart.lineToLine?.value, 10000, 1e-6);
    near(feeder.atStart.lineToNeutral?.value, 10000, 1e-6);
    const ohms = 240 / 10000;
    const source = { r: ohms / Math.hypot(1, 1.5), x: (1.5 * ohms) / Math.hypot(1, 1.5) };
    const one = { r: source.r + 0.2 * rise(0.31, 25), x: source.x + 0.2 * 0.048 };
    near(feeder.atEnd.lineToLine?.value, 240 / Math.hypot(one.r, one.x), 1e-6);
    const two = { r: one.r + 0.2 * rise(0.49, 25), x: one.x + 0.2 * 0.051 };
    near(rv.atEnd.lineToLine?.value, 240 / Math.hypot(two.r, two.x), 1e-6);
    expect(rv.atStart).toEqual(feeder.atEnd);
  });
  it("the ground-fault loop goes out in the hot and back in the grounding conductor at 75 °C, as a multiple of the breaker", () => {
    const { fault } = made(job({ ...TEN_KA, fault: { loop_ohms: 0.05 } })).circuits[0]!;
    const [r, x] = [0.05 + 0.1 * (0.49 + 1.2), 0.1 * (0.051 + 0.05)];
    near(fault?.loop?.amperes.value, 120 / Math.hypot(r, x), 1e-6);
    near(fault?.loop?.multiple.value, 120 / Math.hypot(r, x) / 50, 1e-6);
  });
  it("a transformer and its conductors: 50 kVA, 2 % less a tenth (tolerance, from memory) at X/R 1.5, 80 ft of 4/0 aluminum", () => {
    const conductors = [{ size: "4/0", length: "80 ft" }];
    const found = made(job({ fault: { transformer: { kva: 50, percent_z: 2, x_over_r: 1.5, conductors } } }));
    const ohms = (0.9 * (240 * 240 * 0.02)) / 50000;
    const r = ohms / Math.hypot(1, 1.5) + 0.16 * 0.1 * (1 - 0.0033 * 50);
    const x = (1.5 * ohms) / Math.hypot(1, 1.5) + 0.16 * 0.041;
    near(found.serviceFault?.point.lineToLine?.amperes.value, 240 / Math.hypot(r, x), 1e-6);
    expect(found.service.steps.map((step) => step.id)).toContain("service.fault.line-to-line.amperes");
  });
  it("two sets halve what they add", () => {
    const at = (sets: number) =>
      made(job({ fault: { transformer: { kva: 50, percent_z: 2, conductors: [{ size: "4/0", length: "80 ft", sets }] } } })).serviceFault!.point.lineToLine!
        .impedance;
    const bare = made(job({ fault: { transformer: { kva: 50, percent_z: 2 } } })).serviceFault!.point.lineToLine!.impedance;
    near(at(2).r.minus(bare.r).times(2).toFixed(), Number(at(1).r.minus(bare.r)), 1e-12);
  });
  it("no source, no figure", () => {
    const found = made(job());
    expect(found.serviceFault).toBeNull();
    expect(found.circuits[0]!.fault).toBeNull();
  });
  it("a longer feeder or run never gives more fault current", () =>
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 800 }), fc.integer({ min: 0, max: 400 }), (feet, more) => {
        const at = (length: number) => {
          const found = made(behindFeeder(TEN_KA, length)).circuits[0]!.fault!;
          return [found.atStart.lineToLine, found.atStart.lineToNeutral, found.atEnd.lineToLine, found.atEnd.lineToNeutral, found.loop!.amperes].map((w) =>
            Number(w!.value),
          );
        };
        const longer = at(feet + more);
        for (const [i, amperes] of at(feet).entries()) expect(longer[i]!).toBeLessThanOrEqual(amperes + 1e-9);
      }),
      { numRuns: 25 },
    ));
});

describe("the least source, which has to trip a breaker, apart from the greatest, which it has to interrupt", () => {
  const loop = (service: Written) => made(job(service)).serviceFault!;
  const amperes = (service: Written) => Number(loop(service).point.loop!.amperes.value);
  it("nobody gave it: 24 V by the service's rating, twice the 12 V between the ends of ANSI C84.1 range A; 200 A: 120 V / 0.12 Ω", () => {
    near(amperes(TEN_KA), 1000, 1e-9);
    near(amperes({ ...TEN_KA, rating: "100 A" }), 500, 1e-9);
    expect(loop(TEN_KA).leastBasis).toBe("bound");
    expect(made(job(TEN_KA)).assumptions.map(({ says }) => says)).toContainEqual(
      expect.stringMatching(/1,000 A taken to ground.*200 A service.*fault\.loop_ohms/),
    );
  });
  it.each([
    [0.99, 990],
    [1, 1000],
    [1.01, 1000],
  ])("never more than the greatest: %d kA available, %d A taken", (kA, least) => near(amperes({ fault_current_kA: kA }), least, 1e-6));
  it("by the meter: 120 V / 0.08 Ω, whole as resistance, and no bound is taken", () => {
    const found = loop({ ...TEN_KA, fault: { loop_ohms: 0.08 } });
    near(found.point.loop!.amperes.value, 1500, 1e-9);
    expect([found.leastBasis, found.point.loop!.impedance.x.toFixed()]).toEqual(["meter", "0"]);
    expect(found.assumptions.map(({ says }) => says).join()).not.toMatch(/weakest/);
    near(found.point.lineToLine!.amperes.value, 10000, 1e-6);
  });
  it("by the utility: 2.5 kA", () => {
    expect(loop({ ...TEN_KA, fault: { least_kA: 2.5 } }).leastBasis).toBe("utility");
    near(amperes({ ...TEN_KA, fault: { least_kA: 2.5 } }), 2500, 1e-9);
  });
  it("a reading alone works the loop and leaves what a breaker interrupts open", () => {
    const written = job({ fault: { loop_ohms: 0.08 } });
    expect(made(written).serviceFault!.point).toMatchObject({ lineToLine: null, lineToNeutral: null });
    // 120 V behind 0.08 Ω and the run: over 5 times 50 A, under 10.
    expect(verdict(written, "fault-loop")).toEqual(["needs-person"]);
    expect(verdict(written, "interrupting-rating")).toEqual(["needs-person"]);
  });
  it("a transformer: its impedance a tenth over the mark and 2 % ahead of it (common practice, no source), half a winding, by hand", () => {
    const found = loop({ fault: { transformer: { kva: 25, percent_z: 1.6, x_over_r: 2 } } });
    const base = (240 * 240) / 25000;
    const [own, ahead] = [base * 0.016 * 1.1, base * 0.02];
    const r = (0.375 * own) / Math.hypot(1, 2) + (0.25 * ahead) / Math.hypot(1, 1.5);
    const x = (0.3 * 2 * own) / Math.hypot(1, 2) + (0.25 * 1.5 * ahead) / Math.hypot(1, 1.5);
    near(found.point.loop!.amperes.value, 120 / Math.hypot(r, x), 1e-6);
    expect(found.leastBasis).toBe("transformer");
  });
  it("told twice, or more than the greatest, is told with its place", () => {
    const paths = (service: Written) => {
      const read = readJob(stringify(job(service)));
      return read.ok ? [] : read.issues.map((issue) => issue.path);
    };
    expect(paths({ ...TEN_KA, fault: { least_kA: 2, loop_ohms: 0.05 } })).toEqual(["service.fault"]);
    expect(paths({ ...TEN_KA, fault: { least_kA: 10.1 } })).toEqual(["service.fault.least_kA"]);
    expect(paths({ ...TEN_KA, fault: { least_kA: 10 } })).toEqual([]);
    expect(paths({ fault: { least_kA: 9, utility: { kA: 8, line_to_neutral_kA: 9 } } })).toEqual([]);
  });
});

describe("interrupting rating at the panel a breaker stands in", () => {
  const verdicts = (kA: number, service = TEN_KA) => verdict(behindFeeder(service, 100, kA), "interrupting-rating");
  it("the feeder's breaker at the service panel: 10 kA serves 10 kA, 9.9 does not; the shed's 10 kA serves what is left there", () => {
    expect(verdicts(10)).toEqual(["pass", "pass"]);
    expect(verdicts(9.9)).toEqual(["fail", "pass"]);
  });
  it("42 kA at the service leaves less than 10 kA at the shed after 100 ft of 4 AWG", () =>
    expect(verdicts(42, { fault_current_kA: 42 })).toEqual(["pass", "pass"]));
  it("nobody said", () => expect(verdict(job(), "interrupting-rating")).toEqual(["needs-person"]));
});

describe("the fault loop check, 5 times the rating (common practice, no source)", () => {
  // 120 V behind 0.1 Ω of 6 and 10 AWG copper a hundred feet: find the length at which 250 A flow, by hand:
  // |Zs + n (0.00169 + j 0.000101)| = 0.48 with Zs = 0.05 Ω measured, or 0.12 Ω, the bound for 200 A; resistance both.
  const [a, b] = [0.00169, 0.000101];
  const feet = (source: number, ohms = 0.48) => (-source * a + Math.sqrt((source * a) ** 2 - (a * a + b * b) * (source ** 2 - ohms ** 2))) / (a * a + b * b);
  const at = (length: number, fault: Written) => {
    const route = [stretch(`${length} ft`, { conductors: { size: "6", grounding: "10" } })];
    return verdict(job({ ...TEN_KA, fault }, [rv50({ route })]), "fault-loop");
  };
  it("500 A at ten times: pass; just past that length the curve decides", () => {
    expect(at(Math.floor(feet(0.05, 0.24)), { loop_ohms: 0.05 })).toEqual(["pass"]);
    expect(at(Math.ceil(feet(0.05, 0.24)), { loop_ohms: 0.05 })).toEqual(["needs-person"]);
  });
  it("just short of the length: by the curve; just past it: caution", () => {
    expect(at(Math.floor(feet(0.05)), { loop_ohms: 0.05 })).toEqual(["needs-person"]);
    expect(at(Math.ceil(feet(0.05)), { loop_ohms: 0.05 })).toEqual(["caution"]);
  });
  it("behind the bound alone: just short, the curve; just past, somebody has to measure", () => {
    expect(at(Math.floor(feet(0.12)), {})).toEqual(["needs-person"]);
    expect(at(Math.ceil(feet(0.12)), {})).toEqual(["needs-person"]);
  });
  it("a generator's inlet is fed from its far end", () => {
    const inlet = rv50({ serves: "generator-inlet", current: "30 A", nameplate: { load: "7 kW", neutral_bonded: false, transfer: "interlock" } });
    inlet.breaker = { ...inlet.breaker, rating: "30 A" };
    expect(verdict(job(TEN_KA, [inlet]), "fault-loop")).toEqual(["not-applicable"]);
  });
  it("no source: a person", () => expect(verdict(job(), "fault-loop")).toEqual(["needs-person"]));
});

describe("service conductors and the electrode conductor", () => {
  it.each([
    ["200 A: 4/0 aluminum, 180 A against 166 (Table 310.12)", { conductors: { size: "4/0" } }, "pass"],
    ["200 A: 3/0 aluminum, 155 A", { conductors: { size: "3/0" } }, "fail"],
    ["200 A: 2/0 copper, 175 A", { conductors: { size: "2/0", material: "copper" } }, "pass"],
    ["200 A: 1/0 copper, 150 A", { conductors: { size: "1/0", material: "copper" } }, "fail"],
    ["60 A: not for the rule", { rating: "60 A", conductors: { size: "4/0" } }, "needs-person"],
    ["not given", {}, "not-applicable"],
  ])("%s: %s", (_, service, expected) => expect(verdict(job(service), "service-conductor")).toEqual([expected]));
  const electrode = (on: Written) => verdict(job({ conductors: { size: "4/0" }, electrode: on }), "electrode-conductor");
  it.each([
    ["4/0 aluminum asks 4 AWG copper (Table 250.66)", { electrodes: ["water-pipe"], size: "4" }, "pass"],
    ["6 AWG to a water pipe is too small", { electrodes: ["water-pipe"], size: "6" }, "fail"],
    ["6 AWG to a rod alone serves (250.66(A))", { electrodes: ["rod"], size: "6" }, "pass"],
    ["8 AWG to a rod does not", { electrodes: ["rod"], size: "8" }, "fail"],
    ["size not told", { electrodes: ["rod"] }, "needs-person"],
  ])("%s: %s", (_, on, expected) => expect(electrode(on)).toEqual([expected]));
});

describe("least service", () => {
  it.each([
    ["150 A for 128 A", { rating: "150 A" }, "pass"],
    ["125 A for 128 A", { rating: "125 A" }, "fail"],
    ["a service that stands", { rating: "60 A", load_method: "existing-dwelling" }, "not-applicable"],
  ])("%s: %s", (_, service, expected) => expect(verdict(job(service), "service-least-rating")).toEqual([expected]));
  it("never under 100 A for a house (230.79(C))", () => {
    const small = { rating: "60 A", dwelling: { floor_area: "600 ft2" } };
    expect(verdict(job(small, [ev]), "service-least-rating")).toEqual(["fail"]);
    expect(made(job(small, [ev])).service.leastRating?.value).toBe("100");
  });
});

describe("what the reader refuses", () => {
  const issues = (written: Written) => {
    const read = readJob(stringify(written));
    return read.ok ? [] : read.issues;
  };
  it("a whole-house method without the house, and two sources of fault current", () => {
    expect(issues(job({ dwelling: undefined }))).toHaveLength(1);
    expect(issues(job({ ...TEN_KA, fault: { utility: { kA: 8 } } }))).toHaveLength(1);
  });
});

describe("every line of a job with all of it", () => {
  const all = behindFeeder({
    fault: { transformer: { kva: 25, percent_z: 1.8, conductors: [{ size: "2/0", length: "60 ft" }] } },
    conductors: { size: "4/0" },
    electrode: { electrodes: ["rod"] },
    managed: { setpoint: "40 A", citation: "listing" },
    dwelling: { ...HOUSE, appliances: [{ name: "Disposer", load: "900 VA", motor: true }], climate: [{ name: "AC", kind: "cooling", load: "5 kVA" }] },
  });
  const numeric = (steps: readonly Worked[]) => steps.filter((step) => step.unit !== "AWG/kcmil" && step.rounding === null);
  it.each(EDITIONS)("in %s is cited or derived", (edition) => {
    for (const method of ["standard", "optional"]) {
      const found = made({ ...all, service: { ...all.service, load_method: method } }, edition);
      const idle = found.service.steps.filter((step) => step.citations.length + step.inputs.length === 0 && step.value !== "0");
      expect(idle.map((step) => step.id)).toEqual([]);
    }
  });
  it("fault and alternating-current drop lines come out again by an independent evaluator", () => {
    const found = made({ ...all, drop: { method: "ac-exact", power_factor: 0.9 } });
    const steps = numeric([
      ...found.serviceFault!.steps,
      ...found.feeders[0]!.fault!.steps,
      ...found.circuits[0]!.fault!.steps,
      ...found.circuits[0]!.drop.steps,
    ]);
    expect(steps.length).toBeGreaterThan(50);
    for (const step of steps.filter((s) => s.unit !== "%")) near(redo(step.expression), Number(step.value), Math.max(2e-7, Number(step.value) * 0.002));
  });
});
