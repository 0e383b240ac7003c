import { expect } from "vitest";
import { stringify } from "yaml";
import { unamended } from "../../src/basis/basis.js";
import { design } from "../../src/design.js";
import { readJob } from "../../src/job/read.js";
import { measuredDemand } from "../../src/service/measured-demand.js";
import { edition, id, type Proofs } from "./row.js";

/** A house with a measured demand and 50 A of new load on a 100 A service. */
function measuredHouse(peakVA: number, basis: "one-year" | "thirty-day") {
  const read = readJob(
    stringify({
      format: "branchwork-job/1",
      project: { title: "Test job", owner: "A. Nonesuch", site: "1 Example Way", preparer: { name: "A. Nonesuch", role: "owner" } },
      code: { edition },
      service: {
        rating: "100 A",
        load_method: "measured-demand",
        measured: { peak: `${peakVA} VA`, basis, from: "the utility" },
        panel: {
          id: "a",
          name: "Panel",
          bus: "100 A",
          main: "100 A",
          spaces: 20,
          circuits: [
            {
              id: "rv",
              name: "RV",
              serves: "rv-50",
              current: "50 A",
              breaker: { rating: "50 A", poles: 2, spaces: [5, 7], gfci: true, listed_for_panel: true },
              route: [{ name: "in", place: "indoors", method: "NM-B", length: "10 ft" }],
            },
          ],
        },
      },
    }),
  );
  if (!read.ok) throw new Error(JSON.stringify(read.issues));
  return design({ job: read.job, basis: unamended(edition) });
}

export const MEASURED_PROOFS: Proofs = {
  "md-001": ({ expected: e }) => {
    expect(Number(measuredDemand({ id, peakVA: 4000, edition }).value)).toBe(5000);
    // 50 A of new load on 100 A leaves 12,000 VA: 1.25 × 9,600 VA just fits.
    const capacity = (peakVA: number) => measuredHouse(peakVA, "one-year").findings.find((f) => f.check === "service-capacity")!.verdict;
    expect([capacity(9600), capacity(9601)]).toEqual(["pass", "fail"]);
    expect(e.rule).toBe("1.25*D + N <= S");
    const record = (basis: "one-year" | "thirty-day") => JSON.stringify(measuredHouse(9600, basis).findings.filter((f) => f.check === "measured-record"));
    expect(record("thirty-day")).toContain("needs-person");
    for (const asked of [`${e.min_record_days} days`, `${e.interval_min}-minute`, "renewable energy source", "peak shaving"])
      expect(record("thirty-day")).toContain(asked);
    expect(e.barred_if).toEqual(["renewable source", "peak shaving"]);
    expect(record("one-year")).not.toContain("renewable");
  },
};
