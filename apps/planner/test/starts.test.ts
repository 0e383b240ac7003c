import { readdirSync, readFileSync } from "node:fs";
import { readJob } from "@branchwork/engine";
import { describe, expect, test } from "vitest";
import { assumedPaths, type Edit, edited, plainOf } from "../src/job/document.js";
import { ROUTES } from "../src/job/routes.js";
import { freeSpaces, writtenRuns } from "../src/job/runs.js";
import { EMPTY_JOB, THINGS } from "../src/job/starts.js";
import { withUnknowns } from "../src/job/unknowns.js";
import { mendFor } from "../src/live/mends.js";
import { digestOf } from "../src/work/digest.js";
import { loaded } from "../src/work/loaded.js";

const HOUSE: readonly Edit[] = [
  { at: ["project", "title"], put: "A job" },
  { at: ["project", "owner"], put: "Odalys Fenwick" },
  { at: ["project", "site"], put: "41 Larch Spur Lane" },
  { at: ["project", "preparer", "name"], put: "Odalys Fenwick" },
  { at: ["service", "rating"], put: "200 A" },
  { at: ["service", "existing", "floor_area"], put: "1850 ft2" },
  { at: ["service", "panel", "bus"], put: "200 A" },
  { at: ["service", "panel", "spaces"], put: 30 },
];

function made(edits: readonly Edit[], text = EMPTY_JOB): string {
  const next = edited(text, edits);
  if (next === null) throw new Error("not editable");
  return next;
}

const measured = (text: string): string => {
  const plain = plainOf(text);
  return made(
    writtenRuns(plain).flatMap((run) =>
      ((plain as never as { service: never }) && (run.path.reduce<unknown>((here, key) => (here as never)[key], plain) as { route: unknown[] }).route).map(
        (_, i): Edit => ({ at: [...run.path, "route", i, "length"], put: "20 ft" }),
      ),
    ),
    text,
  );
};

describe("what a thing begins with", () => {
  test.each(THINGS.map((thing) => [thing.key, thing] as const))(
    "%s is a whole job once the house is told and the way measured, and no rule fails by what we wrote",
    (_, thing) => {
      const house = made(HOUSE);
      const spaces = freeSpaces(plainOf(house), ["service", "panel"], thing.poles);
      const text = measured(made([{ add: thing.make(spaces), at: ["service", "panel", thing.feeder ? "feeders" : "circuits"] }], house));
      const read = readJob(text);
      expect(read.ok ? [] : read.issues).toEqual([]);
      const result = loaded({ job: text, overlay: null });
      if (!result.ok) throw new Error("not read");
      const digest = digestOf(result.design, []);
      const told = ["detached-disconnect", "detached-electrode", "equipment-disconnect", "spa-disconnect", "water-heater-disconnect", "ev-disconnect"];
      expect(digest.findings.filter(({ verdict, check }) => verdict === "fail" && !told.includes(check)).map(({ check, says }) => `${check}: ${says}`)).toEqual(
        [],
      );
    },
  );

  test.each(ROUTES.map((route) => [route.key, route] as const))("the route %s is read", (_, route) => {
    const text = made(
      [
        { add: THINGS[0]!.make([1, 3]), at: ["service", "panel", "circuits"] },
        { at: ["service", "panel", "circuits", 0, "route"], put: route.route },
        { at: ["service", "panel", "circuits", 0, "boxes"], put: route.boxes },
      ],
      made(HOUSE),
    );
    const read = readJob(measured(text));
    expect(read.ok ? [] : read.issues).toEqual([]);
  });
});

describe("the job's text", () => {
  const folder = new URL("../../../fixtures/jobs/", import.meta.url);
  test.each(readdirSync(folder))("%s: an edit keeps every comment and every other value", (name) => {
    const text = readFileSync(new URL(name, folder), "utf8");
    const next = made([{ at: ["project", "title"], put: "Another title" }], text);
    const comments = (of: string) => of.split("\n").flatMap((line) => (/(^|\s)#\s.*$/.test(line) ? [line.slice(line.indexOf("# "))] : []));
    expect(comments(next)).toEqual(comments(text));
    const [before, after] = [plainOf(text), plainOf(next)] as { project: { title: string } }[];
    expect({ ...after, project: { ...after!.project, title: "" } }).toEqual({ ...before, project: { ...before!.project, title: "" } });
    expect(after!.project.title).toBe("Another title");
  });

  test("a value that only stands in is marked, told in the scope, and unmarked when it is known", () => {
    const assumed = withUnknowns(made([{ at: ["service", "rating"], put: "100 A", assumed: true }]));
    expect(assumed).toContain("rating: 100 A # assumed, to be verified on site");
    expect(assumedPaths(assumed)).toEqual(["service.rating"]);
    expect(assumed).toContain("assumed until then: size of the service.");
    const known = withUnknowns(made([{ at: ["service", "rating"], put: "150 A" }], assumed));
    expect(assumedPaths(known)).toEqual([]);
    expect(known).not.toContain("assumed");
  });

  test("text that is not YAML of a map cannot be edited by field, and is not thrown at the reader", () => {
    expect(edited("a: [", [{ at: ["a"], put: 1 }])).toBeNull();
    expect(edited("- a", [{ at: ["a"], put: 1 }])).toBeNull();
    expect(plainOf("a: [")).toBeNull();
  });
});

describe("mends of one press", () => {
  test("every mend offered for a job full of faults makes a job that is still read, and its finding goes", () => {
    let text = readFileSync(new URL("../../../fixtures/jobs/bad-everything.yaml", import.meta.url), "utf8");
    const pressed: string[] = [];
    for (let round = 0; round < 40; round++) {
      const result = loaded({ job: text, overlay: null });
      if (!result.ok) throw new Error(`${pressed.at(-1)} broke the job: ${JSON.stringify(result.issues)}`);
      const digest = digestOf(result.design, []);
      const offered = digest.findings.flatMap((finding) => {
        const mend = finding.verdict === "fail" ? mendFor(finding, digest, plainOf(text)) : null;
        return mend === null ? [] : [{ finding, mend }];
      });
      const next = offered.find(({ finding }) => !pressed.includes(finding.check + finding.subject));
      if (next === undefined) break;
      pressed.push(next.finding.check + next.finding.subject);
      text = made(next.mend.edits, text);
      const after = loaded({ job: text, overlay: null });
      if (!after.ok) throw new Error(`${pressed.at(-1)} broke the job: ${JSON.stringify(after.issues)}`);
      expect(
        digestOf(after.design, []).findings.filter(
          ({ check, subject, verdict }) => check === next.finding.check && subject === next.finding.subject && verdict === "fail",
        ),
      ).toEqual([]);
    }
    expect(pressed.length).toBeGreaterThan(4);
  });
});
