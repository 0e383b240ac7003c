import { type Design, type DesignedCircuit, type DesignedSegment, print, printSize } from "@branchwork/engine";

export type StationSymbol = "utility" | "meter" | "main" | "bus" | "breaker" | "conductors" | "box" | "outlet" | "equipment" | "ground" | "continued";

/** One thing in the chain from the utility to the outlet. */
export interface Station {
  readonly symbol: StationSymbol;
  readonly words: readonly string[];
  readonly fresh: boolean;
}

/** The chain of one circuit, in the order of the current's way. */
export function chainOf(design: Design, c: DesignedCircuit): readonly Station[] {
  const { service } = design.job;
  const { panel } = service;
  const existing: Station[] = [
    {
      symbol: "utility",
      words: [
        "Utility supply",
        service.fault_current_kA === undefined ? "available fault current: ask" : `available fault current ${print(service.fault_current_kA)} kA`,
      ],
      fresh: false,
    },
    { symbol: "meter", words: ["Meter (E)"], fresh: false },
    {
      symbol: "main",
      words: [panel.main === undefined ? `Service disconnect, ${print(service.rating)} A (E)` : `Main breaker ${print(panel.main)} A (E)`],
      fresh: false,
    },
    { symbol: "bus", words: [`${panel.name}: bus ${print(panel.bus)} A (E)`], fresh: false },
  ];
  const breaker: Station = {
    symbol: "breaker",
    words: [
      `New breaker ${c.rating} A, ${c.circuit.breaker.poles}-pole${c.circuit.breaker.gfci ? ", GFCI" : ""}`,
      `space ${c.circuit.breaker.spaces.join(", ")}`,
    ],
    fresh: true,
  };
  const route = c.segments.flatMap((s): Station[] => [
    { symbol: "conductors", words: wordsOf(s), fresh: true },
    ...c.boxes
      .filter((b) => b.box.after === s.segment.name)
      .map((b): Station => ({ symbol: "box", words: [`Box: ${b.box.name}, ${print(b.box.volume)} in³`], fresh: true })),
  ]);
  return [
    ...existing,
    breaker,
    ...route,
    {
      symbol: c.circuit.serves === "ev-supply" ? "equipment" : "outlet",
      words: [`New: ${c.circuit.name}`, `${print(c.circuit.current)} A, ${c.volts} V, ${c.wires} wires with ground`],
      fresh: true,
    },
    { symbol: "ground", words: ["Equipment ground to panel; neutral not joined to it here"], fresh: true },
  ];
}

function wordsOf(s: DesignedSegment): string[] {
  const raceway = s.tradeSize === null ? s.segment.method : `${s.tradeSize} in ${s.segment.method}`;
  const kind = s.grounding.chosen === "cable" ? "" : ` ${s.segment.conductors.insulation}`;
  return [
    `${s.segment.name}: ${print(s.segment.length)} ft, ${s.segment.place}`,
    `${raceway}: ${s.conductor.count} × ${printSize(s.conductor.size)} ${s.segment.conductors.material}${kind} + ${printSize(s.grounding.size)} ground`,
  ];
}
