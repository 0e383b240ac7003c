import { unamended } from "@branchwork/engine";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { basisFrom, flattenOverlay, readOverlay } from "../index.js";

const GOOD = `format: branchwork-overlay/1
id: sample-county
name: Sample County
edition: "2023"
checked_on: 2026-01-31
notes: []
checklist: []
amendments:
  - target: cover
    row: general
    replaces: 18
    value: 24
    reason: frost
    citation: Sample County Ordinance 12
statements: []
`;
const issuesOf = (text: string) => {
  const result = readOverlay(text);
  return result.ok ? [] : result.issues;
};
const overlayOf = (text: string) => {
  const result = readOverlay(text);
  if (!result.ok) throw new Error(JSON.stringify(result.issues));
  return result.overlay;
};

describe("reading an overlay", () => {
  it("takes a good one", () => expect(readOverlay(GOOD).ok).toBe(true));

  it.each([
    ["a wrong value", GOOD.replace("value: 24", "value: deep"), 12, 12, "amendments.0.value"],
    ["an unknown field", GOOD.replace("    reason: frost", "    raison: frost\n    reason: frost"), 13, 5, "amendments.0.raison"],
    ["an unquoted edition", GOOD.replace('"2023"', "2023"), 4, 10, "edition"],
    ["a bad date", GOOD.replace("2026-01-31", "31 January"), 5, 13, "checked_on"],
    ["a missing field, at what holds it", GOOD.replace("    reason: frost\n", ""), 9, 5, "amendments.0.reason"],
    ["a key given twice", `${GOOD}name: Again\n`, 16, 1, ""],
  ])("says where %s stands", (_, text, line, column, path) => {
    expect(issuesOf(text)).toContainEqual(expect.objectContaining({ line, column, path }));
    for (const issue of issuesOf(text)) expect(issue.mend).not.toBe("");
  });

  it("does not expand aliases without end", () => {
    const bomb = `a: &a [x,x,x,x,x,x]\nb: &b [*a,*a,*a,*a,*a,*a]\nc: &c [*b,*b,*b,*b,*b,*b]\nd: [*c,*c,*c,*c,*c,*c]\n`;
    expect(issuesOf(bomb).length).toBeGreaterThan(0);
  });

  it.each([
    ["an alias", GOOD.replace("name: Sample County", "name: &n Sample County").replace("id: sample-county", "id: *n"), 2, 5],
    ["a prototype", `${GOOD}__proto__: { a: 1 }\n`, 16, 1],
    ["a list for a name", `${GOOD}? [a, b]\n: c\n`, 16, 3],
    ["a list for an overlay", "- 1\n", 1, 1],
    ["a nest too deep", `a: ${"[".repeat(200_000)}`, 1, expect.any(Number)],
    ["a file too long", "#".repeat(1_000_001), 1, 1],
  ])("refuses %s", (_, text, line, column) => {
    const issues = issuesOf(text);
    expect(issues[0]).toMatchObject({ line, column });
    expect(issues[0]?.mend).not.toBe("");
    expect(({} as Record<string, unknown>).a).toBeUndefined();
  });

  it.each([
    ["a misspelt field of an amendment", GOOD.replace("    reason: frost", "    raeson: frost"), "amendments.0.raeson", 'did you mean "reason"?'],
    ["a misspelt field of the file", GOOD.replace("notes: []", "note: []"), "note", 'did you mean "notes"?'],
    ["a target there is none of", GOOD.replace("target: cover", "target: depth"), "amendments.0.target", "cover, check, verdict"],
    ["a row there is none of", GOOD.replace("row: general", "row: lawn"), "amendments.0.row", "under-dwelling-driveway"],
  ])("helps with %s", (_, text, path, mend) => expect(issuesOf(text)).toContainEqual(expect.objectContaining({ path, mend: expect.stringContaining(mend) })));

  it("never throws, whatever stands in the file, and always says where and how to mend", () => {
    fc.assert(
      fc.property(fc.nat(GOOD.length), fc.nat(12), fc.string({ unit: "binary", maxLength: 12 }), (at, cut, put) => {
        const text = GOOD.slice(0, at) + put + GOOD.slice(at + cut);
        const flat = flattenOverlay("town", { town: text });
        for (const issue of [...issuesOf(text), ...(flat.ok ? [] : flat.issues)]) {
          expect(issue.line).toBeGreaterThan(0);
          expect(issue.column).toBeGreaterThan(0);
          expect(issue.what).not.toBe("");
          expect(issue.mend).not.toBe("");
        }
      }),
      { numRuns: 150 },
    );
  });

  it("takes an empty file for an issue", () => expect(issuesOf("")).not.toHaveLength(0));
});

describe("the basis with an overlay", () => {
  // Cells of the row: NFPA 70 Table 300.5, general: 24, 6, 18, 12, 6 in (mirrored at up.codes/s/underground-installations).
  const targets = { cover: { general: ["24", "6", "18", "12", "6"] }, checks: ["burial-cover"] };

  it("amends the cover", () => {
    const basis = basisFrom(overlayOf(GOOD), "2023", targets);
    expect(basis.issues).toEqual([]);
    expect(basis.leastCover).toEqual({ general: { inches: 24, replaces: 18, citation: "Sample County Ordinance 12" } });
  });

  it("returns a wrong base value, a smaller cover, another edition and a dangling target as issues, and applies none of them", () => {
    const wrong = basisFrom(overlayOf(GOOD.replace("replaces: 18", "replaces: 17")), "2023", targets);
    expect(wrong.issues.map((i) => i.path)).toEqual(["amendments.0.replaces"]);
    expect(wrong.leastCover).toEqual({});
    expect(basisFrom(overlayOf(GOOD.replace("value: 24", "value: 12")), "2023", targets).issues.map((i) => i.path)).toEqual(["amendments.0.value"]);
    expect(basisFrom(overlayOf(GOOD), "2020", targets).issues.map((i) => i.path)).toEqual(["edition"]);
    const check = GOOD.replace(/ {2}- target: cover[\s\S]*?value: 24\n/, "  - target: check\n    check: no-such\n    off: true\n");
    const dangling = basisFrom(overlayOf(check), "2023", targets);
    expect(dangling.issues.map((i) => i.path)).toEqual(["amendments.0.check"]);
    expect(dangling.waivedChecks).toEqual({});
  });

  it("is the unamended code without an overlay", () => expect(basisFrom(null, "2017")).toEqual({ ...unamended("2017"), issues: [] }));
});
