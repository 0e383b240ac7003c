import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { Decimal, decimal, print } from "../src/quantity.js";

describe("a quantity", () => {
  it.each(["", "abc", "1,000", "NaN", "Infinity", "1e999999999999999999"])("%j is none, however often it is asked", (text) => {
    for (let again = 0; again < 3; again++) expect(() => decimal(text)).toThrow();
  });
  it.each([Number.NaN, Number.POSITIVE_INFINITY])("nor is %d", (number) => expect(() => decimal(number)).toThrow(RangeError));
  it("keeps every digit of a numeral, read before or not", () =>
    fc.assert(
      fc.property(fc.integer({ min: -99_999_999, max: 99_999_999 }), fc.integer({ min: 0, max: 6 }), (whole, places) => {
        const text = new Decimal(whole).div(new Decimal(10).pow(places)).toFixed();
        for (let again = 0; again < 2; again++) expect(decimal(text).eq(new Decimal(text))).toBe(true);
      }),
    ));
  it("stays what it is after thousands of others were read", () => {
    const seven = decimal("7.25");
    for (let i = 0; i < 5000; i++) expect(decimal(`${i}.5`).toFixed()).toBe(`${i}.5`);
    expect(decimal("7.25").eq(seven)).toBe(true);
    expect(seven.toFixed()).toBe("7.25");
  });
});

describe("print", () => {
  it.each([
    ["0", 2, "0"],
    ["-0", 2, "0"],
    ["-0.004", 2, "0"],
    ["-0.005", 2, "-0.01"],
    ["0.005", 2, "0.01"],
    ["999", 2, "999"],
    ["999.999", 2, "1,000"],
    ["-1234567.5", 2, "-1,234,567.5"],
    ["1234.5678", 3, "1,234.568"],
    ["1234.5678", 0, "1,235"],
    ["12", 0, "12"],
  ])("%s to %d places: %s", (value, places, shown) => {
    expect(print(value, places)).toBe(shown);
    expect(print(new Decimal(value), places)).toBe(shown);
  });
  it("groups as a locale of the country does", () => {
    const shown = fc.integer({ min: -2_000_000_000, max: 2_000_000_000 }).map((number) => [print(number), number.toLocaleString("en-US")]);
    for (const [ours, locale] of fc.sample(shown, 300)) expect(ours).toBe(locale);
  });
});
