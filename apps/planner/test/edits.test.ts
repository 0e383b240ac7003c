import { readdirSync, readFileSync } from "node:fs";
import { readJob } from "@branchwork/engine";
import { describe, expect, test } from "vitest";
import { assumedPaths, at, type Edit, edited, listAt, plainOf, textAt } from "../src/job/document.js";
import { methodChosen } from "../src/job/house-loads.js";
import { bareLength, feetOf, lengthText, snapped } from "../src/job/length-text.js";
import { type WrittenRun, writtenRuns } from "../src/job/runs.js";
import { EMPTY_JOB, THINGS } from "../src/job/starts.js";
import { renamingStretch, replacingRoute, takingOutRun, takingOutStretch } from "../src/job/taking-out.js";
import { mendForIssue } from "../src/live/issue-mends.js";
import { beginning, lengthTaken, outlineAdded, overheadAdded, pointAdded, stretches, wayDrawn } from "../src/site/site-edits.js";
import { OUTLINES, siteThings } from "../src/site/site-model.js";
import { loaded } from "../src/work/loaded.js";

const folder = new URL("../../../fixtures/jobs/", import.meta.url);
const JOBS = readdirSync(folder).map((name) => [name, readFileSync(new URL(name, folder), "utf8")] as const);
const CARPORT = JOBS.find(([name]) => name === "rv-50-carport.yaml")![1];

function made(text: string, edits: readonly Edit[]): string {
  const next = edited(text, edits);
  if (next === null) throw new Error("not editable");
  return next;
}
const issuesOf = (text: string) => {
  const read = readJob(text);
  return read.ok ? [] : read.issues;
};

describe("lengths as people write them", () => {
  // The foot is 0.3048 m exactly (NIST SP 811, appendix B.8), the inch 1/12 of it.
  const ROWS: readonly (readonly [string, number | null])[] = [
    ["85 ft", 85],
    ["-3 ft", -3],
    ["12-1/2 ft", 12.5],
    ["-12-1/2 ft", -12.5],
    ["1/2 ft", 0.5],
    ["1,200 ft", 1200],
    ["6 in", 0.5],
    ["3.048 m", 10],
    ["304.8 cm", 10],
    ["3048 mm", 10],
    ["10'", 10],
    ["10", null],
    ["ten ft", null],
    ["1/0 ft", null],
    ["10 yd", null],
    ["10 constructor", null],
  ];
  test.each(ROWS)("%s", (written, feet) => {
    const mine = feetOf(written);
    if (feet === null) expect(mine).toBeNull();
    else expect(mine).toBeCloseTo(feet, 9);
    // The page draws what the job's reader reads.
    const read = readJob(made(CARPORT, [{ at: ["site_plan", "points", 0, "at", 0], put: written }]));
    expect(read.ok).toBe(feet !== null);
    if (read.ok && feet !== null) expect(read.job.site_plan!.points[0]!.at[0]).toBeCloseTo(feet, 6);
  });

  test("what is written is read again, in either unit", () => {
    for (const unit of ["ft", "m"] as const)
      for (const feet of [0, 0.5, -7.25, 66, 1234.5]) expect(Math.abs(feetOf(lengthText(feet, unit))! - feet)).toBeLessThan(0.02);
    expect(bareLength(10, "m")).toBe("3.05");
    expect(snapped(10.26, "ft")).toBe(10.5);
    expect(snapped(10.24, "ft")).toBe(10);
  });
});

describe("what is taken out", () => {
  const RUNS = JOBS.flatMap(([name, text]) => writtenRuns(plainOf(text)).map((run) => [name, run.id, text, run] as const));

  test.each(RUNS)("%s: %s leaves nothing that names it", (_name, _id, text, run) => {
    const before = issuesOf(text).length;
    const after = issuesOf(made(text, takingOutRun(plainOf(text), run).edits));
    expect(after.filter(({ what }) => what !== "the job has no circuit and no feeder").map(({ path, what }) => `${path}: ${what}`)).toHaveLength(before);
  });

  const STRETCHES = RUNS.flatMap(([name, id, text, run]) =>
    listAt(plainOf(text), [...run.path, "route"]).map((row, i, all) => [name, id, textAt(row, ["name"]), text, run, i, all.length] as const),
  ).filter(([, , , , , , count]) => count > 1);
  test.each(STRETCHES)("%s: %s without %s is read", (_name, _id, _stretch, text, run, i) => {
    expect(issuesOf(made(text, takingOutStretch(plainOf(text), run, i).edits))).toEqual([]);
  });

  const run = writtenRuns(plainOf(CARPORT)).find(({ id }) => id === "rv-outlet") as WrittenRun;

  test("is told: the ways and the outlet of the carport's circuit", () => {
    const { edits, says } = takingOutRun(plainOf(CARPORT), run);
    expect(says).toBe("RV outlet at carport is taken out, and with it 2 ways on the site plan and one outlet on the site plan.");
    const after = plainOf(made(CARPORT, edits));
    expect(listAt(after, ["site_plan", "routes"])).toEqual([]);
    expect(listAt(after, ["site_plan", "points"]).map((row) => textAt(row, ["kind"]))).toEqual(["meter", "panel", "gas", "water"]);
  });

  test("a stretch renamed keeps its boxes and its way; another route takes the ways of the old one away", () => {
    const plain = plainOf(CARPORT);
    const renamed = made(CARPORT, [{ at: [...run.path, "route", 2, "name"], put: "Ditch" }, ...renamingStretch(plain, run, "Trench under driveway", "Ditch")]);
    expect(issuesOf(renamed)).toEqual([]);
    expect(listAt(plainOf(renamed), ["site_plan", "routes"]).map((row) => textAt(row, ["segment"]))).toEqual(["Basement run", "Ditch"]);
    const { edits, says } = replacingRoute(plain, run, ["Basement run"]);
    expect(says).toContain("one way on the site plan");
    expect(listAt(plainOf(made(CARPORT, edits)), ["site_plan", "routes"]).map((row) => textAt(row, ["segment"]))).toEqual(["Basement run"]);
  });

  test("title and scope that the page wrote forget it too; words of the reader's own stay", () => {
    const thing = (key: string) => THINGS.find((each) => each.key === key)!;
    const two = made(EMPTY_JOB, [
      { add: thing("rv-50").make([1, 3]), at: ["service", "panel", "circuits"] },
      { add: thing("dryer").make([5, 7]), at: ["service", "panel", "circuits"] },
      { at: ["project", "title"], put: "50 A RV outlet" },
      { at: ["project", "scope"], put: "New: 50 A RV outlet; Dryer circuit. Owner digs the trench." },
    ]);
    const out = plainOf(made(two, takingOutRun(plainOf(two), writtenRuns(plainOf(two))[0]!).edits));
    expect(at(out, ["project", "title"])).toBe("Dryer circuit");
    expect(at(out, ["project", "scope"])).toBe("New: Dryer circuit. Owner digs the trench.");
  });

  test("a name that names nothing, in a file of elsewhere, is mended by one press", () => {
    const broken = made(CARPORT, [
      { at: ["site_plan", "routes", 0, "circuit"], put: "gone" },
      { at: ["site_plan", "routes", 1, "segment"], put: "Gone" },
      { at: [...run.path, "boxes", 0, "after"], put: "Gone too" },
    ]);
    let text = broken;
    for (let presses = 0; issuesOf(text).length > 0 && presses < 5; presses++) {
      const mend = mendForIssue(plainOf(text), { ...issuesOf(text).at(-1)!, of: "job" });
      expect(mend).not.toBeNull();
      text = made(text, mend!.edits);
    }
    expect(issuesOf(text)).toEqual([]);
  });
});

describe("the method of the load", () => {
  const house = made(CARPORT, [
    {
      at: ["service", "existing", "appliances"],
      put: [
        { name: "Range", load: "12 kVA" },
        { name: "Clothes dryer", load: "5 kVA" },
        { name: "Car charger", load: "7.7 kVA" },
        { name: "Water heater", load: "4.5 kVA", count: 2 },
      ],
    },
    { at: ["service", "existing", "appliances", 1, "load"], put: "5 kVA", assumed: true },
    { at: ["service", "existing", "heating"], put: { name: "Baseboards", load: "8 kVA" } },
    { at: ["service", "existing", "cooling"], put: { name: "Air conditioner", load: "4 kVA" } },
  ]);
  const change = (text: string, method: Parameters<typeof methodChosen>[1]) => made(text, methodChosen(plainOf(text), method, assumedPaths(text)));
  const amperes = (text: string) => {
    const result = loaded({ job: text, overlay: null });
    if (!result.ok) throw new Error(JSON.stringify(result.issues));
    return result.design.service.amperesWithout.value;
  };

  test("what was told for the existing house goes among its kind, its assumed marks with it", () => {
    const optional = change(house, "optional");
    expect(issuesOf(optional)).toEqual([]);
    const plain = plainOf(optional);
    const names = (list: string) => listAt(plain, ["service", "dwelling", list]).map((row) => textAt(row, ["name"]));
    expect(["cooking", "dryers", "ev", "appliances", "climate"].map(names)).toEqual([
      ["Range"],
      ["Clothes dryer"],
      ["Car charger"],
      ["Water heater"],
      ["Baseboards", "Air conditioner"],
    ]);
    expect(assumedPaths(optional)).toContain("service.dwelling.dryers[0].load");
    expect(at(plain, ["service", "existing"])).toBeUndefined();
  });

  test("the same house by the method of the existing house has the same load, told either way", () => {
    expect(amperes(change(change(house, "standard"), "existing-dwelling"))).toBe(amperes(house));
  });

  test("from every method to every other the job is read, but for the record that only the reader can give", () => {
    const methods = ["existing-dwelling", "measured-demand", "standard", "optional"] as const;
    const measured: Edit = { at: ["service", "measured"], put: { peak: "9 kVA", basis: "one-year", from: "the utility" } };
    for (const from of methods) for (const to of methods) expect(issuesOf(made(change(change(house, from), to), [measured])), `${from} to ${to}`).toEqual([]);
  });
});

describe("the site plan", () => {
  test.each(JOBS)("%s: a plan begun, everything put on it and every way drawn is a job that is read", (_name, text) => {
    for (const unit of ["ft", "m"] as const) {
      let job = made(text, [{ remove: ["site_plan"] }]);
      const start = { lotWidth: 80, lotDepth: 120, houseWidth: 40, houseDepth: 30, fromLeft: 15, fromStreet: 40 };
      job = made(job, beginning(plainOf(job), start, unit));
      for (const kind of Object.keys(OUTLINES)) job = made(job, outlineAdded(plainOf(job), kind, kind, unit));
      for (const kind of ["gas", "septic", "well"]) job = made(job, pointAdded(plainOf(job), kind, kind, unit));
      job = made(job, overheadAdded(plainOf(job), unit));
      for (const [i] of stretches(plainOf(job)).entries()) job = made(job, wayDrawn(plainOf(job), stretches(plainOf(job))[i]!, unit));
      expect(issuesOf(job)).toEqual([]);
      expect(siteThings(plainOf(job)).flatMap(({ corners }) => corners)).not.toContain(null);
    }
  });

  test("the plan's length is written to the half foot above, or the tenth of a metre", () => {
    const [first] = stretches(plainOf(CARPORT));
    expect(lengthTaken(first!, 34.01, "ft")).toEqual([{ at: [...first!.path, "length"], put: "34.5 ft" }]);
    expect(lengthTaken(first!, 34, "ft")).toEqual([{ at: [...first!.path, "length"], put: "34 ft" }]);
    // 34 ft are 10.3632 m.
    expect(lengthTaken(first!, 34, "m")).toEqual([{ at: [...first!.path, "length"], put: "10.4 m" }]);
  });
});
