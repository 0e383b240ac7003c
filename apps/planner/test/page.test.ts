import { readdir, readFile } from "node:fs/promises";
import { createRequire } from "node:module";
import { gzipSync } from "node:zlib";
import { readJob } from "@branchwork/engine";
import { describe, expect, test } from "vitest";
import { Driven, startBrowser } from "./driven.js";
import { jobFile, planner } from "./planner.js";
import { served } from "./served.js";

const site = planner();

const STEPS = ["What", "Panel", "House", "Route", "Site plan", "Town", "Review"];
const REVIEW = STEPS.indexOf("Review");

async function toStep(reader: Driven, i: number): Promise<void> {
  await reader.press(String(i + 1));
  await reader.page.waitForFunction((at) => document.querySelector(`.steps li:nth-child(${at}) [aria-current=step]`) !== null, {}, i + 1);
}

describe("every page", () => {
  const pages: readonly (readonly [string, (reader: Driven) => Promise<void>])[] = [
    ...STEPS.map((name, i) => [name, (reader: Driven) => toStep(reader, i)] as const),
    // With its corners and its fields.
    [
      "Site plan, a thing chosen",
      async (reader) => {
        await toStep(reader, STEPS.indexOf("Site plan"));
        await reader.page.waitForSelector("svg.site:not(.unmeasured)");
        await reader.page.select("#site-thing", "site_plan.routes[1]");
        await reader.page.waitForSelector(".site-thing");
      },
    ],
    [
      "Packet",
      (reader) =>
        reader
          .press("Packet")
          .then(() => reader.paperText())
          .then(() => undefined),
    ],
    [
      "Readings",
      (reader) =>
        reader
          .press("Readings")
          .then(() => reader.page.waitForSelector(".reading"))
          .then(() => undefined),
    ],
    ["Jobs", (reader) => reader.press("Jobs")],
  ];

  test("passes axe, in light and dark, and nowhere scrolls sideways at 320 px", async () => {
    const axe = await readFile(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");
    const reader = await site.openJob(jobFile("rv-50-carport"));
    const found: string[] = [];
    for (const [name, go] of pages) {
      await go(reader);
      for (const scheme of ["light", "dark"]) {
        await reader.page.emulateMediaFeatures([
          { name: "prefers-color-scheme", value: scheme },
          { name: "prefers-reduced-motion", value: "reduce" },
        ]);
        await reader.page.evaluate(() => {
          for (const details of document.querySelectorAll("details")) details.open = true;
        });
        await reader.page.evaluate(axe);
        const violations = await reader.page.evaluate(async () => {
          const { violations } = await (
            window as never as { axe: { run: (of: unknown, options: unknown) => Promise<{ violations: { id: string; nodes: { html: string }[] }[] }> } }
          ).axe.run(document, { iframes: false });
          return violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html.slice(0, 200)}`);
        });
        found.push(...violations.map((each) => `${name} ${scheme}: ${each}`));
      }
      await reader.page.emulateMediaFeatures([{ name: "prefers-color-scheme", value: "light" }]);
      await reader.page.setViewport({ width: 320, height: 640 });
      const wide = await reader.page.evaluate(() => {
        const over = document.documentElement.scrollWidth - document.documentElement.clientWidth;
        return over <= 0
          ? ""
          : `${over} px over: ${[...document.querySelectorAll("*")]
              .filter((e) => e.getBoundingClientRect().right > 321)
              .map((e) => e.outerHTML.slice(0, 80))
              .slice(-3)
              .join(" | ")}`;
      });
      if (wide) found.push(`${name}: ${wide}`);
      await reader.screenshot(`phone-${name}`);
      await reader.page.setViewport({ width: 1280, height: 900 });
    }
    expect(found).toEqual([]);
    await reader.close();
  });
});

test("asks nothing of any other place, and keeps to its content policy", async () => {
  const reader = await site.openJob(jobFile("rv-50-carport"));
  await reader.press("Packet");
  await reader.paperText();
  const elsewhere = reader.requests.filter((url) => !url.startsWith("data:") && !url.startsWith(site.url) && !url.startsWith(`blob:${site.url}`));
  expect(elsewhere).toEqual([]);
  expect(reader.errors).toEqual([]);
  // The policy is in force: a script written into the page does not run, and nothing can be fetched from elsewhere.
  const ran = await reader.page.evaluate(async () => {
    const script = document.createElement("script");
    script.textContent = "window.ran = true";
    document.head.append(script);
    const fetched = await fetch("http://127.0.0.1:9/").then(
      () => "fetched",
      (error: Error) => error.message,
    );
    return { ran: "ran" in window, fetched };
  });
  expect(ran.ran).toBe(false);
  expect(reader.errors.some((error) => error.includes("Content Security Policy") && error.includes("script-src"))).toBe(true);
  expect(reader.errors.some((error) => error.includes("connect-src"))).toBe(true);
  await reader.close();
});

test("works without a network after the first load", async () => {
  const own = await served();
  const reader = await Driven.open(site.browser, own.url);
  await reader.page.evaluate(() => navigator.serviceWorker.ready.then(() => undefined));
  await reader.page.waitForFunction(() => navigator.serviceWorker.controller !== null, { timeout: 15_000 });
  await own.close();
  await reader.page.reload();
  await reader.openFile(jobFile("rv-50-carport"));
  await reader.settled();
  await reader.press("Packet");
  expect(await reader.paperText()).toContain("RV outlet beside the carport");
  await reader.close();
});

test("a job is kept, undone, redone, and there again after the page is loaded anew", async () => {
  const reader = await site.openJob(jobFile("rv-50-carport"));
  await toStep(reader, REVIEW);
  await reader.type("Title of the job", "Changed title");
  await reader.press("Undo");
  const title = () => reader.page.$eval('[id="field-project.title"]', (input) => (input as HTMLInputElement).value);
  expect(await title()).toBe("RV outlet beside the carport");
  await reader.press("Redo");
  expect(await title()).toBe("Changed title");
  await reader.page.waitForFunction(() => document.querySelector(".history .hint")?.textContent === "Kept in this browser");
  await reader.page.reload();
  await reader.settled();
  await toStep(reader, REVIEW);
  expect(await title()).toBe("Changed title");
  const file = await reader.downloaded("Job file");
  expect(file.text).toContain("# An invented job: a 50 A RV outlet on a post");
  expect(file.text).toContain('trade_size: "1" # as the risers, so that the run keeps one bore');
  await reader.close();
});

test("a mend of one press mends", async () => {
  const reader = await site.openJob(jobFile("rv-50-carport"));
  await toStep(reader, 1);
  await reader.choose("Ground-fault protection", "Ordinary breaker");
  await reader.page.waitForFunction(() => document.querySelector(".findings.fail")?.textContent?.includes("GFCI") === true);
  await reader.press("Use a GFCI breaker");
  await reader.page.waitForFunction(() => document.querySelector(".findings.fail") === null);
  await reader.close();
});

test("a stretch renamed through another's name takes none of the other's boxes and ways; on that name itself it keeps its own", async () => {
  const reader = await site.openJob(jobFile("rv-50-carport"));
  await toStep(reader, 3);
  /** Which stretch each box and each drawn way goes by. */
  const goBy = async (): Promise<readonly (string | undefined)[]> => {
    const read = readJob((await reader.downloadedFrom("Review", "Job file")).text);
    if (!read.ok) throw new Error(JSON.stringify(read.issues));
    const { service, site_plan } = read.job;
    return [...service.panel.circuits[0]!.boxes.map(({ after }) => after), ...(site_plan?.routes ?? []).map(({ segment }) => segment)];
  };
  await reader.type("Called", "Trench under driveway");
  expect(await goBy()).toEqual(["Basement run", "Riser at carport post", "Basement run", "Trench under driveway"]);
  await reader.type("Called", "Trench under driveway, its way there");
  await reader.settled();
  const renamed = "Trench under driveway, its way there";
  expect(await goBy()).toEqual([renamed, "Riser at carport post", renamed, "Trench under driveway"]);
  expect(reader.errors).toEqual([]);
  await reader.close();
});

test("words of a job are words: markup in them does nothing", async () => {
  const reader = await site.openJob(jobFile("rv-50-carport"));
  await toStep(reader, REVIEW);
  const hostile = `<img src=x onerror="window.ran=1"><script>window.ran=1</script>`;
  await reader.type("Title of the job", hostile);
  await reader.type("Owner of the house", hostile);
  await toStep(reader, 0);
  await reader.type("Name on the drawings", hostile);
  await reader.settled();
  await reader.press("Packet");
  expect(await reader.paperText()).toContain(hostile);
  const marks = await reader.page.evaluate(() => ({
    ran: "ran" in window,
    images: document.querySelectorAll('img[src="x"]').length,
    inFrame: document.querySelector("iframe")!.contentDocument!.querySelectorAll("script, img").length,
  }));
  expect(marks).toEqual({ ran: false, images: 0, inFrame: 0 });
  await reader.close();
});

test("a file that is no job says where and why, at the field too", async () => {
  const reader = await site.openJob(jobFile("rv-50-carport"));
  await toStep(reader, 3);
  await reader.type("Length", "twelve", 0);
  await reader.page.waitForFunction(() => document.querySelector(".state")?.textContent?.includes("of before") === true);
  // The page judges each key as it is pressed: wait for the word typed whole.
  const place = '[id="field-service.panel.circuits[0].route[0].length-wrong"]';
  await reader.page.waitForFunction((at) => document.querySelector(at)?.textContent?.includes("twelve") === true, { timeout: 10_000 }, place);
  const wrong = await reader.page.$eval(place, (element) => element.textContent);
  expect(wrong).toContain("twelve");
  expect(wrong).toContain("85 ft");
  await reader.close();
});

test("the driveway page tells a bad ground from a good one", async () => {
  const reader = await site.openJob(jobFile("rv-50-carport"), { width: 390, height: 800 });
  await reader.press("Readings");
  await reader.page.waitForSelector(".reading");
  const read = async (volts: Readonly<Record<string, string>>) => {
    for (const [name, value] of Object.entries(volts)) {
      const id = `reading-idle-${name}`;
      await reader.page.focus(`[id="${id}"]`);
      await reader.page.$eval(`[id="${id}"]`, (input) => (input as HTMLInputElement).select());
      await reader.page.keyboard.type(value);
    }
  };
  const judged = (says: string) =>
    reader.page.waitForFunction((wanted) => document.querySelector("#verdict")?.textContent === wanted, { timeout: 10_000 }, says);
  // Bands of ANSI C84.1 Range A: 114 to 126 V and 228 to 252 V.
  await read({ "L1-N": "121", "L2-N": "121", "L1-L2": "242" });
  await judged("Not a pass yet");
  await read({ "L1-G": "121", "L2-G": "121", "N-G": "0.1" });
  await judged("Pass");
  await reader.screenshot("phone-readings-pass");
  await read({ "L1-G": "2", "L2-G": "2" });
  await judged("Fault: stop");
  await reader.close();
});

test("by keyboard alone: pick, go on, answer", async () => {
  const reader = await site.open();
  const tabTo = async (words: string) => {
    for (let i = 0; i < 80; i++) {
      await reader.page.keyboard.press("Tab");
      const now = await reader.page.evaluate(() => {
        const element = document.activeElement as HTMLElement | null;
        return element === null ? "" : `${element.textContent ?? ""}|${element.id}`;
      });
      if (now.includes(words)) return;
    }
    throw new Error(`the tab key never reaches ${words}`);
  };
  await tabTo("Trailer or van");
  await reader.page.keyboard.press("Enter");
  await tabTo("Next: Panel");
  await reader.page.keyboard.press("Enter");
  await tabTo("field-service.rating");
  await reader.page.keyboard.type("100");
  const outline = await reader.page.evaluate(() => getComputedStyle(document.activeElement!).outlineStyle);
  expect(outline).not.toBe("none");
  await tabTo("field-service.panel.bus");
  expect(await reader.text()).toContain("The house’s service and panel");
  await reader.close();
});

test("the shopping list, and its cost by a price book of the reader's own", async () => {
  const reader = await site.openJob(jobFile("rv-50-carport"));
  await toStep(reader, REVIEW);
  const bare = await reader.downloaded("Shopping list (CSV)");
  expect(bare.text.split("\r\n")[0]).toBe("item,quantity,unit,sold as,for,note,price book name");
  const inputs = await reader.page.$$("input[type=file]");
  await inputs[0]!.uploadFile(new URL("../../../fixtures/prices/demo.yaml", import.meta.url).pathname);
  await reader.page.waitForFunction(() => document.querySelector("#shopping")?.parentElement?.textContent?.includes(", likely ") === true);
  const priced = await reader.downloaded("Shopping list (CSV)");
  expect(priced.text.split("\r\n")[0]).toContain("low,likely,high");
  await reader.close();
});

test("what a first visit loads is less than 350 kB packed, and the first question stands soon", async () => {
  const fresh = await startBrowser();
  const reader = await Driven.open(fresh.browser, site.url);
  await reader.page.waitForSelector(".things button");
  const stands = await reader.page.evaluate(() => performance.now());
  const paths = [...new Set(reader.requests.map((url) => new URL(url).pathname))].filter(
    (path) => /\/$|\.(js|css|html)$/.test(path) && !path.includes("service-worker"),
  );
  const sizes = await Promise.all(
    paths.map(async (path) => gzipSync(await readFile(new URL(`../dist${path.endsWith("/") ? "/index.html" : path}`, import.meta.url)), { level: 9 }).length),
  );
  // What the page's worker fetches is not seen here: its program, the towns it reads at once, and what these import.
  const assets = new URL("../dist/assets/", import.meta.url);
  const worker = (await readdir(assets)).filter((name) => /^(worker|shipped-overlays)-/.test(name));
  for (const name of worker) {
    if (paths.some((path) => path.endsWith(name))) continue;
    const code = await readFile(new URL(name, assets), "utf8");
    sizes.push(gzipSync(code, { level: 9 }).length);
    for (const [, imported] of code.matchAll(/(?:from|import)\s*"\.\/([^"]+)"/g)) if (!worker.includes(imported!)) worker.push(imported!);
  }
  expect(worker.length).toBeGreaterThan(1);
  const total = sizes.reduce((sum, size) => sum + size, 0);
  console.log(`first load ${Math.round(total / 1000)} kB gzip; first question after ${Math.round(stands)} ms`);
  expect(total).toBeLessThan(350_000);
  await reader.close();
  await fresh.close();
});

test("the design is made anew fast after each of twenty edits", async () => {
  const reader = await site.openJob(jobFile("rv-50-carport"));
  await toStep(reader, 3);
  const times: number[] = [];
  for (let i = 0; i < 20; i++) {
    await reader.type("Length", String(20 + i), 0);
    await reader.settled();
    times.push(Number(/in (?:under )?(\d+) ms/.exec(await reader.text())?.[1]));
  }
  const median = times.sort((a, b) => a - b)[10]!;
  console.log(`recompute: median ${median} ms, worst ${times.at(-1)} ms`);
  // The aim is a median under 16 ms on a quiet machine; a busy one is no reason to fail, so the quickest is held to a bound.
  expect(times[0]).toBeLessThan(40);
  await reader.close();
});
