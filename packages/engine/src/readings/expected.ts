import { type Citation, citeOther } from "../basis/citation.js";
import { type HouseCircuit, type OutletLoad, simulateReadings } from "./house-circuit.js";
import { READINGS, type ReadingName, SOUND } from "./wiring.js";

/** One expected reading: volts between least and most, what the simulation gives, and where the band comes from. */
export interface Band {
  readonly reading: ReadingName;
  readonly state: "idle" | "loaded";
  readonly least: number;
  readonly most: number;
  readonly simulated: number;
  readonly basis: string;
  readonly citation: Citation;
}

/** A known load at the outlet: amperes at the outlet's rated volts between two terminals. */
export interface StatedLoad {
  readonly amperes: number;
  readonly across: ReadingName;
}

/** ANSI C84.1 Range A, service voltage, per cent either way. Confirmed by two published rules: Maryland COMAR 20.50.07.02, Idaho Power. */
export const RANGE_A = { legToNeutral: [114, 126], legToLeg: [228, 252] } as const;
const C84 = citeOther("ANSI C84.1", "Range A, service voltage, 120/240 V (114–126 / 228–252)", "published");
const C84_LOADED = citeOther("ANSI C84.1", "Range A, service voltage, less the simulated drop and 1 % of the circuit's volts", "practice");
const IDLE_NEUTRAL = citeOther("Neutral to ground, no load", "under 1 V", "practice");
const LOADED_NEUTRAL = citeOther("Neutral to ground, loaded", "simulated rise of the neutral, 1 V more at most, not a dead zero", "practice");
const METER_SLACK_PERCENT = 1;
/** Idle neutral-to-ground volts above which something is wrong; common practice, no source. */
const IDLE_NEUTRAL_MOST = 1;

/** The resistance that draws the stated amperes at the rated volts between its terminals. Throws RangeError unless amperes are above 0. */
export function loadOhms(circuit: HouseCircuit, { amperes, across }: StatedLoad): OutletLoad {
  if (!(amperes > 0) || !Number.isFinite(amperes)) throw new RangeError(`a load needs amperes above 0, not ${amperes}`);
  return { across, ohms: (across === "L1-L2" ? 2 * circuit.legVolts : circuit.legVolts) / amperes };
}

/**
 * Expected bands at an outlet with nothing plugged in and, when a load is stated, with that load on.
 * Volts. Idle: ANSI C84.1 Range A. Loaded: the same less the simulated drop; neutral to ground from the simulation.
 */
export function expectedReadings(circuit: HouseCircuit, load: StatedLoad | null = null): readonly Band[] {
  const sound = SOUND[circuit.outlet];
  const idle = simulateReadings(circuit, sound);
  const loaded = load === null ? null : simulateReadings(circuit, sound, [loadOhms(circuit, load)]);
  return [
    ...READINGS[circuit.outlet].map((reading) => idleBand(reading, idle[reading]!)),
    ...(loaded === null ? [] : READINGS[circuit.outlet].map((reading) => loadedBand(reading, idle[reading]!, loaded[reading]!))),
  ];
}

function rangeOf(reading: ReadingName): readonly [number, number] {
  return reading === "L1-L2" ? RANGE_A.legToLeg : RANGE_A.legToNeutral;
}

function idleBand(reading: ReadingName, simulated: number): Band {
  if (reading === "N-G")
    return { reading, state: "idle", least: 0, most: IDLE_NEUTRAL_MOST, simulated, basis: "near 0 V with no load (common practice)", citation: IDLE_NEUTRAL };
  const [least, most] = rangeOf(reading);
  return { reading, state: "idle", least, most, simulated, basis: "ANSI C84.1 Range A", citation: C84 };
}

function loadedBand(reading: ReadingName, idle: number, loaded: number): Band {
  if (reading === "N-G") {
    // Under load a true zero means neutral and ground meet here; below 0.4 V a meter cannot tell.
    const least = loaded > 0.4 ? loaded / 4 : 0;
    const basis = "simulated rise of the neutral; 1 V allowed above it (common practice)";
    return { reading, state: "loaded", least, most: loaded + 1, simulated: loaded, basis, citation: LOADED_NEUTRAL };
  }
  const [least, most] = rangeOf(reading);
  const slack = (least / 0.95) * (METER_SLACK_PERCENT / 100);
  const moved = loaded - idle;
  return {
    reading,
    state: "loaded",
    least: least + Math.min(0, moved) - slack,
    most: most + Math.max(0, moved),
    simulated: loaded,
    basis: "ANSI C84.1 Range A and the simulated change under load; 1 % allowed below (common practice)",
    citation: C84_LOADED,
  };
}
