import { describe, expect, it } from "vitest";
import { stringify } from "yaml";
import { design } from "../src/design.js";
import { readJob } from "../src/job/read.js";
import { outletUse } from "../src/readings/outlet-use.js";

// biome-ignore lint/suspicious/noExplicitAny: a job as written, bent by each test before it is read
type Written = any;

const run = (length: string) => [{ name: "way", place: "buried", method: "PVC-40", length, cover: "24 in" }];
const outlet = (id: string, serves: string, amperes: string, spaces: number[]): Written => ({
  id,
  name: id,
  serves,
  current: amperes,
  breaker: { poles: spaces.length, spaces, gfci: true },
  route: [{ name: "tail", place: "outdoors", method: "PVC-80", length: "3 ft" }],
});

function tree(fed: Written, feeder: Written = {}): Written {
  return {
    format: "branchwork-job/1",
    project: { title: "Tree", owner: "A. Nonesuch", site: "1 Example Way", preparer: { name: "A. Nonesuch", role: "owner" } },
    code: { edition: "2023" },
    service: {
      rating: "200 A",
      load_method: "measured-demand",
      measured: { peak: "8 kW", basis: "one-year", from: "the utility" },
      panel: {
        id: "house",
        name: "House",
        bus: "200 A",
        spaces: 30,
        feeders: [
          {
            id: "f",
            name: "Feeder",
            breaker: { poles: 2, spaces: [1, 3], gfci: false },
            building: "pedestal",
            route: run("100 ft"),
            panel: { id: "ped", name: "Pedestal", bus: "125 A", spaces: 8, ...fed },
            ...feeder,
          },
        ],
      },
    },
  };
}

function designed(job: Written) {
  const read = readJob(stringify(job));
  if (!read.ok) throw new Error(JSON.stringify(read.issues));
  return design({ job: read.job });
}
const stand = [outlet("rv50", "rv-50", "50 A", [1, 3]), outlet("rv30", "rv-30", "30 A", [2])];

describe("a feeder and the panel it feeds", () => {
  it("carries each leg's load: 12,000 VA in halves and 3,600 VA on the leg of space 2 (arithmetic by hand)", () => {
    const d = designed(tree({ circuits: stand }));
    expect(d.feeders).toHaveLength(1);
    const f = d.feeders[0]!;
    expect(f.legs.L1.value).toBe("9600");
    expect(f.legs.L2.value).toBe("6000");
    expect(f.load.value).toBe("15600");
    expect(Number(f.current)).toBe(80); // 9,600 VA / 120 V
    expect(f.rating).toBe("80"); // 240.6(A)
    expect(d.circuits.map((c) => c.panel)).toEqual(["ped", "ped"]);
  });

  it("that stands already: one line says which sizes were not read off it but taken", () => {
    const says = (feeder: Written) =>
      designed(tree({ circuits: stand }, feeder))
        .assumptions.filter(({ path }) => path === "f.existing")
        .map((a) => a.says);
    const breaker = { rating: "80 A", poles: 2, spaces: [1, 3], gfci: false };
    const read = { conductors: { size: "4", grounding: "8" }, trade_size: "1-1/4" };
    // 80 A over 100 ft asks 2 AWG for a drop of 3 % (3 AWG: 2 × 80 × 0.245 / 10 = 3.9 V of 120), its ground 16,510 × 66,360 / 52,620 = 20,821 cmil.
    expect(says({ existing: true })).toEqual([expect.stringMatching(/80 A breaker, 2 AWG conductors, 6 AWG ground, 1-1\/4 in raceway/)]);
    expect(says({ existing: true, breaker, route: [{ ...run("100 ft")[0], ...read }] })).toEqual([]);
    expect(says({ existing: true, breaker, route: [{ ...run("100 ft")[0], ...read, trade_size: undefined }] })).toEqual([
      expect.stringMatching(/as the least that serve: 1 in raceway\./),
    ]);
    expect(says({ existing: false })).toEqual([]);
  });

  it("counts one RV stand once by its largest outlet, 551.73(A): 12,000 VA for a site with 50 A", () => {
    const d = designed(tree({ circuits: stand }, { demand: "rv-site" }));
    expect(d.feeders[0]!.load.value).toBe("12000");
    expect(d.feeders[0]!.rating).toBe("50");
    expect(d.assumptions.some((a) => a.says.includes("551.73"))).toBe(true);
  });

  it("counts beside the stand what is no outlet of it, 551.73(A): EV supply of 32 A and a 20 A lighting circuit", () => {
    const others = [outlet("ev", "ev-supply", "32 A", [5, 7]), { ...outlet("lights", "general", "10 A", [6]) }];
    const { feeders, assumptions } = designed(tree({ circuits: [...stand, ...others] }, { demand: "rv-site" }));
    // 12,000 VA + 32 A × 240 V = 7,680 VA + 10 A × 120 V = 1,200 VA, by hand; the 30 A outlet alone is left out.
    expect(feeders[0]!.load.value).toBe("20880");
    expect(assumptions.find((a) => a.says.includes("551.73"))?.says).toContain("rv30 not added");
  });

  it("adds what is new, and not what the fed panel carried already, to the service", () => {
    const without = designed(tree({ circuits: stand }));
    const withOld = designed(tree({ circuits: stand, existing_load: "2400 VA" }));
    expect(withOld.feeders[0]!.load.value).toBe("18000");
    expect(withOld.service.with.value).toBe(without.service.with.value);
  });

  it("adds the feeder's drop to the circuit's", () => {
    const d = designed(tree({ circuits: stand }));
    const c = d.circuits[0]!;
    expect(d.feeders[0]!.drop.fromService).toBeNull();
    expect(Number(c.drop.fromService!.value)).toBeCloseTo(Number(d.feeders[0]!.drop.worstLegPercent.value) + Number(c.drop.worstLegPercent.value), 9);
  });

  it("takes 125 % of what is continuous, 215.3: EV supply of 48 A asks 60 A of its feeder", () => {
    const d = designed(tree({ circuits: [outlet("ev", "ev-supply", "48 A", [1, 3])] }));
    expect(d.feeders[0]!.rating).toBe("60");
    expect(d.feeders[0]!.terminalLoad).toBe("60");
  });

  it("goes on below: a panel behind a panel", () => {
    const inner = {
      id: "g",
      name: "Inner feeder",
      breaker: { poles: 2, spaces: [5, 7], gfci: false },
      building: "same",
      route: [{ name: "short", place: "indoors", method: "EMT", length: "20 ft" }],
      panel: { id: "deep", name: "Deep panel", bus: "125 A", spaces: 6, circuits: [outlet("far", "rv-30", "30 A", [1])] },
    };
    const d = designed(tree({ circuits: [stand[0]], feeders: [inner] }));
    expect(d.feeders.map((f) => f.run.id)).toEqual(["f", "g"]);
    expect(d.feeders[0]!.legs.L1.value).toBe("9600");
    const far = d.circuits.find((c) => c.circuit.id === "far")!;
    const sum = [d.feeders[0]!, d.feeders[1]!, far].reduce((total, r) => total + Number(r.drop.worstLegPercent.value), 0);
    expect(Number(far.drop.fromService!.value)).toBeCloseTo(sum, 9);
  });

  it("is worked at its rating while its panel carries nothing", () => {
    const d = designed(tree({ circuits: [], existing_load: undefined }, { breaker: { rating: "60 A", poles: 2, spaces: [1, 3], gfci: false } }));
    expect(d.feeders[0]!.current).toBe("60");
  });

  it("refuses an id used twice in the tree", () => {
    const read = readJob(stringify(tree({ circuits: [outlet("house", "rv-30", "30 A", [2])] })));
    expect(read.ok).toBe(false);
  });
});

describe("what may run together behind a feeder", () => {
  it("takes the volts left after the feeder's drop and the circuit's, both as volts (arithmetic by hand)", () => {
    const d = designed(tree({ circuits: [stand[0]] }));
    const c = d.circuits[0]!;
    const lost = (Number(d.feeders[0]!.drop.worstLeg.value) + Number(c.drop.worstLeg.value)).toFixed(1);
    expect(Number(lost)).toBeGreaterThan(2);
    expect(Number(outletUse(d, c)!.volts.value)).toBeCloseTo(120 - Number(lost), 1);
  });
});
