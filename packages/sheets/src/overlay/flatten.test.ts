import { describe, expect, it } from "vitest";
import { basisFrom } from "./apply.js";
import { explainOverlay } from "./explain.js";
import { flattenOverlay } from "./flatten.js";

const BASE = `format: branchwork-overlay/1
id: county
name: Sample County
edition: "2023"
checked_on: "2026-01-31"
intake: { mode: small-plan-set, sheet_size: letter, copies: 2, sheets: [], citation: Code 1 }
fees:
  - { id: permit, kind: flat, says: Permit, amount: 40, citation: Code 2 }
  - { id: trench, kind: flat, says: Trench, amount: 25, citation: Code 3 }
`;
const TOWN = `format: branchwork-overlay/1
id: town
name: Sample Town
extends: county
checked_on: "2026-06-30"
changes:
  - { op: replace, at: fees.permit.amount, replaces: 40, value: 55, reason: its own, citation: Bylaw 1 }
  - { op: remove, at: fees.trench, reason: none here, citation: Bylaw 1 }
fees:
  - { id: card, kind: flat, says: Card, amount: 5, citation: Bylaw 2 }
`;
const flat = (town: string, county = BASE) => flattenOverlay("town", { town, county });
const issuesOf = (town: string, county = BASE) => {
  const result = flat(town, county);
  return result.ok ? [] : result.issues;
};

describe("an overlay that extends another", () => {
  it("adds to lists, replaces and removes by named change, and keeps what nobody changed", () => {
    const result = flat(TOWN);
    if (!result.ok) throw new Error(JSON.stringify(result.issues));
    expect(result.overlay.name).toBe("Sample Town");
    expect(result.overlay.edition).toBe("2023");
    expect(result.overlay.fees.map((f) => [f.id, "amount" in f ? f.amount : null])).toEqual([
      ["permit", 55],
      ["card", 5],
    ]);
    expect(result.files).toEqual(["town", "county"]);
  });

  it("gives every entry its own day and citation: the county's for what is the county's, the change's for what it changed", () => {
    const result = flat(TOWN);
    if (!result.ok) throw new Error(JSON.stringify(result.issues));
    expect(result.overlay.intake).toMatchObject({ citation: "Code 1", checked_on: "2026-01-31" });
    expect(result.overlay.fees[0]).toMatchObject({ citation: "Bylaw 1", checked_on: "2026-06-30" });
    expect(result.overlay.fees[1]).toMatchObject({ citation: "Bylaw 2", checked_on: "2026-06-30" });
  });

  it("explains every field by file and line", () => {
    const result = flat(TOWN);
    if (!result.ok) throw new Error(JSON.stringify(result.issues));
    const fields = explainOverlay(result.placed);
    expect(fields).toContainEqual({ path: "fees.permit.amount", value: 55, file: "town", line: 7, column: 65 });
    expect(fields).toContainEqual({ path: "fees.permit.says", value: "Permit", file: "county", line: 8, column: 37 });
    expect(fields).toContainEqual({ path: "intake.copies", value: 2, file: "county", line: 6, column: 61 });
    expect(fields.some((f) => f.path.startsWith("changes"))).toBe(false);
  });

  it.each([
    ["a dangling target", TOWN.replace("at: fees.trench", "at: fees.ditch"), "town", 8, "changes.1"],
    ["a wrong base value, at the value", TOWN.replace("replaces: 40", "replaces: 41"), "town", 7, "changes.0"],
    ["two changes to one target", TOWN.replace("at: fees.trench", "at: fees.permit"), "town", 8, "changes.1.at"],
    ["a change of the county's own name", TOWN.replace("at: fees.trench", "at: name"), "town", 8, "changes.1.at"],
    ["a group that both give", `${TOWN}intake: { mode: over-the-counter, sheet_size: a4, copies: 0, sheets: [], citation: Bylaw 3 }\n`, "town", 11, "intake"],
    ["two entries of one id", TOWN.replace("id: card", "id: permit"), "town", 10, "fees.1.id"],
    ["a value the schema refuses, at the change", TOWN.replace("value: 55", "value: free"), "town", 7, "fees.0.amount"],
    ["a parent that is not there", TOWN.replace("extends: county", "extends: nowhere"), "town", 4, "extends"],
  ])("%s is an issue with file and line", (_, town, file, line, path) => {
    expect(issuesOf(town)).toContainEqual(expect.objectContaining({ file, line, path }));
    for (const issue of issuesOf(town)) expect(issue.mend).not.toBe("");
  });

  it("an issue of the extended file names that file", () => {
    expect(issuesOf(TOWN, BASE.replace("amount: 40", "amount: dear"))).toContainEqual(
      expect.objectContaining({ file: "county", line: 8, path: "fees.0.amount" }),
    );
  });

  describe("a check that the county turned off", () => {
    const county = (id: string) => `${BASE}amendments:\n  - { ${id}target: check, check: torque, off: true, reason: seen at the counter, citation: Code 9 }\n`;
    const town = (changes: string, amendments = "") => `format: branchwork-overlay/1
id: town
name: Sample Town
extends: county
checked_on: "2026-06-30"
${changes}${amendments}`;
    const remove = (name: string) => `changes:\n  - { op: remove, at: amendments.${name}, reason: looked at here, citation: Bylaw 4 }\n`;
    it.each([
      ["its id", "id: no-torque, ", "no-torque"],
      ["its check, where it has no id", "", "torque"],
    ])("is on again when its amendment is removed by %s", (_, id, name) => {
      const result = flat(town(remove(name)), county(id));
      if (!result.ok) throw new Error(JSON.stringify(result.issues));
      expect(basisFrom(result.overlay, "2023").waivedChecks).toEqual({});
      const still = flat(town(""), county(id));
      expect(still.ok && Object.keys(basisFrom(still.overlay, "2023").waivedChecks)).toEqual(["torque"]);
    });
    it("may then be judged otherwise in its place; without the removal the issue says how", () => {
      const verdict = "amendments:\n  - { target: verdict, check: torque, replaces: needs-person, value: caution, reason: x, citation: Bylaw 4 }\n";
      const both = flat(town("", verdict), county(""));
      const [issue] = both.ok ? basisFrom(both.overlay, "2023").issues : [];
      expect(issue?.what).toBe("check torque is amended twice");
      expect(issue?.mend).toContain("op: remove, at: amendments.torque");
      const one = flat(town(remove("torque"), verdict), county(""));
      expect(one.ok && basisFrom(one.overlay, "2023").issues).toEqual([]);
    });
    it("off: false is told what to do in its place", () => {
      const wrong = "amendments:\n  - { target: check, check: torque, off: false, reason: x, citation: Bylaw 4 }\n";
      const [issue] = issuesOf(town("", wrong), county(""));
      expect(issue).toMatchObject({ file: "town", line: 7, path: "amendments.0.off" });
      expect(issue?.what).toContain("remove it under changes");
    });
  });

  it("a circle is an issue, also of one file", () => {
    expect(issuesOf(TOWN, BASE.replace("edition:", "extends: town\nedition:")).map((i) => [i.file, i.line, i.path])).toEqual([["county", 4, "extends"]]);
    expect(issuesOf(TOWN.replace("extends: county", "extends: town")).map((i) => i.path)).toEqual(["extends"]);
  });

  it("changes without a parent are an issue", () => expect(issuesOf(TOWN.replace("extends: county\n", "")).map((i) => i.path)).toEqual(["changes"]));
});
