import { Decimal, type Design, decimal, print } from "@branchwork/engine";
import type { Fee } from "./fee-schema.js";
import type { Overlay } from "./schema.js";

/** One line of a fee estimate, redoable with a pencil. Amounts in US dollars with two decimals. */
export interface FeeLine {
  readonly id: string;
  readonly label: string;
  readonly expression: string;
  /** Negative where a waiver lowers the fee. */
  readonly amount: string;
  readonly citation: string;
  readonly checked_on: string;
}

export interface FeeEstimate {
  readonly lines: readonly FeeLine[];
  readonly total: string;
  /** Due only if something happens, and not in the total. */
  readonly contingent: readonly (Pick<FeeLine, "id" | "label" | "amount" | "citation" | "checked_on"> & { readonly when: string })[];
  /** What was not counted, and why. */
  readonly left: readonly string[];
}

interface Counted {
  readonly amperes: string;
  readonly serves: string | null;
}

const dollars = (value: Decimal) => value.toDecimalPlaces(2).toFixed(2);
const money = (value: Decimal | number | string) => {
  const amount = decimal(value);
  const [whole, cents] = dollars(amount.abs()).split(".");
  return `${amount.isNegative() ? "-" : ""}${print(whole ?? "0")}.${cents}`;
};

/**
 * The permit fees of a design by the overlay's schedule, cents rounded half up.
 *
 * @param given.date day of the packet, as 2026-01-31: a waiver holds to its last day
 */
export function permitFees(given: { readonly overlay: Overlay; readonly design: Design; readonly date: string }): FeeEstimate {
  const { overlay, design, date } = given;
  const digs = [...design.feeders, ...design.circuits].some((run) => run.segments.some(({ segment }) => segment.place === "buried"));
  const circuits: Counted[] = design.circuits.map((c) => ({ amperes: c.rating, serves: c.circuit.serves }));
  const feeders: Counted[] = design.feeders.filter((f) => !f.feeder.existing).map((f) => ({ amperes: f.rating, serves: null }));
  const lines: FeeLine[] = [];
  const left: string[] = [];
  const contingent: FeeEstimate["contingent"][number][] = [];
  for (const fee of overlay.fees) {
    const { id, says: label, citation, checked_on = overlay.checked_on } = fee;
    const add = (amount: Decimal, expression: string) => lines.push({ id, label, expression, amount: dollars(amount), citation, checked_on });
    switch (fee.kind) {
      case "flat":
        if (fee.only_trench && !digs) left.push(`${label}: nothing is buried`);
        else add(decimal(fee.amount), money(fee.amount));
        break;
      case "per-circuit": {
        const { bands, over } = banded(fee, fee.feeders ? [...feeders, ...circuits] : circuits);
        if (over.length > 0) left.push(`${label}: no band for ${over.map((c) => `${c.amperes} A`).join(", ")}; ask`);
        if (bands.length > 0)
          add(
            bands.reduce((sum, { count, amount }) => sum.plus(decimal(amount).times(count)), new Decimal(0)),
            bands.map(({ count, amount, says }) => `${count} × ${money(amount)} (${says})`).join(" + "),
          );
        else if (over.length === 0) left.push(`${label}: no new circuit`);
        break;
      }
      case "per-opening": {
        const count = circuits.filter((c) => fee.serves === undefined || (c.serves !== null && fee.serves.includes(c.serves))).length;
        const paid = Math.max(0, count - fee.free);
        if (paid === 0) left.push(`${label}: ${count === 0 ? "no such outlet" : `${count} covered by another fee`}`);
        else if (fee.free > 0) add(decimal(fee.amount).times(paid), `(${count} − ${fee.free}) × ${money(fee.amount)}`);
        else add(decimal(fee.amount).times(paid), `${count} × ${money(fee.amount)}`);
        break;
      }
      case "surcharge": {
        const { sum, terms } = summed(lines, fee.of);
        const share = sum.times(fee.percent).div(100).toDecimalPlaces(2);
        const raised = fee.least !== undefined && share.lt(fee.least);
        const worked = `${terms} × ${fee.percent} / 100`;
        if (sum.isZero()) left.push(`${label}: no fee it is taken of`);
        else if (raised) add(decimal(fee.least ?? 0), `max(${worked}, ${money(fee.least ?? 0)})`);
        else add(share, worked);
        break;
      }
      case "waiver": {
        const { sum, terms } = summed(lines, fee.of);
        if (date > fee.until) left.push(`${label}: ended on ${fee.until}`);
        else if (sum.isZero()) left.push(`${label}: no fee to waive`);
        else add(sum.times(fee.percent).div(100).toDecimalPlaces(2).negated(), `−${terms} × ${fee.percent} / 100 (to ${fee.until})`);
        break;
      }
      default:
        contingent.push({ id, label, amount: dollars(decimal(fee.amount)), citation, checked_on, when: fee.when });
    }
  }
  const total = lines.reduce((sum, line) => sum.plus(line.amount), new Decimal(0));
  return { lines, total: dollars(total), contingent, left };
}

type PerCircuit = Extract<Fee, { kind: "per-circuit" }>;

/** How many circuits fall in each band, and those above the last. */
function banded(fee: PerCircuit, circuits: readonly Counted[]) {
  const bandOf = (c: Counted) => fee.bands.findIndex((band) => band.to === undefined || decimal(c.amperes).lte(band.to));
  const bands = fee.bands.flatMap((band, i) => {
    const count = circuits.filter((c) => bandOf(c) === i).length;
    const from = fee.bands[i - 1]?.to;
    const says =
      band.to === undefined ? (from === undefined ? "each" : `above ${from} A`) : from === undefined ? `to ${band.to} A` : `above ${from} to ${band.to} A`;
    return count === 0 ? [] : [{ count, amount: band.amount, says }];
  });
  return { bands, over: circuits.filter((c) => bandOf(c) < 0) };
}

/** The sum of the named lines, as it is written where it is used. */
function summed(lines: readonly FeeLine[], ids: readonly string[]): { readonly sum: Decimal; readonly terms: string } {
  const named = lines.filter((line) => ids.includes(line.id));
  const sum = named.reduce((total, line) => total.plus(line.amount), new Decimal(0));
  const terms = named.map((line) => money(line.amount)).join(" + ");
  return { sum, terms: named.length > 1 ? `(${terms})` : terms };
}

/** Printable rows: fee, how it is worked, amount, and where it stands. The last is the total. */
export function feeRows(estimate: FeeEstimate): readonly (readonly string[])[] {
  return [
    ...estimate.lines.map((line) => [line.label, line.expression, `$${money(line.amount)}`.replace("$-", "−$"), line.citation]),
    [
      "Total",
      estimate.lines
        .map((line) => money(line.amount).replace("-", "−"))
        .join(" + ")
        .replaceAll("+ −", "− "),
      `$${money(estimate.total)}`,
      "",
    ],
  ];
}
