import { mkdirSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import type { PacketSet } from "@branchwork/sheets";
import pixelmatch from "pixelmatch";
import { PNG } from "pngjs";
import type { Page } from "puppeteer-core";
import { beforeAll, describe, expect, it } from "vitest";
import { browsing, htmlOf, loadFixture, packetOf } from "./printing.js";

/*
 * Drawings as pictures, beside pictures that a person has looked at. Pixels are one browser's own, so they are compared in the
 * browser they were made in alone. UPDATE_GOLDENS=1 makes them anew: look at each before it is kept.
 */
const pictured = fileURLToPath(new URL("goldens/", import.meta.url));
const UPDATING = process.env.UPDATE_GOLDENS === "1";
const CASES: readonly { readonly job: string; readonly set: PacketSet; readonly overlay?: string }[] = [
  { job: "rv-50-carport", set: "submittal" },
  { job: "garage-subpanel", set: "submittal" },
  { job: "hot-tub", set: "field", overlay: "tamarack-hollow" },
  { job: "hot-tub", set: "submittal", overlay: "tamarack-hollow" },
];
/** How many of a picture's points may differ: an edge falls otherwise where a machine rounds otherwise. */
const MOST_DIFFERENT = 8;

const here = browsing();
let page: Page;
let version: string;
beforeAll(async () => {
  version = await here.browser.version();
  page = await here.browser.newPage();
  await page.setViewport({ width: 1100, height: 1000, deviceScaleFactor: 1 });
  if (UPDATING) {
    mkdirSync(pictured, { recursive: true });
    writeFileSync(join(pictured, "browser.txt"), `${version}\n`);
  }
}, 60_000);

const recorded = (): string => readFileSync(join(pictured, "browser.txt"), "utf8").trim();

const drawnOf = async ({ job, set, overlay }: (typeof CASES)[number]) => htmlOf(packetOf(await loadFixture(job, overlay), { set }));

/** Every drawing of a packet as a grey picture, in order; each at the corner of the window, so that words above it on its page cannot move its points. */
async function pictures(html: string): Promise<readonly PNG[]> {
  await page.setContent(html, { waitUntil: "load" });
  await page.addStyleTag({
    content: "body * { visibility: hidden } svg.shown, svg.shown * { visibility: visible } svg.shown { position: fixed; left: 0; top: 0; background: #fff }",
  });
  await page.evaluate("document.fonts.ready");
  const taken: PNG[] = [];
  for (const drawing of await page.$$(".drawing svg, .labels svg")) {
    await drawing.evaluate((svg) => svg.classList.add("shown"));
    taken.push(PNG.sync.read(Buffer.from(await drawing.screenshot({ type: "png" }))));
    await drawing.evaluate((svg) => svg.classList.remove("shown"));
  }
  return taken;
}

/** How many of a picture's points a person would see as different; all of them where the sizes differ. */
function difference(a: PNG, b: PNG): number {
  if (a.width !== b.width || a.height !== b.height) return a.width * a.height;
  return pixelmatch(a.data, b.data, undefined, a.width, a.height, { threshold: 0.15 });
}

describe.each(CASES)("$job, $set set", (one) => {
  it("draws what was looked at and kept", async ({ skip }) => {
    if (!UPDATING && version !== recorded()) skip(`pictures are of ${recorded()}, this is ${version}`);
    const taken = await pictures(await drawnOf(one));
    expect(taken.length).toBeGreaterThan(0);
    const name = (i: number) => `${one.job}-${one.set}-${i + 1}.png`;
    if (UPDATING) {
      for (const [i, picture] of taken.entries()) writeFileSync(join(pictured, name(i)), PNG.sync.write(picture, { colorType: 0, deflateLevel: 9 }));
      return;
    }
    expect(readdirSync(pictured).filter((file) => file.startsWith(`${one.job}-${one.set}-`))).toHaveLength(taken.length);
    const seen = taken.map((picture, i) => ({ name: name(i), different: difference(PNG.sync.read(readFileSync(join(pictured, name(i)))), picture) }));
    expect(seen.filter(({ different }) => different > MOST_DIFFERENT)).toEqual([]);
  });
});

it("a label moved by its own height, a line left out and a thinner line would be seen", async ({ skip }) => {
  if (UPDATING) skip("the pictures are being made");
  const html = await drawnOf(CASES[0]!);
  const kept = await pictures(html);
  const worst = async (bent: string) => Math.max(...(await pictures(bent)).map((picture, i) => difference(kept[i]!, picture)));
  expect(await worst(html)).toBe(0);
  expect(await worst(html.replace(/<text x="([\d.]+)" y="([\d.]+)"/, (_all, x, y) => `<text x="${x}" y="${Number(y) + 12}"`))).toBeGreaterThan(MOST_DIFFERENT);
  expect(await worst(html.replace(/<polyline [^>]*\/>/, ""))).toBeGreaterThan(MOST_DIFFERENT);
  expect(await worst(html.replaceAll('stroke-width="2', 'stroke-width="1'))).toBeGreaterThan(MOST_DIFFERENT);
});
