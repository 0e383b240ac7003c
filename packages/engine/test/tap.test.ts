import { describe, expect, it } from "vitest";
import { feederTap } from "../src/sizing/tap.js";

const edition = "2023" as const;
const id = "x";

describe("feeder tap", () => {
  const tap = {
    id,
    feederDevice: 400,
    load: 30,
    endRating: 30,
    tapAmpacity: 150,
    endsInOneDevice: true,
    leavesEnclosure: true,
    inRaceway: true,
    edition,
  } as const;
  it("400 A: a tenth, 40 A, to 10 ft; a third, 133.33 A, to 25 ft (EC&M, https://ecmweb.com/national-electrical-code/article/21234555/nec-rules-for-tapping-feeders)", () => {
    expect(Number(feederTap({ ...tap, feet: 10 }).least?.value)).toBe(40);
    expect(Number(feederTap({ ...tap, feet: 10.1 }).least?.value)).toBeCloseTo(133.33, 2);
    expect(Number(feederTap({ ...tap, feet: 25 }).least?.value)).toBeCloseTo(133.33, 2);
    expect(feederTap({ ...tap, feet: 25.1 })).toEqual({ rule: null, least: null, short: ["too-long"] });
  });
  it("300 A: not under 30 A to 10 ft (Mike Holt Forums, https://forums.mikeholt.com/threads/10-tap-rule.107896/)", () => {
    const at = (tapAmpacity: number) => feederTap({ ...tap, feederDevice: 300, feet: 10, load: 20, endRating: 20, tapAmpacity }).short;
    expect([29, 30, 31].map((a) => at(a).length)).toEqual([1, 0, 0]);
  });
  it("a 25 ft tap ends in one device not over its ampacity (EC&M, https://ecmweb.com/national-electrical-code/qa/article/20900153/code-qa-25-ft-tap-rule)", () => {
    expect(feederTap({ ...tap, feet: 20, endRating: 150 }).short).toEqual([]);
    expect(feederTap({ ...tap, feet: 20, endRating: 175 }).short).toEqual(["device-over-ampacity"]);
    expect(feederTap({ ...tap, feet: 20, endsInOneDevice: false }).short).toEqual(["several-devices"]);
    expect(feederTap({ ...tap, feet: 10, endsInOneDevice: false }).short).toEqual([]);
  });
  it("inside the enclosure the tenth does not bind; outside it wants a raceway", () => {
    expect(feederTap({ ...tap, feet: 5, leavesEnclosure: false, inRaceway: false, tapAmpacity: 30 }).short).toEqual([]);
    expect(feederTap({ ...tap, feet: 5, inRaceway: false }).short).toEqual(["not-in-raceway"]);
  });
});
