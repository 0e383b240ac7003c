import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { written, writtenTemperature } from "./written-quantity.js";

const length = written("length", { max: 5000 });
const said = (schema: { safeParse: (v: unknown) => { success: boolean; error?: { issues: readonly { message: string }[] } } }, value: unknown) =>
  schema.safeParse(value).error?.issues[0]?.message;

// Exact factors, NIST SP 811 (2008) Appendix B.8: 1 ft = 0.3048 m, 1 in = 2.54 cm, 1 in³ = 16.387064 cm³, 1 ft² = 0.09290304 m².
describe("a written quantity", () => {
  it.each([
    ["85 ft", "length", 85],
    ["85ft", "length", 85],
    ["1,250 ft", "length", 1250],
    ["26 m", "length", 85.301837], // 26 / 0.3048 = 85.30183727…
    ["6 in", "length", 0.5],
    ["1-1/4 in", "depth", 1.25],
    ["3/4 in", "depth", 0.75],
    ["2 ft", "depth", 24],
    ["45.72 cm", "depth", 18], // 45.72 / 2.54
    ["1000 cm3", "volume", 61.023744], // 1000 / 16.387064 = 61.0237441…
    ["100 m2", "area", 1076.391042], // 100 / 0.09290304 = 1076.3910417…
    ["12 kVA", "power", 12000],
    ["4500 W", "power", 4500],
    ["0.05 kA", "current", 50],
  ] as const)("%s", (text, dimension, value) => expect(written(dimension, { max: 50_000 }).parse(text)).toBe(value));

  it.each([
    ["85", "has no unit"],
    ["85 furlongs", 'unit "furlongs" is not known'],
    ["85 A", 'unit "A" is not known'],
    ["ft", "is not a number and a unit"],
    ["NaN", "is not a number and a unit"],
    ["NaN ft", "is not a number and a unit"],
    ["Infinity ft", "is not a number and a unit"],
    ["1e400 ft", 'unit "e400 ft" is not known'],
    ["1/0 ft", "is not a number and a unit"],
    ["1.2.3 ft", "is not a number and a unit"],
    ["1,00 ft", "is not a number and a unit"],
    ["-5 ft", "outside 0 to 5000 ft"],
    ["5000.01 ft", "outside 0 to 5000 ft"],
    ["85 constructor", 'unit "constructor" is not known'],
    ["85 __proto__", 'unit "__proto__" is not known'],
  ])("refuses %s", (text, message) => expect(said(length, text)).toContain(message));

  it("takes both ends of its range", () => {
    expect(length.parse("0 ft")).toBe(0);
    expect(length.parse("5000 ft")).toBe(5000);
  });

  it.each([[85], [null], [true], [["85 ft"]]])("asks for a number and a unit in place of %s", (value) => expect(said(length, value)).toContain('"85 ft"'));

  it("gives a finite number in its range or a message, whatever the text", () => {
    fc.assert(
      fc.property(
        fc.oneof(
          fc.string(),
          fc.tuple(fc.double(), fc.constantFrom("ft", "m", "in", "mm", "'")).map(([n, u]) => `${n} ${u}`),
        ),
        (text) => {
          const result = length.safeParse(text);
          if (result.success) expect(result.data >= 0 && result.data <= 5000).toBe(true);
          else expect(result.error.issues[0]!.message).not.toBe("");
        },
      ),
    );
  });
});

// °C = (°F - 32) × 5/9, NIST SP 811 (2008) Appendix B.8.
describe("a written temperature", () => {
  it.each([
    ["104 °F", 40],
    ["122 °F", 50],
    ["86F", 30],
    ["40 °C", 40],
    ["-40 °F", -40],
    ["100 °F", 37.7778],
  ])("%s", (text, celsius) => expect(writtenTemperature.parse(text)).toBe(celsius));
  it.each(["104", "104 K", "hot", "NaN °C", "86 °C", "-61 °C", "1e9 °C"])("refuses %s", (text) =>
    expect(said(writtenTemperature, text)).toContain("is not a temperature"),
  );
});
