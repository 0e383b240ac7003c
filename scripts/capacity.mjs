// Packets a second of a batch, one run a number of cores, and the memory of the program and its browser over the first and the last hundred.
// node scripts/capacity.mjs [--packets N] [--cores 1,2] [--seconds N]
import { spawn } from "node:child_process";
import { once } from "node:events";
import { existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { availableParallelism, loadavg, tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { performance } from "node:perf_hooks";
import { setTimeout as sleep } from "node:timers/promises";
import { fileURLToPath } from "node:url";
import { parseArgs } from "node:util";

const root = dirname(dirname(fileURLToPath(import.meta.url)));
const main = join(root, "apps/packet/dist/main.js");
const { values } = parseArgs({
  options: { packets: { type: "string", default: "300" }, cores: { type: "string", default: "1,2" }, seconds: { type: "string", default: "100" } },
});
if (process.platform !== "linux" || !existsSync(main)) {
  console.error(process.platform === "linux" ? "capacity: nothing is built; run `pnpm build` first" : "capacity: runs on Linux only");
  process.exit(3);
}
const packets = Number(values.packets);
const fixtures = ["rv-50-carport", "rv-30-small-service", "ev-48-attic"].map((name) => readFileSync(join(root, `fixtures/jobs/${name}.yaml`), "utf8"));

/** Resident memory of a process and all below it, in MB; of what several hold in common each counts its share. */
function memoryOf(pid) {
  const all = new Map();
  for (const name of readdirSync("/proc").filter((one) => /^\d+$/.test(one))) {
    try {
      const stat = readFileSync(`/proc/${name}/stat`, "utf8");
      const fields = stat.slice(stat.lastIndexOf(")") + 2).split(" ");
      all.set(Number(name), Number(fields[1]));
    } catch {}
  }
  const isOf = (one) => one === pid || (all.has(one) && isOf(all.get(one)));
  let kilobytes = 0;
  for (const one of all.keys()) {
    if (!isOf(one)) continue;
    try {
      kilobytes += Number(/^Pss:\s+(\d+)/m.exec(readFileSync(`/proc/${one}/smaps_rollup`, "utf8"))?.[1] ?? 0);
    } catch {}
  }
  return kilobytes / 1024;
}

async function measure(cores) {
  const top = mkdtempSync(join(tmpdir(), "branchwork-capacity-"));
  try {
    mkdirSync(join(top, "jobs"));
    for (let n = 0; n < packets; n += 1)
      writeFileSync(join(top, "jobs", `job-${n}.yaml`), fixtures[n % fixtures.length].replace(/^( {2}title: ).*$/m, `$1Job ${n}`));
    const list = Array.from({ length: cores }, (_, i) => i).join(",");
    const args = ["-c", list, process.execPath, main, "batch", join(top, "jobs"), "--out", join(top, "out"), "--date", "2026-01-01", "--jobs", String(cores)];
    const child = spawn("taskset", args, { stdio: "ignore" });
    const gone = once(child, "exit");
    const samples = [];
    const end = performance.now() + Number(values.seconds) * 1000;
    while (child.exitCode === null && performance.now() < end) {
      await Promise.race([gone, sleep(1000)]);
      if (child.exitCode !== null) break;
      const report = join(top, "out/report.jsonl");
      const made = existsSync(report) ? readFileSync(report, "utf8").split("\n").length - 1 : 0;
      samples.push({ made, time: performance.now(), megabytes: memoryOf(child.pid) });
    }
    if (child.exitCode === null) child.kill("SIGINT");
    await gone;
    const [first, last] = [samples.find(({ made }) => made > 0), samples.at(-1)];
    if (!first || last.made <= first.made) throw new Error("no packet was made in the time given");
    const made = last.made - first.made;
    const peak = (from, to) => Math.max(...samples.filter((one) => one.made >= from && one.made <= to).map(({ megabytes }) => megabytes));
    const span = Math.min(100, Math.floor(last.made / 2));
    console.log(
      `${cores} ${cores === 1 ? "core " : "cores"}: ${(made / ((last.time - first.time) / 1000)).toFixed(2)} packets/s over ${made}; ` +
        `memory at most ${Math.round(peak(0, span))} MB in the first ${span}, ${Math.round(peak(last.made - span, last.made))} MB in the last ${span}; ` +
        `load of the machine ${loadavg()[0].toFixed(1)} on ${availableParallelism()} cores`,
    );
  } finally {
    rmSync(top, { recursive: true, force: true });
  }
}

for (const cores of values.cores.split(",").map(Number)) await measure(cores);
