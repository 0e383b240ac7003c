import { materialsCsv, materialsList, orderOfWork, priceMaterials, regrets } from "@branchwork/engine";
import { EXIT } from "./exit-codes.js";
import { type LoadOptions, loadDesign } from "./load-design.js";
import { loadPrices } from "./price-book.js";
import { withExit } from "./report.js";

/** `materials`: what to buy, with its cost where a price book is given, what to regret beforehand, and the order of work. */
export function materials(job: string, options: LoadOptions & { readonly prices?: string; readonly csv?: boolean; readonly json?: boolean }): Promise<number> {
  return withExit(async () => {
    const { design } = await loadDesign(job, options);
    const list = materialsList({ design });
    const priced = options.prices === undefined ? null : priceMaterials({ rows: list.rows, book: (await loadPrices(options.prices)).book });
    const work = orderOfWork(design);
    const warned = regrets(design);
    if (options.csv) process.stdout.write(materialsCsv(priced?.rows ?? list.rows));
    else if (options.json)
      console.log(JSON.stringify({ format: "branchwork-materials/1", ready: design.ready, ...list, priced, regrets: warned, orderOfWork: work }, null, 2));
    else {
      for (const [i, row] of list.rows.entries()) {
        const of = priced?.rows[i];
        const cost = of === undefined ? "" : of.cost === null ? `  unpriced: ${of.unpriced}` : `  ${of.cost.low} to ${of.cost.high}, likely ${of.cost.likely}`;
        console.log(`${row.quantity.value.padStart(6)} ${row.unit.padEnd(4)}  ${row.item}${row.sold ? ` (${row.sold})` : ""}${cost}`);
      }
      if (priced !== null) {
        const { total } = priced;
        console.log(`\n${priced.currency} ${total.low} to ${total.high}, likely ${total.likely}. Prices: ${priced.source}, ${priced.date}.`);
        if (priced.unpriced.length > 0) console.log(`Not in the total, unpriced: ${priced.unpriced.join("; ")}.`);
      }
      console.log(`\nTaken:\n${list.assumptions.map(({ says }) => `  ${says}`).join("\n")}`);
      if (warned.length > 0) console.log(`\nBefore you buy:\n${warned.map(({ kind, says, instead }) => `  ${kind}: ${says}; ${instead}`).join("\n")}`);
      console.log(`\nOrder of work:\n${work.map(({ says, hold }, i) => `  ${String(i + 1).padStart(2)}. ${hold ? "HOLD  " : ""}${says}`).join("\n")}`);
    }
    return design.ready ? EXIT.ready : EXIT.findings;
  });
}
