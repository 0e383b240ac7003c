import { readdirSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { jobJsonSchema } from "./json-schema.js";
import { type Issue, readJob } from "./read.js";

const fixture = (path: string) => fileURLToPath(new URL(`../../../../fixtures/${path}`, import.meta.url));
const GOOD = `format: branchwork-job/1
project:
  title: Outlet
  owner: Odalys Fenwick
  site: 41 Larch Spur Lane
  preparer: { name: Odalys Fenwick, role: Owner }
code: { edition: "2023" }
service:
  rating: 150 A
  load_method: measured-demand
  measured: { peak: 12 kVA, basis: one-year, from: utility record }
  panel:
    id: house
    name: House panel
    bus: 150 A
    spaces: 30
    circuits:
      - id: outlet
        name: RV outlet
        serves: rv-50
        current: 50 A
        breaker: { poles: 2, spaces: [1, 3], gfci: true }
        route:
          - name: Wall
            place: outdoors
            method: PVC-80
            length: 26 m
            ambient: 104 °F
          - name: Trench
            place: buried
            method: PVC-40
            length: 85 ft
            cover: 1-1/4 in
        boxes:
          - { name: Outlet box, after: Trench, volume: 64 in3 }
`;
const CIRCUIT = GOOD.slice(GOOD.indexOf("      - id: outlet"));

function changed(from: string, to: string): string {
  if (!GOOD.includes(from)) throw new Error(`"${from}" is not in the good job`);
  return GOOD.replace(from, to);
}
const issuesOf = (text: string): readonly Issue[] => {
  const reading = readJob(text);
  return reading.ok ? [] : reading.issues;
};
const read = (text: string) => {
  const reading = readJob(text);
  if (!reading.ok) throw new Error(JSON.stringify(reading.issues, null, 2));
  return reading;
};

describe("a good job", () => {
  it("comes out in the engine's units", () => {
    const { job } = read(GOOD);
    const [wall, trench] = job.service.panel.circuits[0]!.route;
    expect(job.service.measured?.peak).toBe(12000);
    expect(wall).toMatchObject({ length: 85.301837, ambient: 40 }); // NIST SP 811: 26 / 0.3048; (104 - 32) × 5/9
    expect(trench).toMatchObject({ length: 85, cover: 1.25 });
  });

  it("names each default that was filled, in words, and no value that was written", () => {
    const { assumptions } = read(GOOD);
    const at = "service.panel.circuits[0]";
    expect(assumptions).toContainEqual({ path: `${at}.route[0].conductors.material`, says: "Wall: copper conductors taken" });
    expect(assumptions).toContainEqual({ path: `${at}.boxes[0].wet_location`, says: "Outlet box: taken as not marked for wet locations" });
    expect(assumptions).toContainEqual({ path: "drop.limit_percent", says: "voltage drop limit of 3 % taken" });
    expect(assumptions).toContainEqual({ path: "code.confirmed_with_authority", says: "edition not yet confirmed with the authority having jurisdiction" });
    const written = read(
      changed(
        "            cover: 1-1/4 in",
        "            cover: 1-1/4 in\n            over: general\n            conductors: { material: copper, insulation: THWN-2 }",
      ),
    );
    const gone = [`${at}.route[1].over`, `${at}.route[1].conductors.material`, `${at}.route[1].conductors.insulation`];
    expect(assumptions.map((a) => a.path)).toEqual(expect.arrayContaining(gone));
    expect(written.assumptions).toHaveLength(assumptions.length - gone.length);
    for (const path of gone) expect(written.assumptions.map((a) => a.path)).not.toContain(path);
  });

  it("leaves out defaults that decide nothing: a cable's insulation, the ground over what is not buried", () => {
    const paths = read(changed("method: PVC-80", "method: UF-B")).assumptions.map((a) => a.path);
    expect(paths.filter((path) => /route\[0\]\.(conductors|bends|over)/.test(path))).toEqual([]);
  });

  it.each([
    ["a byte order mark", `\uFEFF${GOOD}`],
    ["CRLF line ends", GOOD.replaceAll("\n", "\r\n")],
  ])("reads the same with %s", (_, text) => expect(readJob(text)).toEqual(readJob(GOOD)));
});

describe("an issue says where", () => {
  const circuit = "service.panel.circuits[0]";
  it.each([
    ["a wrong format", changed("branchwork-job/1", "branchwork-job/9"), 1, 9, "format", "branchwork-job/1"],
    ["a missing field, at what holds it", changed("  title: Outlet\n", ""), 3, 3, "project.title", "add title"],
    [
      "a missing field of a circuit",
      changed("        serves: rv-50\n        current: 50 A\n", "        serves: ev-supply\n"),
      20,
      17,
      `${circuit}.serves`,
      "add current",
    ],
    [
      "a nameplate that lacks a figure",
      changed("        serves: rv-50\n", "        serves: welder\n"),
      20,
      17,
      `${circuit}.serves`,
      "add nameplate with duty_percent",
    ],
    [
      "a nameplate field of another kind",
      changed("        current: 50 A\n", "        nameplate: { gallons: 50 }\n"),
      21,
      31,
      `${circuit}.nameplate.gallons`,
      "take the nameplate out",
    ],
    ["an unknown field, at its name", changed("  owner:", "  ownre: x\n  owner:"), 4, 3, "project.ownre", 'did you mean "owner"?'],
    [
      "an unknown field in a list",
      changed("            method: PVC-80", "            lenght: 3 ft\n            method: PVC-80"),
      26,
      13,
      `${circuit}.route[0].lenght`,
      'did you mean "length"?',
    ],
    ["a merge key", changed("  owner:", "  <<: { a: 1 }\n  owner:"), 4, 3, "project.<<", "the fields here are"],
    ["an unquoted edition", changed('"2023"', "2023"), 7, 18, "code.edition", 'write "2023" in quotation marks'],
    ["an edition there is none of", changed('"2023"', '"2019"'), 7, 18, "code.edition", "2017, 2020, 2023, 2026"],
    ["a number for text", changed("title: Outlet", "title: 12"), 3, 10, "project.title", 'write "12" in quotation marks'],
    ["an empty value", changed("name: House panel", "name:"), 14, 10, "service.panel.name", "text"],
    ["a quantity without its unit", changed("bus: 150 A", "bus: 150"), 15, 10, "service.panel.bus", '"50 A"'],
    ["an unknown unit", changed("26 m", "26 yd"), 27, 21, `${circuit}.route[0].length`, "correct"],
    ["a negative length", changed("length: 85 ft", "length: -5 ft"), 32, 21, `${circuit}.route[1].length`, "correct"],
    ["a length beyond a double", changed("length: 85 ft", "length: 1e400"), 32, 21, `${circuit}.route[1].length`, '"85 ft"'],
    ["not a number", changed("spaces: 30", "spaces: .nan"), 16, 13, "service.panel.spaces", "number"],
    ["an infinite number", changed("spaces: 30", "spaces: 1e400"), 16, 13, "service.panel.spaces", "number"],
    ["too large a number", changed("spaces: 30", "spaces: 85"), 16, 13, "service.panel.spaces", "at most 84"],
    [
      "a way to give there is none of",
      changed("place: buried", "place: buried\n            earth_movement: hope"),
      31,
      29,
      `${circuit}.route[1].earth_movement`,
      "one of expansion-fitting, slack-loop, flexible-connection, ground-still, nothing",
    ],
    ["three poles", changed("poles: 2", "poles: 3"), 22, 27, `${circuit}.breaker.poles`, "one of 1, 2"],
    ["a bad id", changed("id: house", "id: House 1"), 13, 9, "service.panel.id", "small letters"],
    ["no circuits", `${GOOD.slice(0, GOOD.indexOf("    circuits:"))}    circuits: []\n`, 17, 15, "service.panel.circuits", "under circuits or feeders"],
    ["a method without its measurement", changed("  measured: {", "  # measured: {"), 10, 16, "service.load_method", "add service.measured"],
    [
      "a method without its loads",
      changed("load_method: measured-demand", "load_method: existing-dwelling"),
      10,
      16,
      "service.load_method",
      "add service.existing",
    ],
    ["a box after no segment", changed("after: Trench", "after: Attic"), 35, 40, `${circuit}.boxes[0].after`, '"Wall", "Trench"'],
    [
      "two segments of one name",
      changed("- name: Trench", "- name: Wall").replace("after: Trench", "after: Wall"),
      29,
      19,
      `${circuit}.route[1].name`,
      "of its own",
    ],
    ["two circuits of one id", GOOD + CIRCUIT, 36, 13, "service.panel.circuits[1].id", "of its own"],
    ["a field given twice", changed("  owner:", "  title: Again\n  owner:"), 4, 3, "", "give each name once"],
    ["a tab", changed("  owner:", "\towner:"), 4, 1, "", "indent with spaces"],
    ["an unclosed bracket", `${GOOD}x: [1, 2\n`, 37, 1, "", "indent with spaces"],
    ["an unknown tag", changed("title: Outlet", "title: !run Outlet"), 3, 10, "", "quote text"],
    ["an alias", changed("title: Outlet", "title: &t Outlet").replace("owner: Odalys Fenwick", "owner: *t"), 4, 10, "", "write the value out"],
    ["a prototype", changed("  owner:", "  __proto__: { x: 1 }\n  owner:"), 4, 3, "", "remove it"],
    ["a list for a name", changed("  owner:", "  ? [a, b]\n  : c\n  owner:"), 4, 5, "", "plain name"],
    ["an empty file", "", 1, 1, "", "branchwork-job/1"],
    ["a list for a job", "- 1\n- 2\n", 1, 1, "", "branchwork-job/1"],
  ])("%s", (_, text, line, column, path, mend) => {
    const issues = issuesOf(text);
    expect(issues).toContainEqual({ line, column, path, what: expect.stringMatching(/\S/), mend: expect.stringContaining(mend) });
  });

  it("gives all issues of a file, in the order of its lines", () => {
    const text = changed("bus: 150 A", "bus: 150").replace("  title: Outlet\n", "").replace("26 m", "26 yd");
    expect(issuesOf(text).map((i) => i.path)).toEqual(["project.title", "service.panel.bus", "service.panel.circuits[0].route[0].length"]);
  });
});

describe("hostile text", () => {
  it("refuses an alias bomb before it grows", () => {
    const rows = Array.from({ length: 30 }, (_, i) => `k${i + 1}: &k${i + 1} [${Array(9).fill(`*k${i}`).join(", ")}]`);
    const issues = issuesOf(`k0: &k0 [x]\n${rows.join("\n")}\n`);
    expect(issues[0]).toMatchObject({ line: 2, column: 10 });
    expect(issues[0]!.what).toContain("alias");
  });

  it("refuses a deep nest and a long file with one issue each", () => {
    expect(issuesOf(`a: ${"[".repeat(200_000)}`).length).toBeGreaterThan(0);
    expect(issuesOf("#".repeat(1_000_001))).toEqual([expect.objectContaining({ line: 1, column: 1, what: expect.stringContaining("longer than") })]);
  });

  it("leaves prototypes alone", () => {
    readJob(changed("  owner:", "  __proto__: { polluted: 1 }\n  owner:"));
    readJob(changed("  owner:", "  constructor: { prototype: { polluted: 1 } }\n  owner:"));
    expect(({} as Record<string, unknown>).polluted).toBeUndefined();
  });

  it("never throws and always says where and how to mend, whatever stands in the file", () => {
    fc.assert(
      fc.property(fc.nat(GOOD.length), fc.nat(12), fc.string({ unit: "binary", maxLength: 12 }), (at, cut, put) => {
        for (const issue of issuesOf(GOOD.slice(0, at) + put + GOOD.slice(at + cut))) {
          expect(issue.line).toBeGreaterThan(0);
          expect(issue.column).toBeGreaterThan(0);
          expect(issue.what).not.toBe("");
          expect(issue.mend).not.toBe("");
        }
      }),
      { numRuns: 300 },
    );
  });
});

describe("the fixtures", () => {
  const jobs = readdirSync(fixture("jobs"));
  it("hold the four jobs", () =>
    expect(jobs).toEqual(expect.arrayContaining(["bad-everything.yaml", "ev-48-attic.yaml", "rv-30-small-service.yaml", "rv-50-carport.yaml"])));
  it.each(jobs)("%s reads, and its first line names the schema", (name) => {
    const text = readFileSync(fixture(`jobs/${name}`), "utf8");
    expect(issuesOf(text)).toEqual([]);
    expect(text.split("\n")[0]).toBe("# yaml-language-server: $schema=../job.schema.json");
  });
  // To renew it: npx vitest run src/job -u
  it("job.schema.json is current", async () => {
    await expect(`${JSON.stringify(jobJsonSchema(), null, 2)}\n`).toMatchFileSnapshot(fixture("job.schema.json"));
  });
});
