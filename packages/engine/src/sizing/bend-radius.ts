import { cite, type Rule } from "../basis/citation.js";
import { type Edition, everyEdition, type PerEdition } from "../basis/edition.js";
import { decimal, type Numeric, print } from "../quantity.js";
import { BEND_RADIUS } from "../tables/bend-radius.js";
import { readCell } from "../tables/code-table.js";
import type { AnyTradeSize } from "../tables/trade-size.js";
import { type Worked, worked } from "../worked.js";

/** Least radius of a field bend in a raceway, to its centre line, in. Chapter 9 Table 2; null for a size it does not list. */
export function racewayBendRadius(given: {
  readonly id: string;
  readonly tradeSize: AnyTradeSize;
  /** one-shot or full-shoe bender, or any other way. */
  readonly bender: "oneShot" | "other";
  readonly edition: Edition;
}): Worked | null {
  const cell = readCell(BEND_RADIUS, given.tradeSize, given.bender, given.edition);
  if (cell === null) return null;
  return worked({
    id: given.id,
    label: `Least bend radius, trade size ${given.tradeSize}, to the centre line`,
    value: cell.value,
    unit: "in",
    expression: `${cell.value} in`,
    cells: [cell],
    edition: given.edition,
  });
}

type BentCable = "NM-B" | "UF-B" | "SE";

const RULES: Readonly<Record<BentCable, Rule>> = {
  "NM-B": { sections: everyEdition("334.24"), standing: "published" },
  "UF-B": { sections: everyEdition("340.24"), standing: "memory" },
  SE: { sections: everyEdition("338.24"), standing: "one-source" },
};

/**
 * Which dimension of a flat cable counts when it bends on its flat side. 2017 and 2020 say only "diameter": the wider is the safe reading,
 * and the one 2023 wrote down; 2026 lets the thinner stand for NM bent on its flat side.
 */
const FLAT_SIDE: Readonly<Record<BentCable, PerEdition<"minor" | "major">>> = {
  "NM-B": { "2017": "major", "2020": "major", "2023": "major", "2026": "minor" },
  "UF-B": everyEdition("major"),
  SE: everyEdition("major"),
};

/** Least radius of a cable bend at its inner edge, in: five times the cable. A round cable has equal dimensions. */
export function cableBendRadius(given: {
  readonly id: string;
  readonly cable: BentCable;
  readonly minorIn: Numeric;
  readonly majorIn: Numeric;
  readonly bentOn: "flat" | "edge";
  readonly edition: Edition;
}): Worked {
  const { cable, edition } = given;
  const dimension = given.bentOn === "flat" && FLAT_SIDE[cable][edition] === "minor" ? given.minorIn : given.majorIn;
  return worked({
    id: given.id,
    label: `Least bend radius of ${cable}, inner edge`,
    value: decimal(dimension).times(5).toFixed(),
    unit: "in",
    expression: `5 × ${print(dimension, 4)} in`,
    citations: [cite(RULES[cable], edition)!],
    edition,
  });
}
