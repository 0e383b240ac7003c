import { at, type Edit, listAt, type Path, printPath, textAt } from "./document.js";
import { feetOf } from "./length-text.js";
import { type WrittenRun, writtenRuns } from "./runs.js";
import { THINGS } from "./starts.js";

/** What a press takes out of the job, with what it takes along because it named it. */
export interface TakingOut {
  readonly edits: readonly Edit[];
  /** What went along, in words; empty where nothing did. */
  readonly says: string;
}

const SITE_ROUTES = ["site_plan", "routes"] as const;

/** Ways drawn on the site plan that fit, the last first, so that each can be removed by its place. */
function drawnWays(plain: unknown, fits: (circuit: string, segment: string) => boolean): readonly Path[] {
  return listAt(plain, SITE_ROUTES)
    .flatMap((row, i): Path[] => (fits(textAt(row, ["circuit"]), textAt(row, ["segment"])) ? [[...SITE_ROUTES, i]] : []))
    .toReversed();
}

type Place = readonly [number, number];
const placeAt = (written: unknown): Place | null => {
  const [x, y] = [feetOf(at(written, [0])), feetOf(at(written, [1]))];
  return x === null || y === null ? null : [x, y];
};
/** Within a foot: an outlet at which a drawn way ends. */
const near = (a: Place, b: Place): boolean => Math.hypot(a[0] - b[0], a[1] - b[1]) <= 1;

const many = (count: number, one: string, more: string): string => (count === 0 ? "" : count === 1 ? `one ${one}` : `${count} ${more}`);
const listed = (parts: readonly string[]): string => {
  const told = parts.filter((part) => part !== "");
  return told.length < 2 ? (told[0] ?? "") : `${told.slice(0, -1).join(", ")} and ${told.at(-1)}`;
};

/** Takes a circuit or feeder out with what hangs on it, the ways drawn for it, its outlet on the site plan and its words in title and scope. */
export function takingOutRun(plain: unknown, run: WrittenRun): TakingOut {
  const runs = writtenRuns(plain);
  const within = printPath(run.path);
  const gone = runs.filter((each) => printPath(each.path) === within || printPath(each.path).startsWith(`${within}.`));
  const left = runs.filter((each) => !gone.includes(each));
  const ways = drawnWays(plain, (circuit) => gone.some(({ id }) => id === circuit) && !left.some(({ id }) => id === circuit));
  const points = ["site_plan", "points"];
  const ends = ways.map((way) => placeAt(listAt(plain, [...way, "points"]).at(-1)));
  const outlets = listAt(plain, points)
    .flatMap((row, i): Path[] => {
      const name = textAt(row, ["name"]);
      const here = placeAt(at(row, ["at"]));
      const its = gone.some((each) => each.name === name) || ends.some((end) => end !== null && here !== null && near(end, here));
      return textAt(row, ["kind"]) === "outlet" && its && !left.some((each) => each.name === name) ? [[...points, i]] : [];
    })
    .toReversed();
  const says = listed([
    many(gone.length - 1, "circuit fed by it", "circuits fed by it"),
    many(ways.length, "way on the site plan", "ways on the site plan"),
    many(outlets.length, "outlet on the site plan", "outlets on the site plan"),
  ]);
  return {
    edits: [...ways.map((remove) => ({ remove })), ...outlets.map((remove) => ({ remove })), ...titlesWithout(plain, gone, left), { remove: run.path }],
    says: says === "" ? "" : `${run.name} is taken out, and with it ${says}.`,
  };
}

/** The title and the scope that the planner itself wrote, without what has gone. Words of the reader's own stay. */
function titlesWithout(plain: unknown, gone: readonly WrittenRun[], left: readonly WrittenRun[]): readonly Edit[] {
  const titleOf = (run: WrittenRun) => THINGS.find(({ key }) => key === run.serves)?.title;
  const stay = left.flatMap((run) => titleOf(run) ?? []);
  const lost = gone.flatMap((run) => titleOf(run) ?? []).filter((title) => !stay.includes(title));
  const edits: Edit[] = [];
  if (lost.includes(textAt(plain, ["project", "title"]))) edits.push({ at: ["project", "title"], put: stay[0] });
  const scope = textAt(plain, ["project", "scope"]);
  const [whole, told = ""] = /^New: ([^.]*)\. ?/.exec(scope) ?? [];
  if (whole !== undefined) {
    const kept = told.split("; ").filter((title) => !lost.includes(title));
    const now = `${kept.length === 0 ? "" : `New: ${kept.join("; ")}. `}${scope.slice(whole.length)}`.trim();
    if (now !== scope) edits.push({ at: ["project", "scope"], put: now === "" ? undefined : now });
  }
  return edits;
}

/** Whether another stretch of the run has the name: boxes and drawn ways go by it, so two with one name could not be told apart. */
export const nameTaken = (plain: unknown, run: WrittenRun, index: number, name: string): boolean =>
  listAt(plain, [...run.path, "route"]).some((row, i) => i !== index && textAt(row, ["name"]).trim() === name.trim());

/** Takes a stretch out with the boxes at its end and the ways drawn for it. */
export function takingOutStretch(plain: unknown, run: WrittenRun, index: number): TakingOut {
  const name = textAt(plain, [...run.path, "route", index, "name"]);
  const others = nameTaken(plain, run, index, name);
  const boxes = others
    ? []
    : listAt(plain, [...run.path, "boxes"])
        .flatMap((box, i): Path[] => (textAt(box, ["after"]) === name ? [[...run.path, "boxes", i]] : []))
        .toReversed();
  const ways = others ? [] : drawnWays(plain, (circuit, segment) => circuit === run.id && segment === name);
  const says = listed([many(boxes.length, "box at its end", "boxes at its end"), many(ways.length, "way on the site plan", "ways on the site plan")]);
  return {
    edits: [...ways, ...boxes, [...run.path, "route", index]].map((remove) => ({ remove })),
    says: says === "" ? "" : `${name || "The stretch"} is taken out, and with it ${says}.`,
  };
}

/** Puts another way in the place of a run's own: what was drawn for stretches that are no more goes along. */
export function replacingRoute(plain: unknown, run: WrittenRun, names: readonly string[]): TakingOut {
  const ways = drawnWays(plain, (circuit, segment) => circuit === run.id && !names.includes(segment));
  const says = many(ways.length, "way on the site plan", "ways on the site plan");
  return {
    edits: ways.map((remove) => ({ remove })),
    says: says === "" ? "" : `The stretches are new ones, so ${says} of the old ones ${ways.length === 1 ? "is" : "are"} taken out.`,
  };
}

/** A stretch's new name, written also where its boxes and the ways drawn for it name it. */
export function renamingStretch(plain: unknown, run: WrittenRun, old: string, name: string): readonly Edit[] {
  return [
    ...listAt(plain, [...run.path, "boxes"]).flatMap((box, i): Edit[] =>
      textAt(box, ["after"]) === old ? [{ at: [...run.path, "boxes", i, "after"], put: name }] : [],
    ),
    ...drawnWays(plain, (circuit, segment) => circuit === run.id && segment === old).map((path): Edit => ({ at: [...path, "segment"], put: name })),
  ];
}
