import type { Edit, Path } from "../job/document.js";
import { listAt, printPath, textAt } from "../job/document.js";
import { freeSpaces } from "../job/runs.js";
import type { Digest, ShownFinding, ShownRun } from "../work/digest.js";

/** A mend that one press makes. */
export interface Mend {
  readonly says: string;
  readonly edits: readonly Edit[];
}
interface About {
  readonly plain: unknown;
  readonly finding: ShownFinding;
  readonly run: ShownRun;
  /** Place in the route or among the boxes; null where the finding is of the whole run. */
  readonly segment: number | null;
  readonly box: number | null;
}

const one = (says: string, at: Path, put: unknown): Mend => ({ says, edits: [{ at, put }] });
const inBreaker = ({ run }: About, key: string): Path => [...run.path, "breaker", key];
const inSegment = ({ run, segment }: About, ...key: readonly string[]): Path | null => (segment === null ? null : [...run.path, "route", segment, ...key]);
const inBox = ({ run, box }: About, key: string): Path | null => (box === null ? null : [...run.path, "boxes", box, key]);

function computedRating(about: About): Mend {
  return one("Let the breaker be computed", inBreaker(about, "rating"), undefined);
}

function freed(about: About, poles?: 1 | 2): Mend | null {
  const now = Number(textAt(about.plain, inBreaker(about, "poles")));
  const spaces = freeSpaces(about.plain, about.run.panelPath, poles ?? (now === 1 ? 1 : 2), printPath(about.run.path));
  if (spaces.length === 0) return null;
  return {
    says: `${poles === undefined ? "" : `${poles === 1 ? "One pole" : "Two poles"}, `}${spaces.length === 1 ? "space" : "spaces"} ${spaces.join(" and ")}`,
    edits: [...(poles === undefined ? [] : [{ at: inBreaker(about, "poles"), put: poles }]), { at: inBreaker(about, "spaces"), put: [...spaces] }],
  };
}

function computedSize(about: About, key: "size" | "grounding"): Mend | null {
  const path = inSegment(about, "conductors", key);
  return path === null || textAt(about.plain, path) === "" ? null : one("Let the size be computed", path, undefined);
}

/** The least size whose longest run is at least as long as this one, on every stretch. */
function thicker({ run, plain }: About): Mend | null {
  const enough = run.longest.find(({ feet }) => Number(feet) >= Number(run.feet));
  if (enough === undefined) return null;
  const edits = listAt(plain, [...run.path, "route"]).map((_, i): Edit => ({ at: [...run.path, "route", i, "conductors", "size"], put: enough.size }));
  return { says: `Use ${enough.says} all the way`, edits };
}

const method = (put: string, says: string) => (about: About) => {
  const path = inSegment(about, "method");
  return path === null ? null : one(says, path, put);
};

const MENDS: Readonly<Record<string, (about: About) => Mend | null>> = {
  gfci: (about) => one("Use a GFCI breaker", inBreaker(about, "gfci"), true),
  "spa-gfci": (about) => one("Use a GFCI breaker", inBreaker(about, "gfci"), true),
  "breaker-carries-load": computedRating,
  "breaker-standard-rating": computedRating,
  "breaker-within-bounds": computedRating,
  "receptacle-rating": computedRating,
  "breaker-poles": (about) => freed(about, textAt(about.plain, inBreaker(about, "poles")) === "1" ? 2 : 1),
  "breaker-adjacent-spaces": (about) => freed(about),
  "panel-spaces-free": (about) => freed(about),
  "breaker-listed": (about) => one("I compared: it is on the label", inBreaker(about, "listed_for_panel"), true),
  "burial-cover": (about) => {
    const path = inSegment(about, "cover");
    const least = about.segment === null ? null : about.run.segments[about.segment]?.leastCover;
    return path === null || !least ? null : one(`Dig to ${least} in of cover`, path, `${least} in`);
  },
  "box-wet": (about) => {
    const path = inBox(about, "wet_location");
    return path === null ? null : one("Use a box marked for wet places", path, true);
  },
  "box-volume": bigger,
  "box-comfort": bigger,
  "cover-plate": (about) => one("Use a cover that is weatherproof in use", [...about.run.path, "cover_plate"], "weatherproof-in-use"),
  "receptacle-weather": (about) => one("Use one marked WR", [...about.run.path, "weather_resistant"], true),
  "conductor-size": (about) => computedSize(about, "size"),
  "conductor-terminals": (about) => computedSize(about, "size"),
  "small-conductor": (about) => computedSize(about, "size"),
  "grounding-size": (about) => computedSize(about, "grounding"),
  "conductor-wet": (about) => {
    const path = inSegment(about, "conductors", "insulation");
    return path === null ? null : one("Use THWN-2 wire", path, "THWN-2");
  },
  "cable-wet": method("PVC-40", "Use wire in PVC raceway"),
  "emt-buried": method("PVC-40", "Use PVC raceway"),
  "riser-protection": method("PVC-80", "Use PVC Schedule 80"),
  "raceway-fill": (about) => {
    const path = inSegment(about, "trade_size");
    const smallest = about.segment === null ? null : about.run.segments[about.segment]?.smallestTrade;
    return path === null || !smallest ? null : one(`Use ${smallest} in raceway`, path, smallest);
  },
  "voltage-drop": thicker,
  "detached-disconnect": (about) => one("A disconnect will be set there", [...about.run.path, "disconnect"], true),
  "outlet-structure": (about) => one("A breaker or switch will be set there", [...about.run.path, "disconnect_there"], true),
  "detached-electrode": (about) => one("A ground rod will be set there", [...about.run.path, "electrode"], true),
};

function bigger(about: About): Mend | null {
  const path = inBox(about, "volume");
  const better = about.box === null ? undefined : /([\d.]+) in/.exec(about.run.boxes[about.box]?.nextBetter ?? "")?.[1];
  return path === null || better === undefined ? null : one(`Use a box of ${better} in³`, path, `${better} in3`);
}

/** What one press can mend of a finding; null where a person has to decide. Names that occur twice are left to the person. */
export function mendFor(finding: ShownFinding, digest: Digest, plain: unknown): Mend | null {
  if (finding.verdict === "pass" || finding.verdict === "not-applicable") return null;
  if (finding.check === "edition-confirmed") return one("The department confirmed it", ["code", "confirmed_with_authority"], true);
  if (finding.check === "working-space") {
    const panels = digest.panels.filter(({ name }) => name === finding.subject);
    return panels.length === 1 ? one("It is free", [...panels[0]!.path, "working_space_clear"], true) : null;
  }
  const make = Object.hasOwn(MENDS, finding.check) ? MENDS[finding.check] : undefined;
  if (make === undefined) return null;
  const runs = digest.runs.filter(({ name }) => finding.subject === name || finding.subject.startsWith(`${name}: `));
  const run = runs.sort((a, b) => b.name.length - a.name.length)[0];
  if (run === undefined || runs.filter(({ name }) => name === run.name).length > 1) return null;
  const part = finding.subject.slice(run.name.length + 2);
  const place = (rows: readonly { readonly name: string }[]) => {
    const found = rows.findIndex(({ name }) => name === part);
    return found < 0 ? null : found;
  };
  return make({ plain, finding, run, segment: part === "" ? null : place(run.segments), box: part === "" ? null : place(run.boxes) });
}
