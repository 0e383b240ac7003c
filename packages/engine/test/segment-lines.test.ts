import { describe, expect, it } from "vitest";
import { unamended } from "../src/basis/basis.js";
import { design } from "../src/design.js";
import type { DesignedRun } from "../src/designed.js";
import { conditionsOf, requiredSize, type SegmentGiven } from "../src/sizing/segment.js";
import { plainJob } from "./plain-job.js";
import { readWritten } from "./read-written.js";

// Which lines a stretch has, in order, and what they say of it: by its place, its method and what is given.
// biome-ignore lint/suspicious/noExplicitAny: fields of a job as written
type Fields = Record<string, any>;

const breaker = { rating: "50 A", poles: 2, spaces: [1, 3], gfci: true };
const plain = { name: "A", place: "indoors", method: "EMT", length: "20 ft" };

function circuit(stretch: Fields): DesignedRun {
  const made = { id: "r", name: "C", serves: "rv-50", current: "50 A", breaker, route: [{ ...plain, ...stretch }] };
  return design({ job: readWritten(plainJob({ panel: { circuits: [made] } })) }).circuits[0]!;
}
function feeder(stretch: Fields): DesignedRun {
  const fed = { id: "shed", name: "Shed", bus: "100 A", spaces: 8, existing_load: "4 kVA" };
  const made = { id: "r", name: "F", building: "same", terminals_75C: true, breaker: { ...breaker, rating: "100 A" }, route: [{ ...plain, ...stretch }] };
  return design({ job: readWritten(plainJob({ panel: { feeders: [{ ...made, panel: fed }] } })) }).feeders[0]!;
}
const lines = (run: DesignedRun) => run.segments[0]!.steps.map(({ id }) => id.replace(/^r\.1\.?/, "")).join(" ");

describe("lines of a stretch", () => {
  const AMPACITY = "corrected terminal allowed";
  const FILL = "grounding area limit fill";
  const SUPPORTS = "support.within support.apart supports";
  it.each<readonly [string, DesignedRun, string]>([
    ["a raceway indoors", circuit({}), `${AMPACITY} ${FILL} ${SUPPORTS}`],
    ["in the ground: cover, and nothing to hang it by", circuit({ place: "buried", method: "PVC-40", cover: "18 in" }), `${AMPACITY} ${FILL} cover`],
    ["PVC outdoors grows", circuit({ place: "outdoors", method: "PVC-40" }), `${AMPACITY} ${FILL} ${SUPPORTS} expansion fittings`],
    ["4 ft of it under a quarter inch", circuit({ place: "outdoors", method: "PVC-40", length: "4 ft" }), `${AMPACITY} ${FILL} ${SUPPORTS} expansion`],
    [
      "by the temperatures of the place",
      circuit({ place: "outdoors", method: "PVC-80", temperature_span: { coldest: "0 F", hottest: "100 F" } }),
      `${AMPACITY} ${FILL} ${SUPPORTS} span expansion fittings`,
    ],
    ["PVC indoors does not", circuit({ method: "PVC-40" }), `${AMPACITY} ${FILL} ${SUPPORTS}`],
    ["a cable has no fill", circuit({ method: "NM-B" }), `${AMPACITY} grounding ${SUPPORTS}`],
    ["over a roof", circuit({ place: "outdoors", rooftop_height: "0.5 in" }), `rooftop ${AMPACITY} ${FILL} ${SUPPORTS}`],
    [
      "a neutral of its own",
      feeder({ conductors: { size: "1", neutral: "4" } }),
      `${AMPACITY} neutral.corrected neutral.terminal neutral.allowed ${FILL} ${SUPPORTS}`,
    ],
    ["two sets", feeder({ conductors: { size: "1/0" }, sets: 2 }), `${AMPACITY} sets-terminal sets ${FILL} ${SUPPORTS}`],
    ["two sets too small to be in parallel", feeder({ conductors: { size: "1" }, sets: 2 }), `${AMPACITY} ${FILL} ${SUPPORTS}`],
  ])("%s", (_name, run, expected) => expect(lines(run)).toBe(expected));
});

describe("a stretch as designed", () => {
  const of = (run: DesignedRun) => run.segments[0]!;
  it("sets together, at the terminals too: 2 × 150 A of 1/0 AWG copper at 75 °C (Table 310.16)", () => {
    const { sets, ampacity, terminal } = of(feeder({ conductors: { size: "1/0" }, sets: 2 }));
    expect([sets, ampacity?.value, terminal?.value]).toEqual([2, "300", "300"]);
    expect([ampacity?.label, terminal?.label]).toEqual(["2 sets in parallel of 1/0 AWG, ampacity", "2 sets in parallel of 1/0 AWG, ampacity at the terminals"]);
  });
  it("sets that may not be in parallel have no ampacity together", () => {
    const { ampacity, terminal } = of(feeder({ conductors: { size: "1" }, sets: 2 }));
    expect([ampacity, terminal]).toEqual([null, null]);
  });
  it("a neutral of its own is worked for itself: 85 A of 4 AWG at 75 °C", () => {
    expect(of(feeder({ conductors: { size: "1", neutral: "4" } })).neutral).toMatchObject({ size: "4", ampacity: { id: "r.1.neutral.allowed", value: "85" } });
    expect(of(feeder({})).neutral).toBeNull();
  });
  it.each<readonly [string, Fields, string, string]>([
    ["the least", {}, "10", "computed"],
    ["as given", { conductors: { grounding: "8" } }, "8", "given"],
    ["the cable's own, whatever is given", { method: "NM-B", conductors: { size: "6", grounding: "8" } }, "10", "cable"],
  ])("ground: %s", (_name, stretch, size, chosen) => expect(of(circuit(stretch)).grounding).toEqual({ size, chosen }));
  it("bends added, wet by its place, air taken and told", () => {
    expect(of(circuit({ bends: [90, 45] })).bendTotal).toBe(135);
    expect(of(circuit({})).bendTotal).toBe(0);
    expect([of(circuit({})).wet, of(circuit({ place: "outdoors" })).wet]).toEqual([false, true]);
  });
});

describe("the conditions of a stretch", () => {
  const basis = unamended("2023");
  const given = (hots: 1 | 2, neutral: boolean, stretch: Fields = {}): SegmentGiven => ({
    id: "s",
    path: "route[0]",
    segment: circuit(stretch).segments[0]!.segment,
    needs: { hots, neutral },
    rating: 50,
    demand: { load: 50, terminalLoad: 50, overcurrent: 50 },
    terminalC: 75,
    basis,
  });
  const counted = (...of: Parameters<typeof given>) => conditionsOf(given(...of)).currentCarrying;
  it("the neutral of two hots counts where electronic loads fill it, 310.15(E); that of one hot always; others beside them too", () => {
    expect([counted(2, true), counted(2, true, { neutral_nonlinear: true })]).toEqual([2, 3]);
    expect([counted(2, false, { neutral_nonlinear: true }), counted(1, true, { neutral_nonlinear: true })]).toEqual([2, 2]);
    expect(counted(2, true, { others: { current_carrying: 3, area_in2: 0.1 } })).toBe(5);
  });
  it("a cable is copper and its own insulation, at the air of its place", () => {
    const cable = conditionsOf(given(2, true, { method: "NM-B", place: "attic" }));
    expect(cable).toMatchObject({ material: "copper", insulation: "NM-B", ambientC: 55, wet: false, terminalC: 75 });
    expect(conditionsOf(given(2, true, { conductors: { material: "aluminum" } }))).toMatchObject({ material: "aluminum", insulation: "THWN-2", ambientC: 30 });
  });
  it("the least size: 8 AWG for 50 A at 75 °C terminals; of two sets no less than 1/0", () => {
    expect(requiredSize(given(2, true))).toBe("8");
    expect(requiredSize({ ...given(2, true), segment: { ...given(2, true).segment, sets: 2 } })).toBe("1/0");
    expect(requiredSize({ ...given(2, true), segment: { ...given(2, true).segment, sets: 1 } })).toBe("8");
  });
});
