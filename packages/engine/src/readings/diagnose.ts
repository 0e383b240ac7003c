import { expectedReadings, loadOhms } from "./expected.js";
import type { Fault, FaultId } from "./faults.js";
import { type HouseCircuit, type Meter, simulateReadings } from "./house-circuit.js";
import { type LoopResistance, loopResistance } from "./loop-resistance.js";
import { type Match, type Measured, matchFaults, type Readings } from "./pattern.js";
import { PROVED_BY } from "./proof.js";
import { READINGS, type ReadingName, SOUND } from "./wiring.js";

export interface EnteredReadings {
  readonly circuit: HouseCircuit;
  readonly idle: Readings;
  readonly loaded?: { readonly amperes: number; readonly across: ReadingName; readonly readings: Readings };
  readonly meter?: Meter;
}

/** A reading, or two together, that is not as it should be. */
export interface OutOfBand {
  readonly readings: readonly ReadingName[];
  readonly state: "idle" | "loaded" | "change under load";
  readonly says: string;
  readonly basis: string;
}

export interface RankedFault {
  readonly id: FaultId;
  readonly says: string;
  readonly variant: string;
  readonly toDo: string;
  readonly stop: string;
  /** Root mean square distance from the readings, in tolerances; under 2 it fits them. */
  readonly distance: number;
  readonly fits: boolean;
  readonly wouldRead: { readonly idle: Readings; readonly loaded: Readings | null };
}

export interface NotProved {
  readonly id: FaultId;
  readonly says: string;
  readonly provedBy: string;
}

interface Seen {
  readonly loop: LoopResistance | null;
  readonly says: string;
}
export type Diagnosis =
  | (Seen & { readonly verdict: "pass"; readonly scope: "idle" | "idle and loaded"; readonly notProved: readonly NotProved[] })
  | (Seen & {
      readonly verdict: "need-more";
      readonly decides: ReadingName;
      readonly missing: readonly ReadingName[];
      readonly couldStillBe: readonly FaultId[];
    })
  | (Seen & {
      readonly verdict: "faults";
      readonly outOfBand: readonly OutOfBand[];
      readonly ranked: readonly RankedFault[];
      /** The reading not yet taken that best tells the likeliest apart; null when none does. */
      readonly decides: ReadingName | null;
    });

const FITS = 2;
const LIKELY_SCORE = 4;
const SEPARATES_VOLTS = 5;
// Common practice, no source.
const PAIR_VOLTS = { toGround: 2, legs: 3, sum: 3, change: 1.2 } as const;
const PRACTICE = "common practice, no source";

/**
 * Judges entered readings (volts) at an outlet: pass, one more reading needed, or likely faults by distance to simulated patterns.
 * Passes only when every reading of the outlet was taken with nothing plugged in, hot to ground among them, and all are in band.
 * Throws RangeError for a reading the outlet does not have, one that is not a number of volts, or a load without amperes.
 */
export function diagnose(given: EnteredReadings): Diagnosis {
  const { circuit, idle, loaded } = given;
  const names = READINGS[circuit.outlet];
  for (const [reading, volts] of [...Object.entries(idle), ...Object.entries(loaded?.readings ?? {})]) {
    if (!names.includes(reading as ReadingName)) throw new RangeError(`${circuit.outlet} has no reading ${reading}; it has ${names.join(", ")}`);
    if (!Number.isFinite(volts) || volts < 0) throw new RangeError(`${reading} must be volts from 0 up, not ${volts}`);
  }
  if (loaded !== undefined && (!names.includes(loaded.across) || loaded.across.endsWith("G")))
    throw new RangeError(`a test load goes between hot and neutral or hot and hot, not ${loaded.across}`);

  const measured: Measured = {
    idle,
    loaded: loaded === undefined ? null : { readings: loaded.readings, load: measuredLoad(circuit, loaded) },
    meter: given.meter ?? null,
  };
  const idleVolts = loaded && idle[loaded.across];
  const loadedVolts = loaded?.readings[loaded.across];
  const loop =
    loaded === undefined || idleVolts === undefined || loadedVolts === undefined
      ? null
      : loopResistance(circuit, { across: loaded.across, idleVolts, loadedVolts, amperes: loaded.amperes });
  const matches = matchFaults(circuit, measured);
  const outOfBand = [...bandFailures(given), ...pairFailures(given)];
  const missing = names.filter((name) => idle[name] === undefined);
  const loopSays = loop === null ? "" : ` ${loop.says}`;

  if (outOfBand.length > 0) {
    const faulty = matches.filter((m) => m.fault.id !== "sound");
    const ranked = faulty.slice(0, 5).map(rankedFault);
    const likely = faulty.filter((m) => m.distance <= FITS || m.score - faulty[0]!.score <= LIKELY_SCORE);
    const first = ranked[0]!;
    const lead = first.fits
      ? `Likeliest: ${first.says}`
      : `No single simulated fault fits; nearest: ${first.says}. Check the meter and its range, and think of two faults at once`;
    return {
      verdict: "faults",
      outOfBand,
      ranked,
      decides: separating(missing, likely),
      loop,
      says: `${outOfBand[0]!.says}. ${lead}. ${first.stop}${loopSays}`,
    };
  }
  // A high supply is judged by its band alone, so in band it is not in question.
  const open = matches.filter((m) => m.fault.id !== "sound" && m.fault.id !== "high-source" && m.distance <= FITS);
  if (missing.length > 0) {
    const toGround = missing.find((name) => name.endsWith("-G") && name !== "N-G");
    const decides =
      toGround ??
      separating(
        missing,
        matches.filter((m) => m.distance <= FITS),
      ) ??
      missing[0]!;
    const why =
      toGround === undefined
        ? `${missing.join(", ")} not read; a blank is not a pass`
        : idle["N-G"] === undefined
          ? `read ${toGround}: nothing yet shows that the ground terminal is connected`
          : `read ${toGround}: neutral to ground near zero does not prove a ground, since an unconnected ground terminal can read the same`;
    return { verdict: "need-more", decides, missing, couldStillBe: open.map((m) => m.fault.id), loop, says: `In band so far, not a pass: ${why}.${loopSays}` };
  }
  const notProved = open.map(({ fault }) => ({ id: fault.id, says: fault.says, provedBy: PROVED_BY[fault.id] }));
  const scope = loaded !== undefined && Object.keys(loaded.readings).length > 0 ? "idle and loaded" : "idle";
  const rest = notProved.length === 0 ? "" : ` Not ruled out by these readings: ${notProved.map((n) => n.id).join(", ")}; see how each is proved.`;
  return { verdict: "pass", scope, notProved, loop, says: `Every ${scope} reading is in band.${loopSays}${rest}` };
}

/** The load as measured: its own volts over its amperes where both were read, else its rated volts. */
function measuredLoad(circuit: HouseCircuit, loaded: NonNullable<EnteredReadings["loaded"]>) {
  const rated = loadOhms(circuit, loaded);
  const volts = loaded.readings[loaded.across];
  return volts !== undefined && volts > 20 ? { ...rated, ohms: volts / loaded.amperes } : rated;
}

function bandFailures({ circuit, idle, loaded }: EnteredReadings): readonly OutOfBand[] {
  return expectedReadings(circuit, loaded ?? null).flatMap((band) => {
    const volts = band.state === "idle" ? idle[band.reading] : loaded?.readings[band.reading];
    if (volts === undefined || (volts >= band.least && volts <= band.most)) return [];
    const says = `${band.reading} ${band.state} reads ${volts} V, expected ${band.least.toFixed(1)} to ${band.most.toFixed(1)} V`;
    return [{ readings: [band.reading], state: band.state, says, basis: band.basis }];
  });
}

function pairFailures({ circuit, idle, loaded }: EnteredReadings): readonly OutOfBand[] {
  const found: OutOfBand[] = [];
  const apart = (a: ReadingName, b: ReadingName, most: number): void => {
    const [x, y] = [idle[a], idle[b]];
    if (x === undefined || y === undefined || Math.abs(x - y) <= most) return;
    found.push({ readings: [a, b], state: "idle", says: `${a} and ${b} differ by ${Math.abs(x - y).toFixed(1)} V, more than ${most} V`, basis: PRACTICE });
  };
  apart("L1-N", "L1-G", PAIR_VOLTS.toGround);
  apart("L2-N", "L2-G", PAIR_VOLTS.toGround);
  apart("L1-N", "L2-N", PAIR_VOLTS.legs);
  const [one, two, both] = [idle["L1-N"], idle["L2-N"], idle["L1-L2"]];
  if (one !== undefined && two !== undefined && both !== undefined && Math.abs(one + two - both) > PAIR_VOLTS.sum) {
    const says = `L1-N and L2-N make ${(one + two).toFixed(1)} V, L1-L2 reads ${both} V`;
    found.push({ readings: ["L1-N", "L2-N", "L1-L2"], state: "idle", says, basis: "the legs of a 120/240 V supply are opposite" });
  }
  if (loaded === undefined) return found;
  const load = loadOhms(circuit, loaded);
  const before = simulateReadings(circuit, SOUND[circuit.outlet]);
  const after = simulateReadings(circuit, SOUND[circuit.outlet], [load]);
  for (const [name, volts] of Object.entries(loaded.readings)) {
    const reading = name as ReadingName;
    const was = idle[reading];
    // Neutral to ground has its own loaded band.
    if (was === undefined || reading === "N-G") continue;
    const [change, expected] = [volts - was, after[reading]! - before[reading]!];
    if (Math.abs(change - expected) <= PAIR_VOLTS.change * (reading === "L1-L2" ? 2 : 1)) continue;
    const says = `${reading} moved by ${change.toFixed(1)} V under ${loaded.amperes} A, computed ${expected.toFixed(1)} V`;
    found.push({ readings: [reading], state: "change under load", says, basis: `simulation, within 1 % (${PRACTICE})` });
  }
  return found;
}

function rankedFault({ fault, variant, distance, idle, loaded }: Match): RankedFault {
  const { id, says, toDo, stop }: Fault = fault;
  return { id, says, variant, toDo, stop, distance, fits: distance <= FITS, wouldRead: { idle, loaded } };
}

/** Of readings not taken, the one on which the candidates differ most; null when none differs by more than a few volts. */
function separating(missing: readonly ReadingName[], candidates: readonly Match[]): ReadingName | null {
  const spread = (reading: ReadingName): number => {
    const volts = candidates.map((m) => m.idle[reading] ?? 0);
    return Math.max(...volts) - Math.min(...volts);
  };
  const best = [...missing].sort((a, b) => spread(b) - spread(a))[0];
  return best !== undefined && candidates.length > 1 && spread(best) > SEPARATES_VOLTS ? best : null;
}
