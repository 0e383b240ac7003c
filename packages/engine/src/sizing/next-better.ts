import { citeOther } from "../basis/citation.js";
import type { Edition } from "../basis/edition.js";
import { decimal, type Numeric, print } from "../quantity.js";
import { readCell } from "../tables/code-table.js";
import { METAL_BOX, type MetalBox } from "../tables/metal-box.js";
import { type Worked, worked } from "../worked.js";
import { leastRaceway, type TradeSize } from "./raceway-fill.js";

/** Working room is what people regret: a quarter more than the code asks. */
const COMFORT = citeOther("Common practice", "a quarter more room than the least", "practice");
const QUARTER_MORE = "1.25";

/** The least raceway whose limit holds a quarter more than the conductors take up, and the area it has to hold, in²; null when none listed does. */
export function nextBetterRaceway(given: {
  readonly id: string;
  readonly raceway: string;
  readonly area: Worked;
  readonly count: number;
  readonly nipple?: boolean;
  readonly edition: Edition;
}): { readonly wanted: Worked; readonly tradeSize: TradeSize | null } {
  const wanted = quarterMore(given.id, "Area with a quarter more room", given.area.value, "in2", given.edition, given.area.id);
  const { raceway, count, nipple = false, edition } = given;
  return { wanted, tradeSize: leastRaceway({ raceway, areaIn2: wanted.value, count, nipple, edition }) };
}

/** The least standard metal box with a quarter more than the volume needed, in³; null when none listed has it. `kinds` narrows the choice: "square", "device". */
export function nextBetterBox(given: { readonly id: string; readonly neededIn3: Numeric; readonly kinds?: readonly string[]; readonly edition: Edition }): {
  readonly wanted: Worked;
  readonly box: MetalBox | null;
  readonly volume: Worked | null;
} {
  const { id, kinds, edition } = given;
  const wanted = quarterMore(id, "Volume with a quarter more room", given.neededIn3, "in3", edition);
  const [best] = (Object.keys(METAL_BOX.rows) as MetalBox[])
    .filter((name) => kinds === undefined || kinds.some((kind) => name.includes(kind)))
    .map((name) => ({ name, cell: readCell(METAL_BOX, name, "volume", edition)! }))
    .filter(({ cell }) => decimal(cell.value).gte(wanted.value))
    .sort((a, b) => decimal(a.cell.value).cmp(b.cell.value));
  if (best === undefined) return { wanted, box: null, volume: null };
  const volume = worked({
    id: `${id}.volume`,
    label: `Next better box: ${best.name}`,
    value: best.cell.value,
    unit: "in3",
    expression: `${best.cell.value} in³`,
    inputs: [wanted.id],
    cells: [best.cell],
    citations: [COMFORT],
    edition,
  });
  return { wanted, box: best.name, volume };
}

function quarterMore(id: string, label: string, value: Numeric, unit: "in2" | "in3", edition: Edition, input?: string): Worked {
  return worked({
    id,
    label,
    value: decimal(value).times(QUARTER_MORE).toFixed(),
    unit,
    expression: `${QUARTER_MORE} × ${print(value, 4)} ${unit === "in2" ? "in²" : "in³"}`,
    inputs: input === undefined ? [] : [input],
    citations: [COMFORT],
    edition,
  });
}
