import { type Citation, cite, citeOther, type Standing } from "../basis/citation.js";
import { type Edition, everyEdition, type PerEdition } from "../basis/edition.js";
import type { Check } from "../checks/finding.js";
import type { DesignedCircuit, DesignedFeeder, DesignedRun, DesignedSegment } from "../designed.js";

/** The visits an inspector makes, in order. Nothing is covered or energized before its visit has passed. */
export const STAGES = ["trench", "rough", "final"] as const;
export type InspectionStage = (typeof STAGES)[number];

/** One thing to be seen at an inspection, with the job's own number and how to show it. */
export interface InspectionLine {
  /** The kind of line; several runs or stretches may each have one. */
  readonly id: string;
  readonly stage: InspectionStage;
  /** Id of the circuit or feeder; null for the whole job or a panel. */
  readonly run: string | null;
  readonly section: Citation;
  readonly look: string;
  readonly seen: string;
  readonly how: string;
}

/** The words of a line before its run, stage and edition are known. */
export type LineWords = Pick<InspectionLine, "id" | "look" | "seen" | "how"> & { readonly section: Citation };

/** A section of the code that is the same number in the editions named; from memory unless said otherwise. */
export function section(number: string | PerEdition<string>, edition: Edition, standing: Standing = "memory"): Citation {
  return cite({ sections: typeof number === "string" ? everyEdition(number) : number, standing }, edition)!;
}

/** The section a check goes by, with how well it is known there; good work where the check rests on none. */
export const byRule = ({ rule }: Check, edition: Edition): Citation => (rule === null ? GOOD_WORK : cite(rule, edition)) ?? GOOD_WORK;

export const GOOD_WORK = citeOther("", "Good work", "practice");
/** What the permit asks, not the electrical code. */
export const PERMIT = citeOther("", "Terms of the permit", "practice");

export type AnyRun = DesignedCircuit | DesignedFeeder;

/** A run that is built in this job: an existing feeder is checked, not inspected anew. */
export const isNew = (run: AnyRun): boolean => run.kind === "circuit" || !run.feeder.existing;

export const nameOf = (run: DesignedRun, stretch: DesignedSegment): string => `${run.run.name}, ${stretch.segment.name}`;
