import { performance } from "node:perf_hooks";

/** Runs a work so many times, each timed in ms; warm-up rounds are not counted. */
export async function timed(rounds, work, warmUp = 0) {
  const times = [];
  for (let round = -warmUp; round < rounds; round += 1) {
    const start = performance.now();
    await work();
    if (round >= 0) times.push(performance.now() - start);
  }
  return times;
}

/** Least, median and 95th of a hundred. The least is nearest to what an idle machine needs. */
export function summary(times) {
  const sorted = [...times].sort((a, b) => a - b);
  const at = (part) => sorted[Math.min(sorted.length - 1, Math.floor(sorted.length * part))];
  return { least: sorted[0], median: at(0.5), p95: at(0.95), n: sorted.length };
}

/** One measured row: what, its figures in ms, and the most it should be, of its median. */
export const row = (what, times, aim) => ({ what, unit: "ms", ...summary(times), ...(aim === undefined ? {} : { aim }) });

/** One figure worked from rows of the same run, and the most (or least) it should be. */
export const figure = (what, value, unit, aim) => ({ what, unit, value, ...(aim === undefined ? {} : { aim }) });

const number = (value, unit) => {
  const digits = unit === "ratio" ? 3 : value < 10 ? 2 : 0;
  return `${value.toLocaleString("en-US", { minimumFractionDigits: digits, maximumFractionDigits: digits })} ${unit === "ratio" ? "" : unit}`.trim();
};

export function print(section, rows) {
  console.log(`\n${section}`);
  for (const { what, unit, aim, n, least, median, p95, value } of rows) {
    const found = value === undefined ? `median ${number(median, unit)}, least ${number(least, unit)}, p95 ${number(p95, unit)}, n=${n}` : number(value, unit);
    console.log(`  ${what.padEnd(58)} ${found}${aim === undefined ? "" : `   aim: ${aim}`}`);
  }
}
