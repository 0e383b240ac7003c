import { describe, expect, it } from "vitest";
import { overlayCautions } from "./age.js";
import { overlaySchema } from "./schema.js";

const overlay = (more: object = {}) => overlaySchema.parse({ format: "branchwork-overlay/1", id: "town", name: "Town", checked_on: "2026-01-01", ...more });
const fee = (checked_on?: string) => ({ id: "permit", kind: "flat", says: "Permit", amount: 1, citation: "Code", ...(checked_on ? { checked_on } : {}) });

// Day numbers by the calendar: 1 January 2026 + 180 days = 30 June 2026 (31+28+31+30+31+30 = 181 days to 1 July).
describe("the age of an overlay", () => {
  it("is silent to the 180th day and cautions from the next", () => {
    expect(overlayCautions(overlay(), "2026-06-30")).toEqual([]);
    const [caution] = overlayCautions(overlay(), "2026-07-01");
    expect(caution).toContain("181 days");
    expect(caution).toContain("the overlay as a whole");
  });
  it("names the entry that alone is old", () => {
    const cautions = overlayCautions(overlay({ fees: [fee("2025-01-01")] }), "2026-02-01");
    expect(cautions).toHaveLength(1);
    expect(cautions[0]).toContain('fees "permit"');
    expect(cautions[0]).not.toContain("as a whole");
  });
  it("does not name entries that are as old as the whole", () => expect(overlayCautions(overlay({ fees: [fee()] }), "2026-08-01")).toHaveLength(1));
  it("doubts a day after the packet's", () => expect(overlayCautions(overlay(), "2025-12-31")[0]).toContain("after the day of this packet"));
  it("says when the edition is not in force yet, to its eve", () => {
    const adopted = overlay({ edition: "2026", adoption: { from: "2026-03-01", governs: "permit-application", citation: "Code" } });
    expect(overlayCautions(adopted, "2026-02-28")[0]).toContain("in force here from 2026-03-01, 1 days");
    expect(overlayCautions(adopted, "2026-03-01")).toEqual([]);
  });
  it("names a statement without a citation", () =>
    expect(overlayCautions(overlay({ statements: [{ title: "Owner", says: "I do" }] }), "2026-01-02")[0]).toContain('statement "Owner"'));
});
