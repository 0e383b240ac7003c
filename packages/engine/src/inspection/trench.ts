import { type Edition, everyEdition } from "../basis/edition.js";
import { earthMovement } from "../checks/earth-movement.js";
import type { DesignedSegment } from "../designed.js";
import { print } from "../quantity.js";
import { groundUnder } from "../sizing/riser.js";
import { isCable } from "../tables/cable.js";
import { type AnyRun, byRule, GOOD_WORK, type LineWords, nameOf, PERMIT, section } from "./line.js";
import { wiringWords } from "./raceway.js";

// The table's number from 2023, known from trade press; the rest of this file is from memory.
const COVER_TABLE = { ...everyEdition("Table 300.5(A)"), "2017": "Table 300.5", "2020": "Table 300.5" };

const buriedOf = (run: AnyRun): readonly DesignedSegment[] => run.segments.filter(({ segment }) => segment.place === "buried");

/** Said once where anything is buried. */
export function trenchOpening(runs: readonly AnyRun[]): readonly LineWords[] {
  const feet = runs.flatMap(buriedOf).reduce((sum, { segment }) => sum + segment.length, 0);
  if (feet === 0) return [];
  return [
    {
      id: "utilities-located",
      section: GOOD_WORK,
      look: "Buried utilities were located and marked before digging",
      seen: "locate ticket number and date",
      how: "ticket on site, marks or flags still standing",
    },
    {
      id: "trench-open",
      section: PERMIT,
      look: "Trench open over its whole length, wiring laid, nothing covered",
      seen: `${print(feet)} ft of buried wiring in this job`,
      how: "walk it from end to end; backfill stays beside it",
    },
  ];
}

/** What is looked at in the open trench of one run. */
export function trenchLines(run: AnyRun, edition: Edition): readonly LineWords[] {
  const buried = buriedOf(run);
  if (buried.length === 0) return [];
  const at = (number: string) => section(number, edition);
  return [
    ...buried.flatMap((stretch) => stretchLines(run, stretch, edition)),
    ...riserLines(run, edition),
    {
      id: "trench-backfill",
      section: at("300.5(F)"),
      look: `${run.run.name}: bed and backfill free of rock and sharp debris`,
      seen: "sand or fine earth against the wiring",
      how: "the heap that will go back stands beside the trench",
    },
    {
      id: "trench-ends",
      section: at("300.5(G), 300.5(H)"),
      look: `${run.run.name}: bushing where cables leave the raceway, ends closed against moisture`,
      seen: "bushing at each open end; sealing compound where it enters the house",
      how: "look at both ends before the seal is covered",
    },
    {
      id: "trench-separation",
      section: GOOD_WORK,
      look: `${run.run.name}: clear of gas, water, telephone and pool piping`,
      seen: "spacing the utilities and the authority ask for",
      how: "tape across each crossing",
    },
  ];
}

function stretchLines(run: AnyRun, stretch: DesignedSegment, edition: Edition): readonly LineWords[] {
  const { segment, leastCover } = stretch;
  const { method } = segment;
  const name = nameOf(run, stretch);
  const at = (number: string) => section(number, edition);
  const top = isCable(method) ? "top of cable" : "top of raceway";
  const planned = segment.cover === undefined ? "cover not given: measure" : `${print(segment.cover)} in planned`;
  const lines: LineWords[] = [
    {
      id: "trench-cover",
      section: section(COVER_TABLE, edition),
      look: `${name}: cover from ${top} to finished grade`,
      seen: leastCover === null ? planned : `${planned}; least ${print(leastCover.value)} in to ${top}`,
      how: `straightedge across at finished grade, tape down to the ${top}, at the shallowest place`,
    },
    {
      id: "trench-together",
      section: at("300.3(B), 300.5(I)"),
      look: `${name}: all conductors of the run together, equipment ground among them`,
      seen: wiringWords(stretch),
      how: "count them at an end",
    },
  ];
  if (method === "PVC-40" || method === "PVC-80")
    lines.push({
      id: "trench-electrical-pvc",
      section: at("352.6, 110.3(B)"),
      look: `${name}: electrical PVC, elbows too, not plumbing pipe; joints cemented`,
      seen: `${method}: gray, listing mark, schedule printed on the pipe`,
      how: "turn the print upward; no white pipe or fittings",
    });
  return lines;
}

const TOLD_MOVEMENT = {
  "expansion-fitting": "expansion fitting planned in the riser, free to slide both ways",
  "slack-loop": "S loop of slack cable planned in the trench",
  "flexible-connection": "flexible connection planned at the box, not drawn tight",
  "ground-still": "none planned: the authority's word that the ground stays still",
  nothing: "none planned: give it room before it is covered",
} as const;

/** Where the run comes out of the ground. */
function riserLines(run: AnyRun, edition: Edition): readonly LineWords[] {
  const risers = run.segments.filter((_, i) => groundUnder(run, i).length > 0);
  return risers.flatMap((stretch): LineWords[] => {
    const { method, earth_movement: told } = stretch.segment;
    const pvc = method.startsWith("PVC");
    const protectedTo: LineWords = {
      id: "trench-riser",
      section: section("300.5(D)(1), 300.5(D)(4)", edition),
      look: `${nameOf(run, stretch)}: guarded where it comes out of the ground`,
      seen: `${method}; from 18 in below grade (or the cover asked for) to 8 ft above, or to where it enters`,
      how: "schedule or type printed on the riser; tape from grade",
    };
    const moves: LineWords = {
      id: "trench-expansion",
      section: pvc ? section("352.44, 300.5(J)", edition) : byRule(earthMovement, edition),
      look: `${nameOf(run, stretch)}: room for the ground to settle${pvc ? " and for PVC to move" : ""}`,
      seen: told === undefined ? "expansion fitting or slack where the calculation or the authority asks one" : TOLD_MOVEMENT[told],
      how: pvc ? "fitting set for the day's temperature; look at the riser" : "look at the riser and at the turn in the trench",
    };
    return [protectedTo, moves];
  });
}
