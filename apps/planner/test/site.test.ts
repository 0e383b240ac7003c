import { expect, test } from "vitest";
import { commandLineText, type Driven, type WindowSize } from "./driven.js";
import { beginRv50, jobFile, planner } from "./planner.js";

const site = planner();

const JOB = jobFile("rv-50-carport");

async function onSite(size?: WindowSize): Promise<Driven> {
  const reader = await site.openJob(JOB, size);
  await reader.press("5");
  await reader.page.waitForSelector("svg.site:not(.unmeasured)");
  return reader;
}

const thing = (key: string) => `[data-thing="site_plan.${key}"]`;

/** Puts the focus on a thing of the drawing, as the tab key would. */
async function focusOn(reader: Driven, selector: string): Promise<void> {
  await reader.page.waitForSelector(selector);
  await reader.page.$eval(selector, (element) => (element as SVGElement).focus());
}

/** Middle of something in the drawing, on the screen. */
const middleOf = (reader: Driven, selector: string) =>
  reader.page.$eval(selector, (element) => {
    element.scrollIntoView({ block: "center", inline: "center" });
    const { left, top, width, height } = element.getBoundingClientRect();
    return { x: left + width / 2, y: top + height / 2 };
  });

/** Pixels to the foot: the lot is 90 ft across. */
const scaleOf = (reader: Driven) =>
  reader.page.$eval(`${'[data-thing="site_plan.lot"]'} polygon.line`, (lot) => {
    const xs = lot
      .getAttribute("points")!
      .split(" ")
      .map((pair) => Number(pair.split(",")[0]));
    return (Math.max(...xs) - Math.min(...xs)) / 90;
  });

/** The place of a thing as the job's file has it now. */
async function written(reader: Driven, key: string): Promise<string> {
  const file = (await reader.downloadedFrom("Review", "Job file")).text;
  const line = file.split("\n").find((each) => each.includes(key));
  return (line?.trim() ?? "").replaceAll('"', "").replace(/\[ +/g, "[").replace(/ +\]/g, "]"); // however it is quoted
}

/** What is said of the last move, once it says so. */
const told = (reader: Driven, words: string) =>
  reader.page
    .waitForFunction((wanted) => document.querySelector(".said")?.textContent?.includes(wanted) === true, { timeout: 10_000 }, words)
    .catch(async (error: unknown) => {
      throw new Error(`not told ${words}: ${await reader.page.$eval(".said", (said) => said.textContent)}`, { cause: error });
    });

test("a thing is dragged by the mouse, in half feet, and one press of Undo brings it back", async () => {
  const reader = await onSite();
  await reader.screenshot("site-1280");
  const at = await middleOf(reader, `${thing("points[2]")} .reach`);
  const scale = await scaleOf(reader);
  await reader.page.mouse.move(at.x, at.y);
  await reader.page.mouse.down();
  await reader.page.mouse.move(at.x + 6 * scale, at.y + 2 * scale, { steps: 4 });
  await reader.page.mouse.move(at.x + 10 * scale, at.y - 4 * scale, { steps: 4 });
  await reader.page.mouse.up();
  // The outlet stands at 66 ft across, 30 ft up in the file; 10 ft right and 4 ft up of it is 76 and 34.
  await told(reader, "RV outlet: 76 ft across, 34 ft up.");
  expect(await written(reader, "kind: outlet")).toBe("- { kind: outlet, name: RV outlet, at: [76 ft, 34 ft] }");
  await reader.press("Undo");
  expect(await written(reader, "kind: outlet")).toContain("at: [66 ft, 30 ft]");
  expect(reader.errors).toEqual([]);
  await reader.close();
});

test("by keyboard alone: to a thing, moved by arrows, a corner added and taken out, a thing taken off", async () => {
  const reader = await onSite();
  await reader.page.evaluate(() => [...document.querySelectorAll<HTMLElement>(".site-tools button")].at(-1)!.focus());
  for (let i = 0; i < 20; i++) {
    await reader.page.keyboard.press("Tab");
    if (await reader.page.evaluate((wanted) => document.activeElement?.matches(wanted) === true, thing("points[0]"))) break;
  }
  expect(await reader.page.evaluate(() => getComputedStyle(document.activeElement!).outlineStyle)).not.toBe("none");
  await reader.page.keyboard.press("ArrowRight");
  await told(reader, "Meter: 23 ft across, 58 ft up.");
  await reader.page.keyboard.down("Shift");
  await reader.page.keyboard.press("ArrowDown");
  await reader.page.keyboard.up("Shift");
  await told(reader, "Meter: 23 ft across, 48 ft up.");
  // Presses without a pause are one step back; a busy machine may have paused between them.
  await reader.press("Undo");
  if ((await written(reader, "kind: meter")).includes("23 ft")) await reader.press("Undo");
  expect(await written(reader, "kind: meter")).toContain("at: [22 ft, 58 ft]");
  // The carport: a corner between its first two, moved up, and taken out again.
  await focusOn(reader, thing("outlines[2]"));
  await focusOn(reader, 'g.new-corner[aria-label^="Add a corner to Carport between corner 1 "]');
  await reader.page.keyboard.press("Enter");
  await told(reader, "A corner is added to Carport.");
  await focusOn(reader, 'g.corner[aria-label^="Corner 2 of Carport: 74 ft across, 12 ft up"]');
  await reader.page.keyboard.press("ArrowUp");
  await told(reader, "Carport: 74 ft across, 13 ft up.");
  expect(await written(reader, "name: Carport")).toContain("points: [[65 ft, 12 ft], [74 ft, 13 ft], [83 ft, 12 ft]");
  await focusOn(reader, thing("outlines[2]"));
  await focusOn(reader, 'g.corner[aria-label^="Corner 2 of Carport"]');
  await reader.page.keyboard.press("Delete");
  await told(reader, "Corner 2 of Carport is taken out.");
  expect(await written(reader, "name: Carport")).toContain("points: [[65 ft, 12 ft], [83 ft, 12 ft]");
  await focusOn(reader, thing("points[3]"));
  await reader.page.keyboard.press("Delete");
  await reader.page.waitForFunction(() => document.querySelector(".notice")?.textContent?.includes("Gas meter is taken off the site plan.") === true);
  expect(await written(reader, "kind: gas")).toBe("");
  await reader.press("Undo it");
  expect(await written(reader, "kind: gas")).toContain("Gas meter");
  expect(reader.errors).toEqual([]);
  await reader.close();
});

test("places are typed too, with their unit; in metres the plan is shown in metres and what was written stays", async () => {
  const reader = await onSite();
  await reader.page.select("#site-thing", "site_plan.points[0]");
  await reader.page.waitForSelector('[id="field-site_plan.points[0].at[0]"]');
  await reader.type("Across", "8 m");
  expect(await written(reader, "kind: meter")).toContain("at: [8 m, 58 ft]");
  await reader.answer("Measured in", "Metres");
  await reader.page.select("#site-thing", "site_plan.points[1]");
  const across = '[id="field-site_plan.points[1].at[0]"]';
  await reader.page.waitForSelector(across);
  // 30 ft is 9.144 m by definition.
  expect(await reader.page.$eval(across, (input) => (input as HTMLInputElement).value)).toBe("9.14");
  expect(await written(reader, "kind: panel")).toContain("at: [30 ft, 52 ft]");
  await reader.page.select("#site-thing", "site_plan.points[1]");
  await reader.page.waitForSelector(across);
  await reader.type("Across", "abc");
  await reader.page.waitForFunction(
    () => document.querySelector('[id="field-site_plan.points[1].at[0]-wrong"]')?.textContent?.includes("is not a number and a unit") === true,
  );
  // From elsewhere, its line among what is wanted leads back to the field.
  await reader.press("1");
  await reader.press("Site plan: ");
  await reader.page.waitForFunction(() => document.activeElement?.id === "field-site_plan.points[1].at[0]", { timeout: 10_000 });
  await reader.close();
});

test("the way's length follows the drag beside the job's, and one press takes it into the job", async () => {
  const reader = await onSite();
  const row = () => reader.page.$$eval(".ways tbody tr", (rows) => rows.map((each) => [...each.children].map((cell) => cell.textContent?.trim() ?? "")));
  const trench = async () => (await row()).find(([name]) => name?.startsWith("Trench under driveway"))!;
  // 20 ft down and 14 ft across are 34 ft; the job says 34 ft.
  expect((await trench()).slice(1)).toEqual(["34 ft", "34 ft", "agrees"]);
  await reader.page.select("#site-thing", "site_plan.routes[1]");
  const end = await reader.page.waitForSelector('g.corner[aria-label^="Corner 3 of Way of Trench"]');
  expect(end).not.toBeNull();
  const at = await middleOf(reader, 'g.corner[aria-label^="Corner 3 of Way of Trench"] .reach');
  const scale = await scaleOf(reader);
  await reader.page.mouse.move(at.x, at.y);
  await reader.page.mouse.down();
  await reader.page.mouse.move(at.x + 12 * scale, at.y, { steps: 6 });
  await reader.page.waitForFunction(() => document.querySelector(".ways")?.textContent?.includes("46 ft") === true, { timeout: 10_000 });
  expect((await trench()).slice(1, 3)).toEqual(["46 ft", "34 ft"]); // before it is let go
  await reader.page.mouse.up();
  await told(reader, "78 ft across, 30 ft up");
  await reader.press("Take the plan’s length for Trench under driveway");
  await reader.page.waitForFunction(() => /Trench under driveway[\s\S]*?46 ft46 ftagrees/.test(document.querySelector(".ways")?.textContent ?? ""), {
    timeout: 10_000,
  });
  await reader.settled();
  expect(await reader.text()).not.toContain("computation broke");
  expect((await reader.downloadedFrom("Review", "Job file")).text).toMatch(/name: Trench under driveway\n[\s\S]*?length: 46 ft/);
  await reader.close();
});

test("by finger: an outlet is dragged; the empty ground and what is not chosen leave the page to scroll", async () => {
  const reader = await onSite({ width: 360, height: 740, hasTouch: true });
  await reader.screenshot("site-360");
  const at = await middleOf(reader, `${thing("points[2]")} .reach`);
  const scale = await scaleOf(reader);
  await reader.page.touchscreen.touchStart(at.x, at.y);
  for (let i = 1; i <= 5; i++) await reader.page.touchscreen.touchMove(at.x - i * 2 * scale, at.y + i * scale);
  await reader.page.touchscreen.touchEnd();
  await told(reader, "RV outlet: 56 ft across, 25 ft up.");
  const actions = await reader.page.evaluate(
    (outlet, house) => [outlet, house, "svg.site"].map((selector) => getComputedStyle(document.querySelector(selector)!).touchAction),
    thing("points[2]"),
    thing("outlines[0]"),
  );
  expect(actions).toEqual(["none", "auto", "auto"]);
  expect(await reader.page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(360);
  await reader.close();
});

test("from nothing: six lengths, things put on, ways drawn; the printed plan is the command line's", async () => {
  const reader = await site.open();
  await beginRv50(reader);
  await reader.answer("What do you mark?", "New: RV outlet");
  await reader.press("Choose free spaces for RV outlet");
  await reader.press("Next: House");
  await reader.type("Floor area", "1850");
  await reader.press("Next: Route");
  await reader.press("Under the yard");
  await reader.press("Next: Site plan");
  await reader.page.waitForSelector("#begin-plan");
  await reader.type("Width of the lot", "75");
  await reader.screenshot("site-begin");
  await reader.press("Begin the plan");
  await reader.page.waitForSelector("svg.site:not(.unmeasured)");
  await reader.press("+ Drive or paving");
  await reader.press("+ Gas meter");
  await reader.press("+ Water service");
  await reader.press("+ Overhead line");
  for (const name of ["Indoors from the panel", "Trench"]) await reader.press(`Draw its way: ${name}`);
  await reader.screenshot("site-drawn");
  // No stretch has a length yet: the drawn ones take theirs from the plan.
  await reader.press("Take the plan’s lengths for all that differ");
  await reader.press("Back: Route");
  await reader.type("Length", "4", 1);
  await reader.type("Length", "6", 3);
  await reader.press("7");
  await reader.type("Owner of the house", "Odalys Fenwick");
  await reader.type("Address of the work", "41 Larch Spur Lane");
  await reader.settled();
  await reader.press("Packet");
  const shown = await reader.paperText();
  expect(shown).toContain("Lengths by the plan and by the job");
  expect(shown).toContain("Drawn roughly; to be measured on site.");
  const job = await reader.downloaded("Job file");
  expect(shown).toBe((await commandLineText(site.browser, job.path)).text);
  expect(reader.errors).toEqual([]);
  await reader.close();
});

test("a circuit taken out takes along what was drawn for it, and comes back by one press", async () => {
  const reader = await onSite();
  await reader.press("1");
  await reader.page.evaluate(() => document.querySelector<HTMLDetailsElement>("details.more")?.setAttribute("open", ""));
  await reader.press("Clothes dryer");
  await reader.press("Take it out: RV outlet at carport");
  await reader.page.waitForFunction(() => document.querySelector(".notice")?.textContent?.includes("RV outlet at carport is taken out, and with it") === true);
  await reader.screenshot("taken-out");
  const without = (await reader.downloadedFrom("Review", "Job file")).text;
  expect(without).not.toContain("circuit: rv-outlet");
  expect(without).not.toContain("kind: outlet");
  expect(await reader.text()).not.toContain("has the id");
  await reader.press("1");
  await reader.press("Undo");
  const again = (await reader.downloadedFrom("Review", "Job file")).text;
  expect(again).toContain("circuit: rv-outlet");
  expect(again).toContain("kind: outlet");
  await reader.close();
});
