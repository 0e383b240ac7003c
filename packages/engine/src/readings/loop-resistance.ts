import { citeOther } from "../basis/citation.js";
import { decimal, print } from "../quantity.js";
import { type Worked, worked } from "../worked.js";
import { loadOhms } from "./expected.js";
import { type HouseCircuit, simulateReadings } from "./house-circuit.js";
import { type ReadingName, SOUND } from "./wiring.js";

export interface LoadedPair {
  readonly across: ReadingName;
  readonly idleVolts: number;
  readonly loadedVolts: number;
  readonly amperes: number;
}

/** Resistance of the whole loop (supply, hot, return) from an idle and a loaded reading between the same terminals. */
export interface LoopResistance {
  /** Ohms from the two readings. */
  readonly measured: Worked;
  /** What half a digit (0.5 V unless the readings show tenths: 0.05 V) on either reading makes of it. */
  readonly leastOhms: number;
  readonly mostOhms: number;
  readonly computedOhms: number;
  readonly computedDropVolts: number;
  readonly verdict: "ordinary" | "high" | "rises";
  readonly says: string;
}

/** One per cent of 120 V more than computed is still ordinary, since supply and meter wander; common practice, no source. */
const ALLOWED_VOLTS = 1.2;

/** Loop ohms = (idle − loaded) / amperes, compared with the simulated loop. */
export function loopResistance(circuit: HouseCircuit, pair: LoadedPair): LoopResistance {
  const { across, idleVolts, loadedVolts, amperes } = pair;
  const idle = simulateReadings(circuit, SOUND[circuit.outlet])[across]!;
  const load = loadOhms(circuit, { across, amperes });
  const loaded = simulateReadings(circuit, SOUND[circuit.outlet], [load])[across]!;
  // The load is a resistance, so the simulated current is a little under the stated one.
  const computedOhms = (idle - loaded) / (loaded / load.ohms);
  const computedDropVolts = computedOhms * amperes;
  const measured = worked({
    id: "readings.loop",
    label: `Loop resistance ${across} from the idle and loaded readings`,
    value: decimal(idleVolts).minus(loadedVolts).div(amperes).toSignificantDigits(6).toFixed(),
    unit: "ohm",
    expression: `(${print(idleVolts)} V − ${print(loadedVolts)} V) / ${print(amperes)} A`,
    citations: [citeOther("Ohm's law", "R = (V idle − V loaded) / I", "published")],
  });
  const drop = idleVolts - loadedVolts;
  const halfDigit = [idleVolts, loadedVolts].every(Number.isInteger) ? 0.5 : 0.05;
  const leastOhms = Math.max(0, drop - 2 * halfDigit) / amperes;
  const mostOhms = Math.max(0, drop + 2 * halfDigit) / amperes;
  const verdict = drop < -2 * halfDigit ? "rises" : drop > computedDropVolts + ALLOWED_VOLTS ? "high" : "ordinary";
  const figures = `${print(idleVolts)} V idle, ${print(loadedVolts)} V at ${print(amperes)} A: loop ${print(measured.value, 2)} Ω (${print(leastOhms, 2)} to ${print(mostOhms, 2)} Ω with the last digit), computed ${print(computedOhms, 2)} Ω`;
  const verdictSays = {
    ordinary: "ordinary: within 1.2 V of the computed drop",
    high: "more than 1.2 V over the computed drop: look for a bad connection or a run longer or smaller than stated",
    rises: "the voltage rose when loaded: a bad neutral, or the supply moved; read again",
  }[verdict];
  return { measured, leastOhms, mostOhms, computedOhms, computedDropVolts, verdict, says: `${figures}; ${verdictSays}.` };
}
