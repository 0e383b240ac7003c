import fc from "fast-check";
import { abs, add, type Complex, complex, multiply } from "mathjs";
import { describe, expect, it } from "vitest";
import { type AcSegment, acDrop, acLostVolts, threeWireDrops } from "../src/sizing/ac-drop.js";
import { longestAcRuns } from "../src/sizing/ac-longest-run.js";
import type { AcDropMethod } from "../src/sizing/drop-method.js";
import { DROP_METHODS, isAcMethod } from "../src/sizing/drop-method.js";
import { loopImpedance } from "../src/sizing/impedance.js";
import { dcResistance, temperatureFactor } from "../src/sizing/resistance.js";
import { readCell } from "../src/tables/code-table.js";
import { AC_IMPEDANCE, CONDUIT_MATERIALS, conduitMaterial, impedanceColumns } from "../src/tables/impedance.js";
import type { Size } from "../src/tables/size.js";
import { redo } from "./redo.js";

const edition = "2023" as const;
const sizes = Object.keys(AC_IMPEDANCE.rows) as Size[];
const near = (actual: string | number, expected: number, tolerance: number) => expect(Math.abs(Number(actual) - expected)).toBeLessThanOrEqual(tolerance);

describe("Table 9, rows as printed (studylib.net/doc/18564968, brunsengineering.com/nec-table-9)", () => {
  it.each([
    ["14", "xPvcAl", "0.058"],
    ["12", "rCuPvc", "2"],
    ["6", "rCuSteel", "0.49"],
    ["6", "xSteel", "0.064"],
    ["1/0", "rAlAl", "0.21"],
    ["250", "rCuSteel", "0.054"],
    ["250", "xSteel", "0.052"],
    ["1000", "rAlPvc", "0.023"],
  ] as const)("%s %s is %s", (row, column, value) => expect(readCell(AC_IMPEDANCE, row, column, edition)?.value).toBe(value));
  it("has no aluminum in 14 AWG", () => expect(readCell(AC_IMPEDANCE, "14", "rAlPvc", edition)).toBeNull());
  it("each effective Z is R × 0.85 + X × sin(acos 0.85) within the rounding of R and of Z", () => {
    const ulp = (text: string) => 10 ** -(text.split(".")[1]?.length ?? 0);
    // A figure printed "2" for 2.0 keeps one decimal on the page.
    const half = (text: string) => Math.min(ulp(text), Number(text) >= 1 ? 0.1 : 1) / 2;
    for (const row of sizes)
      for (const metal of ["copper", "aluminum"] as const)
        for (const conduit of CONDUIT_MATERIALS) {
          const at = impedanceColumns(metal, conduit);
          const [r, x, z] = [at.r, at.x, at.z].map((column) => readCell(AC_IMPEDANCE, row, column, edition)?.value);
          if (r === undefined || x === undefined || z === undefined) continue;
          near(z, Number(r) * 0.85 + Number(x) * Math.sin(Math.acos(0.85)), half(r) * 0.85 + half(z) + 0.0005);
        }
  });
  it("reads a metal raceway as steel, all else as PVC", () => {
    expect(["EMT", "RMC", "IMC", "FMC"].map(conduitMaterial)).toEqual(["steel", "steel", "steel", "steel"]);
    expect(["PVC-40", "PVC-80", "NM-B", "UF-B", "LFNC-B"].every((method) => conduitMaterial(method) === "PVC")).toBe(true);
  });
});

describe("direct-current resistance at a temperature", () => {
  it("26.5 A over 145 ft of 8 AWG: 5.98 V (exam answer, https://mis.kyeop.go.ke/shelf/51066530)", () => {
    const one = dcResistance({ id: "x", label: "x", size: "8", material: "copper", celsius: 75, feet: 145, edition })!;
    near(2 * 26.5 * Number(one.value), 5.98, 0.01);
  });
  it("1200 W at 120 V, 300 ft of 12 AWG solid coated: 108 V left (Penn Foster items, https://sellfy.com/p/Morr/)", () => {
    const one = dcResistance({ id: "x", label: "x", size: "12", material: "copper", celsius: 75, feet: 300, solid: true, coated: true, edition })!;
    near(120 - 2 * 10 * Number(one.value), 108, 0.5);
  });
  it("is Table 8 itself at 75 °C, 0.00323 a degree for copper and 0.00330 for aluminum (Table 8 note)", () => {
    expect(temperatureFactor("copper", 75).toFixed()).toBe("1");
    expect(temperatureFactor("copper", 25).toFixed()).toBe("0.8385");
    expect(temperatureFactor("aluminum", 25).toFixed()).toBe("0.835");
    expect(temperatureFactor("copper", 90).toFixed()).toBe("1.04845");
    expect(() => temperatureFactor("copper", -400)).toThrow(RangeError);
  });
  it("prints what a pencil redoes; null for a conductor the table lacks", () => {
    const one = dcResistance({ id: "x", label: "x", size: "6", material: "aluminum", celsius: 40, feet: 123.5, parallel: 1, edition })!;
    near(redo(one.expression), Number(one.value), 1e-9);
    expect(dcResistance({ id: "x", label: "x", size: "6", material: "copper", celsius: 40, feet: 1, solid: true, edition })).toBeNull();
  });
});

const six: AcSegment = { size: "6", material: "copper", conduit: "PVC", feet: 100 };

describe("published drops by Table 9", () => {
  // The example takes one way; a two-wire run is twice it.
  const example = { current: 50, powerFactor: 0.65, sourceVolts: 240, segments: [{ ...six, size: "1/0", feet: 1000 } as const], edition };
  it("50 A at 0.65 over 1000 ft of 1/0 in PVC: 5.572 V one way (by hand from Table 9, PVC: 0.12 × 0.65 + 0.044 × 0.76 Ω a 1000 ft)", () =>
    near(
      acLostVolts({ ...example, method: "ac-effective" })!
        .div(2)
        .toString(),
      5.572,
      0.03,
    ));
  it("the same thread's |I Z| of 6.39 V one way bounds the exact drop from above", () => {
    const exact = Number(acLostVolts({ ...example, method: "ac-exact" })) / 2;
    expect(exact).toBeLessThan(6.39);
    expect(exact).toBeGreaterThan(5.55);
  });
});

/** Float re-computation from the printed table figures alone, by complex arithmetic. */
function impedanceOf(segments: readonly AcSegment[], neutral: boolean): Complex {
  const one = (segment: AcSegment, size: Size): Complex => {
    const at = impedanceColumns(segment.material, segment.conduit);
    const alpha = segment.material === "copper" ? 0.00323 : 0.0033;
    const factor = 1 + alpha * (Number(segment.celsius ?? 75) - 75);
    const ways = Number(segment.feet) / 1000 / (segment.parallel ?? 1);
    return complex(
      Number(readCell(AC_IMPEDANCE, size, at.r, edition)!.value) * factor * ways,
      Number(readCell(AC_IMPEDANCE, size, at.x, edition)!.value) * ways,
    );
  };
  return segments.reduce<Complex>((sum, s) => add(add(sum, one(s, s.size)), one(s, neutral ? (s.neutral ?? s.size) : s.size)) as Complex, complex(0, 0));
}

const segment = fc.record({
  size: fc.constantFrom<Size>("10", "8", "6", "4", "2", "1/0", "4/0", "500"),
  neutral: fc.option(fc.constantFrom<Size>("10", "8", "6", "1/0"), { nil: undefined }),
  material: fc.constantFrom("copper" as const, "aluminum" as const),
  conduit: fc.constantFrom(...CONDUIT_MATERIALS),
  feet: fc.integer({ min: 1, max: 150 }),
  celsius: fc.integer({ min: -20, max: 90 }),
  parallel: fc.integer({ min: 1, max: 3 }),
}) as fc.Arbitrary<AcSegment>;
const load = fc.record({
  current: fc.integer({ min: 1, max: 50 }),
  powerFactor: fc.integer({ min: 50, max: 100 }).map((n) => n / 100),
  sourceVolts: fc.constantFrom(120, 240),
  segments: fc.array(segment, { minLength: 1, maxLength: 4 }),
});
const methods: readonly AcDropMethod[] = ["ac-effective", "ac-exact"];

describe("exact phasor drop", () => {
  it("VR + I Z, by complex arithmetic, has the source's magnitude within 1e-9", () =>
    fc.assert(
      fc.property(load, (given) => {
        const found = acDrop({ id: "x", label: "x", ...given, method: "ac-exact", edition });
        if (found === null) return;
        const receiving = given.sourceVolts - Number(found.drop.value);
        const theta = -Math.acos(given.powerFactor);
        const current = complex({ r: given.current, phi: theta });
        const source = add(complex(receiving, 0), multiply(current, impedanceOf(given.segments, true))) as Complex;
        near(abs(source) as unknown as number, given.sourceVolts, 1e-9);
      }),
    ));
  it("at unity power factor through resistance and reactance, redone by hand: √(240² − (I X)²) − I R", () => {
    const drop = acLostVolts({ current: 50, powerFactor: 1, sourceVolts: 240, segments: [six], method: "ac-exact", edition })!;
    near(drop.toString(), 240 - (Math.sqrt(240 ** 2 - (50 * 0.0102) ** 2) - 50 * 0.098), 1e-9);
  });
  it("is never less than the effective method's, which leaves the quadrature out", () =>
    fc.assert(
      fc.property(load, (given) => {
        const [effective, exact] = methods.map((method) => acLostVolts({ ...given, method, edition }));
        if (exact) expect(exact.minus(effective!).toNumber()).toBeGreaterThanOrEqual(-1e-12);
      }),
    ));
  it("has no answer when the source cannot drive the current that far", () =>
    expect(
      acLostVolts({ current: 50, powerFactor: 0.9, sourceVolts: 120, segments: [{ ...six, size: "14", feet: 2000 }], method: "ac-exact", edition }),
    ).toBeNull());
  it("has no answer for a size Table 9 lacks", () =>
    expect(acLostVolts({ current: 50, powerFactor: 0.9, sourceVolts: 120, segments: [{ ...six, size: "700" }], method: "ac-effective", edition })).toBeNull());
  it("refuses a power factor over 1", () =>
    expect(() => acLostVolts({ current: 1, powerFactor: 1.01, sourceVolts: 120, segments: [six], method: "ac-exact", edition })).toThrow(RangeError));
});

describe("whatever the run", () => {
  it("longer or hotter never loses less", () =>
    fc.assert(
      fc.property(load, fc.integer({ min: 0, max: 60 }), fc.integer({ min: 0, max: 20 }), (given, feet, degrees) => {
        for (const method of methods) {
          const plain = acLostVolts({ ...given, method, edition });
          const grown = (change: (s: AcSegment) => Partial<AcSegment>) =>
            acLostVolts({ ...given, segments: given.segments.map((s) => ({ ...s, ...change(s) })), method, edition });
          const longer = grown((s) => ({ feet: Number(s.feet) + feet }));
          const hotter = grown((s) => ({ celsius: Number(s.celsius) + degrees }));
          if (plain === null) continue;
          for (const worse of [longer, hotter]) if (worse !== null) expect(worse.minus(plain).toNumber()).toBeGreaterThanOrEqual(-1e-12);
        }
      }),
    ));
  it("is free of units: volts and amperes times k lose k times the volts; k times the feet in k times the sets lose the same", () =>
    fc.assert(
      fc.property(load, fc.integer({ min: 2, max: 7 }), (given, k) => {
        for (const method of methods) {
          const plain = acLostVolts({ ...given, method, edition });
          const scaled = acLostVolts({ ...given, current: given.current * k, sourceVolts: given.sourceVolts * k, method, edition });
          const spread = acLostVolts({
            ...given,
            segments: given.segments.map((s) => ({ ...s, feet: Number(s.feet) * k, parallel: (s.parallel ?? 1) * k })),
            method,
            edition,
          });
          expect(scaled === null).toBe(plain === null);
          if (plain === null || scaled === null || spread === null) continue;
          near(scaled.div(k).minus(plain).toString(), 0, 1e-9);
          near(spread.minus(plain).toString(), 0, 1e-9);
        }
      }),
    ));
  it("a chain cut in two loses what the whole does", () =>
    fc.assert(
      fc.property(load, (given) => {
        const cut = given.segments.flatMap((s) => [
          { ...s, feet: Number(s.feet) * 0.25 },
          { ...s, feet: Number(s.feet) * 0.75 },
        ]);
        for (const method of methods) {
          const [whole, halves] = [given.segments, cut].map((segments) => acLostVolts({ ...given, segments, method, edition }));
          if (whole && halves) near(whole.minus(halves).toString(), 0, 1e-9);
        }
      }),
    ));
  it("every line printed, redone by an independent evaluator, gives its value", () =>
    fc.assert(
      fc.property(load, (given) => {
        for (const method of methods) {
          const found = acDrop({ id: "x", label: "x", ...given, method, edition });
          for (const step of found ? [found.resistance, found.reactance, found.drop] : [])
            near(redo(step.expression), Number(step.value), Math.max(0.002, Number(step.value) * 0.001));
        }
      }),
    ));
});

describe("120/240 V three-wire", () => {
  const given = { id: "x", label: "x", current: 50, powerFactor: 1, lineToLineVolts: 240, method: "ac-effective", edition } as const;
  it("balanced and worst leg lose the same volts with equal conductors: twice the per cent on the leg", () => {
    const drops = threeWireDrops({ ...given, segments: [six] })!;
    // 2 × 50 A × 0.49 Ω / 1000 ft × 100 ft by Table 9.
    expect(drops.balanced.drop.value).toBe("4.9");
    expect(drops.worstLeg.drop.value).toBe("4.9");
  });
  it("a smaller neutral tells on the leg alone", () => {
    const drops = threeWireDrops({ ...given, segments: [{ ...six, neutral: "8" }] })!;
    expect(drops.balanced.drop.value).toBe("4.9");
    // 50 A × (0.049 + 0.078) Ω.
    expect(drops.worstLeg.drop.value).toBe("6.35");
  });
});

describe("longest run", () => {
  it.each(methods)("%s: at the length found the drop is within the limit, one foot more is over it", (method) => {
    const given = { current: 40, powerFactor: 0.9, sourceVolts: 240, method, edition } as const;
    const like = { material: "copper", conduit: "steel" } as const;
    for (const { size, feet } of longestAcRuns({ ...given, like, limitPercent: 3, sizes: ["10", "6", "4"] })) {
      const drop = (n: number) => Number(acLostVolts({ ...given, segments: [{ ...like, size, feet: n }] }));
      expect(drop(Number(feet))).toBeLessThanOrEqual(7.2);
      expect(drop(Number(feet) + 1)).toBeGreaterThan(7.2);
    }
  });
  it("says null for a size Table 9 lacks", () =>
    expect(
      longestAcRuns({
        current: 1,
        powerFactor: 1,
        sourceVolts: 240,
        method: "ac-exact",
        edition,
        like: { material: "copper", conduit: "PVC" },
        limitPercent: 3,
        sizes: ["700"],
      }),
    ).toEqual([{ size: "700", feet: null }]));
});

it("of the four methods two want a power factor", () => expect(DROP_METHODS.filter(isAcMethod)).toEqual(["ac-effective", "ac-exact"]));

describe("conductors in series", () => {
  const run = (feet: number, size: Size = "6") => ({ size, material: "copper", conduit: "PVC", feet }) as const;
  it("a way back like the way there is written twice over, an unlike one by itself", () => {
    // Table 9, copper in PVC: 6 AWG 0.49 Ω, 10 AWG 1.2 Ω to 1000 ft; 2 × 0.49 × 0.024 = 0.02352, and 1.2 × 0.006 = 0.0072 more.
    const found = loopImpedance({ id: "loop", label: "Loop", runs: [run(24), run(24), run(6, "10")], edition });
    expect(found?.resistance).toMatchObject({ expression: "2 × 0.49 Ω / 1000 ft × 24 ft + 1.2 Ω / 1000 ft × 6 ft", value: "0.03072" });
  });
});
