// Measures the engine and the packet as built. `--json` for figures alone; names of sections to run only those: sizing designing loading choosing printing.
import { existsSync } from "node:fs";
import { availableParallelism, loadavg } from "node:os";
import { dirname } from "node:path";
import { fileURLToPath } from "node:url";
import { parseArgs } from "node:util";
import { choosing, designing, loaded } from "./bench/designing.mjs";
import { loading } from "./bench/loading.mjs";
import { print } from "./bench/measure.mjs";
import { printing } from "./bench/printing.mjs";
import { sizing } from "./bench/sizing.mjs";

const root = dirname(dirname(fileURLToPath(import.meta.url)));
process.chdir(root);
const { values, positionals } = parseArgs({ options: { json: { type: "boolean", default: false } }, allowPositionals: true });

const engine = () => loaded(root);
const SECTIONS = {
  sizing: ["Conductor, ground and drop, one core", () => sizing(root)],
  designing: ["Whole designs with every check", async () => designing(await engine())],
  loading: ["Loading the engine", () => loading(root)],
  choosing: ["Choosing the cheapest lawful set", async () => choosing(await engine())],
  printing: ["Packet of the demo job", () => printing(root)],
};
const unknown = positionals.filter((name) => !Object.hasOwn(SECTIONS, name));
if (unknown.length > 0) {
  console.error(`bench: no section ${unknown.join(", ")}; there are ${Object.keys(SECTIONS).join(", ")}`);
  process.exit(2);
}
if (!existsSync("apps/packet/dist/main.js") || !existsSync("packages/engine/dist/index.js")) {
  console.error("bench: nothing is built; run `pnpm build` first");
  process.exit(3);
}

const machine = { cores: availableParallelism(), node: process.versions.node, platform: `${process.platform} ${process.arch}`, loadAtStart: loadavg()[0] };
if (!values.json) {
  console.log(`${machine.cores} cores, Node ${machine.node}, ${machine.platform}; load ${machine.loadAtStart.toFixed(1)} at the start`);
  if (machine.loadAtStart > 0.5 * machine.cores) console.log("The machine is busy with other work: times are longer than on an idle one; ratios hold.");
}
const sections = {};
for (const [name, [title, run]] of Object.entries(SECTIONS)) {
  if (positionals.length > 0 && !positionals.includes(name)) continue;
  sections[name] = await run();
  if (!values.json) print(title, sections[name]);
}
if (values.json) console.log(JSON.stringify({ format: "branchwork-bench/1", machine: { ...machine, loadAtEnd: loadavg()[0] }, sections }, null, 2));
else console.log(`\nLoad ${loadavg()[0].toFixed(1)} at the end`);
