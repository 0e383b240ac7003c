import { describe, expect, it } from "vitest";
import { stringify } from "yaml";
import { ADVISED_DROP, type Basis, unamended } from "../src/basis/basis.js";
import type { Edition } from "../src/basis/edition.js";
import { design } from "../src/design.js";
import { readJob } from "../src/job/read.js";
import { measured, plainJob } from "./plain-job.js";

// biome-ignore lint/suspicious/noExplicitAny: a job as written, bent by each row before it is read
type Written = any;

function sound(): Written {
  return plainJob({
    code: { confirmed_with_authority: true },
    service: measured("10 kW"),
    panel: {
      id: "a",
      name: "Panel",
      main: "200 A",
      circuits: [
        {
          id: "rv",
          name: "RV",
          serves: "rv-50",
          current: "50 A",
          listed_rv_power_outlet: true,
          breaker: { rating: "50 A", poles: 2, spaces: [5, 7], gfci: false, listed_for_panel: true },
          route: [
            { name: "in", place: "indoors", method: "EMT", length: "10 ft" },
            { name: "trench", place: "buried", method: "PVC-40", length: "15 ft", cover: "24 in" },
            { name: "riser", place: "outdoors", method: "PVC-80", length: "4 ft", exposed_to_damage: true },
          ],
        },
      ],
    },
  });
}
const circuit = (job: Written) => job.service.panel.circuits[0];
const of = { reason: "because", citation: "Ordinance (invented)" };

function made(local: Partial<Basis>, bend: (job: Written) => void = () => undefined, edition: Edition = "2023") {
  const job = sound();
  bend(job);
  const read = readJob(stringify(job));
  if (!read.ok) throw new Error(JSON.stringify(read.issues));
  return design({ job: read.job, basis: { ...unamended(edition), ...local } });
}
const findings = (check: string, ...given: Parameters<typeof made>) => made(...given).findings.filter((f) => f.check === check);
const verdicts = (check: string, ...given: Parameters<typeof made>) => findings(check, ...given).map((f) => f.verdict);

const long = (feet: number, size?: string) => (job: Written) => {
  circuit(job).route[1].length = `${feet} ft`;
  if (size) for (const s of circuit(job).route) s.conductors = { size };
};
const drop = (more: Partial<NonNullable<Basis["drop"]>> = {}) => ({ drop: { ...ADVISED_DROP, required: true, ...of, ...more } });

describe("wiring methods a jurisdiction allows", () => {
  const metal = { methodLimits: [{ places: ["indoors", "outdoors"], methods: ["EMT", "RMC"], ...of }] };
  it("fails another method in a limited place, names the reason, and leaves other places alone", () => {
    expect(verdicts("local-wiring-methods", metal)).toEqual(["pass", "fail"]);
    const failed = findings("local-wiring-methods", metal).find((f) => f.verdict === "fail");
    expect(failed).toMatchObject({ subject: "RV: riser", mend: "use EMT, RMC" });
    expect(failed?.says).toContain("Ordinance (invented)");
    expect(made(metal).ready).toBe(false);
  });
  it("passes what is allowed there", () =>
    expect(
      verdicts("local-wiring-methods", metal, (j) => {
        circuit(j).route[2].method = "RMC";
      }),
    ).toEqual(["pass", "pass"]));
});

describe("risers", () => {
  const rigid = { riserMethods: { methods: ["RMC"], ...of } };
  it("PVC Schedule 80 holds by the code and fails where only rigid is taken", () => {
    expect(verdicts("riser-protection", {})).toEqual(["pass"]);
    expect(verdicts("riser-protection", rigid)).toEqual(["fail"]);
  });
  it("rigid passes there", () =>
    expect(
      verdicts("riser-protection", rigid, (j) => {
        circuit(j).route[2].method = "RMC";
      }),
    ).toEqual(["pass"]));
});

// 6 AWG, 179 ft, 50 A, one 120 V leg: more than 3 %; at 29 ft well under (Table 8 resistance).
describe("voltage drop", () => {
  it("over the limit is a caution where advised and fails where required", () => {
    expect(verdicts("voltage-drop", {}, long(165, "6"))).toEqual(["caution"]);
    expect(verdicts("voltage-drop", drop({ required: false }), long(165, "6"))).toEqual(["caution"]);
    expect(verdicts("voltage-drop", drop(), long(165, "6"))).toEqual(["fail"]);
    expect(verdicts("voltage-drop", drop(), long(15, "6"))).toEqual(["pass"]);
  });
  it("over the job's own limit and under a looser required one is a caution", () =>
    expect(verdicts("voltage-drop", drop({ limitPercent: 12 }), long(165, "6"))).toEqual(["caution"]));
  it("a lower local limit raises what is left to be computed, and says so", () => {
    const loose = made({}, long(120));
    const strict = made(drop({ limitPercent: 1.5 }), long(120));
    expect(Number(loose.circuits[0]?.drop.worstLegPercent.value)).toBeGreaterThan(1.5);
    expect(Number(strict.circuits[0]?.drop.worstLegPercent.value)).toBeLessThanOrEqual(1.5);
    expect(strict.assumptions.map((a) => a.says).join()).toContain("1.5 %");
    expect(strict.findings.filter((f) => f.check === "voltage-drop").map((f) => f.verdict)).toEqual(["pass"]);
  });
});

describe("GFCI relief for labelled RV outlets", () => {
  const relief = { gfciRelief: of };
  it("fails without relief, asks for the label with it", () => {
    expect(verdicts("gfci", {})).toEqual(["fail"]);
    expect(verdicts("gfci", relief)).toEqual(["needs-person"]);
  });
  it.each([
    [
      "an outlet without the label",
      (j: Written) => {
        circuit(j).listed_rv_power_outlet = false;
      },
    ],
    ["equipment that is no RV outlet", (j: Written) => Object.assign(circuit(j), { serves: "ev-supply", current: "40 A" })],
  ])("does not reach %s", (_, bend) => expect(verdicts("gfci", relief, bend)).toEqual(["fail"]));
  it("changes nothing where the breaker is a GFCI, and nothing in 2017", () => {
    expect(
      verdicts("gfci", relief, (j) => {
        circuit(j).breaker.gfci = true;
      }),
    ).toEqual(["pass"]);
    expect(verdicts("gfci", relief, undefined, "2017")).toEqual(["not-applicable"]);
  });
});

describe("load calculation method", () => {
  it.each([
    [["measured-demand"], "pass"],
    [["existing-dwelling"], "fail"],
  ])("%s: %s", (methods, verdict) => expect(verdicts("local-load-method", { loadMethods: { methods, ...of } })).toEqual([verdict]));
});

describe("verdicts and checks of the jurisdiction", () => {
  it("a changed verdict keeps what to do and tells its reason; other verdicts stay", () => {
    const before = findings("torque", {});
    const after = findings("torque", { changedVerdicts: { torque: { from: "needs-person", to: "fail", ...of } } });
    expect(before.map((f) => f.verdict)).toEqual(["needs-person"]);
    expect(after).toMatchObject([{ verdict: "fail", mend: "look" in before[0]! ? before[0].look : "" }]);
    expect(after[0]?.says).toContain("because (Ordinance (invented))");
    expect(verdicts("torque", { changedVerdicts: { torque: { from: "caution", to: "fail", ...of } } })).toEqual(["needs-person"]);
  });
  it("a failure made a caution lets the job be ready", () => {
    const softer = { changedVerdicts: { gfci: { from: "fail", to: "caution", ...of } } } as const;
    expect(made({}).ready).toBe(false);
    expect(made(softer).findings.filter((f) => f.verdict === "fail")).toEqual([]);
    expect(made(softer).ready).toBe(true);
  });
  it("an added check asks somebody to look, one for trenches only where something is buried", () => {
    const added = (onlyTrench: boolean) => ({ addedChecks: [{ id: "bollard", title: "Bollard", look: "a post", onlyTrench, ...of }] });
    const above = (j: Written) => {
      circuit(j).route[1].place = "outdoors";
    };
    expect(findings("bollard", added(false), above)).toMatchObject([{ verdict: "needs-person", look: "a post", title: "Bollard" }]);
    expect(verdicts("bollard", added(true))).toEqual(["needs-person"]);
    expect(verdicts("bollard", added(true), above)).toEqual(["not-applicable"]);
  });
  it("no amendment, no trace of one", () => {
    for (const f of made({}).findings) expect(f.says).not.toMatch(/here:/);
  });
});
