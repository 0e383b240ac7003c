import { readdirSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { stringify } from "yaml";
import { unamended } from "../src/basis/basis.js";
import { EDITIONS, type Edition } from "../src/basis/edition.js";
import { CHECKS } from "../src/checks/registry.js";
import { design } from "../src/design.js";
import { readJob } from "../src/job/read.js";
import { EQUIPMENT_ROWS } from "./equipment-rows.js";

// biome-ignore lint/suspicious/noExplicitAny: a job as written, bent by each row before it is read
type Written = any;

function sound(): Written {
  return {
    format: "branchwork-job/1",
    project: { title: "Test job", owner: "A. Nonesuch", site: "1 Example Way", preparer: { name: "A. Nonesuch", role: "owner" } },
    code: { edition: "2023", confirmed_with_authority: true },
    service: {
      rating: "200 A",
      fault_current_kA: 10,
      load_method: "existing-dwelling",
      existing: { floor_area: "1500 ft2" },
      measured: { peak: "10 kW", basis: "one-year", from: "the utility" },
      panel: {
        id: "a",
        name: "Panel",
        bus: "200 A",
        main: "200 A",
        spaces: 20,
        working_space_clear: true,
        directory: [{ space: 1, poles: 2, rating: "30 A", serves: "Dryer" }],
        circuits: [
          {
            id: "rv",
            name: "RV",
            serves: "rv-50",
            current: "50 A",
            breaker: { rating: "50 A", poles: 2, spaces: [5, 7], gfci: true, listed_for_panel: true, interrupting_kA: 10 },
            cover_plate: "weatherproof-in-use",
            route: [
              { name: "in", place: "indoors", method: "NM-B", length: "10 ft" },
              { name: "trench", place: "buried", method: "PVC-40", length: "15 ft", cover: "18 in", bends: [90, 90] },
              { name: "riser", place: "outdoors", method: "PVC-80", length: "4 ft", exposed_to_damage: true },
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
const circuit = (job: Written) => job.service.panel.circuits[0];
const stretch = (job: Written, i: number) => circuit(job).route[i];

function verdicts(check: string, bend: (job: Written) => void, edition?: Edition): string[] {
  const job = sound();
  bend(job);
  const read = readJob(stringify(job));
  if (!read.ok) throw new Error(JSON.stringify(read.issues));
  return design({ job: read.job, ...(edition ? { basis: unamended(edition) } : {}) })
    .findings.filter((finding) => finding.check === check)
    .map((finding) => finding.verdict);
}
const as = (serves: string, amperes: string, poles: number) => (job: Written) => {
  Object.assign(circuit(job), { serves, current: amperes });
  Object.assign(circuit(job).breaker, { rating: undefined, poles, spaces: poles === 1 ? [5] : [5, 7] });
};

/** The circuit moved behind a feeder to a panel in another building. */
const behindFeeder =
  (feeder: Written = {}, panel: Written = {}) =>
  (job: Written) => {
    const service = job.service.panel;
    const moved = { ...circuit(job), breaker: { ...circuit(job).breaker, spaces: [1, 3] } };
    service.circuits = [];
    service.feeders = [
      {
        id: "f",
        name: "Feeder",
        breaker: { rating: "60 A", poles: 2, spaces: [5, 7], gfci: false },
        building: "detached",
        disconnect: true,
        electrode: true,
        route: [{ name: "way", place: "buried", method: "PVC-40", length: "30 ft", cover: "18 in" }],
        ...feeder,
        panel: { id: "b", name: "Shed panel", bus: "100 A", spaces: 8, circuits: [moved], ...panel },
      },
    ];
  };

/** The circuit behind a feeder that stands already. */
const standing =
  (fields: Written, breaker: Written = {}) =>
  (job: Written): void => {
    behindFeeder({ existing: true })(job);
    const [feeder] = job.service.panel.feeders;
    Object.assign(feeder.route[0], fields);
    Object.assign(feeder.breaker, breaker);
  };

/** One stretch with some of its fields written otherwise. */
const bent =
  (i: number, fields: Written) =>
  (job: Written): void => {
    Object.assign(stretch(job, i), fields);
  };
/** The circuit with what it is told of its outlet. */
const told =
  (fields: Written) =>
  (job: Written): void => {
    Object.assign(circuit(job), fields);
  };
/** The raceways in the ground and out of it in two trade sizes. */
const sized = (ground: string, riser: string) => (job: Written) => {
  bent(1, { trade_size: ground })(job);
  bent(2, { trade_size: riser })(job);
};
/** The circuit with one stretch and no box. */
const only =
  (i: number) =>
  (job: Written): void => {
    circuit(job).route = [stretch(job, i)];
    circuit(job).boxes = [];
  };
const longCable = (job: Written): void => {
  as("rv-30", "30 A", 1)(job);
  only(0)(job);
  stretch(job, 0).length = "70 ft";
};
/** A 20 A, 120 V receptacle behind a trench. */
const shallow =
  (cover: string, gfci: boolean, method = "PVC-40") =>
  (job: Written): void => {
    as("receptacle-20", "20 A", 1)(job);
    circuit(job).breaker.gfci = gfci;
    Object.assign(stretch(job, 1), { cover, method });
  };
/** Cable in the trench, and its riser with some fields written otherwise. */
const buriedCable =
  (riser: Written) =>
  (job: Written): void => {
    Object.assign(stretch(job, 1), { method: "UF-B", bends: [] });
    Object.assign(stretch(job, 2), riser);
  };
const both =
  (first: (job: Written) => void, second: (job: Written) => void) =>
  (job: Written): void => {
    first(job);
    second(job);
  };
/** The circuit over two stretches with no box between. */
const splice =
  (first: Written, second: Written) =>
  (job: Written): void => {
    const like = { place: "outdoors", method: "PVC-80", length: "8 ft" };
    circuit(job).route = [
      { ...like, name: "one", ...first },
      { ...like, name: "two", ...second },
    ];
    circuit(job).boxes = [];
  };
const boxOf =
  (fields: Written) =>
  (job: Written): void => {
    Object.assign(circuit(job).boxes[0], fields);
  };
/** 4 AWG throughout: the box where the cable ends goes by its dimensions. */
const fourGauge = (fields: Written) => (job: Written) => {
  for (const i of [0, 1, 2]) Object.assign(stretch(job, i), { conductors: { size: "4" }, ...(i === 0 ? {} : { trade_size: "1" }) });
  boxOf(fields)(job);
};
/** Raceway on both sides of the box, entering by opposite walls. */
const straightThrough = (fields: Written) => (job: Written) => {
  fourGauge(fields)(job);
  Object.assign(stretch(job, 0), { method: "EMT", trade_size: "1" });
  boxOf({
    entries: [
      { of: "before", wall: "left" },
      { of: "after", wall: "right" },
    ],
  })(job);
};

type Row = readonly [check: string, what: string, verdict: string, bend: (job: Written) => void, edition?: Edition];
/** The trench drawn on a site plan. */
const planned =
  (...points: readonly (readonly [string, string])[]) =>
  (job: Written) => {
    job.site_plan = {
      lot: [
        ["-50 ft", "-50 ft"],
        ["50 ft", "-50 ft"],
        ["50 ft", "50 ft"],
      ],
      routes: [{ circuit: "rv", segment: "trench", in_trench: true, points }],
      north: 0,
    };
  };
const same = () => undefined;

/** Of the service: its conductors, its rating, its faults. */
const service = (more: Written) => (job: Written) => {
  Object.assign(job.service, more);
};
const house = { load_method: "standard", dwelling: { floor_area: "1500 ft2" } };
const aluminum = (size: string, electrode?: Written) => service({ conductors: { size }, electrode });
const SERVICE_ROWS: readonly Row[] = [
  ["service-conductor", "4/0 aluminum at 200 A (83 %)", "pass", aluminum("4/0")],
  ["service-conductor", "3/0 aluminum at 200 A", "fail", aluminum("3/0")],
  ["service-conductor", "at 60 A the rule does not reach", "needs-person", service({ rating: "60 A", conductors: { size: "4/0" } })],
  ["service-conductor", "not given", "not-applicable", same],
  ["electrode-conductor", "4 AWG copper by 4/0 aluminum to a water pipe", "pass", aluminum("4/0", { electrodes: ["water-pipe"], size: "4" })],
  ["electrode-conductor", "6 AWG", "fail", aluminum("4/0", { electrodes: ["water-pipe"], size: "6" })],
  ["electrode-conductor", "size not told", "needs-person", aluminum("4/0", { electrodes: ["rod"] })],
  ["electrode-conductor", "no electrodes told", "not-applicable", same],
  ["service-least-rating", "100 A for a small house", "pass", service({ ...house, rating: "100 A" })],
  ["service-least-rating", "99 A", "fail", service({ ...house, rating: "99 A" })],
  ["service-least-rating", "a service that stands", "not-applicable", same],
  ["managed-load", "a setpoint", "needs-person", service({ managed: { setpoint: "20 A", citation: "listing" } })],
  ["managed-load", "a setpoint for an outlet before 2023", "fail", service({ managed: { setpoint: "20 A", citation: "listing" } }), "2020"],
  ["managed-load", "none", "not-applicable", same],
  ["conductor-size", "a feeder that stands, its size not read", "needs-person", standing({})],
  ["conductor-size", "a feeder that stands in 6 AWG", "pass", standing({ conductors: { size: "6" } })],
  ["conductor-size", "a feeder that stands in 12 AWG", "fail", standing({ conductors: { size: "12" } })],
  ["grounding-size", "a feeder that stands, its ground not read", "needs-person", standing({ conductors: { size: "6" } })],
  ["grounding-size", "a feeder that stands with a 10 AWG ground", "pass", standing({ conductors: { size: "6", grounding: "10" } })],
  ["raceway-fill", "a feeder that stands, its raceway not read", "needs-person", standing({ conductors: { size: "6" } })],
  ["raceway-fill", "a feeder that stands in 1 in", "pass", standing({ conductors: { size: "6" }, trade_size: "1" })],
  ["breaker-carries-load", "a feeder that stands, its breaker not read", "needs-person", standing({}, { rating: undefined })],
  ["breaker-carries-load", "a feeder that stands on 60 A", "pass", standing({})],
  ["fault-loop", "29 ft behind 10 kA", "pass", same],
  [
    "fault-loop",
    "a quarter mile, the source measured",
    "caution",
    (j) => {
      j.service.fault = { loop_ohms: 0.05 };
      stretch(j, 1).length = "1300 ft";
    },
  ],
  [
    "fault-loop",
    "a quarter mile, the source at its weakest",
    "needs-person",
    (j) => {
      stretch(j, 1).length = "1300 ft";
    },
  ],
  [
    "fault-loop",
    "source not told",
    "needs-person",
    (j) => {
      delete j.service.fault_current_kA;
    },
  ],
  [
    "interrupting-rating",
    "10 kA at the service, a 9 kA breaker beyond 30 ft of feeder",
    "pass",
    (j) => {
      behindFeeder({ breaker: { rating: "60 A", poles: 2, spaces: [5, 7], gfci: false, interrupting_kA: 10 } })(j);
      j.service.panel.feeders[0].panel.circuits[0].breaker.interrupting_kA = 9;
    },
  ],
  [
    "voltage-drop",
    "over the limit, which the job makes a rule",
    "fail",
    (j) => {
      j.drop = { limit_percent: 0.5, required: true };
      for (const s of circuit(j).route) s.conductors = { size: "6" };
    },
  ],
];

/** For each check a failing or telling row beside its nearest passing neighbour. */
const ROWS: readonly Row[] = [
  ["terminal-wire-range", "the size the circuit needs", "pass", same],
  [
    "terminal-wire-range",
    "a long trench raises the wire at the outlet",
    "needs-person",
    (j) => {
      stretch(j, 1).length = "190 ft";
    },
  ],
  ...EQUIPMENT_ROWS,
  ["subpanel-neutral", "a panel on a feeder", "needs-person", behindFeeder()],
  ["detached-disconnect", "a switch there", "pass", behindFeeder()],
  ["detached-disconnect", "a main breaker there", "pass", behindFeeder({ disconnect: undefined }, { main: "60 A" })],
  ["detached-disconnect", "none there", "fail", behindFeeder({ disconnect: false })],
  ["detached-disconnect", "not said", "needs-person", behindFeeder({ disconnect: undefined })],
  ["detached-disconnect", "the same building", "not-applicable", behindFeeder({ building: "same", disconnect: undefined })],
  ["outlet-structure", "through the ground to what is not told", "needs-person", same],
  ["outlet-structure", "not through the ground", "not-applicable", only(2)],
  ["outlet-structure", "on the house", "not-applicable", told({ stands_on: "same-building" })],
  ["outlet-structure", "a post, nothing told", "needs-person", told({ stands_on: "post" })],
  ["outlet-structure", "a post, no switch: whether it is a structure is the authority's", "needs-person", told({ stands_on: "post", disconnect_there: false })],
  ["outlet-structure", "a post, by a wall alone", "needs-person", both(only(2), told({ stands_on: "post" }))],
  ["outlet-structure", "a post with a breaker", "pass", told({ stands_on: "post", disconnect_there: true })],
  ["outlet-structure", "a breaker there, on what is not told", "pass", told({ disconnect_there: true })],
  ["outlet-structure", "another building, nothing told", "needs-person", told({ stands_on: "other-building" })],
  ["outlet-structure", "another building, no switch", "fail", told({ stands_on: "other-building", disconnect_there: false })],
  ["outlet-structure", "another building with a switch", "pass", told({ stands_on: "other-building", disconnect_there: true })],
  ["detached-electrode", "an electrode", "pass", behindFeeder()],
  ["detached-electrode", "none", "fail", behindFeeder({ electrode: false })],
  ["detached-electrode", "a pedestal", "needs-person", behindFeeder({ building: "pedestal", electrode: false })],
  ["detached-electrode", "the same building", "not-applicable", behindFeeder({ building: "same", electrode: undefined })],
  ["building-disconnect-rating", "one circuit behind 30 A", "pass", behindFeeder({}, { main: "30 A" })],
  [
    "building-disconnect-rating",
    "three circuits behind 59 A",
    "fail",
    behindFeeder(
      {},
      {
        main: "59 A",
        directory: [
          { space: 2, serves: "Lights" },
          { space: 4, serves: "Outlets" },
        ],
      },
    ),
  ],
  [
    "building-disconnect-rating",
    "three circuits behind 60 A",
    "pass",
    behindFeeder(
      {},
      {
        main: "60 A",
        directory: [
          { space: 2, serves: "Lights" },
          { space: 4, serves: "Outlets" },
        ],
      },
    ),
  ],
  ...SERVICE_ROWS,
  ["service-capacity", "200 A service", "pass", same],
  [
    "service-capacity",
    "60 A service",
    "fail",
    (j) => {
      j.service.rating = "60 A";
    },
  ],
  ["panel-bus", "bus at its main", "pass", same],
  [
    "panel-bus",
    "bus 1 A under its main",
    "fail",
    (j) => {
      j.service.panel.bus = "199 A";
    },
  ],
  ["panel-spaces-free", "spaces 5 and 7", "pass", same],
  [
    "panel-spaces-free",
    "space 3 belongs to the two-pole breaker at 1",
    "fail",
    (j) => {
      circuit(j).breaker.spaces = [3, 5];
    },
  ],
  [
    "panel-spaces-free",
    "the last space",
    "pass",
    (j) => {
      circuit(j).breaker.spaces = [18, 20];
    },
  ],
  [
    "panel-spaces-free",
    "beyond the last space",
    "fail",
    (j) => {
      circuit(j).breaker.spaces = [20, 22];
    },
  ],
  ["breaker-adjacent-spaces", "5 and 7", "pass", same],
  [
    "breaker-adjacent-spaces",
    "5 and 6 stand side by side on one leg",
    "fail",
    (j) => {
      circuit(j).breaker.spaces = [5, 6];
    },
  ],
  [
    "breaker-adjacent-spaces",
    "5 and 9 on one leg",
    "fail",
    (j) => {
      circuit(j).breaker.spaces = [5, 9];
    },
  ],
  ["breaker-poles", "two poles on a 14-50R", "pass", same],
  ["breaker-poles", "one pole on a TT-30R", "pass", as("rv-30", "30 A", 1)],
  ["breaker-poles", "two poles on a TT-30R", "fail", as("rv-30", "30 A", 2)],
  [
    "breaker-carries-load",
    "60 A on 48 A continuous",
    "pass",
    (j) => {
      as("ev-supply", "48 A", 2)(j);
      circuit(j).breaker.rating = "60 A";
    },
  ],
  [
    "breaker-carries-load",
    "50 A on 48 A continuous",
    "fail",
    (j) => {
      as("ev-supply", "48 A", 2)(j);
      circuit(j).breaker.rating = "50 A";
    },
  ],
  ["breaker-standard-rating", "50 A", "pass", same],
  [
    "breaker-standard-rating",
    "55 A",
    "fail",
    (j) => {
      circuit(j).breaker.rating = "55 A";
    },
  ],
  ["receptacle-rating", "50 A on 50 A", "pass", same],
  [
    "receptacle-rating",
    "50 A on 60 A",
    "fail",
    (j) => {
      circuit(j).breaker.rating = "60 A";
    },
  ],
  ["receptacle-rating", "hard-wired", "not-applicable", as("ev-supply", "40 A", 2)],
  ["breaker-listed", "listed", "pass", same],
  [
    "breaker-listed",
    "not listed",
    "fail",
    (j) => {
      circuit(j).breaker.listed_for_panel = false;
    },
  ],
  [
    "breaker-listed",
    "not said",
    "needs-person",
    (j) => {
      circuit(j).breaker.listed_for_panel = undefined;
    },
  ],
  ["interrupting-rating", "10 kA on 10 kA", "pass", same],
  [
    "interrupting-rating",
    "10 kA on 10.1 kA",
    "fail",
    (j) => {
      j.service.fault_current_kA = 10.1;
    },
  ],
  [
    "interrupting-rating",
    "not given",
    "needs-person",
    (j) => {
      j.service.fault_current_kA = undefined;
    },
  ],
  [
    "conductor-size",
    "6 AWG NM-B on 50 A",
    "pass",
    (j) => {
      stretch(j, 0).conductors = { size: "6" };
    },
  ],
  [
    "conductor-size",
    "8 AWG NM-B on 50 A",
    "fail",
    (j) => {
      stretch(j, 0).conductors = { size: "8" };
    },
  ],
  [
    "conductor-terminals",
    "6 AWG at 60 °C",
    "pass",
    (j) => {
      stretch(j, 1).conductors = { size: "6" };
    },
  ],
  [
    "conductor-terminals",
    "8 AWG at 60 °C",
    "fail",
    (j) => {
      stretch(j, 1).conductors = { size: "8" };
    },
  ],
  [
    "small-conductor",
    "10 AWG behind 30 A",
    "pass",
    (j) => {
      as("rv-30", "30 A", 1)(j);
      stretch(j, 0).conductors = { size: "10" };
    },
  ],
  [
    "small-conductor",
    "12 AWG behind 30 A",
    "fail",
    (j) => {
      as("rv-30", "30 A", 1)(j);
      stretch(j, 0).conductors = { size: "12" };
    },
  ],
  ["cable-wet", "NM-B indoors", "pass", same],
  [
    "cable-wet",
    "NM-B outdoors",
    "fail",
    (j) => {
      stretch(j, 0).place = "outdoors";
    },
  ],
  ["conductor-wet", "THWN-2", "pass", same],
  [
    "conductor-wet",
    "THHN",
    "fail",
    (j) => {
      stretch(j, 1).conductors = { insulation: "THHN" };
    },
  ],
  ["emt-buried", "PVC", "pass", same],
  [
    "emt-buried",
    "EMT",
    "fail",
    (j) => {
      stretch(j, 1).method = "EMT";
    },
  ],
  ["riser-protection", "PVC-80", "pass", same],
  [
    "riser-protection",
    "PVC-40",
    "fail",
    (j) => {
      stretch(j, 2).method = "PVC-40";
    },
  ],
  ["burial-cover", "18 in", "pass", same],
  [
    "burial-cover",
    "17.99 in",
    "fail",
    (j) => {
      stretch(j, 1).cover = "17.99 in";
    },
  ],
  [
    "burial-cover",
    "not given",
    "needs-person",
    (j) => {
      stretch(j, 1).cover = undefined;
    },
  ],
  [
    "burial-cover",
    "RMC at 6 in",
    "pass",
    (j) => {
      Object.assign(stretch(j, 1), { method: "RMC", cover: "6 in" });
    },
  ],
  [
    "burial-cover",
    "RMC at 6 in under a driveway",
    "fail",
    (j) => {
      Object.assign(stretch(j, 1), { method: "RMC", cover: "6 in", over: "under-dwelling-driveway" });
    },
  ],
  ["raceway-fill", "computed size", "pass", same],
  [
    "raceway-fill",
    "1/2 in",
    "fail",
    (j) => {
      stretch(j, 1).trade_size = "1/2";
    },
  ],
  [
    "raceway-bends",
    "360°",
    "pass",
    (j) => {
      stretch(j, 1).bends = [90, 90, 90, 90];
    },
  ],
  [
    "raceway-bends",
    "361°",
    "fail",
    (j) => {
      stretch(j, 1).bends = [90, 90, 90, 90, 1];
    },
  ],
  [
    "grounding-size",
    "10 AWG on 50 A",
    "pass",
    (j) => {
      stretch(j, 1).conductors = { size: "6", grounding: "10" };
    },
  ],
  [
    "grounding-size",
    "12 AWG on 50 A",
    "fail",
    (j) => {
      stretch(j, 1).conductors = { size: "6", grounding: "12" };
    },
  ],
  [
    "grounding-size",
    "8 AWG with 4 AWG hots: 16,511 of 16,510 cmil",
    "caution",
    (j) => {
      stretch(j, 1).conductors = { size: "4", grounding: "8" };
    },
  ],
  ["box-volume", "64 in³", "pass", same],
  [
    "box-volume",
    "20 in³",
    "fail",
    (j) => {
      circuit(j).boxes[0].volume = "20 in3";
    },
  ],
  [
    "box-volume",
    "4 AWG goes by dimensions",
    "not-applicable",
    (j) => {
      stretch(j, 0).conductors = { size: "4" };
    },
  ],
  ["box-comfort", "64 in³", "pass", same],
  [
    "box-comfort",
    "just lawful: 6 × 5 + 2.5 in³",
    "caution",
    (j) => {
      circuit(j).boxes[0].volume = "32.5 in3";
    },
  ],
  ["box-wet", "marked", "pass", same],
  [
    "box-wet",
    "not marked",
    "fail",
    (j) => {
      circuit(j).boxes[1].wet_location = false;
    },
  ],
  [
    "gfci",
    "without, 2017",
    "not-applicable",
    (j) => {
      circuit(j).breaker.gfci = false;
    },
    "2017",
  ],
  [
    "gfci",
    "without, 2020",
    "fail",
    (j) => {
      circuit(j).breaker.gfci = false;
    },
    "2020",
  ],
  [
    "gfci",
    "without, 2023",
    "fail",
    (j) => {
      circuit(j).breaker.gfci = false;
    },
    "2023",
  ],
  [
    "gfci",
    "without, 2026",
    "fail",
    (j) => {
      circuit(j).breaker.gfci = false;
    },
    "2026",
  ],
  ["gfci", "with", "pass", same],
  [
    "gfci",
    "hard-wired 60 A outdoors, 2023",
    "not-applicable",
    (j) => {
      as("ev-supply", "48 A", 2)(j);
      circuit(j).breaker.gfci = false;
    },
    "2023",
  ],
  [
    "gfci",
    "hard-wired 60 A outdoors, 2026",
    "fail",
    (j) => {
      as("ev-supply", "48 A", 2)(j);
      circuit(j).breaker.gfci = false;
    },
    "2026",
  ],
  ["gfci-trips", "GFCI before an RV", "caution", same],
  [
    "gfci-trips",
    "no GFCI",
    "not-applicable",
    (j) => {
      circuit(j).breaker.gfci = false;
    },
  ],
  ["cover-plate", "in use", "pass", same],
  [
    "cover-plate",
    "closed only",
    "fail",
    (j) => {
      circuit(j).cover_plate = "weatherproof-closed";
    },
  ],
  ["voltage-drop", "29 ft", "pass", same],
  [
    "voltage-drop",
    "150 ft held to 6 AWG",
    "caution",
    (j) => {
      for (const s of circuit(j).route) s.conductors = { size: "6" };
      stretch(j, 1).length = "150 ft";
    },
  ],
  [
    "voltage-drop",
    "150 ft left open is raised until it holds",
    "pass",
    (j) => {
      stretch(j, 1).length = "150 ft";
    },
  ],
  ["working-space", "clear", "pass", same],
  [
    "working-space",
    "blocked",
    "fail",
    (j) => {
      j.service.panel.working_space_clear = false;
    },
  ],
  ["edition-confirmed", "confirmed", "pass", same],
  [
    "edition-confirmed",
    "not confirmed",
    "caution",
    (j) => {
      j.code.confirmed_with_authority = false;
    },
  ],
  ["torque", "always on site", "needs-person", same],
  ["panel-directory", "always on site", "needs-person", same],
  ["trench-open", "a trench", "needs-person", same],
  [
    "trench-open",
    "no trench",
    "not-applicable",
    (j) => {
      stretch(j, 1).place = "outdoors";
    },
  ],
  ["pvc-expansion", "4 ft", "pass", same],
  [
    "pvc-expansion",
    "7 ft: 0.284 in over 100 °F",
    "needs-person",
    (j) => {
      stretch(j, 2).length = "7 ft";
    },
  ],
  ["ev-disconnect", "48 A, 2023", "not-applicable", as("ev-supply", "48 A", 2), "2023"],
  ["ev-disconnect", "48 A, 2026", "needs-person", as("ev-supply", "48 A", 2), "2026"],
  ["neutral-isolated", "always on site", "needs-person", same],
  [
    "measured-record",
    "a year",
    "pass",
    (j) => {
      j.service.load_method = "measured-demand";
    },
  ],
  [
    "measured-record",
    "thirty days",
    "needs-person",
    (j) => {
      j.service.load_method = "measured-demand";
      j.service.measured.basis = "thirty-day";
    },
  ],
  ["plan-bends", "no site plan", "not-applicable", same],
  ["plan-bends", "a way that turns once by 90° on the plan, two bends of 90°", "pass", planned(["0 ft", "0 ft"], ["10 ft", "0 ft"], ["10 ft", "5 ft"])],
  [
    "plan-bends",
    "a way that turns by 180° in all, two bends of 90°: just enough",
    "pass",
    planned(["0 ft", "0 ft"], ["5 ft", "0 ft"], ["5 ft", "5 ft"], ["0 ft", "5 ft"]),
  ],
  [
    "plan-bends",
    "a way that turns by 270° in all, left and right alike, two bends of 90°",
    "caution",
    planned(["0 ft", "0 ft"], ["4 ft", "0 ft"], ["4 ft", "4 ft"], ["8 ft", "4 ft"], ["8 ft", "8 ft"]),
  ],
  [
    "plan-bends",
    "turns under 10° are no bends",
    "pass",
    (j) => {
      planned(["0 ft", "0 ft"], ["7 ft", "0 ft"], ["14 ft", "1 ft"])(j);
      stretch(j, 1).bends = [];
    },
  ],
  ["loads-counted", "nothing of the house", "needs-person", same],
  [
    "loads-counted",
    "as many as there are two-pole breakers",
    "pass",
    (j) => {
      j.service.existing.appliances = [{ name: "Dryer", load: "5 kW" }];
    },
  ],
  [
    "loads-counted",
    "one fewer",
    "needs-person",
    (j) => {
      j.service.existing.cooling = { name: "Air conditioner", load: "3 kW" };
      j.service.panel.directory.push({ space: 2, poles: 2, rating: "40 A", serves: "Range" });
    },
  ],
  [
    "loads-counted",
    "two of one kind are two",
    "pass",
    (j) => {
      j.service.existing.appliances = [{ name: "Wall oven", load: "4 kW", count: 2 }];
      j.service.panel.directory.push({ space: 2, poles: 2, rating: "40 A", serves: "Oven" });
    },
  ],
  [
    "loads-counted",
    "measured, not counted",
    "not-applicable",
    (j) => {
      j.service.load_method = "measured-demand";
    },
  ],
  [
    "loads-counted",
    "a new count of the whole house",
    "pass",
    (j) => {
      j.service.load_method = "optional";
      j.service.dwelling = { floor_area: "1500 ft2", dryers: [{ name: "Dryer", load: "5 kW" }] };
    },
  ],
  ["splice-free", "a box where cable becomes wire", "pass", same],
  [
    "splice-free",
    "no box there",
    "fail",
    (j) => {
      circuit(j).boxes = [circuit(j).boxes[1]];
    },
  ],
  [
    "splice-free",
    "sizes given that change inside a raceway",
    "fail",
    (j) => {
      stretch(j, 1).conductors = { size: "4" };
    },
  ],
  [
    "conductor-size",
    "400 A that no NM-B carries is a finding, not a crash",
    "fail",
    (j) => {
      as("ev-supply", "300 A", 2)(j);
    },
  ],
  [
    "conductor-size",
    "500 A of breaker for 400 A continuous is a finding, not a crash",
    "fail",
    (j) => {
      as("ev-supply", "400 A", 2)(j);
    },
  ],
  ["rv-use", "an RV outlet", "needs-person", same],
  [
    "service-capacity",
    "60 A main on a 200 A service",
    "fail",
    (j) => {
      j.service.panel.main = "60 A";
    },
  ],
  [
    "conductor-terminals",
    "6 AWG NM-B on 48 A continuous stays at 55 A, whatever the terminals",
    "fail",
    (j) => {
      as("ev-supply", "48 A", 2)(j);
      circuit(j).terminals_75C = true;
      stretch(j, 0).conductors = { size: "6" };
    },
  ],
  [
    "conductor-terminals",
    "4 AWG NM-B on 48 A continuous",
    "pass",
    (j) => {
      as("ev-supply", "48 A", 2)(j);
      stretch(j, 0).conductors = { size: "4" };
    },
  ],
  [
    "gfci",
    "cable straight through the wall to an outdoor outlet",
    "fail",
    (j) => {
      circuit(j).route = [stretch(j, 0)];
      circuit(j).boxes = [];
      circuit(j).breaker.gfci = false;
    },
  ],
  [
    "receptacle-rating",
    "50 A receptacle on 40 A",
    "fail",
    (j) => {
      circuit(j).breaker.rating = "40 A";
    },
  ],
  [
    "breaker-carries-load",
    "an outlet entered at 10 A is worked at its 50 A",
    "fail",
    (j) => {
      circuit(j).current = "10 A";
      circuit(j).breaker.rating = "15 A";
    },
  ],
  [
    "fmc-wet",
    "FMC indoors",
    "pass",
    (j) => {
      stretch(j, 0).method = "FMC";
    },
  ],
  [
    "fmc-wet",
    "FMC outdoors",
    "fail",
    (j) => {
      stretch(j, 2).method = "FMC";
    },
  ],
  [
    "raceway-fill",
    "others without their area",
    "needs-person",
    (j) => {
      stretch(j, 1).others = { current_carrying: 2 };
    },
  ],
  [
    "burial-cover",
    "UF-B under a building",
    "fail",
    (j) => {
      Object.assign(stretch(j, 1), { method: "UF-B", over: "under-building" });
    },
  ],
  [
    "riser-protection",
    "PVC-40 riser not said to be exposed",
    "needs-person",
    (j) => {
      Object.assign(stretch(j, 2), { method: "PVC-40", exposed_to_damage: false });
    },
  ],
  [
    "riser-protection",
    "UF-B out of the ground",
    "fail",
    (j) => {
      Object.assign(stretch(j, 2), { method: "UF-B", exposed_to_damage: false });
    },
  ],
  [
    "raceway-bends",
    "270° and 180° in one pull",
    "fail",
    (j) => {
      stretch(j, 1).bends = [90, 90, 90];
      stretch(j, 2).bends = [90, 90];
    },
  ],
  [
    "raceway-bends",
    "270° and 90° in one pull",
    "pass",
    (j) => {
      stretch(j, 1).bends = [90, 90, 90];
      stretch(j, 2).bends = [90];
    },
  ],
  ["rv-use", "no RV outlet", "not-applicable", as("ev-supply", "40 A", 2)],
  // What a jurisdiction amends: local-checks.test.ts.
  ["local-wiring-methods", "no limit here", "not-applicable", same],
  ["local-load-method", "no method named here", "not-applicable", same],
  [
    "raceway-bends",
    "370° on a feeder",
    "fail",
    behindFeeder({ route: [{ name: "way", place: "indoors", method: "EMT", length: "30 ft", bends: [90, 90, 90, 100] }] }),
  ],
  [
    "raceway-bends",
    "360° on a feeder",
    "pass",
    behindFeeder({ route: [{ name: "way", place: "indoors", method: "EMT", length: "30 ft", bends: [90, 90, 90, 90] }] }),
  ],
  ["conductor-wet", "XHH in the ground", "fail", bent(1, { conductors: { insulation: "XHH" } })],
  ["conductor-wet", "XHHW in the ground", "pass", bent(1, { conductors: { insulation: "XHHW" } })],
  ["conductor-wet", "RHH in the ground", "fail", bent(1, { conductors: { insulation: "RHH" } })],
  ["conductor-wet", "RHW-2 in the ground", "pass", bent(1, { conductors: { insulation: "RHW-2" } })],
  ["emt-buried", "ENT", "fail", bent(1, { method: "ENT" })],
  ["emt-buried", "LFMC", "pass", bent(1, { method: "LFMC" })],
  ["ent-place", "ENT indoors", "pass", bent(0, { method: "ENT" })],
  ["ent-place", "ENT outdoors", "needs-person", bent(2, { method: "ENT", exposed_to_damage: false })],
  ["ent-place", "ENT where it can be struck", "fail", bent(0, { method: "ENT", exposed_to_damage: true })],
  ["ent-place", "ENT in the ground", "fail", bent(1, { method: "ENT" })],
  ["ent-place", "no ENT", "not-applicable", same],
  // Bore over conductor of 6 AWG THWN-2 (0.254 in): 0.804 in PVC-40 3/4 is 3.17, in the band of 2.8 to 3.2 with three alike; 1.029 in PVC-40 1 is 4.05.
  ["raceway-jam", "3/4 in: 3.17", "caution", bent(1, { trade_size: "3/4" })],
  ["raceway-jam", "1 in: 4.05", "pass", bent(1, { trade_size: "1" })],
  ["raceway-joint", "1 in and 1 in of thicker wall", "not-applicable", sized("1", "1")],
  ["raceway-joint", "1 in and 1-1/4 in", "needs-person", sized("1", "1-1/4")],
  [
    "raceway-joint",
    "1 in and 1-1/4 in, a box between",
    "not-applicable",
    both(sized("1", "1-1/4"), (j) => circuit(j).boxes.push({ name: "pull", after: "trench", volume: "64 in3" })),
  ],
  ["raceway-joint", "1 in of PVC and of EMT", "needs-person", both(sized("1", "1"), bent(2, { method: "EMT" }))],
  ["raceway-joint", "1 in of PVC and of liquidtight flexible metal", "needs-person", both(sized("1", "1"), bent(2, { method: "LFMC" }))],
  ["raceway-joint", "1 in of PVC and of liquidtight flexible nonmetallic", "needs-person", both(sized("1", "1"), bent(2, { method: "LFNC-B" }))],
  ["raceway-joint", "1 in of EMT and of rigid metal", "needs-person", both(sized("1", "1"), both(bent(1, { method: "RMC" }), bent(2, { method: "EMT" })))],
  [
    "raceway-joint",
    "1 in of rigid and of intermediate metal",
    "not-applicable",
    both(sized("1", "1"), both(bent(1, { method: "RMC" }), bent(2, { method: "IMC" }))),
  ],
  ["hard-pull", "3/4 in, 34 % full, and wedging", "caution", bent(1, { trade_size: "3/4" })],
  ["hard-pull", "1 in, 21 % full", "pass", bent(1, { trade_size: "1" })],
  ["pull-tension", "19 ft", "pass", same],
  [
    "pull-tension",
    "2,000 ft and 360°",
    "caution",
    (j) => {
      Object.assign(stretch(j, 1), { length: "2000 ft", bends: [90, 90, 90, 90], conductors: { size: "6" }, trade_size: "1" });
      Object.assign(stretch(j, 2), { conductors: { size: "6" } });
    },
  ],
  ["raceway-supports", "cable indoors and a riser", "needs-person", same],
  ["raceway-supports", "in the ground only", "not-applicable", only(1)],
  ["bend-radius", "not given", "needs-person", same],
  // Chapter 9 Table 2, one-shot bender: 3/4 in 4-1/2 in (2011 Handbook page, https://vdocument.in/chapter-9-tablespdf.html).
  ["bend-radius", "4.4 in of 3/4 in", "fail", bent(1, { trade_size: "3/4", bend_radius: "4.4 in" })],
  ["bend-radius", "4.5 in of 3/4 in", "pass", bent(1, { trade_size: "3/4", bend_radius: "4.5 in" })],
  ["bend-radius", "no bends", "not-applicable", bent(1, { bends: [] })],
  ["pull-box-size", "6 AWG", "not-applicable", same],
  ["pull-box-size", "4 AWG, not measured", "needs-person", fourGauge({})],
  // Six times a 1 in raceway to the opposite wall, 314.28(A)(2).
  ["pull-box-size", "6 in by 6 in", "pass", fourGauge({ width: "6 in", height: "6 in" })],
  ["pull-box-size", "5.9 in by 6 in", "fail", fourGauge({ width: "5.9 in", height: "6 in" })],
  ["pull-box-size", "a conduit body", "needs-person", fourGauge({ kind: "conduit-body", width: "6 in", height: "6 in" })],
  // Eight times a 1 in raceway for a straight pull, 314.28(A)(1).
  ["pull-box-size", "straight, 8 in", "pass", straightThrough({ width: "8 in" })],
  ["pull-box-size", "straight, 7.9 in", "fail", straightThrough({ width: "7.9 in" })],
  ["pull-box-size", "straight, spliced, 6 in", "pass", straightThrough({ width: "6 in", spliced: true })],
  ["bending-space", "6 AWG", "not-applicable", same],
  [
    "bending-space",
    "4 AWG at the outlet",
    "needs-person",
    (j) => {
      Object.assign(stretch(j, 2), { conductors: { size: "4" } });
    },
  ],
  ["box-volume", "conductors of another circuit come through it", "needs-person", bent(1, { others: { current_carrying: 2, area_in2: 0.0422 } })],
  // Column 4 of Table 300.5: 12 in for 120 V, 20 A or less, GFCI (up.codes/s/underground-installations); 18 in else.
  ["burial-cover", "12 in for a 20 A, 120 V circuit behind a GFCI", "pass", shallow("12 in", true)],
  ["burial-cover", "11.9 in for the same", "fail", shallow("11.9 in", true)],
  ["burial-cover", "12 in for the same without a GFCI breaker", "fail", shallow("12 in", false)],
  ["burial-cover", "RMC keeps its 6 in behind a GFCI too", "pass", shallow("6 in", true, "RMC")],
  // 10 AWG in NM-B comes with a 10 AWG ground; so does 8 AWG, where 10,380 × 16,510 / 10,380 cmil asks 8 AWG: by hand.
  ["grounding-size", "70 ft of NM-B to a 30 A outlet are not raised past their own ground", "pass", longCable],
  ["voltage-drop", "and their drop is told: 30 A through 10 AWG", "caution", longCable],
  ["box-volume", "splices in a conduit body", "needs-person", boxOf({ kind: "conduit-body", spliced: true })],
  ["box-volume", "a conduit body without splices", "pass", boxOf({ kind: "conduit-body" })],
  ["parallel-conductors", "one set", "not-applicable", same],
  ["parallel-conductors", "two sets of 1 AWG", "fail", bent(1, { sets: 2, conductors: { size: "1" } })],
  ["parallel-conductors", "two sets of 1/0 AWG", "needs-person", bent(1, { sets: 2, conductors: { size: "1/0" } })],
  ["conductor-size", "two sets of 1 AWG", "fail", bent(1, { sets: 2, conductors: { size: "1" } })],
  ["conductor-size", "two sets of 1/0 AWG", "pass", bent(1, { sets: 2, conductors: { size: "1/0" } })],
  ["splice-free", "copper becomes aluminum with no box", "fail", splice({ conductors: { size: "4", material: "aluminum" } }, { conductors: { size: "4" } })],
  [
    "splice-free",
    "aluminum throughout",
    "pass",
    splice({ conductors: { size: "4", material: "aluminum" } }, { conductors: { size: "4", material: "aluminum" } }),
  ],
  ["splice-free", "THWN-2 becomes XHHW-2 with no box", "fail", splice({ conductors: { size: "4" } }, { conductors: { size: "4", insulation: "XHHW-2" } })],
  ["splice-free", "NM-B becomes UF-B with no box", "fail", splice({ method: "NM-B", place: "indoors" }, { method: "UF-B", place: "buried" })],
  ["splice-free", "UF-B from the ground to the wall", "pass", splice({ method: "UF-B", place: "buried" }, { method: "UF-B", place: "outdoors" })],
  ["splice-free", "two sets become one with no box", "fail", bent(1, { sets: 2, conductors: { size: "1/0" } })],
  ["aluminum-terminals", "aluminum", "needs-person", bent(1, { conductors: { material: "aluminum" } })],
  ["aluminum-terminals", "copper", "not-applicable", same],
  ["underground-separation", "a trench", "needs-person", same],
  ["underground-separation", "nothing buried", "not-applicable", only(0)],
  ["raceway-seal", "from indoors into the ground", "needs-person", same],
  ["raceway-seal", "indoors only", "not-applicable", only(0)],
  ["raceway-seal", "a feeder that ends in the ground at a shed", "needs-person", behindFeeder()],
  ["warning-ribbon", "a buried circuit", "not-applicable", same],
  // 0.0000338 in per in and °F, the head of Table 352.44: 6 ft over 100 °F is 0.243 in, with 30 °F of sun 0.316 in.
  [
    "pvc-expansion",
    "6 ft over 100 °F in the shade",
    "pass",
    bent(2, { length: "6 ft", temperature_span: { coldest: "0 °F", hottest: "100 °F", in_sun: false } }),
  ],
  ["pvc-expansion", "6 ft over 130 °F in the sun", "needs-person", bent(2, { length: "6 ft", temperature_span: { coldest: "0 °F", hottest: "100 °F" } })],
  ["earth-movement", "a raceway riser, nothing told", "needs-person", same],
  ["earth-movement", "an expansion fitting in a raceway", "pass", bent(2, { earth_movement: "expansion-fitting" })],
  ["earth-movement", "a raceway in which nothing gives", "fail", bent(2, { earth_movement: "nothing" })],
  ["earth-movement", "a flexible connection", "pass", bent(2, { earth_movement: "flexible-connection" })],
  ["earth-movement", "a slack loop of cable under a riser", "pass", buriedCable({ earth_movement: "slack-loop" })],
  ["earth-movement", "a slack loop where a raceway lies in the ground", "needs-person", bent(2, { earth_movement: "slack-loop" })],
  [
    "earth-movement",
    "a slack loop on one side of a riser, a raceway in the ground on the other",
    "needs-person",
    (j) => {
      buriedCable({ earth_movement: "slack-loop" })(j);
      circuit(j).route.push({ name: "on", place: "buried", method: "PVC-40", length: "9 ft", cover: "18 in" });
    },
  ],
  ["earth-movement", "an expansion fitting on a cable", "needs-person", buriedCable({ method: "UF-B", earth_movement: "expansion-fitting" })],
  ["earth-movement", "a cable in which nothing gives", "fail", buriedCable({ method: "UF-B", earth_movement: "nothing" })],
  ["earth-movement", "an expansion fitting on a flexible raceway", "needs-person", bent(2, { method: "LFNC-B", earth_movement: "expansion-fitting" })],
  ["earth-movement", "ground said to stay still", "needs-person", bent(2, { earth_movement: "ground-still" })],
  ["earth-movement", "outdoors, not out of the ground", "not-applicable", both(bent(2, { earth_movement: "nothing" }), only(2))],
  ["earth-movement", "nothing outdoors", "not-applicable", both(bent(0, { earth_movement: "nothing" }), only(0))],
  ["earth-movement", "from the ground straight indoors", "not-applicable", bent(2, { place: "indoors", earth_movement: "nothing" })],
];

describe("checks, row by row", () => {
  for (const [check, what, verdict, bend, edition] of ROWS)
    it(`${check}: ${what} → ${verdict}`, () => expect(verdicts(check, bend, edition)).toContain(verdict));
  it("rows called pass have nothing worse beside them", () => {
    for (const [check, what, verdict, bend, edition] of ROWS)
      if (verdict === "pass") expect(verdicts(check, bend, edition), `${check}: ${what}`).not.toContain("fail");
  });
});

describe("the set of checks", () => {
  it("is at least thirty, and registry, directory and rows name the same ids", () => {
    const files = readdirSync(new URL("../src/checks/", import.meta.url)).filter(
      (name) => !["registry.ts", "finding.ts", "outcome.ts", "local-findings.ts", "standing.ts"].includes(name),
    );
    const ids = CHECKS.map((check) => check.id);
    expect(ids.length).toBeGreaterThanOrEqual(30);
    expect(files.map((name) => name.replace(/\.ts$/, "")).sort()).toEqual([...ids].sort());
    expect([...new Set(ROWS.map(([check]) => check))].sort()).toEqual([...ids].sort());
  });
  it("has one statement of section for every edition", () => {
    for (const check of CHECKS) for (const edition of EDITIONS) expect(check.rule === null || check.rule.sections[edition] !== undefined, check.id).toBe(true);
  });
  it("a waived check says so with its reason", () => {
    const read = readJob(stringify(sound()));
    if (!read.ok) throw new Error("unreadable");
    const waived = design({
      job: read.job,
      basis: { ...unamended("2023"), waivedChecks: { gfci: { reason: "labelled RV outlets are exempt", citation: "Ordinance (invented)" } } },
    }).findings.filter((f) => f.check === "gfci");
    expect(waived.map((f) => f.verdict)).toEqual(["not-applicable"]);
    expect(waived[0]?.says).toContain("labelled RV outlets are exempt");
  });
});

describe("a design", () => {
  it("is the same on repeat and leaves the job unchanged", () => {
    const read = readJob(stringify(sound()));
    if (!read.ok) throw new Error("unreadable");
    const before = JSON.stringify(read.job);
    expect(JSON.stringify(design({ job: read.job }))).toBe(JSON.stringify(design({ job: read.job })));
    expect(JSON.stringify(read.job)).toBe(before);
  });
  it("cites or derives every worked value, in every edition", () => {
    const read = readJob(stringify(sound()));
    if (!read.ok) throw new Error("unreadable");
    for (const edition of EDITIONS) {
      const made = design({ job: read.job, basis: unamended(edition) });
      for (const step of [...made.service.steps, ...made.circuits.flatMap((c) => c.steps)])
        expect(step.citations.length + step.inputs.length, `${edition} ${step.id}`).toBeGreaterThan(0);
    }
  });
});

describe("the electrode conductor at a detached building (250.32(E), Table 250.66: 8 AWG to 2 AWG copper, 6 AWG for 1 and 1/0, 4 AWG for 2/0 and 3/0; 6 AWG to rods, 250.66(A))", () => {
  const told = (size: string) => {
    const job = sound();
    behindFeeder({ route: [{ name: "way", place: "buried", method: "PVC-40", length: "30 ft", cover: "18 in", trade_size: "2", conductors: { size } }] })(job);
    const read = readJob(stringify(job));
    if (!read.ok) throw new Error(JSON.stringify(read.issues));
    return design({ job: read.job }).findings.find(({ check }) => check === "detached-electrode")?.says;
  };
  it.each([
    ["3", "electrode conductor 8 AWG copper or larger"],
    ["2", "electrode conductor 8 AWG copper or larger"],
    ["1", "electrode conductor 6 AWG copper or larger"],
    ["2/0", "electrode conductor 4 AWG copper or larger, 6 AWG to rods alone"],
  ])("%s AWG hots: %s", (size, says) => expect(told(size)).toBe(`grounding electrode, as entered; ${says}`));
});

describe("what gives when the ground moves (300.5(J): 2020 https://ecmweb.com/national-electrical-code/violations/article/21247040/illustrated-catastrophes-pick-your-poison, 2023 https://fireandsafetyjournalamericas.com/nfpa-releases-guidance-on-nec-article-300-wiring-methods/, the others memory)", () => {
  const found = (bend: (job: Written) => void, edition: Edition = "2023") => {
    const job = sound();
    bend(job);
    const read = readJob(stringify(job));
    if (!read.ok) throw new Error(JSON.stringify(read.issues));
    return design({ job: read.job, basis: unamended(edition) }).findings.filter(({ check }) => check === "earth-movement");
  };
  it.each(EDITIONS)("cites 300.5(J) of %s as from memory", (edition) =>
    expect(found(same, edition).map(({ citation }) => citation)).toEqual([{ document: "NFPA 70", section: "300.5(J)", edition, standing: "memory" }]),
  );
  it.each([
    ["a fitting for a raceway", bent(2, { earth_movement: "nothing" }), /expansion fitting/, /S loop/],
    ["a loop for a cable in the trench", buriedCable({ method: "UF-B", earth_movement: "nothing" }), /S loop/, /expansion fitting/],
  ])("mends with %s", (_, bend, says, saysNot) => {
    const [one] = found(bend);
    const mend = one?.verdict === "fail" ? one.mend : "";
    expect(mend).toMatch(says);
    expect(mend).not.toMatch(saysNot);
  });
  it.each([
    ["a raceway over a cable in the trench: either", buriedCable({}), true, true],
    ["a raceway from the trench up: no loop", same, false, true],
    ["a cable from the trench up: no fitting", buriedCable({ method: "UF-B" }), true, false],
  ])("asks to see, for %s", (_, bend, loop, fitting) => {
    const [one] = found(bend);
    const look = one?.verdict === "needs-person" ? one.look : "";
    expect([look.includes("S loop"), look.includes("expansion fitting")]).toEqual([loop, fitting]);
  });
  it("looks at both ends of a trench between two walls", () =>
    expect(found(bent(0, { place: "outdoors", method: "PVC-80" })).map(({ subject, verdict }) => [subject, verdict])).toEqual([
      ["RV: in", "needs-person"],
      ["RV: riser", "needs-person"],
    ]));
});
