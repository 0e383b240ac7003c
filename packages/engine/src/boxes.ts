import { cite } from "./basis/citation.js";
import { type Edition, everyEdition } from "./basis/edition.js";
import type { DesignedRun, DesignedSegment } from "./designed.js";
import type { Run } from "./job/schema.js";
import type { OutletNeeds } from "./outlet.js";
import { Decimal, decimal, print } from "./quantity.js";
import { boxVolume } from "./sizing/box-fill.js";
import { USUAL_BOX_VOLUMES } from "./tables/box-allowance.js";
import { compareSizes } from "./tables/size.js";
import { type Worked, worked } from "./worked.js";

const BY_DIMENSIONS = { sections: everyEdition("314.28(A)(2)"), standing: "published" } as const;

/** Each box of a run: the volume it needs, what is left, and the next usual box with a quarter more room. */
export function designBoxes(run: Run, segments: readonly DesignedSegment[], needs: Pick<OutletNeeds, "gangs">, edition: Edition): DesignedRun["boxes"] {
  return run.boxes.map((box, i) => {
    const at = run.route.findIndex((segment) => segment.name === box.after);
    const meeting = segments.slice(at, at + 2);
    const id = `${run.id}.box.${i + 1}`;
    const largestGround = meeting.map((s) => s.grounding.size).sort((a, b) => compareSizes(b, a))[0]!;
    const required = boxVolume({
      id,
      contents: {
        conductors: meeting.map((s) => ({ size: s.conductor.size, count: s.conductor.count })),
        grounds: { size: largestGround, count: meeting.length },
        devices: box.device && needs.gangs > 0 ? [{ size: meeting[0]!.conductor.size, gangs: needs.gangs }] : [],
        internalClamps: box.clamps,
      },
      edition,
    });
    if (required === null) return { box, required: byDimensions(id, meeting, edition), byDimensions: true, room: null, nextBetter: "by dimensions, 314.28" };
    const room = worked({
      id: `${id}.room`,
      label: "Room left in the box",
      value: decimal(box.volume).minus(required.value).toFixed(),
      unit: "in3",
      expression: `${print(box.volume)} in³ - ${print(required.value)} in³`,
      inputs: [required.id],
      edition,
    });
    const comfortable = Decimal.max(decimal(required.value).times("1.25"), 0);
    const next = USUAL_BOX_VOLUMES.find((volume) => comfortable.lte(volume));
    return { box, required, byDimensions: false, room, nextBetter: next === undefined ? `at least ${print(comfortable, 1)} in³` : `${next} in³` };
  });
}

/** 4 AWG and larger: from a raceway entry to the opposite wall at least six times the largest trade size, where conductors turn or are spliced. */
function byDimensions(id: string, meeting: readonly DesignedSegment[], edition: Edition): Worked {
  const INCHES: Readonly<Record<string, string>> = {
    "1/2": "0.5",
    "3/4": "0.75",
    "1": "1",
    "1-1/4": "1.25",
    "1-1/2": "1.5",
    "2": "2",
    "2-1/2": "2.5",
    "3": "3",
  };
  const largest = meeting
    .map((s) => INCHES[s.tradeSize ?? ""] ?? "1")
    .map((v) => decimal(v))
    .reduce((a, b) => Decimal.max(a, b), decimal(0));
  return worked({
    id,
    label: "Box by dimensions: raceway entry to the opposite wall",
    value: largest.times(6).toFixed(),
    unit: "in",
    expression: `6 × ${print(largest)} in`,
    citations: [cite(BY_DIMENSIONS, edition)!],
    edition,
  });
}
