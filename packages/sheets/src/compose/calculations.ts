import { boxSteps, type Design, type DesignedCircuit, type DesignedFeeder, printSize } from "@branchwork/engine";
import { faultBlocks } from "./fault.js";
import { type Block, type CalcLines, type Draft, heading, paragraph, table, together } from "./packet.js";
import { pullBlocks } from "./pulls.js";
import { SHEETS } from "./sheet-titles.js";
import { calcLine, calcLines, valueWithUnit } from "./worked-lines.js";

/** The load on the service, with and without the new work. */
export function loadSheet(design: Design, plot: Block): Draft {
  const s = design.service;
  const neutral = s.neutral === null ? [] : s.steps.filter(({ id }) => id.startsWith(`${s.neutral!.id.split(".").slice(0, -1).join(".")}.`));
  const parts = [
    { caption: "Neutral load of the service", steps: neutral },
    { caption: "Service conductors", steps: design.serviceConductor?.steps ?? [] },
    { caption: "Fault current at the service panel", steps: design.serviceFault?.steps ?? [] },
  ].filter(({ steps }) => steps.length > 0);
  const elsewhere = new Set(parts.flatMap(({ steps }) => steps.map(({ id }) => id)));
  return {
    title: SHEETS.load,
    blocks: [
      paragraph(`Method: ${s.method}. Rating compared with: the least of service, main breaker and panel bus.`),
      plot,
      calcLines("Load on the service", [
        ...s.steps.filter(({ id }) => !elsewhere.has(id)),
        s.without,
        s.amperesWithout,
        s.with,
        s.amperes,
        s.margin,
        s.marginVA,
        s.marginPercent,
      ]),
      ...(design.circuits.length < 2 && design.feeders.length === 0
        ? design.circuits.map((c) => paragraph(`New load: ${c.circuit.name}, ${valueWithUnit(c.load)} (${c.load.expression}).`))
        : [
            {
              kind: "calc",
              caption: "Load of each new circuit and feeder (a feeder carries the circuits below it)",
              lines: [...design.feeders, ...design.circuits].map((c) => ({ ...calcLine(c.load), label: c.run.name })),
            } satisfies CalcLines,
          ]),
      ...parts.map(({ caption, steps }) => calcLines(caption, steps)),
    ],
  };
}

/** Everything worked for each feeder and circuit, one after another. */
export function calculationsSheet(design: Design, plots: ReadonlyMap<string, Block>): Draft {
  const runs = [...design.feeders, ...design.circuits];
  return {
    title: runs.length === 1 ? `${SHEETS.calculations}: ${runs[0]!.run.name}` : SHEETS.calculations,
    blocks: runs.flatMap((run) => [...(runs.length === 1 ? [] : [heading(run.run.name)]), ...runBlocks(run, runs.length > 1, plots.get(run.run.id))]),
  };
}

/** Everything worked for one circuit or feeder: load, overcurrent device, each segment, drop, fault, boxes. */
function runBlocks(c: DesignedFeeder | DesignedCircuit, named: boolean, plot: Block | undefined): readonly Block[] {
  const of = (what: string) => (named ? `${what}, ${c.run.name}` : what);
  // The run's steps hold those of its segments, drop and boxes as well; each is printed once, in its own part.
  const elsewhere = new Set<string>(
    [
      ...c.segments.flatMap((s) => [...s.steps, s.ampacity, s.fill?.area, s.fill?.limit, s.fill?.percent]),
      ...[c.drop.balanced, c.drop.balancedPercent, c.drop.worstLeg, c.drop.worstLegPercent, c.drop.fromService, ...c.drop.steps],
      ...c.boxes.flatMap((b) => [...boxSteps(b), b.room]),
      ...c.pulls.flatMap((p) => p.steps),
      ...(c.fault?.steps ?? []),
    ].flatMap((w) => (w === null || w === undefined ? [] : [w.id])),
  );
  const segments = c.segments.map((s) =>
    calcLines(`Segment ${s.segment.name}: ${s.segment.method}, ${s.segment.place}`, [
      ...s.steps,
      ...(s.ampacity === null ? [] : [s.ampacity]),
      ...(s.fill === null ? [] : [s.fill.area, s.fill.limit, s.fill.percent]),
    ]),
  );
  const boxes = c.boxes.map((b) => calcLines(`Box fill: ${b.box.name}`, [...boxSteps(b), ...(b.room === null ? [] : [b.room])]));
  const longest = table(
    of("Longest run that keeps to the voltage drop asked for, one way"),
    ["Conductor", ...c.drop.longest.map((l) => printSize(l.size))],
    [["Length", ...c.drop.longest.map((l) => `${l.feet} ft`)]],
  );
  const note = paragraph(
    `Drop on the worst leg: ${valueWithUnit(c.drop.worstLegPercent)}. The code's figure for voltage drop is a recommendation${c.kind === "feeder" ? " for a feeder" : " for a branch circuit"} unless the jurisdiction makes it a rule.`,
  );
  return [
    calcLines(of(c.kind === "feeder" ? "Feeder" : "Circuit"), [...c.steps.filter((s) => !elsewhere.has(s.id)), c.breaker, c.load]),
    ...segments,
    calcLines(of("Voltage drop"), [
      ...c.drop.steps,
      c.drop.balanced,
      c.drop.balancedPercent,
      c.drop.worstLeg,
      c.drop.worstLegPercent,
      ...(c.drop.fromService === null ? [] : [c.drop.fromService]),
    ]),
    together(note, longest),
    ...faultBlocks(c, of),
    ...pullBlocks(c, of),
    ...boxes,
    ...(plot === undefined ? [] : [plot]),
  ];
}
