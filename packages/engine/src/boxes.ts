import type { Edition } from "./basis/edition.js";
import type { Assumption, DesignedRun, DesignedSegment } from "./designed.js";
import type { EquipmentNeeds } from "./equipment/equipment.js";
import type { Box, Run } from "./job/schema.js";
import { Decimal, decimal, print } from "./quantity.js";
import { hotsAndNeutral } from "./segment-conductors.js";
import { bendingSpace } from "./sizing/bending-space.js";
import { boxVolume } from "./sizing/box-fill.js";
import { nextBetterBox } from "./sizing/next-better.js";
import { anglePull, isPullBox } from "./sizing/pull-box.js";
import { type BoxEntry, type BoxPull, type PullBoxSize, pullBoxSize } from "./sizing/pull-box-size.js";
import { USUAL_BOX_VOLUMES } from "./tables/box-allowance.js";
import { compareSizes } from "./tables/size.js";
import type { AnyTradeSize } from "./tables/trade-size.js";
import { type Worked, worked } from "./worked.js";

type DesignedBox = DesignedRun["boxes"][number];

/** Each box of a run: by its volume and what is left of it, or by its dimensions; and the next usual box with a quarter more room. */
export function designBoxes(run: Run, segments: readonly DesignedSegment[], needs: Pick<EquipmentNeeds, "gangs">, edition: Edition): DesignedRun["boxes"] {
  return run.boxes.map((box, i): DesignedBox => {
    const at = run.route.findIndex((segment) => segment.name === box.after);
    const meeting = segments.slice(at, at + 2);
    const id = `${run.id}.box.${i + 1}`;
    const sized = isPullBox(meeting.map((s) => s.conductor.size));
    const required = sized ? null : volumeOf(id, box, meeting, needs, edition);
    const bending = box.device && sized ? bendingSpace({ id: `${id}.bending`, size: largest(meeting), wiresPerTerminal: 1, opposite: false, edition }) : null;
    if (required === null) {
      const dimensions = dimensionsOf(id, box, meeting, edition);
      const longest = longestOf(id, dimensions, meeting, edition);
      return { box, required: longest, byDimensions: true, dimensions, bending, room: null, nextBetter: largerBox(dimensions) };
    }
    const room = worked({
      id: `${id}.room`,
      label: "Room left in the box",
      value: decimal(box.volume).minus(required.value).toFixed(),
      unit: "in3",
      expression: `${print(box.volume)} in³ - ${print(required.value)} in³`,
      inputs: [required.id],
      edition,
    });
    return { box, required, byDimensions: false, dimensions: null, bending, room, nextBetter: nextBetter(id, box, required, edition) };
  });
}

/** The lines of one box in order. */
export function boxSteps({ required, dimensions, bending }: DesignedBox): readonly Worked[] {
  const sides = dimensions === null ? [] : [dimensions.width, dimensions.height, dimensions.depth, ...dimensions.distances].filter((side) => side !== null);
  return [...(sides.includes(required) ? sides : [required, ...sides]), ...(bending ? [bending] : [])];
}

/** The entries a box by dimensions was given none for. */
export function boxAssumptions(run: Run, boxes: DesignedRun["boxes"]): readonly Assumption[] {
  return boxes.flatMap(({ box, dimensions }, i) =>
    dimensions?.assumed
      ? [
          {
            path: `${run.id}.boxes[${i}].entries`,
            says: `${box.name}: raceways taken to enter by two adjoining walls (an angle pull); a straight pull asks eight times the raceway`,
          },
        ]
      : [],
  );
}

const largest = (meeting: readonly DesignedSegment[]) => meeting.map((s) => s.conductor.size).sort((a, b) => compareSizes(b, a))[0]!;

function volumeOf(id: string, box: Box, meeting: readonly DesignedSegment[], needs: Pick<EquipmentNeeds, "gangs">, edition: Edition): Worked | null {
  const largestGround = meeting.map((s) => s.grounding.size).sort((a, b) => compareSizes(b, a))[0]!;
  return boxVolume({
    id,
    contents: {
      conductors: meeting.flatMap((s) => hotsAndNeutral(s.conductor, s.neutral?.size ?? null)),
      grounds: { size: largestGround, count: meeting.length },
      devices: box.device && needs.gangs > 0 ? [{ size: largest(meeting), gangs: needs.gangs }] : [],
      internalClamps: box.clamps,
    },
    edition,
  });
}

/** A dry junction box is named from the table of metal boxes; any other by its volume. */
function nextBetter(id: string, box: Box, required: Worked, edition: Edition): string {
  const named =
    box.device || box.wet_location || box.kind === "conduit-body"
      ? null
      : nextBetterBox({ id: `${id}.better`, neededIn3: required.value, kinds: ["square"], edition });
  if (named?.box && named.volume) return `${print(named.volume.value)} in³ (${named.box})`;
  const comfortable = decimal(required.value).times("1.25");
  const next = USUAL_BOX_VOLUMES.find((volume) => comfortable.lte(volume));
  return next === undefined ? `at least ${print(comfortable, 1)} in³` : `${next} in³`;
}

// ── 4 AWG and larger: by dimensions, 314.28 ─────────────────────────────────
const TAKEN_WALLS = ["left", "bottom"] as const;

function dimensionsOf(id: string, box: Box, meeting: readonly DesignedSegment[], edition: Edition): PullBoxSize & { readonly assumed: boolean } {
  const own = ["before", "after"] as const;
  const sizeOf = (of: "before" | "after" | "other", written?: AnyTradeSize): AnyTradeSize =>
    (of === "other" ? written : (meeting[of === "before" ? 0 : 1]?.tradeSize as AnyTradeSize | null | undefined)) ?? "1";
  // After the last stretch of a route nothing of its own goes on.
  const given = (box.entries ?? []).map((entry) => (entry.of === "after" && meeting.length < 2 ? { ...entry, of: "other" as const } : entry));
  const missing = own.slice(0, meeting.length).filter((of) => !given.some((entry) => entry.of === of));
  const entries: BoxEntry[] = [
    ...given.map((entry, i) => ({
      id: entry.of === "other" ? `other-${i + 1}` : entry.of,
      wall: entry.wall,
      row: entry.row ?? 1,
      tradeSize: sizeOf(entry.of, entry.trade_size),
    })),
    ...missing.flatMap((of) => {
      const raceway: BoxEntry = { id: of, wall: freeWall(of, given), row: 1, tradeSize: sizeOf(of) };
      return Array.from({ length: (of === "before" ? meeting[0] : meeting[1])?.sets ?? 1 }, () => raceway);
    }),
  ];
  const has = (of: string) => entries.some((entry) => entry.id === of);
  // At the end of a route the conductors turn to the terminals: as a splice does.
  const pull: BoxPull = has("after") ? { from: "before", to: "after", spliced: isSpliced(box, meeting) } : { from: "before", to: "before", spliced: true };
  const others = entries.filter((entry) => entry.id.startsWith("other")).map((entry): BoxPull => ({ from: entry.id, to: entry.id, spliced: true }));
  const found = pullBoxSize({ id, entries, pulls: [pull, ...others], backConductor: largest(meeting), edition });
  return { ...found, assumed: missing.length > 0 };
}

function freeWall(of: "before" | "after", given: NonNullable<Box["entries"]>) {
  const other = given.find((entry) => entry.of === (of === "before" ? "after" : "before"));
  if (other === undefined) return TAKEN_WALLS[of === "before" ? 0 : 1];
  return other.wall === "left" || other.wall === "right" ? "bottom" : "left";
}

/** Joined by its word, by a device, or because what goes on differs. */
function isSpliced(box: Box, [before, after]: readonly DesignedSegment[]): boolean {
  const differs =
    before !== undefined &&
    after !== undefined &&
    (before.conductor.size !== after.conductor.size || before.segment.method === "NM-B" || before.segment.method === "UF-B");
  return box.spliced ?? (box.device || differs);
}

/** A quarter more than the least, in whole inches (common practice, no source). */
function largerBox({ width, height }: PullBoxSize): string {
  const sides = [width, height].filter((side) => side !== null).map((side) => `${decimal(side.value).times("1.25").ceil().toFixed()} in`);
  return sides.length === 0 ? "by dimensions, 314.28" : sides.join(" × ");
}

/** The greatest of the least dimensions: what a box must have at least one side of. */
function longestOf(id: string, { width, height, depth, distances }: PullBoxSize, meeting: readonly DesignedSegment[], edition: Edition): Worked {
  const sides = [width, height, depth, ...distances].filter((side) => side !== null);
  if (sides.length === 0) return anglePull({ id, row: [(meeting[0]?.tradeSize as AnyTradeSize | null | undefined) ?? "1"], edition });
  const most = sides.map((side) => decimal(side.value)).reduce((a, b) => Decimal.max(a, b));
  return sides.find((side) => decimal(side.value).eq(most))!;
}
