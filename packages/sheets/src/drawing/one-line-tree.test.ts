import { describe, expect, it } from "vitest";
import { designWith } from "../../test/plain-job.js";
import { supplyOf } from "./one-line-tree.js";

function rowOf(gfci: boolean, device: string) {
  const route = [{ name: "wall", place: "indoors", method: "NM-B", length: "20 ft" }];
  const breaker = { rating: "20 A", poles: 1, spaces: [1], gfci };
  const [row] = supplyOf(designWith([{ id: "c", name: "C", serves: "receptacle-20", gfci_device: device, breaker, route }])).bus.rows;
  if (row?.end.is !== "outlet") throw new Error("not an outlet");
  return { breaker: row.breaker, outlet: row.end.words[1] };
}

describe("ground-fault protection on the one-line", () => {
  it.each([
    ["none", ""],
    ["receptacle", ", GFCI"],
    ["dead-front", ", GFCI at dead-front"],
    ["disconnect", ", GFCI at disconnect"],
  ])("%s: stands where it sits", (device, says) => {
    expect(rowOf(false, device)).toEqual({ breaker: "20 A, 1P, space 1", outlet: expect.stringMatching(new RegExp(`wires${says}$`)) });
  });
  it("in the breaker: stands at the breaker alone", () => {
    expect(rowOf(true, "none")).toEqual({ breaker: "20 A, 1P, GFCI, space 1", outlet: expect.stringMatching(/wires$/) });
  });
});
