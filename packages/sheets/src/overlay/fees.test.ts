import { describe, expect, it } from "vitest";
import { designWith } from "../../test/plain-job.js";
import { feeRows, permitFees } from "./fees.js";
import { overlaySchema } from "./schema.js";

const outlet = (id: string, serves: "rv-50" | "rv-30", place: "buried" | "outdoors") => ({
  id,
  name: id,
  serves,
  current: serves === "rv-50" ? "50 A" : "30 A",
  breaker: { poles: serves === "rv-50" ? 2 : 1, spaces: serves === "rv-50" ? [2, 4] : [1], gfci: true },
  route: [{ name: "way", place, method: "PVC-80", length: "20 ft", ...(place === "buried" ? { cover: "24 in" } : {}) }],
});
const designed = (place: "buried" | "outdoors" = "buried") => designWith([outlet("big", "rv-50", place), outlet("small", "rv-30", place)]);
const estimate = (fees: readonly object[], date = "2026-06-01", made = designed()) =>
  permitFees({
    overlay: overlaySchema.parse({
      format: "branchwork-overlay/1",
      id: "t",
      name: "T",
      checked_on: "2026-01-01",
      fees: fees.map((f) => ({ says: "Fee", citation: "Code", ...f })),
    }),
    design: made,
    date,
  });
const flat = { id: "permit", kind: "flat", amount: 45 };

/** Amounts worked by hand from the invented schedules in each row; cents half up. */
describe("fees", () => {
  it("flat, with a trench and without", () => {
    expect(estimate([flat]).total).toBe("45.00");
    expect(estimate([{ ...flat, only_trench: true }]).total).toBe("45.00");
    const none = estimate([{ ...flat, only_trench: true }], "2026-06-01", designed("outdoors"));
    expect([none.total, none.lines.length, none.left.length]).toEqual(["0.00", 0, 1]);
  });
  it.each([
    // One circuit of 50 A and one of 30 A.
    [
      "both at the edges of their bands: 18 + 32.50",
      [
        { to: 30, amount: 18 },
        { to: 50, amount: 32.5 },
      ],
      "50.50",
    ],
    [
      "30 A above a band to 29 A: 2 × 32.50",
      [
        { to: 29, amount: 18 },
        { to: 50, amount: 32.5 },
      ],
      "65.00",
    ],
    ["50 A above a band to 49 A: 18 + 75", [{ to: 30, amount: 18 }, { to: 49, amount: 32.5 }, { amount: 75 }], "93.00"],
    ["one band for all: 2 × 10", [{ amount: 10 }], "20.00"],
  ])("per circuit by ampere band: %s", (_, bands, total) => expect(estimate([{ id: "c", kind: "per-circuit", bands }]).total).toBe(total));
  it("a circuit above the last band is not silently free", () => {
    const made = estimate([{ id: "c", kind: "per-circuit", bands: [{ to: 30, amount: 18 }] }]);
    expect(made.total).toBe("18.00");
    expect(made.left[0]).toContain("50 A");
  });
  it("per opening: all, of one kind, and those another fee covers", () => {
    const opening = { id: "o", kind: "per-opening", amount: 1.25 };
    expect(estimate([opening]).total).toBe("2.50");
    expect(estimate([{ ...opening, serves: ["rv-30"] }]).total).toBe("1.25");
    expect(estimate([{ ...opening, free: 1 }]).lines[0]).toMatchObject({ amount: "1.25", expression: "(2 − 1) × 1.25" });
    expect(estimate([{ ...opening, free: 2 }]).lines).toEqual([]);
  });
  it("surcharge per cent, half up to the cent, and its least", () => {
    const surcharge = (percent: number, least?: number) => ({ id: "s", kind: "surcharge", percent, of: ["permit"], ...(least === undefined ? {} : { least }) });
    expect(estimate([flat, surcharge(2.5)]).lines[1]?.amount).toBe("1.13"); // 45 × 0.025 = 1.125
    expect(estimate([flat, surcharge(2.5, 2)]).lines[1]).toMatchObject({ amount: "2.00", expression: "max(45.00 × 2.5 / 100, 2.00)" });
    expect(estimate([flat, surcharge(2.5, 1.13)]).lines[1]?.expression).toBe("45.00 × 2.5 / 100");
  });
  it("a waiver holds to its last day and not the day after", () => {
    const waiver = { id: "w", kind: "waiver", percent: 50, of: ["permit"], until: "2026-06-01" };
    expect(estimate([flat, waiver], "2026-06-01").total).toBe("22.50");
    const after = estimate([flat, waiver], "2026-06-02");
    expect(after.total).toBe("45.00");
    expect(after.left[0]).toContain("ended on 2026-06-01");
  });
  it("a fee for what may happen is printed and not summed", () => {
    const made = estimate([flat, { id: "again", kind: "contingent", amount: 55, when: "not ready" }]);
    expect(made.total).toBe("45.00");
    expect(made.contingent).toMatchObject([{ amount: "55.00", when: "not ready" }]);
  });
  it("prints rows that add up in sight", () => {
    const rows = feeRows(
      estimate([
        { ...flat, amount: 1234.5 },
        { id: "w", kind: "waiver", percent: 100, of: ["permit"], until: "2026-12-31" },
      ]),
    );
    expect(rows.at(-1)).toEqual(["Total", "1,234.50 − 1,234.50", "$0.00", ""]);
  });
});
