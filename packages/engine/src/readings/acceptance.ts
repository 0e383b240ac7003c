import type { DesignedCircuit, DesignedJob } from "../designed.js";
import { type Band, expectedReadings, type StatedLoad } from "./expected.js";
import { ASSUMPTIONS, type HouseCircuit } from "./house-circuit.js";
import { outletCircuit } from "./outlet-circuit.js";
import { READINGS, type ReadingName, type WiringShape } from "./wiring.js";

/** A 1,500 W heater on 120 V, what most houses have at hand; common practice, no source. */
const HEATER_AMPERES = 12.5;
/** Of the breaker's rating that a test load may draw; common practice, no source. */
const MOST_OF_BREAKER = 0.8;

export interface AcceptanceTest {
  readonly circuit: HouseCircuit;
  readonly shape: WiringShape;
  readonly idle: readonly Band[];
  /** One set of loaded readings for each leg; between the hots where there is no neutral. */
  readonly loaded: readonly { readonly load: StatedLoad; readonly says: string; readonly bands: readonly Band[] }[];
  readonly assumptions: readonly string[];
}

/** A reading in the words of the test sheet, by the wiring it is taken at. */
export function readingWords(reading: ReadingName, shape: WiringShape): string {
  const words: Readonly<Record<string, string>> =
    shape === "one-hot" ? { L1: "Hot", N: "neutral", G: "ground" } : { L1: "Line 1", L2: "line 2", N: "neutral", G: "ground" };
  const [from = "", to = ""] = reading.split("-").map((terminal) => words[terminal] ?? terminal);
  return `${from.charAt(0).toUpperCase()}${from.slice(1)} to ${to}`;
}

/** The readings to take at a designed circuit's outlet and the band each must be in, with nothing connected and under a test load. */
export function acceptanceTest(design: Pick<DesignedJob, "feeders" | "edition">, designed: DesignedCircuit): AcceptanceTest {
  const circuit = outletCircuit(design, designed);
  const shape = circuit.outlet;
  const most = Number(designed.rating) * MOST_OF_BREAKER;
  const loads: readonly StatedLoad[] =
    shape === "two-hot"
      ? [{ amperes: Math.min(Number(designed.current), most), across: "L1-L2" }]
      : (["L1-N", "L2-N"] as const).filter((leg) => READINGS[shape].includes(leg)).map((across) => ({ amperes: Math.min(HEATER_AMPERES, most), across }));
  return {
    circuit,
    shape,
    idle: expectedReadings(circuit),
    loaded: loads.map((load) => ({
      load,
      says:
        shape === "two-hot"
          ? `the equipment itself, about ${amperes(load)} A`
          : `a heater of about ${amperes(load)} A from ${readingWords(load.across, shape).toLowerCase()}, nothing else`,
      bands: expectedReadings(circuit, load).filter((band) => band.state === "loaded"),
    })),
    assumptions: ASSUMPTIONS,
  };
}

const amperes = (load: StatedLoad): string => String(Math.round(load.amperes * 10) / 10);
