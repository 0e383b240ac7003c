import type { Edition } from "../basis/edition.js";
import { entPlace } from "../checks/ent-place.js";
import { fmcWet } from "../checks/fmc-wet.js";
import { pvcExpansion } from "../checks/pvc-expansion.js";
import type { DesignedSegment } from "../designed.js";
import { decimal, print } from "../quantity.js";
import { type SupportedMethod, supportSpacing } from "../sizing/supports.js";
import { isCable } from "../tables/cable.js";
import { isMetal } from "../tables/raceway-kind.js";
import { printSize } from "../tables/size.js";
import { SUPPORT } from "../tables/support.js";
import type { AnyTradeSize } from "../tables/trade-size.js";
import { type AnyRun, byRule, type LineWords, nameOf, section } from "./line.js";

const BENDS: Readonly<Record<string, string>> = {
  EMT: "358.26",
  ENT: "362.26",
  "PVC-40": "352.26",
  "PVC-80": "352.26",
  RMC: "344.26",
  IMC: "342.26",
  "LFNC-A": "356.26",
  "LFNC-B": "356.26",
  LFMC: "350.26",
  FMC: "348.26",
};

/** "1-1/4 in PVC-40: 3 × 6 AWG copper, ground 10 AWG". */
export function wiringWords({ segment, tradeSize, conductor, grounding, neutral }: DesignedSegment): string {
  const sets = segment.sets === undefined || segment.sets === 1 ? "" : `${segment.sets} sets of `;
  const size = tradeSize === null ? "" : `${tradeSize} in `;
  const wires =
    neutral === null
      ? `${conductor.count} × ${printSize(conductor.size)}`
      : `${conductor.count - 1} × ${printSize(conductor.size)} and neutral ${printSize(neutral.size)}`;
  return `${size}${segment.method}: ${sets}${wires} ${segment.conductors.material}, ground ${printSize(grounding.size)}`;
}

/** Conductors and raceway of one stretch, seen before it is covered. */
export function stretchLines(run: AnyRun, stretch: DesignedSegment, edition: Edition): readonly LineWords[] {
  const { segment, grounding } = stretch;
  const { method, conductors } = segment;
  const name = nameOf(run, stretch);
  const at = (number: string) => section(number, edition);
  const cable = isCable(method);
  const lines: LineWords[] = [
    {
      id: "conductors",
      section: at("110.14(C), 310.16"),
      look: `${name}: size, metal and type of conductor`,
      seen: `${wiringWords(stretch)}; ${cable ? `${method} on the sheath` : `${conductors.insulation} on the insulation`}`,
      how: "read the print at an end",
    },
    {
      id: "grounding-conductor",
      section: at("250.119, 250.122"),
      look: `${name}: equipment grounding conductor`,
      seen: `${printSize(grounding.size)}, green or bare; least ${printSize(stretch.requiredGrounding)}`,
      how: "follow it from bar to outlet; a ground rod does not replace it",
    },
  ];
  if (!cable && stretch.fill !== null)
    lines.push({
      id: "raceway-fill",
      section: at("Chapter 9, Table 1"),
      look: `${name}: fill of the raceway`,
      seen: `${stretch.tradeSize ?? ""} in ${method}: ${print(stretch.fill.percent.value)} % full, ${print(stretch.fill.area.value, 4)} in² of ${print(stretch.fill.limit.value, 4)} in²`,
      how: "trade size on the raceway, conductors counted at an end",
    });
  if (!cable && segment.bends.length > 0)
    lines.push({
      id: "raceway-bends",
      section: at(BENDS[method] ?? "Chapter 3"),
      look: `${name}: bends between pull points, 360° at most`,
      seen: `${stretch.bendTotal}° in this stretch${stretch.bendRadius === null ? "" : `; radius ${print(stretch.bendRadius.value)} in or more, none flattened`}`,
      how: "count the bends along it",
    });
  if (stretch.expansion?.needed === true)
    lines.push({
      id: "raceway-expansion",
      section: byRule(pvcExpansion, edition),
      look: `${name}: expansion fittings where PVC moves`,
      seen: `${stretch.expansion.fittings.value} for ${print(stretch.expansion.change.value, 2)} in of movement, or bends that take it up`,
      how: "fitting set for the day's temperature by the maker's chart",
    });
  if (method === "ENT" || method === "FMC")
    lines.push({
      id: "method-place",
      section: byRule(method === "ENT" ? entPlace : fmcWet, edition),
      look: `${name}: ${method} in a place it is made for`,
      seen: method === "ENT" ? "out of the ground, the sun and harm, or marked for the sun" : "dry",
      how: "look along it",
    });
  if (segment.place !== "buried") lines.push(...supportLines(name, stretch, edition));
  if (stretch.wet)
    lines.push({
      id: "wet-conductors",
      section: at(cable ? "340.10, 310.10(C)" : "300.9, 300.5(B), 310.10(C)"),
      look: `${name}: wiring for a wet place (the inside of a raceway outdoors or in earth counts as wet)`,
      seen: cable ? method : `${conductors.insulation}: a W in the marking`,
      how: "read the print on the conductor",
    });
  if (segment.exposed_to_damage)
    lines.push({
      id: "guarded",
      section: at("300.5(D), 110.27(B)"),
      look: `${name}: guarded where it can be struck`,
      seen: method,
      how: "schedule or type on the raceway",
    });
  return lines;
}

function supportLines(name: string, { segment, tradeSize }: DesignedSegment, edition: Edition): readonly LineWords[] {
  const { method } = segment;
  const at = (number: string) => section(number, edition);
  const lines: LineWords[] = [];
  const spacing = Object.hasOwn(SUPPORT.rows, method)
    ? supportSpacing({ id: name, method: method as SupportedMethod, ...(tradeSize === null ? {} : { tradeSize: tradeSize as AnyTradeSize }), edition })
    : null;
  if (spacing !== null)
    lines.push({
      id: "supports",
      section: spacing.within.citations[0] ?? at("Chapter 3"),
      look: `${name}: fastened in place`,
      seen: `within ${inchesOrFeet(spacing.within.value)} of each end, then every ${inchesOrFeet(spacing.apart.value)}`,
      how: "tape from box or fitting to the first strap",
    });
  if (method === "NM-B") {
    lines.push({
      id: "cable-nails",
      section: at("300.4(A), 334.17"),
      look: `${name}: bored holes 1-1/4 in from the face of the framing, or steel plates`,
      seen: "1-1/4 in, or a 1/16 in plate",
      how: "tape at each stud and joist",
    });
    lines.push({
      id: "cable-dry",
      section: at("334.12(B)(4), 300.9"),
      look: `${name}: cable stays in dry places`,
      seen: "NM-B ends indoors, in a box; none in a raceway outdoors or in earth",
      how: "open the box where the wiring changes",
    });
  }
  if (method === "UF-B" && segment.place === "outdoors")
    lines.push({
      id: "cable-guarded",
      section: at("300.5(D), 340.12"),
      look: `${name}: cable guarded along the wall`,
      seen: "raceway or guard over it",
      how: "look along it from grade up",
    });
  if (isCable(method))
    lines.push({
      id: "cable-into-box",
      section: at("314.17, 300.14"),
      look: `${name}: sheath enters the box, conductors long enough`,
      seen: "1/4 in of sheath inside the clamp; 6 in of free conductor, 3 in past the opening",
      how: "tape in the open box",
    });
  if (isMetal(method))
    lines.push({
      id: "ring-knockouts",
      section: at("250.92, 250.97, 300.10"),
      look: `${name}: locknuts tight, no loose knockout rings`,
      seen: "bonding bushing with jumper where the service's raceway passes ring knockouts; elsewhere as the authority asks",
      how: "turn the locknut by hand",
    });
  return lines;
}

const inchesOrFeet = (feet: string): string => (decimal(feet).lt(2) ? `${print(decimal(feet).times(12))} in` : `${print(feet)} ft`);
