import { FAULTS, type Fault, type FaultId, NO_FAULT, type Variant } from "./faults.js";
import { type HouseCircuit, type Meter, type OutletLoad, simulateReadings } from "./house-circuit.js";
import { type Conductor, READINGS, type ReadingName, SOUND } from "./wiring.js";

export type Readings = Readonly<Partial<Record<ReadingName, number>>>;

/** What was read, with the load that was on for the second set. */
export interface Measured {
  readonly idle: Readings;
  readonly loaded: { readonly readings: Readings; readonly load: OutletLoad } | null;
  /** Unknown when not stated: then both kinds are tried. */
  readonly meter: Meter | null;
}

/** The nearest a fault comes to the readings. */
export interface Match {
  readonly fault: Fault;
  readonly variant: string;
  /** Root mean square of the differences, each counted in its tolerance: under about 2 it fits. */
  readonly distance: number;
  /** Distance weighed with how exact the pattern is; lower is likelier. */
  readonly score: number;
  readonly idle: Readings;
  readonly loaded: Readings | null;
}

interface Pattern {
  readonly says: string;
  readonly supply: readonly [number, number];
  readonly idle: Readings;
  readonly loaded: Readings | null;
  readonly floating: ReadonlySet<string>;
}

// Tolerances in volts of a meter, a wandering supply and a simple model; common practice, no source.
const TOLERANCE = { solid: 2, neutralToGround: 0.7, floating: 20 } as const;
/** A reading that differs this much between couplings or kinds of meter belongs to a floating conductor. */
const FLOATING_VOLTS = 4;
/** How unevenly a cable may couple: one conductor lying this much closer to the rest than the others. */
const UNEVEN = [2, 4] as const;
/** Low and high supply are commoner than a wiring fault that leaves every other reading right; common practice, no source. */
const COMMONER: Readonly<Partial<Record<FaultId, number>>> = { "long-run-low-source": 1, "high-source": 1 };

function balances(outlet: HouseCircuit["outlet"]): readonly Readonly<Record<Conductor, number>>[] {
  const even = { hot1: 1, hot2: 1, neutral: 1, ground: 1 };
  const near = Object.keys(SOUND[outlet].begins) as Conductor[];
  return [even, ...near.flatMap((conductor) => UNEVEN.map((weight) => ({ ...even, [conductor]: weight })))];
}

function patternsOf(base: HouseCircuit, variant: Variant, loads: readonly OutletLoad[] | null, meter: Meter | null): readonly Pattern[] {
  const circuit = { ...base, ...variant.circuit };
  const shown = (kind: Meter, weights = circuit.coupling.weights): Omit<Pattern, "floating"> => {
    const coupled = { ...circuit, coupling: { ...circuit.coupling, weights } };
    return {
      says: variant.says,
      supply: variant.supply,
      idle: simulateReadings(coupled, variant.wiring, [], kind),
      loaded: loads === null ? null : simulateReadings(coupled, variant.wiring, loads, kind),
    };
  };
  // With nothing open every terminal is held firmly and neither coupling nor the meter changes a reading.
  if (variant.wiring.open.length === 0) return [{ ...shown("high-impedance"), floating: new Set() }];
  const high = balances(circuit.outlet).map((weights) => shown("high-impedance", weights));
  const low = shown("low-impedance");
  const unsteady = (state: "idle" | "loaded", reading: ReadingName): boolean => {
    const volts = [...high, low].map((pattern) => pattern[state]?.[reading] ?? 0);
    return Math.max(...volts) - Math.min(...volts) > FLOATING_VOLTS;
  };
  const floating = new Set(
    (["idle", "loaded"] as const).flatMap((state) => READINGS[circuit.outlet].filter((r) => unsteady(state, r)).map((r) => `${state} ${r}`)),
  );
  return [
    ...(meter === "low-impedance" ? [] : high.map((pattern) => ({ ...pattern, floating }))),
    ...(meter === "high-impedance" ? [] : [{ ...low, floating: new Set<string>() }]),
  ];
}

const entriesOf = (measured: Measured): readonly { readonly state: "idle" | "loaded"; readonly reading: ReadingName; readonly volts: number }[] =>
  (["idle", "loaded"] as const).flatMap((state) =>
    Object.entries((state === "idle" ? measured.idle : measured.loaded?.readings) ?? {}).map(([reading, volts]) => ({
      state,
      reading: reading as ReadingName,
      volts,
    })),
  );

function judge(measured: Measured, pattern: Pattern): { readonly distance: number; readonly score: number; readonly scale: number } {
  const points = entriesOf(measured).map(({ state, reading, volts }) => ({
    volts,
    predicted: pattern[state]?.[reading] ?? 0,
    tolerance: pattern.floating.has(`${state} ${reading}`) ? TOLERANCE.floating : reading === "N-G" ? TOLERANCE.neutralToGround : TOLERANCE.solid,
  }));
  // The circuit is linear: one factor carries the unknown supply voltage, held to what the variant allows.
  const dot = points.reduce((sum, p) => sum + (p.volts * p.predicted) / p.tolerance ** 2, 0);
  const norm = points.reduce((sum, p) => sum + (p.predicted / p.tolerance) ** 2, 0);
  const scale = Math.min(pattern.supply[1], Math.max(pattern.supply[0], norm > 1 ? dot / norm : 1));
  const squares = points.reduce((sum, p) => sum + ((p.volts - scale * p.predicted) / p.tolerance) ** 2, 0);
  return {
    scale,
    distance: points.length === 0 ? 0 : Math.sqrt(squares / points.length),
    // Half the squares and the logarithm of each tolerance: a pattern that could be anything must fit much better to win.
    score: squares / 2 + points.reduce((sum, p) => sum + Math.log(p.tolerance), 0),
  };
}

/** Every fault (and sound wiring) an outlet can have, nearest first, by simulated readings. */
export function matchFaults(circuit: HouseCircuit, measured: Measured): readonly Match[] {
  const base = { ...circuit, legVolts: 120 };
  const loads = measured.loaded === null ? null : [measured.loaded.load];
  const times = (readings: Readings, scale: number): Readings => Object.fromEntries(Object.entries(readings).map(([k, v]) => [k, v * scale]));
  return [NO_FAULT, ...FAULTS]
    .filter((fault) => fault.outlets.includes(circuit.outlet))
    .map((fault): Match => {
      const judged = fault
        .variants(circuit.outlet, circuit.run)
        .flatMap((variant) => patternsOf(base, variant, loads, measured.meter))
        .map((pattern) => ({ pattern, ...judge(measured, pattern) }))
        .sort((a, b) => a.score - b.score);
      const { pattern, distance, score, scale } = judged[0]!;
      const loaded = pattern.loaded === null ? null : times(pattern.loaded, scale);
      return { fault, variant: pattern.says, distance, score: score - (COMMONER[fault.id] ?? 0), idle: times(pattern.idle, scale), loaded };
    })
    .sort((a, b) => a.score - b.score);
}
