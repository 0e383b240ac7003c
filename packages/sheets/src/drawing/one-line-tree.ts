import { type Design, type DesignedCircuit, type DesignedFeeder, gfciDevice, type Panel, print, printSize } from "@branchwork/engine";
import { faultAtPanel } from "./fault-at-panel.js";
import { type AnyRun, tagsOf } from "./tags.js";

/** A stretch of conductors or a box along a run. */
export interface OnWay {
  readonly is: "conductors" | "box";
  readonly tag: string;
}
export interface Row {
  readonly breaker: string;
  readonly way: readonly OnWay[];
  /** What lies in its stretches, those alike told once: "W1, W3: 3 × 6 AWG Cu THWN-2, G 10 AWG, 1 in PVC-80". */
  readonly sizes: readonly string[];
  readonly fresh: boolean;
  readonly end: { readonly is: "outlet" | "equipment"; readonly words: readonly string[] } | { readonly is: "panel"; readonly bus: Bus };
}
/** A panel's bus with the runs that leave it. */
export interface Bus {
  readonly name: string;
  readonly words: readonly string[];
  readonly fresh: boolean;
  /** The bar that its grounding electrode hangs on; null where it has none. */
  readonly earth: { readonly bar: "N" | "G"; readonly words: string } | null;
  readonly rows: readonly Row[];
}
export interface Supply {
  readonly stations: readonly { readonly is: "utility" | "meter" | "main"; readonly words: readonly string[] }[];
  readonly bus: Bus;
}

/** The tree as a one-line diagram tells it, from the utility down. */
export function supplyOf(design: Design): Supply {
  const { service } = design.job;
  const fault = service.fault?.utility?.kA ?? service.fault_current_kA;
  const transformer = service.fault?.transformer;
  return {
    stations: [
      {
        is: "utility",
        words: [
          "Utility supply, 120/240 V",
          fault !== undefined
            ? `fault current ${print(fault)} kA`
            : transformer !== undefined
              ? `transformer ${print(transformer.kva)} kVA, ${print(transformer.percent_z)} % Z`
              : "fault current: ask the utility",
        ],
      },
      { is: "meter", words: ["Meter (E)"] },
      {
        is: "main",
        words: [service.panel.main === undefined ? `Service disconnect ${print(service.rating)} A (E)` : `Main breaker ${print(service.panel.main)} A (E)`],
      },
    ],
    bus: {
      name: `${service.panel.name} (E)`,
      words: [`bus ${print(service.panel.bus)} A${faultWords(design, service.panel.id)}`],
      fresh: false,
      earth: { bar: "N", words: "neutral bonded here only" },
      rows: rowsOf(service.panel, design),
    },
  };
}

function rowsOf(panel: Panel, design: Design): readonly Row[] {
  const circuits = design.circuits.filter((c) => c.panel === panel.id);
  const feeders = design.feeders.filter((f) => f.panel === panel.id);
  return [
    ...circuits.map(
      (c): Row => ({
        ...runOf(c, design),
        fresh: true,
        end: {
          is: c.equipment.receptacle === null ? "equipment" : "outlet",
          words: [
            c.circuit.name,
            `${print(c.circuit.current)} A, ${c.volts} V, ${c.wires} wires`,
            ...gfciWords(c.circuit),
            ...openedThere(c.circuit),
            `drop ${dropOf(c)} % to here`,
          ],
        },
      }),
    ),
    ...feeders.map((f): Row => ({ ...runOf(f, design), fresh: !f.feeder.existing, end: { is: "panel", bus: fedBus(f, design) } })),
  ];
}

/** Ground-fault protection that sits elsewhere than in the breaker, which says its own. */
function gfciWords(circuit: DesignedCircuit["circuit"]): readonly string[] {
  const device = gfciDevice(circuit);
  if (device === null || device === "breaker") return [];
  return [device === "receptacle" ? "GFCI receptacle" : `GFCI at ${device}`];
}

/** A disconnect where the outlet stands on something of its own. */
function openedThere({ stands_on: on, disconnect_there: opened }: DesignedCircuit["circuit"]): readonly string[] {
  return opened === true ? [`disconnect at the ${on === "other-building" ? "building" : "post"}`] : [];
}

function runOf(run: AnyRun, design: Design): Pick<Row, "breaker" | "way" | "sizes"> {
  const tags = tagsOf(design).get(run.run.id)!;
  const alike = new Map<string, string[]>();
  for (const [i, s] of run.segments.entries()) {
    const says = wiringWords(s);
    alike.set(says, [...(alike.get(says) ?? []), tags.conductors[i]!]);
  }
  const { poles, spaces, gfci, interrupting_kA } = run.run.breaker;
  return {
    breaker: `${run.rating} A, ${poles}P${gfci ? ", GFCI" : ""}${interrupting_kA === undefined ? "" : `, ${print(interrupting_kA)} kA`}, space ${spaces.join("/")}`,
    way: run.segments.flatMap((s, i): OnWay[] => [
      { is: "conductors", tag: tags.conductors[i]! },
      ...run.boxes.flatMap((b, n): OnWay[] => (b.box.after === s.segment.name ? [{ is: "box", tag: tags.boxes[n]! }] : [])),
    ]),
    sizes: [...alike].map(([says, own]) => `${own.join(", ")}: ${says}`),
  };
}

const METALS: Readonly<Record<string, string>> = { copper: "Cu", aluminum: "Al" };

/** Conductors, equipment ground and what they lie in, as a plan reviewer reads them on the line. */
function wiringWords({ segment, conductor, neutral, grounding, tradeSize, sets }: AnyRun["segments"][number]): string {
  const { material, insulation } = segment.conductors;
  const cable = grounding.chosen === "cable";
  const count = neutral === null ? conductor.count : conductor.count - 1;
  return [
    `${sets > 1 ? `${sets} sets of ` : ""}${count} × ${printSize(conductor.size)}${neutral === null ? "" : ` and neutral ${printSize(neutral.size)}`} ${METALS[material] ?? material}${cable ? "" : ` ${insulation}`}`,
    `G ${printSize(grounding.size)}`,
    tradeSize === null ? segment.method : `${tradeSize} in ${segment.method}`,
  ].join(", ");
}

function fedBus(f: DesignedFeeder, design: Design): Bus {
  const { panel, existing, building } = f.feeder;
  const earthed = building !== "same" && f.feeder.electrode === true;
  const main = panel.main === undefined ? "no main breaker" : `main ${print(panel.main)} A`;
  return {
    name: `${panel.name}${existing ? " (E)" : ""}`,
    words: [`bus ${print(panel.bus)} A, ${main}${faultWords(design, panel.id)}`, ...(earthed ? [] : ["neutral isolated"])],
    fresh: !existing,
    earth: earthed ? { bar: "G", words: "neutral isolated" } : null,
    rows: rowsOf(panel, design),
  };
}

/** The fault current at a panel, where it is known. */
function faultWords(design: Design, panel: string): string {
  const fault = faultAtPanel(design, panel);
  return fault === null ? "" : `, fault current ${fault}`;
}

const dropOf = (run: AnyRun) => print((run.drop.fromService ?? run.drop.worstLegPercent).value, 1);
