// Times one packet three ways, in one run, on the demo job: against the browser's own print, the design alone, the whole command.
import { spawnSync } from "node:child_process";
import { existsSync, mkdtempSync, readdirSync, rmSync } from "node:fs";
import { cpus, tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { performance } from "node:perf_hooks";
import { fileURLToPath } from "node:url";

const root = dirname(dirname(fileURLToPath(import.meta.url)));
process.chdir(root);
const date = "2026-01-01";
const when = new Date(`${date}T00:00:00Z`);
const overlay = "fixtures/overlays/tamarack-hollow.yaml";
const demo = "fixtures/jobs/rv-50-carport.yaml";
const rounds = { warmUp: 5, print: 40, design: 200, build: 7 };

if (!existsSync("apps/packet/dist/main.js")) {
  console.error("bench: nothing is built; run `pnpm build` first");
  process.exit(3);
}
const [{ composePacket, renderHtml }, { loadDesign }, { packetFonts }, { openPrinter }, { findBrowser }, { launchBrowser }] = await Promise.all(
  [
    "packages/sheets/dist/index.js",
    ...["load-design", "fonts", "print/printer", "print/browser", "print/launch"].map((name) => `apps/packet/dist/${name}.js`),
  ].map((path) => import(join(root, path))),
);

function summary(times) {
  const sorted = [...times].sort((a, b) => a - b);
  return { median: sorted[Math.floor(sorted.length / 2)], p95: sorted[Math.min(sorted.length - 1, Math.floor(sorted.length * 0.95))] };
}

const ms = (value) => `${value.toFixed(value < 10 ? 2 : 0)} ms`;
const line = (what, { median, p95 }, count) => console.log(`${what.padEnd(52)} median ${ms(median).padStart(8)}   p95 ${ms(p95).padStart(8)}   n=${count}`);

async function timed(times, work) {
  const start = performance.now();
  const result = await work();
  times.push(performance.now() - start);
  return result;
}

/** From file to HTML: read, design, compose, render. */
async function toHtml(fonts) {
  const { design, overlay: town, targets } = await loadDesign(demo, { overlay });
  const packet = composePacket({ design, overlay: town, date, targets });
  return { html: renderHtml({ packet, fonts }), expectText: packet.title };
}

/** The whole packet and the bare print of its HTML, turn about, so that a busy moment meets both. */
async function packetAgainstBare(fonts) {
  const warn = () => undefined;
  const printer = await openPrinter({ warn });
  const bare = await launchBrowser(await findBrowser({}), warn);
  const packetTimes = [];
  const bareTimes = [];
  try {
    const page = await bare.browser.newPage();
    const { html } = await toHtml(fonts);
    for (let round = -rounds.warmUp; round < rounds.print; round += 1) {
      const counted = round >= 0;
      await timed(counted ? packetTimes : [], async () => {
        const { html: fresh, expectText } = await toHtml(fonts);
        return printer.print(fresh, { date: when, expectText });
      });
      await timed(counted ? bareTimes : [], async () => {
        await page.setContent(html, { waitUntil: "load" });
        return page.pdf({ tagged: true, outline: true, preferCSSPageSize: true, printBackground: true });
      });
    }
    console.log(
      `${printer.version}; Node ${process.versions.node}; ${cpus().length} × ${cpus()[0]?.model ?? "unknown processor"}; HTML ${Math.round(html.length / 1024)} KB`,
    );
  } finally {
    await Promise.all([printer.close(), bare.close()]);
  }
  return { packetTimes, bareTimes };
}

async function designTimes(job) {
  const times = [];
  for (let round = 0; round < rounds.design; round += 1) await timed(times, () => loadDesign(job, { overlay }));
  return times;
}

function buildTimes() {
  const times = [];
  for (let round = 0; round < rounds.build; round += 1) {
    const out = mkdtempSync(join(tmpdir(), "branchwork-bench-"));
    const start = performance.now();
    const { status, stderr } = spawnSync(
      process.execPath,
      ["apps/packet/dist/main.js", "build", demo, "--overlay", overlay, "--out", out, "--format", "pdf", "--date", date],
      { encoding: "utf8" },
    );
    times.push(performance.now() - start);
    const made = readdirSync(out).some((name) => name.endsWith(".pdf"));
    rmSync(out, { recursive: true });
    if (!made) throw new Error(`build made no PDF (exit ${status}): ${stderr}`);
  }
  return times;
}

const { packetTimes, bareTimes } = await packetAgainstBare(await packetFonts());
line("packet, warm: job file to checked PDF", summary(packetTimes), rounds.print);
line("bare, warm: set the same HTML and page.pdf()", summary(bareTimes), rounds.print);
console.log(`packet / bare${" ".repeat(40)}ratio  ${(summary(packetTimes).median / summary(bareTimes).median).toFixed(3)}`);
for (const name of readdirSync("fixtures/jobs")
  .filter((file) => file.endsWith(".yaml") && !file.startsWith("bad-"))
  .sort()) {
  line(`read and design ${name}`, summary(await designTimes(join("fixtures/jobs", name))), rounds.design);
}
line("whole command: branchwork build, pdf only", summary(buildTimes()), rounds.build);
