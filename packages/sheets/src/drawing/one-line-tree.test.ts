import { describe, expect, it } from "vitest";
import { designWith } from "../../test/plain-job.js";
import { supplyOf } from "./one-line-tree.js";

function rowOf(gfci: boolean, device: string, more: object = {}) {
  const route = [{ name: "wall", place: "indoors", method: "NM-B", length: "20 ft" }];
  const breaker = { rating: "20 A", poles: 1, spaces: [1], gfci };
  const [row] = supplyOf(designWith([{ id: "c", name: "C", serves: "receptacle-20", gfci_device: device, breaker, route, ...more }])).bus.rows;
  if (row?.end.is !== "outlet") throw new Error("not an outlet");
  return { breaker: row.breaker, outlet: row.end.words.slice(1, -1) };
}
const WIRES = "20 A, 120 V, 3 wires";

describe("ground-fault protection on the one-line", () => {
  it.each([
    ["none", []],
    ["receptacle", ["GFCI receptacle"]],
    ["dead-front", ["GFCI at dead-front"]],
    ["disconnect", ["GFCI at disconnect"]],
  ])("%s: stands where it sits, on a line of its own", (device, says) => {
    expect(rowOf(false, device)).toEqual({ breaker: "20 A, 1P, space 1", outlet: [WIRES, ...says] });
  });
  it("in the breaker: stands at the breaker alone", () => {
    expect(rowOf(true, "none")).toEqual({ breaker: "20 A, 1P, GFCI, space 1", outlet: [WIRES] });
  });
});

describe("what opens a circuit at its far end", () => {
  it.each([
    [{ stands_on: "post", disconnect_there: true }, ["disconnect at the post"]],
    [{ stands_on: "other-building", disconnect_there: true }, ["disconnect at the building"]],
    [{ stands_on: "post" }, []],
    [{ stands_on: "post", disconnect_there: false }, []],
  ])("%j", (told, says) => expect(rowOf(true, "none", told).outlet).toEqual([WIRES, ...says]));
});

describe("wiring on the one-line", () => {
  const sizesOf = (route: readonly object[]) =>
    supplyOf(designWith([{ id: "c", name: "C", serves: "rv-50", current: "50 A", breaker: { poles: 2, spaces: [1, 3], gfci: true }, route }])).bus.rows[0]
      ?.sizes;
  const wire = { conductors: { size: "6", grounding: "10" } };
  const raceway = (name: string, trade_size: string, length = "10 ft") => ({ name, place: "outdoors", method: "PVC-80", length, trade_size, ...wire });

  // Two hots and a neutral; Table 250.122: 10 AWG copper to 60 A, in the cable too.
  it("count, size, metal, insulation, ground, and what it lies in; a cable by its kind", () => {
    expect(sizesOf([{ name: "Basement", place: "indoors", method: "NM-B", length: "30 ft", conductors: { size: "6" } }, raceway("Wall", "1")])).toEqual([
      "W1: 3 × 6 AWG Cu, G 10 AWG, NM-B",
      "W2: 3 × 6 AWG Cu THWN-2, G 10 AWG, 1 in PVC-80",
    ]);
  });
  it("stretches alike are told once", () => {
    const says = "3 × 6 AWG Cu THWN-2, G 10 AWG";
    expect(sizesOf([raceway("A", "1"), raceway("B", "1-1/4"), raceway("C", "1", "12 ft")])).toEqual([
      `W1, W3: ${says}, 1 in PVC-80`,
      `W2: ${says}, 1-1/4 in PVC-80`,
    ]);
  });
});
