import type { Assumption, Design } from "../designed.js";
import { decimal, print } from "../quantity.js";
import { type Worked, worked } from "../worked.js";
import { type Allowances, allowanceAssumptions, assertAllowances, USUAL_ALLOWANCES } from "./allowances.js";
import type { Piece } from "./piece.js";
import { alongPieces } from "./raceway-pieces.js";
import { runPieces } from "./run-pieces.js";
import { type Stretch, stretchesOf } from "./stretch.js";
import { wirePieces } from "./wire-length.js";

/** One line of the shopping list. */
export interface MaterialRow {
  /** Name in the price book. */
  readonly key: string;
  readonly item: string;
  /** As bought: whole feet, sticks or pieces; its expression adds up what each place needs. */
  readonly quantity: Worked;
  readonly unit: "ft" | "each";
  /** "8 sticks of 10 ft", "2 spools of 500 ft"; empty where the quantity says it. */
  readonly sold: string;
  /** Ids of the runs and segments it is for. */
  readonly from: readonly string[];
  readonly note: string;
}

export interface MaterialsList {
  readonly rows: readonly MaterialRow[];
  readonly assumptions: readonly Assumption[];
}

/** Everything one stretch needs: its conductors and what lies along it. */
export function stretchPieces(stretch: Stretch): readonly Piece[] {
  const pieces = [...wirePieces(stretch), ...alongPieces(stretch)];
  const { sets } = stretch.segment;
  return sets === 1 ? pieces : pieces.map((piece) => (piece.key === "warning ribbon" ? piece : eachSet(piece, sets)));
}

/** Sets in parallel each have their own conductors and raceway. */
const eachSet = (piece: Piece, sets: number): Piece => ({
  ...piece,
  quantity: decimal(piece.quantity).times(sets).toFixed(),
  expression: `${sets} × (${piece.expression})`,
});

/**
 * What the new work needs, counted from a design and rounded up to how it is sold. What stands already is not bought.
 *
 * @param given.allowances slack, make-up, waste; the usual ones when left out, each said as an assumption
 */
export function materialsList(given: { readonly design: Design; readonly allowances?: Allowances }): MaterialsList {
  const { design } = given;
  const allowances = given.allowances ?? USUAL_ALLOWANCES;
  assertAllowances(allowances);
  const runs = [...design.feeders.filter((f) => !f.feeder.existing), ...design.circuits];
  const pieces = runs.flatMap((run) => [...stretchesOf(run, allowances, design.edition).flatMap(stretchPieces), ...runPieces(run, design.edition)]);
  const rows = new Map<string, Piece[]>();
  for (const piece of pieces) {
    const name = `${piece.key}|${piece.item}`;
    rows.set(name, [...(rows.get(name) ?? []), piece]);
  }
  return { rows: [...rows.values()].map((alike, i) => row(alike, i, allowances)), assumptions: allowanceAssumptions(allowances) };
}

function row(alike: readonly Piece[], index: number, allowances: Allowances): MaterialRow {
  const { key, item, unit, sold } = alike[0]!;
  const exact = alike.reduce((sum, piece) => sum.plus(piece.quantity), decimal(0));
  const pack = sold === "stick" ? allowances.stickFt : sold === "foot" && key.startsWith("wire ") ? allowances.spoolFt : null;
  const packs = exact.div(pack ?? 1).ceil();
  const bought = packs.times(pack ?? 1);
  const rounding = pack === null ? (unit === "ft" ? "up to a whole foot" : null) : `up to whole ${sold === "stick" ? "sticks" : "spools"} of ${print(pack)} ft`;
  const what = sold === "stick" ? "stick" : "spool";
  const notes = [...new Set(alike.flatMap((piece) => (piece.note === null ? [] : [piece.note])))];
  return {
    key,
    item,
    unit,
    quantity: worked({
      id: `materials.${index + 1}`,
      label: item,
      value: bought.toFixed(),
      unit: unit === "ft" ? "ft" : "count",
      expression: alike.map((piece) => (alike.length > 1 && piece.expression.includes("rounded") ? `(${piece.expression})` : piece.expression)).join(" + "),
      inputs: alike.map((piece) => piece.from),
      rounding,
      citations: alike.flatMap((piece) => piece.citations),
    }),
    sold: pack === null ? "" : `${print(packs)} ${what}${packs.eq(1) ? "" : "s"} of ${print(pack)} ft`,
    from: [...new Set(alike.map((piece) => piece.from))],
    note: notes.join("; "),
  };
}
