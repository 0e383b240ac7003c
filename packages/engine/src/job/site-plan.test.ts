import { describe, expect, it } from "vitest";
import { sitePlan } from "./site-plan.js";

const lot = [
  ["0 ft", "0 ft"],
  ["80 ft", "0 ft"],
  ["80 ft", "36.576 m"],
  ["-6 in", "120 ft"],
];
const least = { lot, north: 0 };

describe("site plan", () => {
  it("brings written places to feet and fills the lists", () => {
    // 36.576 m are 120 ft exactly (0.3048 m to the foot, by definition).
    expect(sitePlan.parse(least)).toEqual({
      lot: [
        [0, 0],
        [80, 0],
        [80, 120],
        [-0.5, 120],
      ],
      outlines: [],
      points: [],
      routes: [],
      overhead: [],
      north: 0,
    });
  });

  it.each([
    ["a bare number", { ...least, lot: [[0, 0], ...lot.slice(1)] }],
    ["a lot of two corners", { ...least, lot: lot.slice(0, 2) }],
    ["a lot that repeats its first corner", { ...least, lot: [...lot, lot[0]] }],
    ["a lot along one line", { ...least, lot: [lot[0], lot[1], ["40 ft", "0 ft"]] }],
    ["a way that goes nowhere", { ...least, overhead: [[lot[0], lot[0]]] }],
    ["an unknown kind of point", { ...least, points: [{ kind: "tree", name: "Oak", at: lot[0] }] }],
    ["an unknown field", { ...least, street: "Elm" }],
    ["a route without its segment", { ...least, routes: [{ circuit: "rv", in_trench: true, points: lot.slice(0, 2) }] }],
  ])("refuses %s", (_, given) => {
    expect(sitePlan.safeParse(given).success).toBe(false);
  });

  it("takes a route with its rises", () => {
    const [route] = sitePlan.parse({
      ...least,
      routes: [{ circuit: "rv", segment: "Trench", in_trench: true, points: lot.slice(0, 2), rises: "6 ft" }],
    }).routes;
    expect(route).toEqual({
      circuit: "rv",
      segment: "Trench",
      in_trench: true,
      points: [
        [0, 0],
        [80, 0],
      ],
      rises: 6,
    });
  });
});
