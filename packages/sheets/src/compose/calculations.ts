import { type Design, type DesignedCircuit, printSize } from "@branchwork/engine";
import { type CalcLines, type Draft, paragraph, table, together } from "./packet.js";
import { calcLine, calcLines, valueWithUnit } from "./worked-lines.js";

/** The load on the service, with and without the new work. */
export function loadSheet(design: Design): Draft {
  const s = design.service;
  return {
    title: "Load calculation",
    blocks: [
      paragraph(`Method: ${s.method}. Rating compared with: the least of service, main breaker and panel bus.`),
      calcLines("Load on the service", [...s.steps, s.without, s.amperesWithout, s.with, s.amperes, s.margin, s.marginVA, s.marginPercent]),
      ...(design.circuits.length === 0
        ? []
        : [
            {
              kind: "calc",
              caption: "Load of each new circuit",
              lines: design.circuits.map((c) => ({ ...calcLine(c.load), label: c.circuit.name })),
            } satisfies CalcLines,
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
  const segments = c.segments.map((s) =>
    calcLines(`Segment ${s.segment.name}: ${s.segment.method}, ${s.segment.place}`, [
      ...s.steps,
      ...(s.ampacity === null ? [] : [s.ampacity]),
      ...(s.fill === null ? [] : [s.fill.area, s.fill.limit, s.fill.percent]),
    ]),
  );
  const boxes = c.boxes.map((b) => calcLines(`Box ${b.box.name}`, [b.required, ...(b.room === null ? [] : [b.room])]));
  const longest = table(
    "Longest run that keeps to the voltage drop asked for, one way",
    ["Conductor", ...c.drop.longest.map((l) => printSize(l.size))],
    [["Length", ...c.drop.longest.map((l) => `${l.feet} ft`)]],
  );
  const note = paragraph(
    `Drop on the worst leg: ${valueWithUnit(c.drop.worstLegPercent)}. The code's figure for voltage drop is a recommendation for a branch circuit unless the jurisdiction makes it a rule.`,
  );
  return {
    title: `Circuit calculations: ${c.circuit.name}`,
    blocks: [
      calcLines("Circuit", [...c.steps.filter((s) => !elsewhere.has(s.id)), c.breaker, c.load]),
      ...segments,
      calcLines("Voltage drop", [c.drop.balanced, c.drop.balancedPercent, c.drop.worstLeg, c.drop.worstLegPercent]),
      note,
      // A box alone does not make a page.
      ...(boxes.length === 1 ? [together(longest, ...boxes)] : [longest, ...boxes]),
    ],
  };
}
