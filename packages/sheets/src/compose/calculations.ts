import { type Design, type DesignedCircuit, printSize } from "@branchwork/engine";
import { type Block, type Draft, heading, paragraph, table } from "./packet.js";
import { calcLines, valueWithUnit } from "./worked-lines.js";

/** The load on the service, with and without the new work. */
export function loadSheet(design: Design): Draft {
  const s = design.service;
  return {
    title: "Load calculation",
    blocks: [
      paragraph(`Method: ${s.method}`),
      calcLines("Load on the service", [...s.steps, s.without, s.amperesWithout, s.with, s.amperes, s.margin, s.marginVA, s.marginPercent]),
      ...(design.circuits.length === 0
        ? []
        : [
            calcLines(
              "Load of each new circuit",
              design.circuits.map((c) => c.load),
            ),
          ]),
    ],
  };
}

/** Everything worked for one circuit: overcurrent device, each segment, drop, boxes. */
export function circuitSheet(c: DesignedCircuit): Draft {
  // The circuit's steps hold those of its segments, drop and boxes as well; each is printed once, in its own part.
  const elsewhere = new Set<string>(
    [
      ...c.segments.flatMap((s) => [...s.steps, s.ampacity, s.fill?.area, s.fill?.limit, s.fill?.percent]),
      ...[c.drop.balanced, c.drop.balancedPercent, c.drop.worstLeg, c.drop.worstLegPercent],
      ...c.boxes.flatMap((b) => [b.required, b.room]),
    ].flatMap((w) => (w === null || w === undefined ? [] : [w.id])),
  );
  const segments = c.segments.flatMap((s): Block[] => [
    heading(`Segment ${s.segment.name}: ${s.segment.method}, ${s.segment.place}`),
    calcLines(`Segment ${s.segment.name}`, [
      ...s.steps,
      ...(s.ampacity === null ? [] : [s.ampacity]),
      ...(s.fill === null ? [] : [s.fill.area, s.fill.limit, s.fill.percent]),
    ]),
  ]);
  const boxes =
    c.boxes.length === 0
      ? []
      : [
          calcLines(
            "Boxes",
            c.boxes.flatMap((b) => [b.required, ...(b.room === null ? [] : [b.room])]),
          ),
        ];
  return {
    title: `Circuit calculations: ${c.circuit.name}`,
    blocks: [
      calcLines("Circuit", [...c.steps.filter((s) => !elsewhere.has(s.id)), c.breaker, c.load]),
      ...segments,
      calcLines("Voltage drop", [c.drop.balanced, c.drop.balancedPercent, c.drop.worstLeg, c.drop.worstLegPercent]),
      table(
        "Longest run that keeps to the voltage drop asked for",
        ["Conductor", "One-way length, ft"],
        c.drop.longest.map((l) => [printSize(l.size), l.feet]),
      ),
      paragraph(
        `Drop on the worst leg: ${valueWithUnit(c.drop.worstLegPercent)}. The code's figure for voltage drop is a recommendation for a branch circuit unless the jurisdiction makes it a rule.`,
      ),
      ...boxes,
    ],
  };
}
