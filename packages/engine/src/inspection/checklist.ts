import type { DesignedJob } from "../designed.js";
import { panelsOf } from "../job/tree.js";
import { feederLines, finalLines, outletLines } from "./final.js";
import { type AnyRun, type InspectionLine, type InspectionStage, isNew, type LineWords, STAGES } from "./line.js";
import { closingLines, panelLines } from "./panel.js";
import { stretchLines } from "./raceway.js";
import { jointLines } from "./raceway-joints.js";
import { roughLines } from "./rough.js";
import { trenchLines, trenchOpening } from "./trench.js";

export interface InspectionPart {
  readonly stage: InspectionStage;
  readonly title: string;
  /** What waits until this part has passed. */
  readonly hold: string;
  readonly lines: readonly InspectionLine[];
}

const TITLES: Readonly<Record<InspectionStage, { readonly title: string; readonly hold: string }>> = {
  trench: { title: "Trench, open", hold: "HOLD: no backfill until this part has passed." },
  rough: { title: "Rough-in, before anything is covered", hold: "HOLD: no wall, ceiling or box is closed until this part has passed." },
  final: { title: "Final", hold: "HOLD: nothing is plugged in or used until this part has passed." },
};

/**
 * What an inspector will look at in this job, in the order of the walk: only lines that apply, each with the job's own number.
 * A stage of which the job has nothing is left out.
 */
export function inspectionChecklist(job: DesignedJob): readonly InspectionPart[] {
  const { edition } = job;
  const runs: readonly AnyRun[] = [...job.feeders, ...job.circuits].filter(isNew);
  const of = (run: AnyRun | null, stage: InspectionStage, words: readonly LineWords[]): readonly InspectionLine[] =>
    words.map((line) => ({ ...line, stage, run: run?.run.id ?? null }));
  const stretches = (run: AnyRun, buried: boolean): readonly LineWords[] => [
    ...run.segments.filter(({ segment }) => (segment.place === "buried") === buried).flatMap((stretch) => stretchLines(run, stretch, edition)),
    ...jointLines(run, buried, edition),
  ];
  const lines: Readonly<Record<InspectionStage, readonly InspectionLine[]>> = {
    trench: [...of(null, "trench", trenchOpening(runs)), ...runs.flatMap((run) => of(run, "trench", [...trenchLines(run, edition), ...stretches(run, true)]))],
    rough: runs.flatMap((run) => of(run, "rough", [...stretches(run, false), ...roughLines(run, edition)])),
    final: [
      ...panelsOf(job.job).flatMap(({ panel }) => of(null, "final", panelLines(panel, edition))),
      ...runs.flatMap((run) =>
        of(run, "final", [...finalLines(run, edition), ...(run.kind === "feeder" ? feederLines(run, edition) : outletLines(run, edition))]),
      ),
      ...of(null, "final", closingLines(job)),
    ],
  };
  return STAGES.filter((stage) => lines[stage].length > 0).map((stage) => ({ stage, ...TITLES[stage], lines: lines[stage] }));
}
