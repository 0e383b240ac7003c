// biome-ignore lint/suspicious/noExplicitAny: a job as written, bent by each row before it is read
type Written = any;
export type Row = readonly [check: string, what: string, verdict: string, bend: (job: Written) => void, edition?: "2017" | "2020" | "2023" | "2026"];

/** The test job's one circuit made into one of another kind: what is not written is taken away, the route goes indoors. */
export const equip =
  (serves: string, fields: Written = {}, breaker: Written = {}, place: "indoors" | "outdoors" = "indoors") =>
  (job: Written): void => {
    const old = job.service.panel.circuits[0];
    const { listed_for_panel, interrupting_kA } = old.breaker;
    job.service.panel.circuits = [
      {
        id: "c",
        name: "Circuit",
        serves,
        breaker: { poles: 2, spaces: [5, 7], gfci: false, listed_for_panel, interrupting_kA, ...breaker },
        route: [{ name: "way", place, method: place === "indoors" ? "EMT" : "PVC-80", length: "30 ft" }],
        ...fields,
      },
    ];
  };
const one = { poles: 1, spaces: [5] };

const spa = (plate: Written = {}, breaker: Written = { gfci: true }, fields: Written = {}) =>
  equip("spa", { current: "32 A", nameplate: { disconnect_distance: "8 ft", ...plate }, ...fields }, breaker, "outdoors");
const welder = (rating: string, fields: Written = {}) =>
  equip("welder", { current: "40 A", nameplate: { duty_percent: 30 }, ...fields }, { rating, gfci: true });
const conditioner = (rating: string, plate: Written = { minimum_ampacity: "22 A", largest_overcurrent: "35 A" }, fields: Written = {}) =>
  equip("air-conditioner", { nameplate: plate, ...fields }, { rating }, "outdoors");
const generator = (plate: Written = {}, breaker: Written = {}) =>
  equip("generator-inlet", { current: "30 A", nameplate: { load: "7 kW", neutral_bonded: false, transfer: "interlock", ...plate } }, breaker, "outdoors");
const heater = (fields: Written, breaker: Written = {}) => equip("water-heater", { nameplate: { load: "4.5 kW", gallons: 50 }, ...fields }, breaker);
const small = (serves: string, fields: Written = {}, breaker: Written = {}, place: "indoors" | "outdoors" = "outdoors") =>
  equip(serves, fields, { ...one, gfci: true, ...breaker }, place);

const guardedEv = equip("ev-supply", { current: "32 A", gfci_device: "disconnect" }, {}, "outdoors");

/** Thresholds: 4.5 kW / 240 V = 18.75 A, × 1.25 = 23.4 A asks 25 A, × 1.5 = 28.1 A allows 30 A (422.13, 422.11(E)(3)); 40 A × 2 = 80 A (630.12). */
export const EQUIPMENT_ROWS: readonly Row[] = [
  ["breaker-within-bounds", "water heater of 4.5 kW on 30 A, 150 % rounded up", "pass", heater({}, { rating: "30 A" })],
  ["breaker-within-bounds", "water heater of 4.5 kW on 35 A", "fail", heater({}, { rating: "35 A" })],
  ["breaker-carries-load", "water heater of 4.5 kW on 25 A", "pass", heater({}, { rating: "25 A" })],
  ["breaker-carries-load", "water heater of 4.5 kW on 20 A", "fail", heater({}, { rating: "20 A" })],
  ["breaker-within-bounds", "a dryer's load over its outlet", "fail", equip("dryer", { nameplate: { load: "7.4 kW" } }, { gfci: true })],
  ["breaker-within-bounds", "EV supply with no marked device", "not-applicable", equip("ev-supply", { current: "32 A" })],
  [
    "breaker-carries-load",
    "a feeder beyond every rating is a finding, not a crash",
    "fail",
    (j) => {
      j.service.panel.feeders = [
        {
          id: "f",
          name: "Feeder",
          breaker: { poles: 2, spaces: [9, 11], gfci: false },
          building: "same",
          route: [{ name: "way", place: "indoors", method: "EMT", length: "30 ft" }],
          panel: { id: "b", name: "Other", bus: "600 A", spaces: 8, existing_load: "200 kVA" },
        },
      ];
    },
  ],
  [
    "receptacle-rating",
    "a range of 12 kW on 40 A and a 50 A receptacle",
    "pass",
    equip("range", { nameplate: { load: "12 kW" } }, { rating: "40 A", gfci: true }),
  ],
  [
    "receptacle-rating",
    "a range of 12 kW on 60 A and a 50 A receptacle",
    "fail",
    equip("range", { nameplate: { load: "12 kW" } }, { rating: "60 A", gfci: true }),
  ],
  ["receptacle-rating", "a welder of 22 A on 60 A and a 50 A receptacle", "pass", welder("60 A")],
  ["receptacle-rating", "a welder of 55 A at full duty", "fail", equip("welder", { current: "55 A", nameplate: { duty_percent: 100 } }, { gfci: true })],
  ["welder-protection", "40 A primary on 80 A", "pass", welder("80 A")],
  ["welder-protection", "40 A primary on 90 A", "fail", welder("90 A")],
  [
    "welder-protection",
    "10 AWG, 30 A at 60 °C, behind 60 A",
    "pass",
    welder("60 A", { route: [{ name: "way", place: "indoors", method: "EMT", length: "30 ft", conductors: { size: "10" } }] }),
  ],
  [
    "welder-protection",
    "10 AWG, 30 A at 60 °C, behind 70 A",
    "fail",
    welder("70 A", { route: [{ name: "way", place: "indoors", method: "EMT", length: "30 ft", conductors: { size: "10" } }] }),
  ],
  ["welder-protection", "no welder", "not-applicable", spa()],
  [
    "small-conductor",
    "10 AWG behind 50 A for a welder",
    "not-applicable",
    welder("50 A", { route: [{ name: "way", place: "indoors", method: "EMT", length: "30 ft", conductors: { size: "10" } }] }),
  ],
  [
    "conductor-size",
    "10 AWG behind 50 A for a welder of 22 A",
    "pass",
    welder("50 A", { route: [{ name: "way", place: "indoors", method: "EMT", length: "30 ft", conductors: { size: "10" } }] }),
  ],
  ["air-conditioner-mocp", "marked 35 A on 35 A", "pass", conditioner("35 A")],
  ["air-conditioner-mocp", "marked 35 A on 40 A", "fail", conditioner("40 A")],
  ["air-conditioner-mocp", "reckoned, 16 A × 1.75 + 1 A = 29 A down to 25 A", "needs-person", conditioner("25 A", { compressor: "16 A", others: "1 A" })],
  ["air-conditioner-mocp", "reckoned, 30 A is over", "fail", conditioner("30 A", { compressor: "16 A", others: "1 A" })],
  ["equipment-disconnect", "air conditioner, in sight", "pass", conditioner("35 A", undefined, { disconnect: "in-sight" })],
  ["equipment-disconnect", "air conditioner, a breaker that locks", "fail", conditioner("35 A", undefined, { disconnect: "lockable-breaker" })],
  ["equipment-disconnect", "air conditioner, not named", "needs-person", conditioner("35 A")],
  ["equipment-disconnect", "a dryer's plug", "pass", equip("dryer", {}, { gfci: true })],
  ["equipment-disconnect", "heat with a breaker that locks", "pass", equip("heat", { nameplate: { load: "5 kW" }, disconnect: "lockable-breaker" })],
  [
    "equipment-disconnect",
    "a motor's breaker that locks is an exception to judge",
    "needs-person",
    equip("motor", { current: "26 A", nameplate: { horsepower: "5" }, disconnect: "lockable-breaker" }),
  ],
  ["water-heater-disconnect", "a breaker that locks", "pass", heater({ disconnect: "lockable-breaker" })],
  ["water-heater-disconnect", "none", "fail", heater({ disconnect: "none" })],
  ["water-heater-disconnect", "not named", "needs-person", heater({})],
  ["ev-disconnect", "48 A in 2026, none", "fail", equip("ev-supply", { current: "48 A", disconnect: "none" }), "2026"],
  ["ev-disconnect", "48 A in 2026, in sight", "pass", equip("ev-supply", { current: "48 A", disconnect: "in-sight" }), "2026"],
  ["ev-disconnect", "60 A in 2023", "not-applicable", equip("ev-supply", { current: "60 A" }), "2023"],
  ["ev-disconnect", "61 A in 2023", "needs-person", equip("ev-supply", { current: "61 A" }), "2023"],
  ["spa-gfci", "GFCI breaker", "pass", spa()],
  ["spa-gfci", "GFCI in the disconnect", "pass", spa({ gfci_in_disconnect: true }, {})],
  ["spa-gfci", "none", "fail", spa({}, {})],
  ["spa-gfci", "protection of its own, outdoors, 2020", "needs-person", spa({ integral_gfci: true }, {}), "2020"],
  ["spa-gfci", "protection of its own, 2017", "not-applicable", spa({ integral_gfci: true }, {}), "2017"],
  ["spa-disconnect", "5 ft", "pass", spa({ disconnect_distance: "5 ft" })],
  ["spa-disconnect", "4 ft 11 in", "fail", spa({ disconnect_distance: "59 in" })],
  ["spa-disconnect", "50 ft", "pass", spa({ disconnect_distance: "50 ft" })],
  ["spa-disconnect", "51 ft", "fail", spa({ disconnect_distance: "51 ft" })],
  ["spa-disconnect", "not given", "needs-person", spa({ disconnect_distance: undefined })],
  ["spa-bonding", "assembled in the field", "needs-person", spa()],
  ["spa-bonding", "no spa", "not-applicable", heater({})],
  ["spa-grounding", "copper in PVC", "pass", spa()],
  [
    "spa-grounding",
    "aluminum",
    "fail",
    spa({}, undefined, { route: [{ name: "way", place: "outdoors", method: "PVC-80", length: "30 ft", conductors: { material: "aluminum" } }] }),
  ],
  [
    "spa-grounding",
    "UF-B in the ground",
    "fail",
    spa({}, undefined, { route: [{ name: "way", place: "buried", method: "UF-B", length: "30 ft", cover: "24 in" }] }),
  ],
  ["generator-transfer", "listed for this panel", "pass", generator({ transfer_listed: true })],
  ["generator-transfer", "not listed", "fail", generator({ transfer_listed: false })],
  ["generator-transfer", "not said", "needs-person", generator()],
  ["generator-neutral", "floating neutral, interlock", "pass", generator()],
  ["generator-neutral", "bonded neutral, interlock", "fail", generator({ neutral_bonded: true })],
  ["generator-neutral", "bonded neutral, a switch that opens the neutral", "pass", generator({ neutral_bonded: true, transfer: "manual-switch-with-neutral" })],
  ["generator-neutral", "floating neutral, a switch that opens the neutral", "fail", generator({ transfer: "manual-switch-with-neutral" })],
  ["generator-capacity", "by hand", "pass", generator()],
  ["generator-capacity", "by itself, 7 kW", "needs-person", generator({ transfer: "automatic", load: "5 kW" })],
  ["generator-capacity", "by itself, 20 kW", "pass", generator({ transfer: "automatic", load: "20 kW" })],
  ["generator-backfeed", "held down", "pass", generator({ breaker_held: true })],
  ["generator-backfeed", "not held down", "fail", generator({ breaker_held: false })],
  ["generator-backfeed", "not said", "needs-person", generator()],
  ["generator-backfeed", "a transfer switch", "not-applicable", generator({ transfer: "manual-switch" })],
  ["breaker-within-bounds", "30 A inlet on 30 A", "pass", generator({}, { rating: "30 A" })],
  ["breaker-within-bounds", "30 A inlet on 40 A", "fail", generator({}, { rating: "40 A" })],
  ["gfci", "an inlet is no outlet", "not-applicable", generator()],
  ["range-dryer-four-wire", "four-wire cord", "pass", equip("dryer", { nameplate: { frame_wires: 4 } }, { gfci: true })],
  ["range-dryer-four-wire", "three-wire cord", "fail", equip("dryer", { nameplate: { frame_wires: 3 } }, { gfci: true })],
  ["range-dryer-four-wire", "not told", "needs-person", equip("dryer", {}, { gfci: true })],
  ["range-dryer-four-wire", "a range on a 6-50R", "fail", equip("range", { connection: "6-50R", nameplate: { load: "12 kW" } }, { gfci: true })],
  ["gfci", "dryer, laundry, 2017", "not-applicable", equip("dryer", {}), "2017"],
  ["gfci", "dryer, laundry, 2020", "fail", equip("dryer", {}), "2020"],
  ["gfci", "range, kitchen, 2020", "needs-person", equip("range", { nameplate: { load: "12 kW" } }), "2020"],
  ["gfci", "range, kitchen, 2023", "fail", equip("range", { nameplate: { load: "12 kW" } }), "2023"],
  ["gfci", "air conditioner, 2023", "needs-person", conditioner("35 A"), "2023"],
  ["gfci", "EV supply, 40 A, in a room or a garage, 2023", "needs-person", equip("ev-supply", { current: "32 A" }), "2023"],
  ["gfci", "EV supply, 40 A, garage, 2023", "fail", equip("ev-supply", { current: "32 A", place: "garage" }), "2023"],
  ["gfci", "EV supply, 40 A, garage, 2020", "not-applicable", equip("ev-supply", { current: "32 A", place: "garage" }), "2020"],
  ["gfci", "EV supply, 40 A, indoors, 2023", "not-applicable", equip("ev-supply", { current: "32 A", place: "indoors" }), "2023"],
  ["cover-plate", "a dryer indoors", "not-applicable", equip("dryer", {}, { gfci: true })],
  ["cover-plate", "20 A outdoors, closed cover", "fail", small("receptacle-20", { cover_plate: "weatherproof-closed" })],
  ["cover-plate", "20 A outdoors, in use", "pass", small("receptacle-20", { cover_plate: "weatherproof-in-use" })],
  ["receptacle-weather", "20 A outdoors, marked WR", "pass", small("receptacle-20", { weather_resistant: true })],
  ["receptacle-weather", "20 A outdoors, ordinary", "fail", small("receptacle-20", { weather_resistant: false })],
  ["receptacle-weather", "15 A outdoors, not said", "needs-person", small("receptacle-15")],
  ["receptacle-weather", "20 A indoors", "not-applicable", small("receptacle-20", {}, {}, "indoors")],
  ["gfci", "20 A outdoors, 2017", "fail", small("receptacle-20", {}, { gfci: false }), "2017"],
  // 210.8 asks the protection, readily accessible, and names no place for it (from memory).
  ["gfci", "20 A outdoors with a GFCI receptacle, 2017", "pass", small("receptacle-20", { gfci_device: "receptacle" }, { gfci: false }), "2017"],
  ["gfci", "20 A outdoors with a GFCI receptacle, 2026", "pass", small("receptacle-20", { gfci_device: "receptacle" }, { gfci: false }), "2026"],
  ["gfci", "20 A behind a dead-front device, 2020", "pass", small("receptacle-20", { gfci_device: "dead-front" }, { gfci: false }), "2020"],
  [
    "gfci",
    "240 V welder with a GFCI receptacle",
    "needs-person",
    equip("welder", { current: "20 A", nameplate: { duty_percent: 30 }, gfci_device: "receptacle" }),
  ],
  ["gfci", "240 V welder with a GFCI disconnect", "pass", equip("welder", { current: "20 A", nameplate: { duty_percent: 30 }, gfci_device: "disconnect" })],
  ["gfci", "240 V heater of 1.5 kW in the kitchen, wired in", "not-applicable", heater({ nameplate: { load: "1.5 kW" }, gfci_device: "dead-front" })],
  ["gfci", "hard-wired EV outdoors with a GFCI disconnect, 2017: not asked", "not-applicable", guardedEv, "2017"],
  ["gfci", "hard-wired EV outdoors with a GFCI disconnect, 2020", "pass", guardedEv, "2020"],
  ["spa-gfci", "GFCI in the disconnect, named as a device", "pass", spa({}, {}, { gfci_device: "disconnect" })],
  ["spa-gfci", "behind a dead-front device of 50 A", "needs-person", spa({}, {}, { gfci_device: "dead-front" })],
  ["gfci-trips", "a GFCI disconnect before an RV", "caution", equip("rv-30", { gfci_device: "disconnect" }, one)],
  ["breaker-poles", "one pole for 20 A, 120 V", "pass", small("receptacle-20")],
  ["breaker-poles", "two poles for 20 A, 120 V", "fail", equip("receptacle-20")],
  ["breaker-poles", "one pole for a 120 V water heater", "pass", heater({ nameplate: { load: "1.5 kW", volts: 120 } }, one)],
  ["conductor-size", "several receptacles on 20 A: 12 AWG", "pass", small("receptacle-20", { several: true })],
  ["afci", "kitchen with", "pass", small("receptacle-20", { place: "kitchen", afci: true })],
  ["afci", "kitchen without", "fail", small("receptacle-20", { place: "kitchen", afci: false })],
  ["afci", "a room, not told", "needs-person", small("general", { current: "12 A" }, {}, "indoors")],
  ["afci", "garage", "not-applicable", small("receptacle-20", { place: "garage" })],
  ["afci", "a range", "not-applicable", equip("range", { nameplate: { load: "12 kW" } }, { gfci: true })],
  ["rv-use", "a spa", "not-applicable", spa()],
  ["gfci-trips", "a spa", "not-applicable", spa()],
];
