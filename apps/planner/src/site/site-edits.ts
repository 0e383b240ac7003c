import { at, type Edit, listAt, type Path, textAt } from "../job/document.js";
import { feetOf, type LengthUnit, lengthText, snapped } from "../job/length-text.js";
import { type WrittenRun, writtenRuns } from "../job/runs.js";
import { middle, type Place, placesOf, SITE, type SiteThing, siteThings } from "./site-model.js";

const written = ([x, y]: Place, unit: LengthUnit): readonly [string, string] => [lengthText(x, unit), lengthText(y, unit)];
const rectangle = (left: number, bottom: number, width: number, height: number): readonly Place[] => [
  [left, bottom],
  [left + width, bottom],
  [left + width, bottom + height],
  [left, bottom + height],
];

/** Puts a place where it has changed; the other coordinate stays as it is written. */
export function placing(path: Path, from: Place | null, to: Place, unit: LengthUnit): readonly Edit[] {
  const [x, y] = written(to, unit);
  return [
    ...(from !== null && Math.abs(from[0] - to[0]) < 1e-6 ? [] : [{ at: [...path, 0], put: x }]),
    ...(from !== null && Math.abs(from[1] - to[1]) < 1e-6 ? [] : [{ at: [...path, 1], put: y }]),
  ];
}

/** Puts places of a thing; those that are null stay. */
export const reshaping = (thing: SiteThing, corners: readonly (Place | null)[], unit: LengthUnit): readonly Edit[] =>
  thing.places.flatMap((path, i) => {
    const [from, to] = [thing.corners[i] ?? null, corners[i] ?? null];
    return to === null ? [] : placing(path, from, to, unit);
  });

export const addingCorner = (thing: SiteThing, before: number, place: Place, unit: LengthUnit): readonly Edit[] =>
  thing.list === null ? [] : [{ add: written(place, unit), at: thing.list, before }];

export const removing = (thing: SiteThing): readonly Edit[] => [{ remove: thing.path }];

/** Sizes from which a plan begins, in feet. */
export interface SiteStart {
  readonly lotWidth: number;
  readonly lotDepth: number;
  readonly houseWidth: number;
  readonly houseDepth: number;
  readonly fromLeft: number;
  readonly fromStreet: number;
}

export const NOT_MEASURED = "Drawn roughly; to be measured on site.";

/** A plan to begin with: lot, house, and what this job is about at the house's walls, to be dragged where it stands. */
export function beginning(plain: unknown, start: SiteStart, unit: LengthUnit): readonly Edit[] {
  const put = (places: readonly Place[]) => places.map((place) => written(place, unit));
  const { fromLeft: left, fromStreet: bottom, houseWidth: width, houseDepth: depth } = start;
  const outlets = writtenRuns(plain).filter(({ kind }) => kind === "circuit");
  return [
    {
      at: SITE,
      put: {
        lot: put(rectangle(0, 0, start.lotWidth, start.lotDepth)),
        north: 0,
        scale_note: NOT_MEASURED,
        outlines: [{ kind: "house", name: "House", points: put(rectangle(left, bottom, width, depth)) }],
        points: [
          { kind: "meter", name: "Meter", at: written([left, bottom + depth * 0.6], unit) },
          { kind: "panel", name: textAt(plain, ["service", "panel", "name"]) || "Panel", at: written([left + width * 0.2, bottom + depth * 0.3], unit) },
          ...outlets.map((run, i) => ({ kind: "outlet", name: run.name, at: written([left + width, bottom + Math.max(0, depth * 0.2 - i * 4)], unit) })),
        ],
      },
    },
  ];
}

/** Sizes that are usual and where such a thing usually stands on a lot, the street being below: share of the lot across and up. */
const USUAL_OUTLINE: Readonly<Record<string, readonly [width: number, height: number, across: number, up: number]>> = {
  house: [40, 30, 0.5, 0.5],
  garage: [20, 22, 0.8, 0.75],
  drive: [12, 30, 0.8, 0.15],
  pool: [16, 32, 0.3, 0.8],
  other: [10, 10, 0.15, 0.85],
};

export function outlineAdded(plain: unknown, kind: string, name: string, unit: LengthUnit): readonly Edit[] {
  const [width, height, across, up] = USUAL_OUTLINE[kind] ?? USUAL_OUTLINE.other!;
  const lot = siteThings(plain).find(({ is }) => is === "lot");
  const places = lot === undefined ? [] : placesOf(lot);
  const [xs, ys] = [places.map(([x]) => x), places.map(([, y]) => y)];
  const share = (of: readonly number[], part: number) => (of.length === 0 ? 0 : Math.min(...of) + (Math.max(...of) - Math.min(...of)) * part);
  const corners = rectangle(Math.round(share(xs, across) - width / 2), Math.round(share(ys, up) - height / 2), width, height);
  return [{ add: { kind, name, points: corners.map((place) => written(place, unit)) }, at: [...SITE, "outlines"] }];
}

export const pointAdded = (plain: unknown, kind: string, name: string, unit: LengthUnit): readonly Edit[] => [
  { add: { kind, name, at: written(spot(plain), unit) }, at: [...SITE, "points"] },
];

export function overheadAdded(plain: unknown, unit: LengthUnit): readonly Edit[] {
  const meter = siteThings(plain).find(({ kind }) => kind === "meter");
  const [x, y] = (meter && placesOf(meter)[0]) ?? spot(plain);
  return [{ add: [written([x, y], unit), written([x, y - 30], unit)], at: [...SITE, "overhead"] }];
}

/** A place before the house where nothing stands yet, so that what is added can be seen. */
function spot(plain: unknown): Place {
  const things = siteThings(plain);
  const lot = things.find(({ is }) => is === "lot");
  const [x, y] = lot === undefined ? ([0, 0] as const) : middle(placesOf(lot));
  const taken = things.filter(({ is }) => is === "point" || is === "outline").map((thing) => (placesOf(thing).length === 0 ? null : middle(placesOf(thing))));
  for (let i = 0; i < 40; i++) {
    const here: Place = [Math.round(x - 25 + (i % 3) * 20), Math.round(y * 0.45 - Math.floor(i / 3) * 8)];
    if (taken.every((each) => each === null || Math.hypot(each[0] - here[0], each[1] - here[1]) > 5)) return here;
  }
  return [Math.round(x), Math.round(y)];
}

/** A stretch of the job that may be drawn. */
export interface Stretch {
  readonly run: WrittenRun;
  readonly index: number;
  readonly name: string;
  readonly path: Path;
  readonly feet: number | null;
  readonly buried: boolean;
}

export const stretches = (plain: unknown): readonly Stretch[] =>
  writtenRuns(plain).flatMap((run) =>
    listAt(plain, [...run.path, "route"]).map((row, index): Stretch => {
      const path = [...run.path, "route", index];
      return { run, index, name: textAt(row, ["name"]), path, feet: feetOf(at(row, ["length"])), buried: textAt(row, ["place"]) === "buried" };
    }),
  );

/** Draws a stretch as one straight way: from where the one before it ends, or the panel, towards the outlet. */
export function wayDrawn(plain: unknown, stretch: Stretch, unit: LengthUnit): readonly Edit[] {
  const things = siteThings(plain);
  const { run, index } = stretch;
  const rows = listAt(plain, [...run.path, "route"]);
  const pointOf = (kind: string, name: string): Place | undefined => {
    const all = things.filter((thing) => thing.is === "point" && thing.kind === kind);
    return placesOf(all.find((thing) => thing.name === name) ?? all[0] ?? ({ corners: [] } as never))[0];
  };
  const before = rows
    .slice(0, index)
    .toReversed()
    .flatMap((row) => things.filter(({ is, circuit, segment }) => is === "route" && circuit === run.id && segment === textAt(row, ["name"])))[0];
  const lot = things.find(({ is }) => is === "lot");
  const from =
    (before && placesOf(before).at(-1)) ?? pointOf("panel", run.panelName) ?? pointOf("meter", "") ?? (lot ? middle(placesOf(lot)) : ([0, 0] as const));
  const goal = pointOf("outlet", run.name) ?? [from[0] + (stretch.feet ?? 20), from[1]];
  const whole = Math.hypot(goal[0] - from[0], goal[1] - from[1]);
  const reach = index === rows.length - 1 || whole === 0 ? whole : Math.min(whole, stretch.feet ?? whole / (rows.length - index));
  const share = whole === 0 ? 0 : reach / whole;
  const ends: Place = [snapped(from[0] + (goal[0] - from[0]) * share, unit), snapped(from[1] + (goal[1] - from[1]) * share, unit)];
  const to: Place = Math.hypot(ends[0] - from[0], ends[1] - from[1]) < 0.5 ? [from[0] + 5, from[1]] : ends;
  const way = { circuit: run.id, segment: stretch.name, in_trench: stretch.buried, points: [written(from, unit), written(to, unit)] };
  return [{ add: way, at: [...SITE, "routes"] }];
}

/** Writes the plan's length of a stretch into the job, to the half foot or the tenth of a metre above. */
export function lengthTaken(stretch: Stretch, feet: number, unit: LengthUnit): readonly Edit[] {
  const step = unit === "ft" ? 0.5 : 0.1 / 0.3048;
  return [{ at: [...stretch.path, "length"], put: lengthText(Math.ceil(feet / step - 1e-6) * step, unit) }];
}
