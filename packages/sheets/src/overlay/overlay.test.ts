import { describe, expect, it } from "vitest";
import { basisFrom, readOverlay } from "../index.js";

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

  it("is the unamended code without an overlay", () =>
    expect(basisFrom(null, "2017")).toEqual({ edition: "2017", waivedChecks: {}, leastCover: {}, issues: [] }));
});
