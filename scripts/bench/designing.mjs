import { readdirSync, readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { join } from "node:path";
import { row, timed } from "./measure.mjs";
import { twentyCircuits } from "./twenty-circuits.mjs";

/** The engine as built, and the fixture jobs as read. */
export async function loaded(root) {
  const engine = await import(join(root, "packages/engine/dist/index.js"));
  const { stringify } = createRequire(join(root, "packages/engine/package.json"))("yaml");
  const read = (name, text) => {
    const found = engine.readJob(text);
    if (!found.ok) throw new Error(`${name}: ${JSON.stringify(found.issues)}`);
    return { name, job: found.job };
  };
  const folder = join(root, "fixtures/jobs");
  const names = readdirSync(folder).filter((name) => name.endsWith(".yaml") && !name.startsWith("bad-"));
  const jobs = names.sort().map((name) => read(name, readFileSync(join(folder, name), "utf8")));
  const prices = engine.readPriceBook(readFileSync(join(root, "fixtures/prices/demo.yaml"), "utf8"));
  if (!prices.ok) throw new Error(JSON.stringify(prices.issues));
  return { engine, jobs, twenty: read("twenty circuits and a subpanel", stringify(twentyCircuits())), book: prices.book };
}

/** A whole design with every check, of each fixture job and of twenty circuits. */
export async function designing({ engine, jobs, twenty }) {
  const rows = [];
  for (const { name, job } of [...jobs, twenty]) {
    const aim = name === twenty.name ? "under 20 ms" : name === "rv-50-carport.yaml" ? "under 5 ms" : undefined;
    rows.push(row(`design ${name}`, await timed(60, () => engine.design({ job }), 20), aim));
  }
  return rows;
}

/** The cheapest lawful set for each fixture job, from all that is priced, and the alternatives beside it. */
export async function choosing({ engine, jobs, book }) {
  const rows = [];
  for (const { name, job } of jobs) {
    let chosen;
    const choose = await timed(3, () => {
      chosen = engine.chooseSizes({ job, book });
    });
    rows.push(row(`choose ${name}`, choose, "under 1,000 ms"));
    rows.push(row(`  and every lawful conductor beside it`, await timed(2, () => engine.lawfulAlternatives({ job: chosen.job, book }))));
  }
  return rows;
}
