import { readJob } from "@branchwork/engine";
import { expect, test } from "vitest";
import { jobFile, planner } from "./planner.js";

const site = planner();

const JOB = jobFile("rv-50-carport");

test("a house counted anew, by kind, by both methods, with load management: all of it by fields", async () => {
  const reader = await site.openJob(JOB);
  await reader.press("3");
  await reader.choose("How shall the house", "Count a whole house anew, by kind: optional");
  await reader.page.waitForSelector("#house-cooking");
  await reader.type("Floor area of the house", "1600");
  await reader.press("+ Cooktop");
  await reader.press("+ Well pump");
  await reader.press("+ Car charger");
  await reader.press("+ Heat pump");
  await reader.page.waitForSelector('[id$="interlocked"]');
  await reader.type("Its electric heat", "9.6");
  await reader.answer("Is it made so that pump", "Yes");
  await reader.settled();
  expect(await reader.text()).toMatch(/optional/i);
  await reader.screenshot("house-by-kind");
  await reader.choose("How shall the house", "Count a whole house anew, by kind: standard");
  await reader.page.evaluate(() => {
    for (const details of document.querySelectorAll("details")) details.open = true;
  });
  await reader.press("Yes, there is one");
  await reader.type("Amperes it lets the new loads draw together", "24");
  await reader.type("What shows it?", "Listing and instructions of the system");
  await reader.settled();
  const { text } = await reader.downloadedFrom("Review", "Job file");
  const read = readJob(text);
  if (!read.ok) throw new Error(JSON.stringify(read.issues));
  const { service } = read.job;
  expect(service.load_method).toBe("standard");
  expect(service.managed).toEqual({ setpoint: 24, citation: "Listing and instructions of the system" });
  expect(service.existing).toBeUndefined();
  expect(service.dwelling?.floor_area).toBe(1600);
  expect(service.dwelling?.cooking.map(({ name, load }) => [name, load])).toContainEqual(["Cooktop", 7000]);
  expect(service.dwelling?.appliances.find(({ name }) => name === "Well pump")).toMatchObject({ motor: true, neutral: false });
  expect(service.dwelling?.climate.find(({ kind }) => kind === "heat-pump")).toMatchObject({ supplement: 9600, interlocked: true });
  expect(reader.errors).toEqual([]);
  await reader.close();
});

test("a line of what is wanted leads to its field, though the part that holds it is not loaded yet", async () => {
  const reader = await site.open();
  await reader.press("Kitchen range");
  await reader.press("3");
  await reader.choose("How shall the house", "Count a whole house anew, by kind: optional");
  await reader.page.waitForFunction(() => document.querySelector(".history .hint")?.textContent === "Kept in this browser");
  await reader.page.reload();
  await reader.press("House: floor area");
  await reader.page.waitForFunction(() => document.activeElement?.id === "field-service.dwelling.floor_area", { timeout: 10_000 });
  await reader.page.keyboard.type("1600");
  await reader.page.waitForFunction(() => ![...document.querySelectorAll(".wanted button")].some((line) => line.textContent?.startsWith("House: floor area")));
  expect(reader.errors).toEqual([]);
  await reader.close();
});
