import { describe, expect, it } from "vitest";
import { widthOf, wrap } from "./lettering.js";

describe("a line broken by its width", () => {
  const text = "W2, W4: 3 × 6 AWG, 1 in PVC-80";
  it("keeps a number with its unit", () => {
    expect(wrap(text, widthOf("W2, W4: 3 × 6 AWG, 1"))).toEqual(["W2, W4: 3 × 6 AWG,", "1 in PVC-80"]);
    expect(wrap(text, widthOf("W2, W4: 3 × 6"))).toEqual(["W2, W4: 3 ×", "6 AWG, 1 in", "PVC-80"]);
  });
  it("breaks at every other space, of words that only begin like a unit too", () => {
    expect(wrap(text, widthOf(text))).toEqual([text]);
    expect(wrap("Bay 4 inside", widthOf("Bay 4 ins"))).toEqual(["Bay 4", "inside"]);
    expect(wrap("one in all", widthOf("one i"))).toEqual(["one", "in", "all"]);
  });
  it("cuts what is longer than the line", () => expect(wrap("WWWW", widthOf("WW")).join("|")).toBe("WW|WW"));
});
