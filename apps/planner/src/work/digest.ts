import {
  type Design,
  type DesignedCircuit,
  type DesignedFeeder,
  type Finding,
  feedersTo,
  panelsOf,
  print,
  printCitation,
  printSize,
  voltageProfile,
} from "@branchwork/engine";
import type { Path } from "../job/document.js";

/** What the screen shows of a design: words and numerals, no more. */
export interface Digest {
  readonly ready: boolean;
  readonly edition: string;
  readonly findings: readonly ShownFinding[];
  readonly assumptions: readonly { readonly path: string; readonly says: string }[];
  readonly load: ShownLoad;
  readonly runs: readonly ShownRun[];
  readonly panels: readonly ShownPanel[];
  readonly oneLine: readonly string[];
}
export interface ShownFinding {
  readonly check: string;
  readonly title: string;
  readonly verdict: Finding["verdict"];
  readonly subject: string;
  readonly says: string;
  /** What mends it, or what to look at. */
  readonly mend: string;
  readonly cites: string;
}
export interface ShownLoad {
  readonly method: string;
  readonly rating: number;
  readonly amperes: string;
  readonly amperesWithout: string;
  readonly margin: string;
}
export interface ShownRun {
  readonly id: string;
  readonly name: string;
  readonly kind: "circuit" | "feeder";
  readonly path: Path;
  readonly panelPath: Path;
  readonly serves: string;
  readonly volts: number;
  readonly wires: number;
  readonly current: string;
  readonly rating: string;
  readonly computedBreaker: string;
  readonly feet: string;
  readonly dropPercent: string;
  readonly balancedPercent: string;
  readonly limitPercent: number;
  readonly fromServicePercent: string | null;
  readonly longest: readonly { readonly size: string; readonly says: string; readonly feet: string }[];
  readonly profile: readonly { readonly name: string; readonly feet: string; readonly volts: string }[];
  readonly segments: readonly {
    readonly name: string;
    readonly method: string;
    readonly wire: string;
    readonly grounding: string;
    readonly chosen: string;
    readonly tradeSize: string | null;
    readonly fillPercent: string | null;
    readonly fillLimit: number | null;
    readonly smallestTrade: string | null;
    readonly leastCover: string | null;
  }[];
  readonly boxes: readonly {
    readonly name: string;
    readonly volume: number;
    readonly required: string;
    readonly byDimensions: boolean;
    readonly nextBetter: string;
  }[];
  readonly outlet: boolean;
}
export interface ShownPanel {
  readonly id: string;
  readonly name: string;
  readonly path: Path;
  readonly spaces: number;
}

const mendOf = (finding: Finding): string => ("mend" in finding ? finding.mend : "look" in finding ? finding.look : "");

export function digestOf(design: Design, oneLine: readonly string[]): Digest {
  const { service, job } = design;
  const panels = panelsOf(job);
  const pathOf = (run: DesignedCircuit | DesignedFeeder): { path: Path; panelPath: Path } => {
    for (const { panel, path } of panels) {
      const list = run.kind === "circuit" ? panel.circuits : panel.feeders;
      const index = list.findIndex(({ id }) => id === run.run.id);
      if (index >= 0) return { path: [...path, run.kind === "circuit" ? "circuits" : "feeders", index], panelPath: path };
    }
    throw new Error(`no place in the job for ${run.run.id}`);
  };
  return {
    ready: design.ready,
    edition: design.edition,
    assumptions: design.assumptions,
    oneLine,
    findings: design.findings.map((finding) => ({
      check: finding.check,
      title: finding.title,
      verdict: finding.verdict,
      subject: finding.subject,
      says: finding.says,
      mend: mendOf(finding),
      cites: finding.citation === null ? "" : printCitation(finding.citation),
    })),
    load: {
      method: service.method,
      rating: job.service.rating,
      amperes: service.amperes.value,
      amperesWithout: service.amperesWithout.value,
      margin: service.margin.value,
    },
    panels: panels.map(({ panel, path }) => ({ id: panel.id, name: panel.name, path, spaces: panel.spaces })),
    runs: [...design.feeders, ...design.circuits].map((run) => ({
      id: run.run.id,
      name: run.run.name,
      kind: run.kind,
      ...pathOf(run),
      serves: run.serves,
      volts: run.volts,
      wires: run.wires,
      current: print(run.current),
      rating: run.rating,
      computedBreaker: run.breaker.value,
      feet: String(run.segments.reduce((sum, { segment }) => sum + segment.length, 0)),
      dropPercent: run.drop.worstLegPercent.value,
      balancedPercent: run.drop.balancedPercent.value,
      limitPercent: job.drop.limit_percent,
      fromServicePercent: run.drop.fromService?.value ?? null,
      longest: run.drop.longest.map(({ size, feet }) => ({ size, says: printSize(size), feet })),
      profile: voltageProfile({ from: job.service.panel.name, nominalVolts: 120, way: [...feedersTo(design, run), run] }),
      segments: run.segments.map((s) => ({
        name: s.segment.name,
        method: s.segment.method,
        wire: `${s.conductor.count} × ${printSize(s.conductor.size)}`,
        grounding: printSize(s.grounding.size),
        chosen: s.conductor.chosen,
        tradeSize: s.tradeSize,
        fillPercent: s.fill?.percent.value ?? null,
        fillLimit: s.fill === null ? null : Math.round((Number(s.fill.limit.value) / Number(s.fill.area.value)) * Number(s.fill.percent.value)),
        smallestTrade: s.fill?.smallest ?? null,
        leastCover: s.leastCover?.value ?? null,
      })),
      boxes: run.boxes.map((b) => ({
        name: b.box.name,
        volume: b.box.volume,
        required: b.required.value,
        byDimensions: b.byDimensions,
        nextBetter: b.nextBetter,
      })),
      outlet: run.kind === "circuit" && run.circuit.serves !== "generator-inlet",
    })),
  };
}
