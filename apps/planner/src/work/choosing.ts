import { type Basis, chooseSizes, type Job, lawfulAlternatives, type PriceBook, printSize, readPriceBook } from "@branchwork/engine";
import EXAMPLE_PRICES from "../../../../fixtures/prices/demo.yaml?raw";
import { loaded } from "./loaded.js";
import { withoutNames } from "./names-stand-in.js";
import type { ChooseAnswer, Given } from "./protocol.js";

/** One stretch as it would be built; what the job's text takes for it. */
export interface ShownStretch {
  readonly name: string;
  readonly method: string;
  readonly material: "copper" | "aluminum";
  readonly size: string;
  readonly wire: string;
  readonly tradeSize: string | null;
}
export interface ShownChoice {
  readonly id: string;
  readonly stretches: readonly ShownStretch[];
  readonly dropPercent: string;
  readonly cost: string;
  /** Why there is none; empty where there is. */
  readonly none: string;
}
export interface ShownAlternative {
  readonly segments: readonly string[];
  readonly material: "copper" | "aluminum";
  readonly size: string;
  readonly wire: string;
  readonly tradeSizes: string;
  readonly dropPercent: string;
  readonly cost: string | null;
  readonly chosen: boolean;
}
export interface ShownAlternatives {
  readonly id: string;
  readonly ways: readonly ShownAlternative[];
}

interface Asked {
  readonly job: Job;
  readonly book: PriceBook;
  readonly basis: Basis;
}

/** The cheapest lawful way of every new run, and for each pull the other wires that are lawful there. */
export function choosing(given: Given & { readonly prices: string | null; readonly anyMethod: boolean }): ChooseAnswer {
  const read = loaded(given);
  const made = read.ok ? read : withoutNames(given, read.issues);
  if (!made.ok) return made;
  const prices = readPriceBook(given.prices ?? EXAMPLE_PRICES);
  if (!prices.ok) return { ok: false, issues: prices.issues.map((issue) => ({ ...issue, of: "prices" })) };
  const asked: Asked = { job: made.design.job, book: prices.book, basis: made.basis };
  const chosen = chooseSizes({ ...asked, held: given.anyMethod ? [] : ["method"] });
  return {
    ok: true,
    source: `${prices.book.source}, ${prices.book.date}`,
    currency: prices.book.currency,
    withinWholeWay: chosen.withinWholeWay,
    runs: chosen.runs.map((run) =>
      run.found
        ? {
            id: run.id,
            none: "",
            dropPercent: run.dropPercent,
            cost: run.cost.likely,
            stretches: run.segments.map((s) => ({
              name: s.name,
              method: s.method,
              material: s.material,
              size: s.size,
              wire: `${printSize(s.size)} ${s.material}`,
              tradeSize: s.tradeSize,
            })),
          }
        : { id: run.id, none: run.why, dropPercent: "", cost: "", stretches: [] },
    ),
    alternatives: alternatives(asked),
  };
}

function alternatives(asked: Asked) {
  return lawfulAlternatives(asked).map(({ id, alternatives: ways }) => ({
    id,
    ways: ways.map((way) => ({
      segments: way.segments,
      material: way.material,
      size: way.size,
      wire: `${printSize(way.size)} ${way.material}`,
      tradeSizes: [...new Set(way.tradeSizes.filter((size) => size !== null))].join(", "),
      dropPercent: way.dropPercent,
      cost: way.cost?.likely ?? null,
      chosen: way.chosen,
    })),
  }));
}
