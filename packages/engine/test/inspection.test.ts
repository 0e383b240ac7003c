import { describe, expect, it } from "vitest";
import { stringify } from "yaml";
import { unamended } from "../src/basis/basis.js";
import { EDITIONS, type Edition } from "../src/basis/edition.js";
import { CHECKS } from "../src/checks/registry.js";
import { design } from "../src/design.js";
import { LINES_OF_CHECKS, NOT_SEEN } from "../src/inspection/check-lines.js";
import { inspectionChecklist } from "../src/inspection/checklist.js";
import { CORRECTIONS } from "../src/inspection/corrections.js";
import type { InspectionLine } from "../src/inspection/line.js";
import { readJob } from "../src/job/read.js";

// biome-ignore lint/suspicious/noExplicitAny: a job as written, bent by each row before it is read
type Written = any;

const breaker = (more: object) => ({ poles: 2, spaces: [5, 7], gfci: true, listed_for_panel: true, interrupting_kA: 10, ...more });

function written(): Written {
  return {
    format: "branchwork-job/1",
    project: { title: "Test job", owner: "A. Nonesuch", site: "1 Example Way", preparer: { name: "A. Nonesuch", role: "owner" } },
    code: { edition: "2023", confirmed_with_authority: true },
    service: {
      rating: "200 A",
      fault_current_kA: 9,
      load_method: "measured-demand",
      measured: { peak: "10 kW", basis: "one-year", from: "the utility" },
      panel: {
        id: "a",
        name: "Panel",
        bus: "200 A",
        main: "200 A",
        spaces: 30,
        working_space_clear: true,
        directory: [{ space: 1, poles: 2, rating: "30 A", serves: "Dryer" }],
        circuits: [
          {
            id: "rv",
            name: "RV",
            serves: "rv-50",
            current: "50 A",
            breaker: breaker({ rating: "50 A" }),
            cover_plate: "weatherproof-in-use",
            route: [
              { name: "in", place: "indoors", method: "NM-B", length: "10 ft", conductors: { size: "4" } },
              { name: "trench", place: "buried", method: "PVC-40", length: "15 ft", cover: "24 in", bends: [90, 90], trade_size: "1-1/4" },
              { name: "riser", place: "outdoors", method: "PVC-80", length: "4 ft", exposed_to_damage: true, trade_size: "1-1/4" },
            ],
            boxes: [
              { name: "joint", after: "in", volume: "64 in3" },
              { name: "outlet", after: "riser", volume: "64 in3", wet_location: true, device: true },
            ],
          },
        ],
      },
    },
  };
}
const first = (job: Written) => job.service.panel.circuits[0];

function designed(bend: (job: Written) => void = () => undefined, edition: Edition = "2023") {
  const job = written();
  bend(job);
  const read = readJob(stringify(job, { aliasDuplicateObjects: false }));
  if (!read.ok) throw new Error(JSON.stringify(read.issues));
  return design({ job: read.job, basis: unamended(edition) });
}
function linesOf(bend?: (job: Written) => void, edition?: Edition): readonly InspectionLine[] {
  return inspectionChecklist(designed(bend, edition)).flatMap((part) => part.lines);
}
const idsOf = (bend?: (job: Written) => void) => new Set(linesOf(bend).map((line) => line.id));

/** Jobs that have what a line or a check speaks of. */
const BENDS: Readonly<Record<string, (job: Written) => void>> = {
  plain: () => undefined,
  "rv-30": (job) => {
    const circuit = first(job);
    circuit.serves = "rv-30";
    circuit.current = "30 A";
    circuit.breaker = breaker({ rating: "30 A", poles: 1, spaces: [5] });
    circuit.route[0].conductors = { size: "8" };
  },
  tubing: (job) => {
    first(job).route[0] = { name: "in", place: "indoors", method: "EMT", length: "10 ft", bends: [90], trade_size: "1-1/4" };
  },
  aluminum: (job) => {
    first(job).route = first(job)
      .route.slice(1)
      .map((stretch: object) => ({ ...stretch, conductors: { material: "aluminum" } }));
    first(job).boxes = first(job).boxes.slice(1);
  },
  direct: (job) => {
    first(job).route = [
      { name: "trench", place: "buried", method: "UF-B", length: "15 ft", cover: "24 in", conductors: { size: "6" } },
      { name: "wall", place: "outdoors", method: "UF-B", length: "6 ft", conductors: { size: "6" }, exposed_to_damage: true },
    ];
    first(job).boxes = [];
  },
  charger: (job) => {
    Object.assign(first(job), { serves: "ev-supply", current: "32 A", breaker: breaker({ rating: "40 A" }) });
  },
  spa: (job) => {
    Object.assign(first(job), { serves: "spa", current: "40 A", nameplate: { largest_overcurrent: "50 A" } });
  },
  generator: (job) => {
    Object.assign(first(job), {
      serves: "generator-inlet",
      current: "30 A",
      breaker: breaker({ rating: "30 A", gfci: false }),
      nameplate: { load: "7500 W", neutral_bonded: false, transfer: "interlock", transfer_listed: true },
    });
  },
  receptacle: (job) => {
    const circuit = first(job);
    Object.assign(circuit, { serves: "receptacle-20", current: "20 A", breaker: breaker({ rating: "20 A", poles: 1, spaces: [5] }) });
    delete circuit.route[0].conductors;
  },
  barn: (job) => {
    const panel = job.service.panel;
    const circuit = panel.circuits[0];
    panel.circuits = [];
    panel.feeders = [
      {
        id: "barn-feeder",
        name: "Feeder to barn",
        breaker: breaker({ rating: "100 A", gfci: false }),
        building: "detached",
        disconnect: true,
        electrode: true,
        terminals_75C: true,
        route: [{ name: "yard", place: "buried", method: "PVC-40", length: "60 ft", cover: "24 in" }],
        panel: {
          id: "barn",
          name: "Barn panel",
          bus: "125 A",
          main: "100 A",
          spaces: 12,
          working_space_clear: true,
          circuits: [{ ...circuit, breaker: breaker({ rating: "50 A", spaces: [1, 3] }) }],
        },
      },
    ];
  },
};

describe("the checklist holds only what applies, in the order of the walk", () => {
  it("trench, rough-in, final, each with its hold", () => {
    const parts = inspectionChecklist(designed());
    expect(parts.map((part) => part.stage)).toEqual(["trench", "rough", "final"]);
    for (const part of parts) expect(part.hold).toMatch(/^HOLD: /);
  });
  it("no trench part where nothing is buried", () => {
    const parts = inspectionChecklist(
      designed((job) => {
        first(job).route = first(job).route.filter((stretch: Written) => stretch.place !== "buried");
      }),
    );
    expect(parts.map((part) => part.stage)).toEqual(["rough", "final"]);
  });
  it("no GFCI line without one, no subpanel line without a feeder, no white-wire line with a neutral", () => {
    const ids = idsOf((job) => {
      first(job).breaker.gfci = false;
    });
    for (const id of ["gfci-test", "gfci-neutral", "subpanel-neutral", "white-marked", "spa-bonding", "generator-signs"]) expect(ids).not.toContain(id);
  });
  it("an existing feeder is not inspected anew", () => {
    const lines = linesOf((job) => {
      BENDS.barn!(job);
      const feeder = job.service.panel.feeders[0];
      feeder.existing = true;
      feeder.route[0].conductors = { size: "1", grounding: "6" };
    });
    expect(lines.some((line) => line.run === "barn-feeder")).toBe(false);
    expect(lines.some((line) => line.run === "rv")).toBe(true);
  });
  it("every line says where, what number and how, and cites", () => {
    for (const bend of Object.values(BENDS))
      for (const edition of EDITIONS)
        for (const line of linesOf(bend, edition)) {
          expect([line.look, line.seen, line.how, line.section.section].every((words) => words.trim().length > 0)).toBe(true);
          expect(`${line.look} ${line.seen}`).not.toMatch(/undefined|NaN|null/);
          if (line.section.document === "NFPA 70") expect(line.section.edition).toBe(edition);
        }
  });
});

describe("the numbers to be seen", () => {
  const seen = (id: string, bend?: (job: Written) => void, edition?: Edition) => linesOf(bend, edition).find((line) => line.id === id)?.seen;
  it("18 in to the top of a PVC raceway (Table 300.5, ecmweb.com/print/nec/code-qa-3)", () =>
    expect(seen("trench-cover")).toBe("24 in planned; least 18 in to top of raceway"));
  it("10 AWG green for 50 A (Table 250.122, memory)", () => expect(seen("grounding-conductor")).toMatch(/^10 AWG, green or bare/));
  it("PVC 1-1/4 in: within 3 ft of a box, every 5 ft (352.30, https://www.ecmweb.com/code-quiz-day/securing-and-supporting-pvc; 5 ft memory)", () =>
    expect(linesOf().find((line) => line.id === "supports" && line.look.includes("riser"))?.seen).toBe("within 3 ft of each end, then every 5 ft"));
  it("cable: within 12 in, every 4.5 ft (334.30, https://mikeholt.com/newsletters.php?action=display&letterID=2363)", () =>
    expect(linesOf().find((line) => line.id === "supports" && line.look.includes(", in"))?.seen).toBe("within 12 in of each end, then every 4.5 ft"));
  it.each([
    ["2017", "Table 300.5"],
    ["2020", "Table 300.5"],
    ["2023", "Table 300.5(A)"],
  ] as const)("the cover table of %s is %s (trade press: thebuildingcodeforum.com; memory)", (edition, table) =>
    expect(linesOf(undefined, edition).find((line) => line.id === "trench-cover")?.section.section).toBe(table),
  );
  it.each([
    ["PVC-80", undefined, "352.44, 300.5(J)", "expansion fitting or slack where the calculation or the authority asks one"],
    ["RMC", undefined, "300.5(J)", "expansion fitting or slack where the calculation or the authority asks one"],
    ["RMC", "expansion-fitting", "300.5(J)", "expansion fitting planned in the riser, free to slide both ways"],
    ["UF-B", "slack-loop", "300.5(J)", "S loop of slack cable planned in the trench"],
    ["PVC-80", "nothing", "352.44, 300.5(J)", "none planned: give it room before it is covered"],
  ] as const)("a riser of %s, %s told: room for the ground to move by %s", (method, earth_movement, number, words) => {
    const lines = linesOf((job) => Object.assign(first(job).route[2], { method, earth_movement })).filter(({ id }) => id === "trench-expansion");
    expect(lines.map(({ section, seen: what }) => [section.section, what])).toEqual([[number, words]]);
  });
  it("box volume as marked against what is needed, torque record, 30 × 36 × 78 in (110.26(A), memory)", () => {
    expect(seen("box-size", BENDS["rv-30"])).toMatch(/^64 in³; needs \d+(\.\d+)? in³$/);
    expect(seen("torque")).toContain("torque record");
    expect(seen("working-space")).toBe("30 in wide, 36 in deep, 6 ft 6 in high");
  });
});

describe("fifty common corrections", () => {
  const checks = new Set(CHECKS.map((check) => check.id));
  const jobs = Object.entries(BENDS).map(([name, bend]) => ({ name, ids: idsOf(bend), findings: new Set(designed(bend).findings.map((f) => f.check)) }));
  it("are fifty, each said once and answered by something", () => {
    expect(CORRECTIONS).toHaveLength(50);
    expect(new Set(CORRECTIONS.map((c) => c.id)).size).toBe(50);
    expect(new Set(CORRECTIONS.map((c) => c.says)).size).toBe(50);
    for (const c of CORRECTIONS) expect(c.checks.length + c.lines.length, c.id).toBeGreaterThan(0);
  });
  it.each(CORRECTIONS.map((c) => [c.id, c] as const))("%s", (_id, { checks: asked, lines, answered }) => {
    for (const check of asked) {
      expect(checks).toContain(check);
      expect(jobs.some((job) => job.findings.has(check))).toBe(true);
    }
    for (const line of lines)
      expect(
        jobs.filter((job) => job.ids.has(line)).map((job) => job.name),
        line,
      ).not.toEqual([]);
    if (answered.some((how) => how !== "printed")) expect(asked.length).toBeGreaterThan(0);
    if (answered.includes("printed")) expect(lines.length).toBeGreaterThan(0);
  });
  /** The fault itself in a job, and the check that must then not pass. */
  const FAULTY: readonly (readonly [string, (job: Written) => void, string])[] = [
    ["cover-short", (job) => Object.assign(first(job).route[1], { cover: "12 in" }), "burial-cover"],
    ["emt-in-earth", (job) => Object.assign(first(job).route[1], { method: "EMT" }), "emt-buried"],
    ["dry-cable-wet", (job) => Object.assign(first(job).route[1], { method: "NM-B", trade_size: undefined, bends: [] }), "cable-wet"],
    ["too-many-bends", (job) => Object.assign(first(job).route[1], { bends: [90, 90, 90, 90, 45] }), "raceway-bends"],
    ["overfilled", (job) => Object.assign(first(job).route[1], { trade_size: "1/2" }), "raceway-fill"],
    ["wrong-conductor", (job) => Object.assign(first(job).route[1], { conductors: { size: "10" } }), "conductor-size"],
    ["ground-undersized", (job) => Object.assign(first(job).route[1], { conductors: { grounding: "14" } }), "grounding-size"],
    ["breaker-unlisted", (job) => Object.assign(first(job).breaker, { listed_for_panel: false }), "breaker-listed"],
    ["tandem-misplaced", (job) => Object.assign(first(job).breaker, { spaces: [1, 3] }), "panel-spaces-free"],
    ["wrong-poles", (job) => Object.assign(first(job).breaker, { poles: 1, spaces: [5] }), "breaker-poles"],
    ["one-leg", (job) => Object.assign(first(job).breaker, { spaces: [5, 9] }), "breaker-adjacent-spaces"],
    ["no-gfci", (job) => Object.assign(first(job).breaker, { gfci: false }), "gfci"],
    ["enclosure-dry", (job) => Object.assign(first(job).boxes[1], { wet_location: false }), "box-wet"],
    ["box-small", (job) => Object.assign(first(job).boxes[1], { volume: "12 in3" }), "box-volume"],
    ["space-blocked", (job) => Object.assign(job.service.panel, { working_space_clear: false }), "working-space"],
    ["overloaded", (job) => Object.assign(job.service.measured, { peak: "40 kW" }), "service-capacity"],
    ["drop-unstated", (job) => Object.assign(first(job).route[1], { length: "900 ft", conductors: { size: "6" } }), "voltage-drop"],
    [
      "no-building-disconnect",
      (job) => {
        BENDS.barn!(job);
        Object.assign(job.service.panel.feeders[0], { disconnect: false });
        delete job.service.panel.feeders[0].panel.main;
      },
      "detached-disconnect",
    ],
    [
      "no-building-electrode",
      (job) => {
        BENDS.barn!(job);
        Object.assign(job.service.panel.feeders[0], { electrode: false });
      },
      "detached-electrode",
    ],
  ];
  it.each(FAULTY)("%s: a job that has it does not pass the check", (id, bend, check) => {
    expect(CORRECTIONS.find((c) => c.id === id)?.checks).toContain(check);
    const found = designed(bend)
      .findings.filter((f) => f.check === check)
      .map((f) => f.verdict);
    expect(found.some((verdict) => verdict !== "pass" && verdict !== "not-applicable")).toBe(true);
  });
});

/** Jobs in which what a check speaks of is there, besides those above. */
const MORE: Readonly<Record<string, (job: Written) => void>> = {
  ...BENDS,
  tubes: (job) => {
    first(job).route[0] = { name: "in", place: "indoors", method: "ENT", length: "10 ft", bends: [90], trade_size: "1-1/4" };
  },
  flexible: (job) => {
    first(job).route[0] = { name: "in", place: "indoors", method: "FMC", length: "5 ft", bends: [90], trade_size: "1-1/4" };
  },
  "long wall": (job) => {
    Object.assign(first(job).route[2], { method: "PVC-40", length: "60 ft", exposed_to_damage: false });
  },
  heater: (job) => {
    Object.assign(first(job), { serves: "water-heater", current: undefined, disconnect: "lockable-breaker", nameplate: { load: "4500 W" } });
    Object.assign(first(job), { breaker: breaker({ rating: "30 A" }), place: "indoors", cover_plate: undefined });
  },
  cooler: (job) => {
    Object.assign(first(job), { serves: "air-conditioner", current: undefined, disconnect: "in-sight", breaker: breaker({ rating: "40 A" }) });
    Object.assign(first(job), { nameplate: { minimum_ampacity: "24 A", largest_overcurrent: "40 A" }, cover_plate: undefined });
  },
  welder: (job) => {
    Object.assign(first(job), { serves: "welder", current: "40 A", nameplate: { duty_percent: 40 }, connection: "6-50R" });
  },
  range: (job) => {
    Object.assign(first(job), { serves: "range", current: undefined, nameplate: { load: "12 kW" }, connection: "14-50R", place: "kitchen" });
  },
  bedroom: (job) => {
    BENDS.receptacle!(job);
    Object.assign(first(job), { afci: true, place: "indoors" });
  },
  large: (job) => {
    BENDS.barn!(job);
    job.service.panel.feeders[0].route.unshift({ name: "cellar", place: "indoors", method: "EMT", length: "10 ft" });
    job.service.panel.feeders[0].boxes = [
      { name: "pull box", after: "cellar", volume: "400 in3" },
      { name: "disconnect", after: "yard", volume: "400 in3", device: true, wet_location: true },
    ];
  },
  upsized: (job) => {
    Object.assign(first(job), { serves: "rv-30", current: "30 A", breaker: breaker({ rating: "30 A", poles: 1, spaces: [5] }) });
    first(job).route = first(job)
      .route.slice(1)
      .map((stretch: object) => ({ ...stretch, conductors: { size: "4" } }));
    first(job).boxes = first(job).boxes.slice(1);
  },
  managed: (job) => {
    BENDS.charger!(job);
    job.service.managed = { setpoint: "24 A", citation: "any label" };
  },
  parallel: (job) => {
    Object.assign(first(job).route[1], { sets: 2, conductors: { size: "1/0" } });
  },
  "two trade sizes": (job) => {
    Object.assign(first(job).route[1], { trade_size: "1" });
    Object.assign(first(job).route[2], { trade_size: "1-1/4" });
  },
  counted: (job) => {
    Object.assign(job.service, {
      load_method: "existing-dwelling",
      measured: undefined,
      existing: { floor_area: "1500 ft2", small_appliance_circuits: 2, laundry_circuits: 1 },
    });
  },
  electrode: (job) => {
    job.service.conductors = { size: "2/0", material: "copper" };
    job.service.electrode = { material: "copper", electrodes: ["water-pipe"] };
  },
};

describe("every check is seen by an inspector, or it is said why not", () => {
  const named = new Set(CORRECTIONS.flatMap(({ checks }) => checks));
  const jobs = Object.entries(MORE).map(([name, bend]) => {
    const made = designed(bend);
    const bearing = made.findings.filter(({ verdict }) => verdict !== "not-applicable").map(({ check }) => check);
    return { name, ids: new Set(inspectionChecklist(made).flatMap(({ lines }) => lines.map(({ id }) => id))), bearing: new Set(bearing) };
  });
  /** Judged only where the jurisdiction limits something: no job brings them out. */
  const LOCAL = ["local-load-method", "local-wiring-methods"];
  it.each(CHECKS.map(({ id }) => id))("%s", (check) => {
    const lines = LINES_OF_CHECKS[check];
    const ways = [named.has(check), lines !== undefined, NOT_SEEN[check] !== undefined].filter(Boolean);
    expect(ways, "by a correction, by a line, or with a reason; one of them").toHaveLength(1);
    // Where the check bears on a job, its line stands on that job's checklist.
    for (const line of lines ?? []) {
      const seen = jobs.filter((job) => job.ids.has(line) && (job.bearing.has(check) || LOCAL.includes(check)));
      expect(
        seen.map(({ name }) => name),
        line,
      ).not.toEqual([]);
    }
    if (NOT_SEEN[check] !== undefined) expect(NOT_SEEN[check].length).toBeGreaterThan(15);
  });
  it("and nothing is named that is no check", () => {
    const ids = CHECKS.map(({ id }) => id);
    for (const check of [...Object.keys(LINES_OF_CHECKS), ...Object.keys(NOT_SEEN)]) expect(ids).toContain(check);
  });
  it("every line of these jobs says where, what number and how, and cites the edition in force", () => {
    for (const bend of Object.values(MORE))
      for (const edition of EDITIONS)
        for (const line of linesOf(bend, edition)) {
          expect([line.look, line.seen, line.how, line.section.section].every((words) => words.trim().length > 0)).toBe(true);
          expect(`${line.look} ${line.seen}`).not.toMatch(/undefined|NaN|null/);
          if (line.section.document === "NFPA 70") expect(line.section.edition).toBe(edition);
        }
  });
  const one = (id: string, name: string, edition?: Edition) => linesOf(MORE[name], edition).find((line) => line.id === id);
  it("tells the job's own number", () => {
    expect(one("breaker", "plain")?.seen).toBe("50 A, 2-pole, spaces 5 and 7; 10 kA marked, 9,000 A available");
    expect(one("panel-rating", "plain")?.seen).toBe("bus 200 A, main 200 A");
    expect(one("receptacle-face", "plain")?.seen).toBe("14-50R, 50 A 125/250 V, on 50 A");
    expect(one("nameplate-breaker", "cooler")?.seen).toBe("40 A; 40 A at most");
    expect(one("managed-setpoint", "managed")?.seen).toMatch(/^listed; set to 24 A;/);
    // Table 250.66: 4 AWG copper for 2/0 copper (memory).
    expect(one("service-electrode", "electrode")?.seen).toBe("4 AWG copper or larger, to water pipe");
  });
  it.each([
    ["managed-setpoint", "managed", "2020", "625.42"],
    ["managed-setpoint", "managed", "2023", "220.70"],
    ["afci-test", "bedroom", "2020", "210.12(A)"],
    ["afci-test", "bedroom", "2023", "210.12(B)"],
    ["raceway-expansion", "long wall", "2020", "352.44"],
    ["raceway-expansion", "long wall", "2023", "352.44(A)"],
  ] as const)("%s of %s by %s is %s", (id, job, edition, number) => expect(one(id, job, edition)?.section.section).toBe(number));
});
