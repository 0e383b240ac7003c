import { fileURLToPath } from "node:url";
import type { Browser } from "puppeteer-core";
import { afterAll, beforeAll } from "vitest";
import { Driven, startBrowser, type WindowSize } from "./driven.js";
import { served } from "./served.js";

/** The planner as built, served by a plain file server, and a browser for it: there for all the tests of a file. */
export interface Planner {
  readonly browser: Browser;
  readonly url: string;
  /** An empty planner in a window of its own. */
  open(size?: WindowSize): Promise<Driven>;
  /** One with a job file opened in it. */
  openJob(file: string, size?: WindowSize): Promise<Driven>;
}

/** To be called once, outside the tests. */
export function planner(): Planner {
  let running: Awaited<ReturnType<typeof startBrowser>>;
  let site: Awaited<ReturnType<typeof served>>;
  beforeAll(async () => {
    [running, site] = await Promise.all([startBrowser(), served()]);
  });
  afterAll(async () => {
    await running?.close();
    await site?.close();
  });
  const open = (size?: WindowSize) => Driven.open(running.browser, site.url, size);
  return {
    get browser() {
      return running.browser;
    },
    get url() {
      return site.url;
    },
    open,
    openJob: async (file, size) => {
      const reader = await open(size);
      await reader.openFile(file);
      await reader.settled();
      return reader;
    },
  };
}

/** Path of a job file of the fixtures. */
export const jobFile = (name: string): string => fileURLToPath(new URL(`../../../fixtures/jobs/${name}.yaml`, import.meta.url));

/** The first answers of a 50 A outlet for a vehicle at a new 200 A panel of 30 spaces; the reader stands at the panel then. */
export async function beginRv50(reader: Driven, pictured: (name: string) => Promise<unknown> = async () => undefined): Promise<void> {
  await reader.press("Motor home or large trailer");
  await pictured("1-what");
  await reader.press("Next: Panel");
  await reader.type("Size of the service", "200");
  await reader.type("Rating of the panel", "200");
  await reader.type("Number of spaces", "30");
}
