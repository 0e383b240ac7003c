import type { HouseCircuit } from "./house-circuit.js";
import { opened, SOUND, swapped, type Wiring, type WiringShape } from "./wiring.js";

/** One way a fault may stand: what it changes in the circuit, the wiring at the outlet, and how far the supply may be from 120 V. */
export interface Variant {
  readonly says: string;
  readonly wiring: Wiring;
  readonly circuit: Partial<HouseCircuit>;
  /** Least and greatest supply as a part of 120 V per leg. */
  readonly supply: readonly [number, number];
}

export interface Fault {
  readonly id: FaultId;
  readonly says: string;
  readonly toDo: string;
  readonly stop: string;
  readonly outlets: readonly WiringShape[];
  readonly variants: (outlet: WiringShape, run: HouseCircuit["run"]) => readonly Variant[];
}

export type FaultId =
  | "sound"
  | "open-hot-1"
  | "open-hot-2"
  | "no-supply"
  | "open-neutral"
  | "open-equipment-ground"
  | "neutral-ground-swapped"
  | "hot-neutral-swapped"
  | "hot-ground-swapped"
  | "both-hots-one-leg"
  | "240-on-125-outlet"
  | "supply-208"
  | "neutral-bonded-at-outlet"
  | "bootleg-ground"
  | "open-ground-bootleg"
  | "reverse-polarity-bootleg"
  | "high-resistance-neutral"
  | "high-resistance-hot"
  | "open-service-neutral"
  | "long-run-low-source"
  | "high-source";

const ALL: readonly WiringShape[] = ["four-wire", "one-hot", "two-hot"];
const WITH_NEUTRAL: readonly WiringShape[] = ["four-wire", "one-hot"];
const TWO_HOT: readonly WiringShape[] = ["four-wire", "two-hot"];

/** Range A of ANSI C84.1 (114 to 126 V on 120 V) with room for meter error. */
const ORDINARY = [0.94, 1.06] as const;
const LOW_OR_ORDINARY = [0.9, 1.04] as const;
const BAD_JOINT_OHMS = [0.5, 1, 2, 5, 10, 20] as const;

const HOUSE_RATIOS = [
  [1, 8],
  [1, 5],
  [1, 3],
  [2, 5],
  [4, 8],
  [3, 5],
  [4, 6],
  [6, 8],
  [8, 10],
] as const;

const one = (wiring: Wiring, says = "", circuit: Partial<HouseCircuit> = {}, supply: readonly [number, number] = ORDINARY): Variant => ({
  says,
  wiring,
  circuit,
  supply,
});

export const NO_FAULT: Fault = {
  id: "sound",
  says: "wired as it should be",
  toDo: "Nothing more from these readings; finish the rest of the test record.",
  stop: "Nothing to stop.",
  outlets: ALL,
  variants: (outlet) => [one(SOUND[outlet])],
};

const OFF = "Turn the breaker off, lock it, prove it dead (prove the tester, test, prove the tester again)";
const UNPLUG = "Stop: plug nothing in";

export const FAULTS: readonly Fault[] = [
  {
    id: "open-hot-1",
    says: "the first hot is open: breaker pole off or tripped, or a loose or broken hot",
    toDo: `${OFF}; then check the breaker pole, its terminal and every splice of the first hot.`,
    stop: "Stop: do not reset a breaker that trips again, and do not load the other leg meanwhile.",
    outlets: ALL,
    variants: (outlet) => [one(opened(SOUND[outlet], "hot1"))],
  },
  {
    id: "open-hot-2",
    says: "the second hot is open: breaker pole off or tripped, or a loose or broken hot",
    toDo: `${OFF}; then check the breaker pole, its terminal and every splice of the second hot.`,
    stop: "Stop: do not reset a breaker that trips again, and do not load the other leg meanwhile.",
    outlets: TWO_HOT,
    variants: (outlet) => [one(opened(SOUND[outlet], "hot2"))],
  },
  {
    id: "no-supply",
    says: "both hots are without supply: breaker off or tripped, or both open",
    toDo: "Find out whether the breaker is off, and why, before turning it on.",
    stop: "Stop: no reading does not mean dead; do not touch conductors on the strength of this.",
    outlets: TWO_HOT,
    variants: (outlet) => [one(opened(SOUND[outlet], "hot1", "hot2"))],
  },
  {
    id: "open-neutral",
    says: "the neutral of this run is open: leg voltages float apart and a 120 V load can be fed 240 V",
    toDo: `${OFF}; then check the neutral at the bar, at each splice and at the outlet.`,
    stop: `${UNPLUG}; with a neutral open, 120 V appliances on one leg can burn out at up to 240 V.`,
    outlets: WITH_NEUTRAL,
    variants: (outlet) => [one(opened(SOUND[outlet], "neutral"))],
  },
  {
    id: "open-equipment-ground",
    says: "the equipment ground is open: the ground terminal floats and a fault would make metal parts live without tripping the breaker",
    toDo: `${OFF}; then check continuity of the equipment grounding conductor end to end. A ground rod does not replace it.`,
    stop: `${UNPLUG}; the metal of what is plugged in has no path to trip the breaker.`,
    outlets: ALL,
    variants: (outlet) => [one(opened(SOUND[outlet], "ground"))],
  },
  {
    id: "neutral-ground-swapped",
    says: "neutral and equipment ground are changed over: load current returns in the equipment ground",
    toDo: `${OFF}; then land the white conductor on the neutral terminal and the equipment ground on the ground terminal, and check both bars.`,
    stop: `${UNPLUG}; all return current is on bare or metal parts.`,
    outlets: WITH_NEUTRAL,
    variants: (outlet) => [one(swapped(SOUND[outlet], "N", "G"))],
  },
  {
    id: "hot-neutral-swapped",
    says: "a hot and the neutral are changed over",
    toDo: `${OFF}; then land hot and neutral on their own terminals, and check each splice by color and by continuity.`,
    stop: `${UNPLUG}; the neutral terminal is live, and on a four-wire outlet one 120 V leg gets 240 V.`,
    outlets: WITH_NEUTRAL,
    variants: (outlet) => [
      one(swapped(SOUND[outlet], "L1", "N"), "first hot with neutral"),
      ...(outlet === "four-wire" ? [one(swapped(SOUND[outlet], "L2", "N"), "second hot with neutral")] : []),
    ],
  },
  {
    id: "hot-ground-swapped",
    says: "a hot and the equipment ground are changed over: everything bonded to the ground terminal is live",
    toDo: `${OFF}; unplug every load of the circuit and read again, since an open neutral with a load on it reads the same; then, off and proved dead again, put the hot and the equipment ground on their own terminals.`,
    stop: `${UNPLUG} and touch neither outlet box nor what it feeds: metal parts are at line voltage.`,
    outlets: ALL,
    variants: (outlet) => [
      one(swapped(SOUND[outlet], "L1", "G"), "first hot with ground"),
      ...(outlet === "one-hot" ? [] : [one(swapped(SOUND[outlet], "L2", "G"), "second hot with ground")]),
    ],
  },
  {
    id: "both-hots-one-leg",
    says: "both hots come from the same leg: no volts between them, and the neutral carries the sum of both legs' currents",
    toDo: `${OFF}; then use a two-pole breaker on two adjacent spaces that are on opposite legs (not a tandem).`,
    stop: `${UNPLUG}; the neutral can carry up to twice its rating with no breaker to see it.`,
    outlets: TWO_HOT,
    variants: (outlet) =>
      (["leg-1", "leg-2"] as const).map((leg) =>
        one({ ...SOUND[outlet], begins: { ...SOUND[outlet].begins, hot1: leg, hot2: leg } }, leg === "leg-1" ? "both on leg 1" : "both on leg 2"),
      ),
  },
  {
    id: "240-on-125-outlet",
    says: "a 125 V outlet is wired with two hots: 240 V where 120 V belongs",
    toDo: `${OFF}; then feed it from a one-pole breaker: black to hot, white to the neutral bar, green or bare to ground.`,
    stop: `${UNPLUG}; 240 V destroys 120 V equipment at once.`,
    outlets: ["one-hot"],
    variants: (outlet) => [one({ ...SOUND[outlet], begins: { ...SOUND[outlet].begins, neutral: "leg-2" } })],
  },
  {
    id: "supply-208",
    says: "two legs of a 208Y/120 V system, not 120/240 V",
    toDo: "Ask the utility what the supply is; 240 V equipment must be rated for 208 V, and the neutral carries about full current.",
    stop: "Stop: do not count on the neutral currents of the two legs to cancel.",
    outlets: TWO_HOT,
    variants: (outlet) => [one(SOUND[outlet], "", { legDegrees: [0, 120] })],
  },
  {
    id: "neutral-bonded-at-outlet",
    says: "neutral and equipment ground are joined at the outlet: part of the load current returns in the equipment ground",
    toDo: `${OFF}; then take the bond (strap, green screw or jumper) out. Neutral and ground join only at the service disconnect.`,
    stop: "Stop: do not use it; current flows on metal parts and a GFCI will trip or be defeated.",
    outlets: WITH_NEUTRAL,
    variants: (outlet) => [one({ ...SOUND[outlet], bondedAtOutlet: true })],
  },
  {
    id: "bootleg-ground",
    says: "the ground terminal is fed from the neutral (bootleg): no equipment grounding conductor reaches the panel",
    toDo: `${OFF}; then run an equipment grounding conductor from the panel and take the jumper out.`,
    stop: `${UNPLUG}; if the neutral opens, all metal parts rise to line voltage. A meter and a three-lamp tester both pass this.`,
    outlets: WITH_NEUTRAL,
    variants: (outlet) => [one({ ...opened(SOUND[outlet], "ground"), bondedAtOutlet: true })],
  },
  {
    id: "open-ground-bootleg",
    says: "the equipment grounding conductor is broken on the way and a bond to neutral at the outlet hides it",
    toDo: `${OFF}; then take the bond out, find the break by continuity end to end, and mend it.`,
    stop: `${UNPLUG}; if the neutral opens, the outlet box, the raceway beyond the break and what is plugged in rise to line voltage.`,
    outlets: WITH_NEUTRAL,
    variants: (outlet) => [one({ ...opened(SOUND[outlet], "ground"), bondedAtOutlet: true })],
  },
  {
    id: "reverse-polarity-bootleg",
    says: "hot and neutral are changed over and the ground terminal is tied to the neutral terminal: the ground is live though every reading looks right",
    toDo: `${OFF}; find it with a non-contact tester on the ground and plate, then rewire with a true equipment ground.`,
    stop: `${UNPLUG} and touch no metal of the outlet or of what it feeds: it is at line voltage.`,
    outlets: ["one-hot"],
    variants: (outlet) => [one({ ...swapped(opened(SOUND[outlet], "ground"), "L1", "N"), bondedAtOutlet: true })],
  },
  {
    id: "high-resistance-neutral",
    says: "the neutral has a bad connection: under load the loaded leg sags, the other rises, and neutral to ground rises",
    toDo: `${OFF}; then check torque and each neutral splice for heat marks.`,
    stop: "Stop loading it: the joint heats, and if it opens the legs float apart.",
    outlets: WITH_NEUTRAL,
    variants: (outlet) => BAD_JOINT_OHMS.map((added) => one({ ...SOUND[outlet], addedOhms: { neutral: added } }, `about ${added} Ω more in the neutral`)),
  },
  {
    id: "high-resistance-hot",
    says: "a hot has a bad connection: under load its leg sags while neutral to ground stays as computed",
    toDo: `${OFF}; then check torque at the breaker and outlet, and each hot splice, for heat marks.`,
    stop: "Stop loading it: the joint heats and can start a fire without tripping the breaker.",
    outlets: ALL,
    variants: (outlet) =>
      BAD_JOINT_OHMS.flatMap((added) => [
        one({ ...SOUND[outlet], addedOhms: { hot1: added } }, `about ${added} Ω more in the first hot`),
        ...(outlet === "one-hot" ? [] : [one({ ...SOUND[outlet], addedOhms: { hot2: added } }, `about ${added} Ω more in the second hot`)]),
      ]),
  },
  {
    id: "open-service-neutral",
    says: "the service neutral is open upstream of the panel: every 120 V leg in the house floats with the load on it",
    toDo: "Turn the main off from where that is safe and call the utility or a licensed electrician at once.",
    stop: "Stop using the whole house's 120 V circuits: lights and electronics burn out, and current flows through the ground rod and water pipe.",
    outlets: ALL,
    // Only the ratio of the two legs' loads matters much; the house's own, never known, is tried from 1:8 to 8:1.
    variants: (outlet) =>
      HOUSE_RATIOS.flatMap(([a, b]) => [[a, b] as const, [b, a] as const]).map((houseAmperes) =>
        one(SOUND[outlet], `house loads about as ${houseAmperes.join(" to ")}`, { serviceNeutralOhms: null, houseAmperes }),
      ),
  },
  {
    id: "long-run-low-source",
    says: "low voltage: low supply, or a run too long or too small for the load",
    toDo: "Read at the panel at the same time: low there too is the utility's or the service's; low only at the outlet is the run.",
    stop: "Stop running motors and air conditioners: low voltage overheats them.",
    outlets: ALL,
    variants: (outlet, run) => [
      one(SOUND[outlet], "low supply", {}, [0.7, 0.95]),
      ...[2, 4, 8].map((k) =>
        one(
          SOUND[outlet],
          `run of about ${k} times the computed resistance`,
          { run: { hot1: run.hot1 * k, hot2: run.hot2 * k, neutral: run.neutral * k, ground: run.ground } },
          LOW_OR_ORDINARY,
        ),
      ),
    ],
  },
  {
    id: "high-source",
    says: "high supply voltage on both legs",
    toDo: "Read at the panel; if it is high there, call the utility.",
    stop: "Stop: leave electronics unplugged until it is put right.",
    outlets: ALL,
    variants: (outlet) => [one(SOUND[outlet], "high supply", {}, [1.05, 1.3])],
  },
];
