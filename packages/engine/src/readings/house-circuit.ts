import type { Edition } from "../basis/edition.js";
import type { Material } from "../sizing/ampacity.js";
import { readCell } from "../tables/code-table.js";
import { CONDUCTOR } from "../tables/conductor.js";
import type { Size } from "../tables/size.js";
import { type Complex, capacitiveOhms, type Element, magnitude, minus, type Network, ohms, solve } from "./network.js";
import { type Conductor, READINGS, type ReadingName, TERMINALS, type Terminal, type Wiring, type WiringShape } from "./wiring.js";

/** A house's supply and one run to an outlet, in plain numbers: ohms, volts (rms), feet, amperes, farads a foot. */
export interface HouseCircuit {
  readonly outlet: WiringShape;
  readonly hertz: number;
  readonly legVolts: number;
  /** Angle of each leg; 0 and 180 for 120/240 V split phase, 0 and 120 for two legs of a 208Y/120 V system. */
  readonly legDegrees: readonly [number, number];
  /** Half winding of the transformer and the service conductor of one leg. */
  readonly supplyOhms: Complex;
  /** Service neutral; null when it is open. */
  readonly serviceNeutralOhms: Complex | null;
  readonly mainBondOhms: number;
  readonly electrodeOhms: { readonly utility: number; readonly house: number };
  /** What the rest of the house draws on each leg. */
  readonly houseAmperes: readonly [number, number];
  readonly run: Readonly<Record<Conductor, number>>;
  readonly feet: number;
  readonly coupling: Coupling;
}

/** Capacitance between conductors of the run: what makes a floating conductor read volts on a high-impedance meter. */
export interface Coupling {
  readonly betweenFaradsPerFoot: number;
  readonly toEarthFaradsPerFoot: number;
  /** How much of it each conductor gets; 1 each for an evenly laid cable. */
  readonly weights: Readonly<Record<Conductor, number>>;
}

export interface OutletLoad {
  readonly across: ReadingName;
  readonly ohms: number;
}

/** What a meter puts between its leads. Memory: a usual digital meter is 10 MΩ, a low-impedance (LoZ) setting about 3 kΩ. */
export const METER_OHMS = { "high-impedance": 10e6, "low-impedance": 3000 } as const;
export type Meter = keyof typeof METER_OHMS;

const EVEN: Readonly<Record<Conductor, number>> = { hot1: 1, hot2: 1, neutral: 1, ground: 1 };

/** Assumed where the job says nothing: each is printed with the readings. */
export const ASSUMED = {
  hertz: 60,
  legVolts: 120,
  legDegrees: [0, 180],
  supplyOhms: ohms(0.025, 0.015),
  serviceNeutralOhms: ohms(0.016),
  mainBondOhms: 0.0005,
  electrodeOhms: { utility: 25, house: 25 },
  houseAmperes: [5, 3],
  coupling: { betweenFaradsPerFoot: 20e-12, toEarthFaradsPerFoot: 5e-12, weights: EVEN },
} as const satisfies Partial<HouseCircuit>;

export const ASSUMPTIONS: readonly string[] = [
  "Supply 120/240 V, 60 Hz; half winding and service conductor of a leg 0.025 + j0.015 Ω, service neutral 0.016 Ω (assumed, no source)",
  "Earth electrodes 25 Ω each at the utility's transformer and at the house (assumed, no source)",
  "The rest of the house draws 5 A on leg 1 and 3 A on leg 2 (assumed, no source)",
  "Conductors of the run: 20 pF a foot to each other and 5 pF a foot to earth (memory: verify); a floating conductor reads what this couples into it",
  "Digital meter 10 MΩ, low-impedance setting about 3 kΩ (memory: verify)",
];

/** A house circuit from the few numbers a job knows, the rest assumed. */
export function houseCircuit(given: Pick<HouseCircuit, "outlet" | "run" | "feet"> & Partial<HouseCircuit>): HouseCircuit {
  return { ...ASSUMED, ...given };
}

/** Ohms of each conductor along a chain of stretches: direct current at 75 °C, Chapter 9 Table 8. Throws RangeError for a size the table lacks. */
export function runOhms(
  stretches: readonly {
    readonly size: Size;
    readonly material: Material;
    readonly grounding: Size;
    readonly groundingMaterial?: Material;
    /** Where it is not the hots'. */
    readonly neutral?: Size;
    readonly feet: number;
  }[],
  edition: Edition,
): Readonly<Record<Conductor, number>> {
  const along = (pick: (s: (typeof stretches)[number]) => readonly [Size, Material]): number =>
    stretches.reduce((sum, stretch) => {
      const [size, material] = pick(stretch);
      const cell = readCell(CONDUCTOR, size, material === "copper" ? "dcCopper" : "dcAluminum", edition);
      if (cell === null) throw new RangeError(`no resistance for ${size} ${material}`);
      return sum + (Number(cell.value) / 1000) * stretch.feet;
    }, 0);
  const hot = along((s) => [s.size, s.material]);
  const neutral = stretches.some((s) => s.neutral !== undefined) ? along((s) => [s.neutral ?? s.size, s.material]) : hot;
  return { hot1: hot, hot2: hot, neutral, ground: along((s) => [s.grounding, s.groundingMaterial ?? s.material]) };
}

const BAR = { "leg-1": "panel.leg1", "leg-2": "panel.leg2", "neutral-bar": "panel.neutral", "ground-bar": "panel.ground" } as const;

/** The network of a house circuit with one wiring at the outlet, its load, and a meter between two terminals. Reference: earth. */
export function houseNetwork(
  circuit: HouseCircuit,
  wiring: Wiring,
  loads: readonly OutletLoad[] = [],
  meter: { readonly across: ReadingName; readonly ohms: number } | null = null,
): Network {
  const { outlet, run, feet, hertz, coupling } = circuit;
  const conductors = Object.keys(wiring.begins) as Conductor[];
  const end = (conductor: Conductor): string => `end.${conductor}`;
  const terminal = (name: Terminal): string => end(wiring.lands[name] ?? unknownTerminal(outlet, name));
  const impedance = (id: string, from: string, to: string, z: Complex): Element => ({ kind: "impedance", id, from, to, ohms: z });
  const elements: Element[] = [
    { kind: "source", id: "leg-1", from: "utility.leg1", to: "utility.neutral", volts: circuit.legVolts, degrees: circuit.legDegrees[0] },
    { kind: "source", id: "leg-2", from: "utility.leg2", to: "utility.neutral", volts: circuit.legVolts, degrees: circuit.legDegrees[1] },
    impedance("supply-1", "utility.leg1", "panel.leg1", circuit.supplyOhms),
    impedance("supply-2", "utility.leg2", "panel.leg2", circuit.supplyOhms),
    circuit.serviceNeutralOhms === null
      ? { kind: "open", id: "service-neutral", from: "utility.neutral", to: "panel.neutral" }
      : impedance("service-neutral", "utility.neutral", "panel.neutral", circuit.serviceNeutralOhms),
    impedance("main-bonding-jumper", "panel.neutral", "panel.ground", ohms(circuit.mainBondOhms)),
    impedance("electrode-utility", "utility.neutral", "earth", ohms(circuit.electrodeOhms.utility)),
    impedance("electrode-house", "panel.ground", "earth", ohms(circuit.electrodeOhms.house)),
  ];
  for (const [i, amperes] of circuit.houseAmperes.entries()) {
    if (amperes > 0) elements.push(impedance(`house-load-${i + 1}`, `panel.leg${i + 1}`, "panel.neutral", ohms(circuit.legVolts / amperes)));
  }
  for (const conductor of conductors) {
    const from = BAR[wiring.begins[conductor]!];
    elements.push(
      wiring.open.includes(conductor)
        ? { kind: "open", id: conductor, from, to: end(conductor) }
        : impedance(conductor, from, end(conductor), ohms(run[conductor] + (wiring.addedOhms[conductor] ?? 0))),
    );
  }
  for (const [i, a] of conductors.entries()) {
    const weight = coupling.weights[a];
    elements.push(impedance(`coupling-${a}-earth`, end(a), "earth", capacitiveOhms(coupling.toEarthFaradsPerFoot * weight * feet, hertz)));
    for (const b of conductors.slice(i + 1)) {
      const farads = coupling.betweenFaradsPerFoot * weight * coupling.weights[b] * feet;
      elements.push(impedance(`coupling-${a}-${b}`, end(a), end(b), capacitiveOhms(farads, hertz)));
    }
  }
  if (wiring.bondedAtOutlet) elements.push(impedance("bond-at-outlet", terminal("N"), terminal("G"), ohms(0.001)));
  for (const [i, load] of loads.entries()) {
    const [from, to] = TERMINALS[load.across];
    elements.push(impedance(`load-${i + 1}`, terminal(from), terminal(to), ohms(load.ohms)));
  }
  if (meter !== null) {
    const [from, to] = TERMINALS[meter.across];
    elements.push(impedance("meter", terminal(from), terminal(to), ohms(meter.ohms)));
  }
  return { hertz, reference: "earth", elements };
}

function unknownTerminal(outlet: WiringShape, name: Terminal): never {
  throw new RangeError(`${outlet} has no terminal ${name}`);
}

/** What the meter shows at the outlet, volts, one solution a reading because the meter itself loads a floating conductor. */
export function simulateReadings(
  circuit: HouseCircuit,
  wiring: Wiring,
  loads: readonly OutletLoad[] = [],
  meter: Meter = "high-impedance",
): Readonly<Partial<Record<ReadingName, number>>> {
  const shown: Partial<Record<ReadingName, number>> = {};
  for (const across of READINGS[circuit.outlet]) {
    const network = houseNetwork(circuit, wiring, loads, { across, ohms: METER_OHMS[meter] });
    const { volts } = solve(network);
    const element = network.elements.find((e) => e.id === "meter")!;
    shown[across] = magnitude(minus(volts[element.from]!, volts[element.to]!));
  }
  return shown;
}
