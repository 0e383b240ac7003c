import type { Edition } from "../basis/edition.js";
import { bendingSpace } from "../checks/bending-space.js";
import { print } from "../quantity.js";
import { isCable } from "../tables/cable.js";
import { compareSizes, printSize } from "../tables/size.js";
import { type AnyRun, byRule, type LineWords, section } from "./line.js";

/** Boxes and passages of one run, seen before walls close. */
export function roughLines(run: AnyRun, edition: Edition): readonly LineWords[] {
  const at = (number: string) => section(number, edition);
  const name = run.run.name;
  const lines: LineWords[] = [];
  const inside = run.segments.some(({ segment }) => segment.place === "indoors" || segment.place === "attic");
  const outside = run.segments.some(({ segment }) => segment.place === "outdoors" || segment.place === "buried");
  if (inside && outside)
    lines.push({
      id: "sealed-passage",
      section: at("300.7(A), 300.5(G)"),
      look: `${name}: raceway sealed where it passes from cold to warm`,
      seen: "listed sealing compound round the conductors, at the wall",
      how: "look in at the fitting before it is closed",
    });
  if (!run.neutral && run.volts === 240 && run.segments.some(({ segment }) => isCable(segment.method)))
    lines.push({
      id: "white-marked",
      section: at("200.7(C)"),
      look: `${name}: white conductor used as a hot is marked at every end`,
      seen: "black, red or other color, not green, all round",
      how: "open each box",
    });
  if (run.segments.some(({ segment }) => segment.conductors.material === "aluminum"))
    lines.push({
      id: "aluminum-terminals",
      section: at("110.14"),
      look: `${name}: lugs marked for aluminum at both ends`,
      seen: "AL or AL/CU on the lug; prepared as its maker says",
      how: "read the lug",
    });
  return [...lines, ...run.boxes.flatMap((box) => boxLines(run, box, edition))];
}

function boxLines(run: AnyRun, { box, required, byDimensions, bending }: AnyRun["boxes"][number], edition: Edition): readonly LineWords[] {
  const at = (number: string) => section(number, edition);
  const name = `${run.run.name}, ${box.name}`;
  const entering = run.segments.filter(({ segment }, i) => segment.name === box.after || run.segments[i - 1]?.segment.name === box.after);
  const large = entering.filter(({ segment, conductor }) => !isCable(segment.method) && compareSizes(conductor.size, "4") >= 0);
  const lines: LineWords[] = [
    {
      id: "box-size",
      section: at(byDimensions ? "314.28" : "314.16"),
      look: `${name}: ${byDimensions ? "size of the box" : "volume marked in the box"}`,
      seen: byDimensions ? `${print(required.value)} in from raceway entry to opposite wall` : `${print(box.volume)} in³; needs ${print(required.value)} in³`,
      how: byDimensions ? "tape inside the box" : "read the volume stamped in it, or measure it",
    },
    {
      id: "box-fixed",
      section: at("314.23, 110.13(A)"),
      look: `${name}: fastened so that it does not move`,
      seen: "screws made for it; no drywall screws",
      how: "push it",
    },
    {
      id: "box-splices",
      section: at("110.14(B), 250.148"),
      look: `${name}: splices by listed means; equipment grounds joined and tied to a metal box`,
      seen: "connector listed for the sizes; a pigtail to box and device",
      how: "open the box, devices not yet on",
    },
    { id: "box-openings", section: at("110.12(A), 314.17(A)"), look: `${name}: unused openings closed`, seen: "no hole left", how: "look round it" },
  ];
  if (box.wet_location)
    lines.push({
      id: "box-wet",
      section: at("314.15, 312.2"),
      look: `${name}: box for a wet place, entered from below or by a hub listed for it`,
      seen: "marked for wet locations; no back or top entry without a listed hub",
      how: "read the label, look at the entries",
    });
  if (bending !== null)
    lines.push({
      id: "bending-space",
      section: byRule(bendingSpace, edition),
      look: `${name}: room to bend at the terminals`,
      seen: `${print(bending.value)} in from each terminal to the wall it faces`,
      how: "tape in the open box",
    });
  if (large.length > 0)
    lines.push({
      id: "box-bushing",
      section: at("300.4(G)"),
      look: `${name}: insulating bushing where 4 AWG and larger enter`,
      seen: large.map(({ conductor }) => printSize(conductor.size)).join(", "),
      how: "look at each raceway end",
    });
  return lines;
}
