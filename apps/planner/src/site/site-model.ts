import { SITE_POINTS, type SitePointKind } from "@branchwork/sheets";
import { at, listAt, type Path, printPath, textAt } from "../job/document.js";
import { feetOf } from "../job/length-text.js";

export type Place = readonly [number, number];
export const SITE = ["site_plan"] as const;

export const OUTLINES = { house: "House", garage: "Garage or carport", drive: "Drive or paving", pool: "Pool", other: "Something else" } as const;
export type OutlineKind = keyof typeof OUTLINES;

/** Something on the site plan as written; corners that cannot be read are null and are not drawn. */
export interface SiteThing {
  /** Of the thing in the job; its places stand at `places`. */
  readonly path: Path;
  readonly key: string;
  readonly is: "lot" | "outline" | "point" | "route" | "overhead";
  readonly kind: string;
  readonly name: string;
  /** Paths of its places, in order. */
  readonly places: readonly Path[];
  readonly corners: readonly (Place | null)[];
  /** The path of the list of places; null of a point, which has one. */
  readonly list: Path | null;
  readonly buried: boolean;
  readonly rises: number;
  readonly segment: string;
  readonly circuit: string;
}

const placeOf = (written: unknown): Place | null => {
  const [x, y] = [feetOf(at(written, [0])), feetOf(at(written, [1]))];
  return x === null || y === null ? null : [x, y];
};

const NONE = { name: "", kind: "", buried: false, rises: 0, segment: "", circuit: "" } as const;

function listed(plain: unknown, path: Path, list: Path, more: Partial<SiteThing> & Pick<SiteThing, "is">): SiteThing {
  const rows = listAt(plain, list);
  return {
    ...NONE,
    ...more,
    path,
    key: printPath(path),
    list,
    places: rows.map((_, i) => [...list, i]),
    corners: rows.map(placeOf),
  };
}

/** Everything on the site plan, in the order of the file. */
export function siteThings(plain: unknown): readonly SiteThing[] {
  if (at(plain, SITE) === undefined) return [];
  const rows = (name: string) => listAt(plain, [...SITE, name]).map((row, i) => ({ row, path: [...SITE, name, i] }));
  return [
    listed(plain, [...SITE, "lot"], [...SITE, "lot"], { is: "lot", name: "Lot line" }),
    ...rows("outlines").map(({ row, path }) =>
      listed(plain, path, [...path, "points"], { is: "outline", kind: textAt(row, ["kind"]), name: textAt(row, ["name"]) || "Outline" }),
    ),
    ...rows("overhead").map(({ path }, i) => listed(plain, path, path, { is: "overhead", name: i === 0 ? "Overhead line" : `Overhead line ${i + 1}` })),
    ...rows("routes").map(({ row, path }) =>
      listed(plain, path, [...path, "points"], {
        is: "route",
        name: `Way of ${textAt(row, ["segment"])}`,
        segment: textAt(row, ["segment"]),
        circuit: textAt(row, ["circuit"]),
        buried: at(row, ["in_trench"]) === true,
        rises: feetOf(at(row, ["rises"])) ?? 0,
      }),
    ),
    ...rows("points").map(
      ({ row, path }): SiteThing => ({
        ...NONE,
        is: "point",
        kind: textAt(row, ["kind"]),
        name: textAt(row, ["name"]) || "Point",
        path,
        key: printPath(path),
        list: null,
        places: [[...path, "at"]],
        corners: [placeOf(at(row, ["at"]))],
      }),
    ),
  ];
}

export const placesOf = (thing: SiteThing): readonly Place[] => thing.corners.filter((corner) => corner !== null);
export const isClosed = (thing: SiteThing): boolean => thing.is === "lot" || thing.is === "outline";
export const isPointKind = (kind: string): kind is SitePointKind => Object.hasOwn(SITE_POINTS, kind);

/** Least corners with which it is still something. */
export const leastCorners = (thing: SiteThing): number => (thing.list === null ? 1 : isClosed(thing) ? 3 : 2);

export interface Rectangle {
  readonly left: number;
  readonly bottom: number;
  readonly width: number;
  readonly height: number;
}

/** What holds every place, with a margin. */
export function extent(things: readonly SiteThing[]): Rectangle {
  const places = things.flatMap(placesOf);
  if (places.length === 0) return { left: 0, bottom: 0, width: 100, height: 100 };
  const [xs, ys] = [places.map(([x]) => x), places.map(([, y]) => y)];
  const [left, right, bottom, top] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
  const margin = Math.max(6, (right - left) * 0.06, (top - bottom) * 0.06);
  return { left: left - margin, bottom: bottom - margin, width: right - left + 2 * margin, height: top - bottom + 2 * margin };
}

export const contains = (outer: Rectangle, inner: Rectangle): boolean =>
  inner.left >= outer.left &&
  inner.bottom >= outer.bottom &&
  inner.left + inner.width <= outer.left + outer.width &&
  inner.bottom + inner.height <= outer.bottom + outer.height;

/** Middle of the corners' bounds: where a name stands. */
export function middle(places: readonly Place[]): Place {
  const [xs, ys] = [places.map(([x]) => x), places.map(([, y]) => y)];
  return [(Math.min(...xs) + Math.max(...xs)) / 2, (Math.min(...ys) + Math.max(...ys)) / 2];
}
