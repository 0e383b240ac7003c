import { mkdir, mkdtemp, readdir, readFile, rename, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { type Browser, type ElementHandle, launch, type Page } from "puppeteer-core";
import { build } from "../../packet/src/build.js";
import { findBrowser } from "../../packet/src/print/browser.js";
import { browserEnvironment } from "../../packet/src/print/browser-environment.js";

/** The browser that prints packets; it can reach this machine alone. */
export async function startBrowser(): Promise<{ readonly browser: Browser; readonly close: () => Promise<void> }> {
  const chosen = await findBrowser({});
  const profile = await mkdtemp(join(tmpdir(), "planner-browser-"));
  const root = process.getuid?.() === 0 ? ["--no-sandbox"] : [];
  const browser = await launch({
    executablePath: chosen.executable,
    headless: "shell",
    pipe: true,
    args: [
      "--font-render-hinting=none",
      "--host-resolver-rules=MAP * ~NOTFOUND, EXCLUDE 127.0.0.1",
      "--disable-dev-shm-usage",
      "--disable-gpu",
      "--no-first-run",
      ...root,
    ],
    userDataDir: profile,
    env: { ...browserEnvironment(process.env, process.platform, profile), ...chosen.env },
  });
  return {
    browser,
    close: async () => {
      await browser.close();
      await rm(profile, { recursive: true, force: true, maxRetries: 5 });
    },
  };
}

export interface WindowSize {
  readonly width: number;
  readonly height: number;
  readonly hasTouch?: boolean;
}

/** A page driven the way a reader drives it: by what the labels and buttons say. */
export class Driven {
  readonly requests: string[] = [];
  readonly errors: string[] = [];
  private taken = 0;

  private constructor(
    readonly page: Page,
    private readonly downloads: string,
  ) {}

  static async open(browser: Browser, url: string, size: WindowSize = { width: 1280, height: 900 }): Promise<Driven> {
    const context = await browser.createBrowserContext();
    const page = await context.newPage();
    const downloads = await mkdtemp(join(tmpdir(), "planner-downloads-"));
    const driven = new Driven(page, downloads);
    await page.setViewport(size);
    const client = await page.createCDPSession();
    await client.send("Browser.setDownloadBehavior", { behavior: "allow", downloadPath: downloads, browserContextId: context.id });
    page.on("request", (request) => driven.requests.push(request.url()));
    page.on("pageerror", (error) => driven.errors.push(error instanceof Error ? error.message : String(error)));
    page.on("console", (message) => {
      if (message.type() === "error" || message.type() === "warn") driven.errors.push(message.text());
    });
    await page.goto(url);
    await page.waitForSelector("h1");
    return driven;
  }

  async close(): Promise<void> {
    await this.page.browserContext().close();
    await rm(this.downloads, { recursive: true, force: true });
  }

  /** Presses the first button whose words begin so. */
  async press(words: string): Promise<void> {
    const found = await this.page
      .waitForFunction(
        (wanted) => [...document.querySelectorAll("button")].find((b) => !b.disabled && (b.textContent ?? "").trim().startsWith(wanted)),
        { timeout: 10_000 },
        words,
      )
      .catch(async (error: unknown) => {
        throw new Error(`no button ${words}: ${await this.text()}`, { cause: error });
      });
    await this.strike((found.asElement() as ElementHandle<HTMLElement> | null)!);
  }

  /**
   * Clicks by the mouse and makes sure that it was this element that was clicked: what is above it may have grown
   * between the moment its place was measured and the moment the mouse was pressed.
   */
  private async strike(element: ElementHandle<HTMLElement>): Promise<void> {
    for (let tries = 0; tries < 5; tries++) {
      await element.evaluate((target) => {
        const told = window as unknown as { struck: boolean };
        told.struck = false;
        addEventListener("click", (event) => (told.struck ||= event.composedPath().includes(target)), { capture: true, once: true });
      });
      await element.click();
      if (await this.page.evaluate(() => (window as unknown as { struck: boolean }).struck)) return;
    }
    throw new Error(`something else lies over ${await element.evaluate((target) => target.outerHTML.slice(0, 200))}`);
  }

  /** Gives the planner a job file or a packet by its "Jobs" page. */
  async openFile(path: string): Promise<void> {
    await this.press("Jobs");
    const input = (await this.page.waitForSelector("input[type=file]")) as ElementHandle<HTMLInputElement>;
    await input.uploadFile(path);
  }

  /** Types into the n-th field with that label. */
  async type(label: string, value: string, index = 0): Promise<void> {
    const id = await this.idOf(label, index);
    await this.page.focus(`[id="${id}"]`);
    await this.page.$eval(`[id="${id}"]`, (element) => (element as HTMLInputElement).select());
    await this.page.keyboard.type(value);
    await this.page.keyboard.press("Tab");
  }

  async choose(label: string, option: string, index = 0): Promise<void> {
    const id = await this.idOf(label, index);
    await this.page.$eval(
      `[id="${id}"]`,
      (element, wanted) => {
        const select = element as HTMLSelectElement;
        const found = [...select.options].find((o) => o.text.trim().startsWith(wanted));
        if (found === undefined) throw new Error(`no option ${wanted} in ${[...select.options].map((o) => o.text).join(" | ")}`);
        select.value = found.value;
        select.dispatchEvent(new Event("change", { bubbles: true }));
      },
      option,
    );
  }

  /** Picks an answer of the n-th question with that legend. */
  async answer(question: string, says: string, index = 0): Promise<void> {
    const found = await this.page
      .waitForFunction(
        (asked, wanted, at) => {
          const sets = [...document.querySelectorAll("fieldset")].filter((f) => f.querySelector("legend")?.textContent?.trim().startsWith(asked));
          return [...(sets[at]?.querySelectorAll("label") ?? [])].find((l) => l.textContent?.trim().startsWith(wanted));
        },
        { timeout: 10_000 },
        question,
        says,
        index,
      )
      .catch(async (error: unknown) => {
        throw new Error(`no answer ${says} to ${question}: ${await this.text()}`, { cause: error });
      });
    const element = found.asElement() as ElementHandle<HTMLElement> | null;
    if (!element) throw new Error(`no answer ${says} to ${question}`);
    await this.strike(element);
  }

  private async idOf(label: string, index: number): Promise<string> {
    const found = await this.page.waitForFunction(
      (wanted, at) => [...document.querySelectorAll("label")].filter((l) => l.htmlFor && l.textContent?.trim().startsWith(wanted))[at]?.htmlFor,
      { timeout: 10_000 },
      label,
      index,
    );
    return (await found.jsonValue()) as string;
  }

  /** Waits until what is shown is of the present answers. */
  async settled(): Promise<void> {
    await this.page
      .waitForFunction(() => document.querySelector(".live .state")?.textContent === "Up to date.", { timeout: 20_000 })
      .catch(async (error: unknown) => {
        throw new Error(`not up to date: ${await this.text()}`, { cause: error });
      });
  }

  /** What can be seen on the page. */
  text(): Promise<string> {
    // biome-ignore lint/performance/useDomNodeTextContent: what is hidden is not wanted
    return this.page.$eval("body", (body) => (body as HTMLElement).innerText);
  }

  /** The file a button gives; put aside, so that another of its name can come. */
  async downloaded(button: string): Promise<{ readonly name: string; readonly path: string; readonly text: string }> {
    await this.press(button);
    for (let tries = 0; tries < 100; tries++) {
      const name = (await readdir(this.downloads)).find((each) => /\.[a-z]+$/.test(each) && !each.endsWith(".crdownload"));
      const text = name === undefined ? "" : await readFile(join(this.downloads, name), "utf8");
      if (name !== undefined && text !== "") {
        const folder = join(this.downloads, String(this.taken++));
        await mkdir(folder);
        await rename(join(this.downloads, name), join(folder, name));
        return { name, path: join(folder, name), text };
      }
      await new Promise((resolve) => setTimeout(resolve, 100));
    }
    throw new Error(`no file came of ${button}: ${await this.text()}`);
  }

  /** The file a button of another step gives; then back to where the reader was. */
  async downloadedFrom(step: string, button: string): Promise<{ readonly name: string; readonly path: string; readonly text: string }> {
    const steps = '.steps [aria-current="step"]';
    const now = await this.page.$eval(steps, (each) => (each.textContent ?? "").trim().slice(0, 1));
    await this.page.$$eval(
      ".steps button",
      (buttons, wanted) => (buttons as HTMLButtonElement[]).find((each) => each.textContent?.includes(wanted))?.click(),
      step,
    );
    await this.page.waitForFunction((at, name) => document.querySelector(at)?.textContent?.includes(name) === true, {}, steps, step);
    const file = await this.downloaded(button);
    await this.press(now);
    await this.page.waitForFunction((at, number) => document.querySelector(at)?.textContent?.trim().startsWith(number) === true, {}, steps, now);
    return file;
  }

  /** The words of the packet in its frame. */
  async paperText(): Promise<string> {
    await this.page.waitForSelector('iframe[data-shown="packet"]', { timeout: 30_000 }).catch(async (error: unknown) => {
      throw new Error(`no packet: ${this.errors.join("; ")} ${(await this.text()).slice(0, 1500)}`, { cause: error });
    });
    return this.page.$eval("iframe", (frame) => (frame as HTMLIFrameElement).contentDocument!.body.textContent ?? "");
  }

  screenshot(name: string, fullPage = true): Promise<unknown> {
    const folder = process.env.PLANNER_PICTURES;
    return folder === undefined ? Promise.resolve() : this.page.screenshot({ path: `${folder}/${name}.png`, fullPage });
  }
}

/** The words of the packet that the command line builds of a job file. */
export async function commandLineText(
  browser: Browser,
  job: string,
  overlay?: string,
): Promise<{ readonly text: string; readonly code: number; readonly html: string }> {
  const out = await mkdtemp(join(tmpdir(), "planner-command-"));
  const code = await build(job, {
    out,
    format: "html",
    date: new Date().toISOString().slice(0, 10),
    force: true,
    ...(overlay === undefined ? {} : { overlay }),
  });
  const name = (await readdir(out)).find((file) => file.endsWith(".html"));
  if (name === undefined) throw new Error(`the command line made no packet of ${job}`);
  const html = await readFile(join(out, name), "utf8");
  await rm(out, { recursive: true });
  const page = await browser.newPage();
  await page.setContent(html);
  const text = await page.$eval("body", (body) => body.textContent ?? "");
  await page.close();
  return { text, code, html };
}
