/** How the packet meets a correction: worked out, warned of by a check, or printed for the person on site. */
export type Answered = "computed" | "warned" | "printed";

/** A correction that inspectors write often, and what of this packet answers it. */
export interface Correction {
  readonly id: string;
  readonly says: string;
  readonly answered: readonly Answered[];
  /** Ids of checks whose findings speak of it. */
  readonly checks: readonly string[];
  /** Ids of inspection lines that ask for it to be seen. */
  readonly lines: readonly string[];
}

type Row = readonly [id: string, says: string, answered: string, checks: string, lines: string];

// Gathered from published lists of local inspectors' corrections, in our own words: c computed, w warned, p printed.
const ROWS: readonly Row[] = [
  ["trench-covered", "Trench covered before it was inspected", "p", "trench-open", "trench-open"],
  ["cover-short", "Buried wiring not deep enough", "cp", "burial-cover", "trench-cover"],
  ["emt-in-earth", "Thin-wall metal tubing in earth", "w", "emt-buried", ""],
  ["riser-unprotected", "Riser of the wrong kind where it can be struck", "w", "riser-protection", "trench-riser"],
  ["sharp-backfill", "Rock or debris in the backfill", "p", "", "trench-backfill"],
  ["dry-cable-wet", "Dry-place cable in a raceway outdoors or in earth", "w", "cable-wet", "cable-dry"],
  ["cable-unguarded", "Direct-burial cable unguarded up the wall", "wp", "riser-protection", "cable-guarded"],
  ["plumbing-pipe", "Plumbing pipe or elbows used as raceway", "p", "", "trench-electrical-pvc"],
  ["no-expansion", "No expansion fitting in PVC that moves", "cp", "pvc-expansion", "trench-expansion"],
  ["not-strapped", "Raceway not fastened near its box", "p", "", "supports"],
  ["unsealed-passage", "Raceway open between cold and warm", "p", "", "sealed-passage"],
  ["too-many-bends", "More than 360° between pull points", "c", "raceway-bends", "raceway-bends"],
  ["overfilled", "Raceway too full", "c", "raceway-fill", "raceway-fill"],
  ["wrong-conductor", "Conductor of the wrong size or type", "c", "conductor-size conductor-wet", "conductors"],
  ["terminal-temperature", "Ampacity taken past what terminals or cable allow", "c", "conductor-terminals conductor-size", ""],
  ["over-fused", "Breaker larger than the conductor allows", "c", "conductor-size small-conductor breaker-carries-load", "breaker"],
  ["ground-undersized", "Equipment grounding conductor missing, small or not enlarged with the hots", "c", "grounding-size", "grounding-conductor"],
  ["three-wire-feed", "Three wires where four are wanted", "wp", "subpanel-neutral", "subpanel-neutral outlet-neutral"],
  ["bonded-downstream", "Neutral joined to ground past the service", "wp", "neutral-isolated subpanel-neutral", "subpanel-neutral outlet-neutral"],
  ["neutrals-doubled", "Two neutrals under one screw", "p", "", "neutral-terminals"],
  ["breaker-unlisted", "Breaker not listed for the panel", "w", "breaker-listed", "breaker-listed"],
  ["tandem-misplaced", "Half-width breaker where the panel allows none", "wp", "panel-spaces-free", "tandem-places"],
  ["wrong-poles", "Wrong number of poles, or poles that do not open together", "w", "breaker-poles", "breaker opposite-legs one-hot-outlet"],
  ["one-leg", "Both hots on one leg", "wp", "breaker-adjacent-spaces", "opposite-legs test-record"],
  ["no-gfci", "No ground-fault protection where the edition asks it", "c", "gfci", "gfci-test"],
  ["gfci-unreachable", "Ground-fault device not readily reached", "wp", "working-space", "gfci-test"],
  ["gfci-neutral", "Neutral lead of the ground-fault breaker on the wrong bar", "p", "", "gfci-neutral"],
  ["cover-not-in-use", "Cover not weatherproof with the plug in", "wp", "cover-plate", "cover"],
  ["enclosure-dry", "Enclosure not for a wet place", "w", "box-wet", "box-wet"],
  ["not-weather-resistant", "Receptacle outdoors not marked weather resistant", "p", "", "weather-resistant"],
  ["box-small", "Box too small", "c", "box-volume", "box-size"],
  ["entry-unlisted", "Back or top entry without a listed hub", "wp", "box-wet", "box-wet"],
  ["open-knockout", "Open knockout", "p", "", "box-openings panel-openings"],
  ["wrong-screws", "Drywall screws holding boxes", "p", "", "box-fixed"],
  ["box-loose", "Box or pedestal loose", "p", "", "box-fixed"],
  ["space-blocked", "Working space blocked", "wp", "working-space", "working-space"],
  ["directory-vague", "Directory missing or vague", "wp", "panel-directory", "directory"],
  ["torque-unshown", "Torque not shown", "wp", "torque", "torque"],
  ["aluminum-lug", "Aluminum in a lug not rated for it", "p", "", "aluminum-terminals"],
  ["white-hot", "White conductor used as a hot and not marked", "p", "", "white-marked"],
  ["overloaded", "Load calculation missing or service overloaded", "c", "service-capacity", "load-shown"],
  ["drop-unstated", "Voltage drop not stated", "c", "voltage-drop", "load-shown"],
  [
    "no-building-disconnect",
    "No disconnect at a detached building",
    "wp",
    "detached-disconnect outlet-structure building-disconnect-rating",
    "building-disconnect",
  ],
  ["no-building-electrode", "No electrode at a building fed by a feeder", "wp", "detached-electrode", "building-electrode"],
  ["ring-knockouts", "Ring knockouts without a bonding bushing", "p", "", "ring-knockouts"],
  ["electrode-sleeve", "Metal sleeve of the electrode conductor not bonded at both ends", "p", "", "electrode-sleeve"],
  ["spa-unprotected", "Hot tub: disconnect too near or out of sight, parts not bonded", "p", "", "spa-disconnect spa-bonding"],
  ["ev-receptacle", "Charging receptacle not of the kind the edition asks", "wp", "ev-disconnect", "ev-connection"],
  ["generator-unsafe", "Generator without transfer or interlock, or unsigned", "p", "", "generator-transfer generator-signs"],
  ["not-ready", "Card, sheets or house number not there; work not as drawn or not ready", "p", "", "on-site"],
];

const ANSWERED: Readonly<Record<string, Answered>> = { c: "computed", w: "warned", p: "printed" };
const list = (text: string): readonly string[] => (text === "" ? [] : text.split(" "));

/** Fifty corrections that inspectors write often, each with the checks and inspection lines that answer it. */
export const CORRECTIONS: readonly Correction[] = ROWS.map(([id, says, answered, checks, lines]) => ({
  id,
  says,
  answered: [...answered].map((letter) => ANSWERED[letter]!),
  checks: list(checks),
  lines: list(lines),
}));
