import type { Design, DesignedRun } from "../designed.js";
import { decimal, print } from "../quantity.js";
import { isCable } from "../tables/cable.js";
import { compareSizes, printSize } from "../tables/size.js";

/** Something lawful that people wish they had done otherwise, and what to do instead. Common practice, no source. */
export interface Regret {
  readonly kind: "tight elbow" | "small box" | "short pigtail" | "full raceway" | "many bends";
  readonly from: string;
  readonly says: string;
  readonly instead: string;
}

/** Thick wire: from this size on it pulls hard round an elbow and springs in a box. */
const THICK = "6";
const FULL_PERCENT = "32";
const MANY_DEGREES = 270;
const QUARTER_MORE = "1.25";

/** What to weigh before buying, computed from the design. */
export function regrets(design: Design): readonly Regret[] {
  return [...design.feeders.filter((f) => !f.feeder.existing), ...design.circuits].flatMap((run) => [...alongWay(run), ...atBoxes(run)]);
}

function alongWay(run: DesignedRun): readonly Regret[] {
  return run.segments.flatMap((segment, i): Regret[] => {
    const { method, name, bends } = segment.segment;
    if (isCable(method)) return [];
    const from = `${run.run.id}.${i + 1}`;
    const made: Regret[] = [];
    const sharp = bends.some((degrees) => degrees >= 90);
    const thick = compareSizes(segment.conductor.size, THICK) >= 0;
    if (sharp && thick && boxBefore(run, i))
      made.push({
        kind: "tight elbow",
        from,
        says: `${printSize(segment.conductor.size)} turns ${Math.max(...bends)}° in "${name}" right after ${i === 0 ? "the panel" : "a box"}`,
        instead: "leave a straight foot before the elbow, or use a long-radius one; a conduit body of this size is hard to fill",
      });
    if (segment.fill !== null && decimal(segment.fill.percent.value).gt(FULL_PERCENT))
      made.push({
        kind: "full raceway",
        from,
        says: `"${name}" is filled to ${print(segment.fill.percent.value, 1)} %`,
        instead: "the next trade size costs little more and pulls easily",
      });
    if (segment.bendTotal >= MANY_DEGREES)
      made.push({ kind: "many bends", from, says: `${segment.bendTotal}° of bends in "${name}"`, instead: "a pull box halfway spares the pull" });
    return made;
  });
}

function boxBefore(run: DesignedRun, i: number): boolean {
  return i === 0 || run.run.boxes.some((box) => box.after === run.segments[i - 1]!.segment.name);
}

function atBoxes(run: DesignedRun): readonly Regret[] {
  return run.boxes.flatMap(({ box, required, room, nextBetter }, i): Regret[] => {
    const from = `${run.run.id}.box.${i + 1}`;
    const at = run.segments.findIndex((segment) => segment.segment.name === box.after);
    const thick = [at, at + 1].some((j) => run.segments[j] !== undefined && compareSizes(run.segments[j].conductor.size, THICK) >= 0);
    const small = room !== null && decimal(box.volume).lt(decimal(required.value).times(QUARTER_MORE));
    const made: Regret[] = [];
    if (small)
      made.push({
        kind: "small box",
        from,
        says: `${box.name}: ${print(box.volume)} in³, ${print(required.value)} in³ needed`,
        instead: `take ${nextBetter}`,
      });
    if (thick)
      made.push({
        kind: "short pigtail",
        from,
        says: `${box.name}: thick wire cut to the least 6 in cannot be bent to its terminal a second time`,
        instead: "leave 12 in or more of each conductor there",
      });
    return made;
  });
}
