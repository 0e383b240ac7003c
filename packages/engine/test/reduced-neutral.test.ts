import { describe, expect, it } from "vitest";
import { stringify } from "yaml";
import { design } from "../src/design.js";
import { inspectionChecklist } from "../src/inspection/checklist.js";
import { readJob } from "../src/job/read.js";
import { USUAL_ALLOWANCES } from "../src/materials/allowances.js";
import { materialsList } from "../src/materials/materials-list.js";
import { outletCircuit } from "../src/readings/outlet-circuit.js";
import { sectionOf } from "../src/section.js";
import { plainJob } from "./plain-job.js";

// biome-ignore lint/suspicious/noExplicitAny: a job as written, bent by each test before it is read
type Written = any;

/** A feeder of 4 AWG, 100 ft in PVC, to a panel with a 40 A charger (240 V) and a 20 A outlet (120 V). */
function written(conductors: Written = {}, more: { stretch?: Written; fault?: Written; drop?: Written } = {}): Written {
  return {
    ...plainJob({
      ...(more.fault === undefined ? {} : { service: more.fault }),
      panel: {
        feeders: [
          {
            id: "f",
            name: "Feeder",
            breaker: { rating: "70 A", poles: 2, spaces: [1, 3], gfci: false },
            building: "same",
            route: [{ name: "way", place: "indoors", method: "PVC-40", length: "100 ft", conductors: { size: "4", ...conductors }, ...more.stretch }],
            panel: {
              id: "s",
              name: "S",
              bus: "100 A",
              spaces: 8,
              circuits: [
                { id: "ev", name: "EV", serves: "ev-supply", current: "40 A", breaker: { poles: 2, spaces: [1, 3], gfci: true }, route: [short] },
                { id: "o", name: "Outlet", serves: "receptacle-20", breaker: { poles: 1, spaces: [2], gfci: true }, route: [short] },
              ],
            },
          },
        ],
      },
    }),
    drop: more.drop,
  };
}
const short = { name: "in", place: "indoors", method: "EMT", length: "5 ft" };
const read = (job: Written) => readJob(stringify(job, { keepUndefined: false, aliasDuplicateObjects: false }));
function made(...given: Parameters<typeof written>) {
  const found = read(written(...given));
  if (!found.ok) throw new Error(JSON.stringify(found.issues));
  return design({ job: found.job });
}
const feeder = (...given: Parameters<typeof written>) => made(...given).feeders[0]!;
const near = (actual: string | undefined, expected: number) => expect(Math.abs(Number(actual) - expected)).toBeLessThanOrEqual(1e-6);

describe("a feeder's neutral of its own size", () => {
  // 220.61(A): the 20 A, 120 V outlet alone is on the neutral: 20 A. 60 A on its leg: 40 and 20.
  it("is bought, drawn and filled in its own size", () => {
    const design = made({ neutral: "8" });
    const rows = materialsList({ design, allowances: USUAL_ALLOWANCES }).rows.filter(({ key, item }) => key.startsWith("wire") && /neutral/.test(item));
    expect(rows.map(({ item }) => item.split(" ").slice(0, 2).join(" "))).toContain("8 AWG");
    const { conductors } = sectionOf(design.feeders[0]!, design.feeders[0]!.segments[0]!, "2023")!;
    expect(conductors.map(({ mark, size }) => `${mark} ${size}`)).toEqual(["L1 4", "L2 4", "N 8", "G 8"]);
    // Table 5, THWN-2: 4 AWG 0.0824, 8 AWG 0.0366 in²: 2 × 0.0824 + 2 × 0.0366.
    expect(design.feeders[0]!.segments[0]!.fill?.area.value).toBe("0.238");
    expect(feeder().segments[0]!.fill?.area.value).toBe("0.2838"); // 3 × 0.0824 + 0.0366
    expect(feeder().segments[0]!.neutral).toBeNull();
  });
  it("takes its own room in a box, and its own part of a pull", () => {
    const job = written({ size: "6", neutral: "10" });
    job.service.panel.feeders[0].boxes = [{ name: "Joint", after: "way", volume: "40 in3" }];
    const found = read(job);
    if (!found.ok) throw new Error(JSON.stringify(found.issues));
    // Table 314.16(B): 5 in³ for each 6 AWG hot, 2.5 for the 10 AWG neutral, 3 for the 8 AWG ground (Table 250.122, 70 A).
    expect(design({ job: found.job }).feeders[0]!.boxes[0]!.required.value).toBe("15.5");
    const { jam, tension, steps } = feeder({ neutral: "8" }).pulls[0]!;
    // Copper 0.321 lb/in³, 2 % for the strands, cover 0.05: 4 AWG (41,740 cmil, 0.0824 in²) 0.158574 lb/ft, 8 AWG (16,510 cmil, 0.0366 in²) 0.0651274.
    near(steps.find(({ id }) => id.endsWith(".weight"))?.value, 2 * 0.158574 + 0.0651274 + 0.0651274);
    expect(tension?.limit.value).toBe("667.84"); // 2 × 41,740 cmil × 0.008 lbf
    expect(jam).toMatchObject({ jam: "none", count: 2 }); // two of a size, wherever the ratio falls
  });
  it("carries its leg's return: 60 A through 100 ft, 0.308 out and 0.778 Ω / 1000 ft back (Chapter 9 Table 8); the balanced drop knows nothing of it", () => {
    const { drop } = feeder({ neutral: "8" });
    near(drop.worstLeg.value, 60 * 0.1 * (0.308 + 0.778));
    near(drop.balanced.value, 2 * 60 * 0.1 * 0.308);
    expect(drop.worstLeg.expression).toBe("60 A × 0.308 Ω / 1000 ft × 100 ft + 60 A × 0.778 Ω / 1000 ft × 100 ft");
    expect(feeder({ neutral: "4" }).drop.worstLeg).toEqual(feeder().drop.worstLeg);
  });
  it("by Table 9 too: PVC 0.31 and 0.78 Ω / 1000 ft (ac-effective at a power factor of 1)", () => {
    const { drop } = feeder({ neutral: "8" }, { drop: { method: "ac-effective" } });
    near(drop.worstLeg.value, 60 * 0.1 * (0.31 + 0.78));
    near(drop.balanced.value, 2 * 60 * 0.1 * 0.31);
  });
  it("lets less of a fault through it: a line-to-neutral fault at its end, none of the others", () => {
    const fault = { fault: { fault_current_kA: 10 } };
    const [own, alike] = [feeder({ neutral: "8" }, fault).fault!, feeder({}, fault).fault!];
    expect(Number(own.atEnd.lineToNeutral!.value)).toBeLessThan(Number(alike.atEnd.lineToNeutral!.value));
    expect(own.atEnd.lineToLine).toEqual(alike.atEnd.lineToLine);
    expect(own.loop!.amperes).toEqual(alike.loop!.amperes);
  });
});

describe("is read and inspected as it is", () => {
  it("in the words of the visit", () => {
    const seen = inspectionChecklist(made({ neutral: "8" })).flatMap(({ lines }) => lines.map((line) => line.seen));
    expect(seen).toContainEqual(expect.stringContaining("2 × 4 AWG and neutral 8 AWG copper"));
  });
  it("in the readings: 100 ft of 0.778 Ω / 1000 ft, and the circuit's own 5 ft of 12 AWG at 1.98 (Chapter 9 Table 8)", () => {
    const design = made({ neutral: "8" });
    const outlet = outletCircuit(design, design.circuits.find(({ run }) => run.id === "o")!);
    expect(outlet.run.neutral).toBeCloseTo(0.0778 + 0.0099, 9);
    expect(outlet.run.hot1).toBeCloseTo(0.0308 + 0.0099, 9);
  });
});

describe("is judged with the feeder's conductors", () => {
  const verdict = (neutral: string, breaker = "70 A") => {
    const job = written({ neutral });
    job.service.panel.feeders[0].breaker.rating = breaker;
    const found = read(job);
    if (!found.ok) throw new Error(JSON.stringify(found.issues));
    return design({ job: found.job }).findings.flatMap((f) => (f.check === "conductor-size" && f.subject === "Feeder: way" ? [f.verdict] : []));
  };
  // 20 A on it: 14 AWG carries 15 A and 12 AWG 20 A at 60 °C (Table 310.16); behind 70 A the ground is 8 AWG (Table 250.122), and no neutral less (215.2(A)).
  it.each([
    ["14", "fail"],
    ["12", "fail"],
    ["10", "fail"],
    ["8", "pass"],
    ["4", "pass"],
  ])("%s AWG behind 70 A: %s", (neutral, expected) => expect(verdict(neutral)).toEqual([expected]));
  it.each([
    ["12", "fail"],
    ["10", "pass"],
  ])("%s AWG behind 60 A, whose ground is 10 AWG: %s", (neutral, expected) => expect(verdict(neutral, "60 A")).toEqual([expected]));
});

describe("is refused where it cannot be", () => {
  const paths = (job: Written) => {
    const found = read(job);
    return found.ok ? [] : found.issues.map(({ path }) => path);
  };
  it("in a cable, among sets in parallel, on a branch circuit", () => {
    const at = "service.panel.feeders[0].route[0].conductors.neutral";
    expect(paths(written({ neutral: "8" }, { stretch: { method: "NM-B" } }))).toEqual([at]);
    expect(paths(written({ neutral: "8" }, { stretch: { sets: 2 } }))).toEqual([at]);
    expect(paths(written({ neutral: "8" }, { stretch: { sets: 1 } }))).toEqual([]);
    const job = written();
    job.service.panel.feeders[0].panel.circuits[1].route = [{ ...short, conductors: { neutral: "12" } }];
    expect(paths(job)).toEqual(["service.panel.feeders[0].panel.circuits[1].route[0].conductors.neutral"]);
  });
});
