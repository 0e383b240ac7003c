import { spawnSync } from "node:child_process";
import { mkdtempSync, readdirSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { performance } from "node:perf_hooks";
import { figure, row } from "./measure.mjs";

const date = "2026-01-01";
const overlay = "fixtures/overlays/tamarack-hollow.yaml";
const demo = "fixtures/jobs/rv-50-carport.yaml";
const rounds = { warmUp: 5, print: 30, build: 5 };

async function stopwatch(times, counted, work) {
  const start = performance.now();
  const result = await work();
  if (counted) times.push(performance.now() - start);
  return result;
}

/**
 * One packet of the demo job, from job file to finished PDF (designed, composed, printed, read back, files attached), and the browser's
 * own page.pdf() of the same HTML; turn about, so that a busy moment meets both.
 */
export async function printing(root) {
  const from = (name) => import(join(root, "apps/packet/dist", `${name}.js`));
  const [{ packetFiles }, { loadDesign }, { packetFonts }, { openPrinter }, { findBrowser }, { launchBrowser }] = await Promise.all(
    ["build", "load-design", "fonts", "print/printer", "print/browser", "print/launch"].map(from),
  );
  const warn = (message) => console.error(message);
  const [fonts, printer, bare] = [await packetFonts(), await openPrinter({ warn }), await launchBrowser(await findBrowser({}), warn)];
  const make = async (formats) => {
    const loaded = await loadDesign(demo, { overlay });
    return packetFiles({ name: "demo", loaded, date, edition: undefined, formats, fonts, print: (html, options) => printer.print(html, options) });
  };
  const [packetTimes, bareTimes] = [[], []];
  let html;
  let bytes;
  try {
    html = String((await make(["html"]))[0].bytes);
    const page = await bare.browser.newPage();
    for (let round = -rounds.warmUp; round < rounds.print; round += 1) {
      [{ bytes }] = await stopwatch(packetTimes, round >= 0, () => make(["pdf"]));
      await stopwatch(bareTimes, round >= 0, async () => {
        await page.setContent(html, { waitUntil: "load" });
        return page.pdf({ tagged: true, outline: true, preferCSSPageSize: true, printBackground: true });
      });
    }
  } finally {
    await Promise.all([printer.close(), bare.close()]);
  }
  const rows = [row("packet, warm: job file to finished PDF", packetTimes), row("bare, warm: set the same HTML and page.pdf()", bareTimes)];
  return [
    ...rows,
    figure("packet / bare", rows[0].median / rows[1].median, "ratio", "1.15 or less"),
    figure("HTML", html.length / 1024, "KB"),
    figure("PDF with what it carries", bytes.length / 1024, "KB"),
    row("fresh command: branchwork build, pdf only", buildTimes(), "under 3,000 ms"),
  ];
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
