import { describe, expect, it } from "vitest";
import type { Run, Segment } from "../src/job/schema.js";
import { pullsOf, raiseOverPulls } from "../src/sizing/pull-groups.js";
import type { Size } from "../src/tables/size.js";

type Part = readonly [method: string, more?: { readonly insulation?: string; readonly material?: string; readonly sets?: number }];
const PVC: Part = ["PVC-40"];
const NM: Part = ["NM-B"];

/** A route of parts a, b, c …, with boxes after those named. */
function run(parts: readonly Part[], boxesAfter: readonly string[] = []): Run {
  const route = parts.map(([method, { insulation = "THWN-2", material = "copper", sets } = {}], i) => ({
    name: "abcdef"[i]!,
    method,
    sets,
    conductors: { insulation, material },
  }));
  return { route: route as unknown as Segment[], boxes: boxesAfter.map((after) => ({ after })) } as unknown as Run;
}

describe("stretches drawn in together", () => {
  // 300.15: conductors are joined in boxes alone, so what differs without a box between is two pulls.
  it.each<readonly [string, Run, readonly (readonly number[])[]]>([
    ["two alike", run([PVC, PVC]), [[0, 1]]],
    ["another raceway of the same wires", run([PVC, ["EMT"]]), [[0, 1]]],
    ["a box between", run([PVC, PVC], ["a"]), [[0], [1]]],
    ["a box at the end", run([PVC, PVC], ["b"]), [[0, 1]]],
    ["another insulation", run([PVC, ["PVC-40", { insulation: "XHHW-2" }]]), [[0], [1]]],
    ["another metal", run([PVC, ["PVC-40", { material: "aluminum" }]]), [[0], [1]]],
    ["another number of sets", run([PVC, ["PVC-40", { sets: 2 }]]), [[0], [1]]],
    ["one set named and one not", run([PVC, ["PVC-40", { sets: 1 }]]), [[0, 1]]],
    ["a cable before", run([NM, PVC]), [[1]]],
    ["a cable between", run([PVC, NM, PVC]), [[0], [2]]],
    ["cables alone", run([NM, NM]), []],
  ])("%s", (_name, given, pulls) => expect(pullsOf(given)).toEqual(pulls));
});

describe("one size through a pull and through a cable", () => {
  it.each<readonly [string, Run, readonly (Size | null)[], readonly (Size | null)[]]>([
    ["a larger one behind", run([PVC, PVC]), ["6", "4"], ["4", "4"]],
    ["a larger one before", run([PVC, PVC]), ["4", "6"], ["4", "4"]],
    ["the largest in the middle", run([PVC, PVC, PVC]), ["8", "4", "6"], ["4", "4", "4"]],
    ["a box between", run([PVC, PVC], ["a"]), ["6", "4"], ["6", "4"]],
    ["raceways of unlike wires, though of one kind", run([PVC, ["PVC-40", { insulation: "XHHW-2" }]]), ["6", "4"], ["6", "4"]],
    ["one cable", run([NM, NM]), ["10", "8"], ["8", "8"]],
    ["one cable with a box between", run([NM, NM], ["a"]), ["10", "8"], ["10", "8"]],
    ["two cables", run([NM, ["UF-B"]]), ["10", "8"], ["10", "8"]],
    ["a cable and a raceway", run([NM, PVC]), ["6", "4"], ["6", "4"]],
    ["a raceway and a cable", run([PVC, NM]), ["4", "6"], ["4", "6"]],
    ["no size serves the first", run([PVC, PVC]), [null, "4"], [null, null]],
    ["no size serves the second", run([PVC, PVC]), ["4", null], [null, null]],
  ])("%s", (_name, given, least, raised) => expect(raiseOverPulls(given, least)).toEqual(raised));
});
