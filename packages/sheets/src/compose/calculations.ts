import { boxSteps, type Design, type DesignedRun, printSize } from "@branchwork/engine";
import { type Block, type CalcLines, type Draft, paragraph, table, together } from "./packet.js";
import { calcLine, calcLines, valueWithUnit } from "./worked-lines.js";

/** The load on the service, with and without the new work. */
export function loadSheet(design: Design, plot: Block): Draft {
  const s = design.service;
  return {
    title: "Load calculation",
    blocks: [
      paragraph(`Method: ${s.method}. Rating compared with: the least of service, main breaker and panel bus.`),
      plot,
      calcLines("Load on the service", [...s.steps, s.without, s.amperesWithout, s.with, s.amperes, s.margin, s.marginVA, s.marginPercent]),
      ...(design.circuits.length < 2 && design.feeders.length === 0
        ? design.circuits.map((c) => paragraph(`New load: ${c.circuit.name}, ${valueWithUnit(c.load)} (${c.load.expression}).`))
        : [
            {
              kind: "calc",
              caption: "Load of each new circuit and feeder (a feeder carries the circuits below it)",
              lines: [...design.feeders, ...design.circuits].map((c) => ({ ...calcLine(c.load), label: c.run.name })),
            } satisfies CalcLines,
          ]),
    ],
  };
}

/** Everything worked for one circuit or feeder: load, overcurrent device, each segment, drop, boxes. */
export function runSheet(c: DesignedRun, kind: "Circuit" | "Feeder", plot: Block | undefined): Draft {
  // The run's steps hold those of its segments, drop and boxes as well; each is printed once, in its own part.
  const elsewhere = new Set<string>(
    [
      ...c.segments.flatMap((s) => [...s.steps, s.ampacity, s.fill?.area, s.fill?.limit, s.fill?.percent]),
      ...[c.drop.balanced, c.drop.balancedPercent, c.drop.worstLeg, c.drop.worstLegPercent, c.drop.fromService, ...c.drop.steps],
      ...c.boxes.flatMap((b) => [...boxSteps(b), b.room]),
      ...c.pulls.flatMap((p) => p.steps),
    ].flatMap((w) => (w === null || w === undefined ? [] : [w.id])),
  );
  const segments = c.segments.map((s) =>
    calcLines(`Segment ${s.segment.name}: ${s.segment.method}, ${s.segment.place}`, [
      ...s.steps,
      ...(s.ampacity === null ? [] : [s.ampacity]),
      ...(s.fill === null ? [] : [s.fill.area, s.fill.limit, s.fill.percent]),
    ]),
  );
  const boxes = c.boxes.map((b) => calcLines(`Box ${b.box.name}`, [...boxSteps(b), ...(b.room === null ? [] : [b.room])]));
  const pulls = c.pulls.flatMap((p) => (p.steps.length === 0 ? [] : [calcLines(`Pull: ${p.names.join(", ")}`, p.steps)]));
  const longest = table(
    "Longest run that keeps to the voltage drop asked for, one way",
    ["Conductor", ...c.drop.longest.map((l) => printSize(l.size))],
    [["Length", ...c.drop.longest.map((l) => `${l.feet} ft`)]],
  );
  const note = paragraph(
    `Drop on the worst leg: ${valueWithUnit(c.drop.worstLegPercent)}. The code's figure for voltage drop is a recommendation for a branch circuit unless the jurisdiction makes it a rule.`,
  );
  return {
    title: `${kind} calculations: ${c.run.name}`,
    blocks: [
      calcLines(kind, [...c.steps.filter((s) => !elsewhere.has(s.id)), c.breaker, c.load]),
      ...segments,
      calcLines("Voltage drop", [
        ...c.drop.steps,
        c.drop.balanced,
        c.drop.balancedPercent,
        c.drop.worstLeg,
        c.drop.worstLegPercent,
        ...(c.drop.fromService === null ? [] : [c.drop.fromService]),
      ]),
      note,
      ...pulls,
      // A box alone does not make a page.
      ...(boxes.length === 1 ? [together(longest, ...boxes)] : [longest, ...boxes]),
      ...(plot === undefined ? [] : [plot]),
    ],
  };
}
