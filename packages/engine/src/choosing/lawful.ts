import type { Finding } from "../checks/finding.js";
import type { Design } from "../designed.js";
import type { Job, Run } from "../job/schema.js";
import { decimal } from "../quantity.js";
import { isCable } from "../tables/cable.js";
import { boxMark, marked, RUN_MARK, segmentMark, withRun } from "./lone-run.js";
import type { Offer, OffersGiven } from "./offers.js";
import { trial } from "./trial.js";

/** The job with these offers built in one run. */
export function withOffers(job: Job, id: string, offers: readonly Offer[]): Job {
  return withRun(job, id, (run) => ({
    route: run.route.map((segment, i) => {
      const offer = offers[i]!;
      const { trade_size: _, ...rest } = segment;
      return {
        ...rest,
        method: offer.method,
        conductors: { ...segment.conductors, material: offer.material, size: offer.size },
        ...(offer.tradeSize === null ? {} : { trade_size: offer.tradeSize }),
      };
    }),
  }));
}

/** Checks that speak of the whole run yet hang on what is chosen. */
const OF_THE_WAY = ["splice-free", "voltage-drop"];

export interface Judgement {
  readonly lawful: boolean;
  /** Findings of the run that fail. */
  readonly failing: readonly Finding[];
  /** Findings that fail whatever is chosen: they are of the run, its breaker or its outlet, and of no stretch or box. */
  readonly standing: readonly Finding[];
  /** Whether another combination shares what failed here, and so need not be designed. */
  readonly rulesOut: (offers: readonly Offer[]) => boolean;
}

/**
 * Works the run in its job with the offers in place: lawful when no finding of the run fails and its drop keeps the job's limit.
 * `like` is a design of the job with the run's names {@link marked}.
 */
export function judge({ job, basis, found: { run } }: Pick<OffersGiven, "job" | "basis" | "found">, like: Design, offers: readonly Offer[]): Judgement {
  const made = trial({ job: withRun(withOffers(job, run.id, offers), run.id, marked), basis, id: run.id, like });
  const failing = made.findings.filter((finding) => finding.verdict === "fail" && finding.subject.includes(RUN_MARK));
  const within = decimal(made.run.drop.worstLegPercent.value).lte(made.limitPercent);
  const standing = failing.filter((finding) => !OF_THE_WAY.includes(finding.check) && !partsOf(finding.subject, run));
  return {
    lawful: failing.length === 0 && within,
    failing: failing.map((finding) => named(finding, run)),
    standing: standing.map((finding) => named(finding, run)),
    rulesOut: nogood(failing, run, offers),
  };
}

const partsOf = (subject: string, run: Run) =>
  run.route.some((_, i) => subject.includes(segmentMark(i))) || run.boxes.some((_, i) => subject.includes(boxMark(i)));

/** The finding with the run's own names put back. */
function named(finding: Finding, run: Run): Finding {
  const back = (text: string) =>
    run.boxes.reduce(
      (said, box, i) => said.replaceAll(boxMark(i), box.name),
      run.route.reduce((said, segment, i) => said.replaceAll(segmentMark(i), segment.name), text.replaceAll(RUN_MARK, run.name)),
    );
  return { ...finding, subject: back(finding.subject), says: back(finding.says) };
}

/** Box volume reads only the wires that meet in the box; bends are counted alike in every raceway. What failed so, fails so again. */
function nogood(failing: readonly Finding[], run: Run, offers: readonly Offer[]): Judgement["rulesOut"] {
  const meets = (of: readonly Offer[], box: number) => {
    const at = run.route.findIndex((segment) => segment.name === run.boxes[box]!.after);
    return [at, at + 1].map((i) => (of[i] ? `${of[i].size} ${of[i].grounding}` : "")).join("|");
  };
  const boxes = run.boxes.map((_, i) => i).filter((i) => failing.some((f) => f.check === "box-volume" && f.subject.includes(boxMark(i))));
  const bends = failing
    .filter((f) => f.check === "raceway-bends")
    .map((f) => run.route.map((_, i) => i).filter((i) => f.subject.includes(segmentMark(i))))
    .filter((segments) => segments.length > 0);
  const known = boxes.map((box) => ({ box, wires: meets(offers, box) }));
  return (others) =>
    known.some(({ box, wires }) => meets(others, box) === wires) || bends.some((segments) => segments.every((i) => !isCable(others[i]!.method)));
}
