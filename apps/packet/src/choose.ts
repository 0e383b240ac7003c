import { chooseSizes, type Held, lawfulAlternatives } from "@branchwork/engine";
import { basisFrom } from "@branchwork/sheets";
import { EXIT } from "./exit-codes.js";
import { type LoadOptions, loadDesign } from "./load-design.js";
import { loadPrices } from "./price-book.js";
import { withExit } from "./report.js";

const percent = (value: string) => `${Number(value).toFixed(2)} %`;

/** `choose`: the cheapest lawful set of what the job leaves open, and every lawful conductor beside it. Exit 1 where a run has none. */
export function choose(
  job: string,
  options: LoadOptions & { readonly prices: string; readonly hold?: readonly Held[]; readonly json?: boolean },
): Promise<number> {
  return withExit(async () => {
    const loaded = await loadDesign(job, options);
    const { book } = await loadPrices(options.prices);
    const given = { job: loaded.design.job, basis: basisFrom(loaded.overlay, loaded.design.edition), book };
    const chosen = chooseSizes({ ...given, held: options.hold ?? [] });
    const alternatives = lawfulAlternatives({ ...given, job: chosen.job });
    const { runs, total, withinWholeWay } = chosen;
    if (options.json)
      console.log(
        JSON.stringify(
          {
            format: "branchwork-choice/1",
            currency: book.currency,
            prices: { date: book.date, source: book.source },
            runs,
            total,
            withinWholeWay,
            alternatives,
          },
          null,
          2,
        ),
      );
    else {
      for (const run of runs) {
        console.log(
          run.found
            ? `${run.name}: ${book.currency} ${run.cost.low} to ${run.cost.high}, likely ${run.cost.likely}; drop ${percent(run.dropPercent)}`
            : `${run.name}: none. ${run.why}`,
        );
        if (!run.found) {
          for (const finding of run.standing) console.log(`    ${finding.subject}: ${finding.says}`);
          continue;
        }
        for (const s of run.segments)
          console.log(
            `    ${s.name}: ${s.method}${s.tradeSize === null ? "" : ` ${s.tradeSize} in`}, ${s.material} ${s.size}, ground ${s.grounding}; likely ${s.cost.likely}`,
          );
        if (run.unpriced.length > 0) console.log(`    not compared, unpriced: ${run.unpriced.length} (all in --json)`);
      }
      for (const { name, alternatives: ways } of alternatives) {
        console.log(`\n${name}: lawful conductors, the rest as chosen`);
        for (const way of ways)
          console.log(
            `  ${way.chosen ? "*" : " "} ${way.material} ${way.size} in ${way.segments.join(", ")}: drop ${percent(way.dropPercent)}, ${way.cost === null ? "unpriced" : `likely ${way.cost.likely}`}`,
          );
      }
      if (!withinWholeWay) console.log("\nNo set keeps every way from the service within 5 %; each run keeps its own limit.");
      console.log(
        `\nWire, raceway and fittings along the way by measure: ${book.currency} ${total.low} to ${total.high}, likely ${total.likely}. Prices: ${book.source}, ${book.date}.`,
      );
    }
    return runs.every((run) => run.found) ? EXIT.ready : EXIT.findings;
  });
}
