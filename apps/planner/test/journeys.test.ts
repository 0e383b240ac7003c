import { fileURLToPath } from "node:url";
import { expect, test } from "vitest";
import { commandLineText, type Driven } from "./driven.js";
import { beginRv50, planner } from "./planner.js";

const site = planner();

const overlayFile = (name: string) => fileURLToPath(new URL(`../../../fixtures/overlays/${name}.yaml`, import.meta.url));

/** Ends a journey: the packet on the page and the one the command line builds of the downloaded job are the same words. */
async function sameOnPaper(reader: Driven, overlay?: string): Promise<string> {
  await reader.settled();
  await reader.press("Look at the packet");
  const shown = await reader.paperText();
  const job = await reader.downloaded("Job file");
  const packet = await reader.downloaded("Packet (HTML)");
  const built = await commandLineText(site.browser, job.path, overlay);
  expect(shown).toBe(built.text);
  expect(packet.text).toBe(built.html);
  expect(shown.length).toBeGreaterThan(5000);
  expect(reader.errors).toEqual([]);
  return shown;
}

async function named(reader: Driven, owner: string, site: string): Promise<void> {
  await reader.press("7");
  await reader.type("Owner of the house", owner);
  await reader.type("Address of the work", site);
}

test("RV 50 A under the yard: from an empty page to the packet", async () => {
  const reader = await site.open();
  await reader.screenshot("1-empty");
  await beginRv50(reader, (name) => reader.screenshot(name));
  await reader.answer("What do you mark?", "There already, two spaces");
  await reader.press("Space 1: free");
  await reader.answer("What do you mark?", "New: RV outlet");
  await reader.press("Choose free spaces for RV outlet");
  await reader.answer("Is the breaker of a type", "Yes");
  await reader.answer("Is the space in front", "Yes");
  await reader.screenshot("2-panel");
  await reader.press("Next: House");
  await reader.type("Floor area", "1850");
  await reader.press("+ Range");
  await reader.press("+ Dryer");
  await reader.screenshot("3-house");
  await reader.press("Next: Route");
  await reader.press("Under the yard");
  for (const [i, feet] of ["24", "4", "34", "6"].entries()) await reader.type("Length", feet, i);
  await reader.screenshot("4-route");
  await reader.press("Next: Site plan");
  await reader.press("Next: Town");
  await reader.choose("Rules of the town", "Town of Tamarack Hollow");
  await reader.screenshot("5-town");
  await named(reader, "Odalys Fenwick", "41 Larch Spur Lane");
  await reader.settled();
  await reader.screenshot("6-review");
  const paper = await sameOnPaper(reader, overlayFile("tamarack-hollow"));
  expect(paper).toContain("Odalys Fenwick");
  expect(paper).toContain("Tamarack Hollow Ordinance 12-4");
  expect(paper).toContain("14-50R");
  await reader.screenshot("7-paper", false);
  await reader.close();
});

test("RV 30 A on a nearly full panel: the planner finds the one space, and the paper says the same", async () => {
  const reader = await site.open();
  await reader.press("Trailer or van");
  await reader.press("Next: Panel");
  await reader.type("Size of the service", "100");
  await reader.type("Rating of the panel", "100");
  await reader.type("Number of spaces", "12");
  await reader.answer("What do you mark?", "There already, two spaces");
  for (const space of [1, 2, 5, 6]) await reader.press(`Space ${space}: free`);
  await reader.answer("What do you mark?", "There already, one space");
  for (const space of [9, 10, 12]) await reader.press(`Space ${space}: free`);
  await reader.answer("What do you mark?", "New: RV outlet");
  await reader.press("Choose free spaces for RV outlet");
  await reader.page.waitForFunction(() => document.body.textContent?.includes("NEW RV outlet") === true, { timeout: 10_000 });
  await reader.press("Next: House");
  await reader.choose("How shall the house", "Measured");
  await reader.type("Highest demand of the year", "10.2");
  await reader.choose("How long was it measured?", "A year");
  await reader.type("Where is the record from?", "The utility's hourly record");
  await reader.press("Next: Route");
  await reader.type("Length", "22", 0);
  await reader.type("Length", "5", 1);
  await named(reader, "Bertrand Quillfeather", "9 Spillway Court");
  const paper = await sameOnPaper(reader);
  expect(paper).toContain("TT-30R");
  // The one space that is left on the odd side below the marked ones.
  expect(paper).toMatch(/space 4|space 11|space 8/);
  await reader.close();
});

test("EV supply over the attic, by a person who does not know its label", async () => {
  const reader = await site.open();
  await reader.press("Electric car charger");
  await reader.press("I don’t know: Amperes it draws");
  await reader.press("Next: Panel");
  await reader.press("I don’t know: Size of the service");
  await reader.press("I don’t know: Rating of the panel");
  await reader.press("I don’t know: Number of spaces");
  await reader.answer("What do you mark?", "New: EV supply");
  await reader.press("Choose free spaces for EV supply");
  await reader.press("Next: House");
  await reader.press("I don’t know: Floor area of the house");
  await reader.press("Next: Route");
  await reader.press("Over the attic");
  await reader.type("Length", "10", 0);
  await reader.type("Length", "42", 1);
  await reader.type("Length", "9", 2);
  await named(reader, "Philippa Oxenbrook", "230 Old Ferry Rise");
  await reader.settled();
  await reader.screenshot("ev-review");
  const paper = await sameOnPaper(reader);
  // What was not known is said on the paper too.
  expect(paper).toContain("To be verified on site, assumed until then");
  expect(paper).toContain("size of the service");
  await reader.close();
});

test("garage subpanel with an outlet of its own", async () => {
  const reader = await site.open();
  await reader.press("Panel in a garage");
  await reader.answer("Is there, or will there be, one switch", "Yes");
  await reader.answer("Is there, or will there be, a ground rod", "Yes");
  await reader.page.evaluate(() => document.querySelector<HTMLElement>("details.more > summary")?.click());
  await reader.choose("It is fed from", "Garage panel");
  await reader.press("Ordinary outlets, 20 A");
  await reader.press("Next: Panel");
  await reader.type("Size of the service", "200");
  await reader.type("Rating of the panel", "200", 0);
  await reader.type("Number of spaces", "30", 0);
  await reader.answer("What do you mark?", "New: Feeder to garage");
  await reader.press("Choose free spaces for Feeder to garage");
  await reader.press("Next: House");
  await reader.type("Floor area", "2100");
  await reader.press("Next: Route");
  for (const [i, feet] of ["18", "72", "5"].entries()) await reader.type("Length", feet, i);
  await reader.choose("Route of", "20 A outlets");
  await reader.type("Length", "14");
  await named(reader, "Corwin Ashdale", "7 Quarrystone Bend");
  await reader.settled();
  await reader.screenshot("subpanel-review");
  const paper = await sameOnPaper(reader);
  expect(paper).toContain("Garage panel");
  await reader.close();
});
