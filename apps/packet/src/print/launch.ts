import { execFile } from "node:child_process";
import { rmSync } from "node:fs";
import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { type Browser, launch } from "puppeteer-core";
import type { ChosenBrowser } from "./browser.js";
import { browserEnvironment } from "./browser-environment.js";
import { EnvironmentError } from "./environment-error.js";

const launchTimeoutMs = 30_000;
const closeTimeoutMs = 5_000;

/** A running browser with a profile directory of its own. */
export interface RunningBrowser {
  readonly browser: Browser;
  /** Ends the browser (by force after 5 s) and removes its profile. */
  close(): Promise<void>;
  /** Ends it by force and removes its profile. */
  kill(): Promise<void>;
}

/** Who answers the signals that end a program: the browser's own handlers (they kill it and exit), or the program itself. */
export type Signals = "browser" | "program";

/** Starts the browser: headless, over a pipe (it ends when we end), no network names, same glyph positions on every build of it. */
export async function launchBrowser(chosen: ChosenBrowser, warn: (message: string) => void, signals: Signals = "browser"): Promise<RunningBrowser> {
  const handled = signals === "browser";
  const profile = await mkdtemp(join(tmpdir(), "branchwork-browser-"));
  const removeNow = () => rmSync(profile, { recursive: true, force: true });
  process.once("exit", removeNow);
  const release = async () => {
    process.off("exit", removeNow);
    await rm(profile, { recursive: true, force: true, maxRetries: 5, retryDelay: 100 });
  };
  const args = ["--font-render-hinting=none", "--host-resolver-rules=MAP * ~NOTFOUND", "--disable-dev-shm-usage", "--disable-gpu", "--no-first-run"];
  if (process.getuid?.() === 0) {
    args.push("--no-sandbox");
    warn("running as root: the browser's sandbox is off; run as an ordinary user to keep it on");
  }
  const env = { ...browserEnvironment(process.env, process.platform, profile), ...chosen.env };
  try {
    const browser = await launch({
      executablePath: chosen.executable,
      headless: "shell",
      pipe: true,
      args,
      userDataDir: profile,
      timeout: launchTimeoutMs,
      protocolTimeout: 120_000,
      handleSIGINT: handled,
      handleSIGTERM: handled,
      handleSIGHUP: handled,
      env,
    });
    return { browser, close: () => closeBrowser(browser).finally(release), kill: () => killBrowser(browser).finally(release) };
  } catch (error) {
    const said = await lastWords(chosen.executable, [...args, `--user-data-dir=${profile}`], env);
    await release();
    throw launchFailure(chosen, said, error);
  }
}

// Over a pipe a browser that dies at once leaves only "Target closed": started by hand it says why on its error output.
function lastWords(executable: string, args: readonly string[], env: Readonly<Record<string, string>>): Promise<string> {
  return new Promise((resolve) => {
    execFile(executable, [...args, "--headless", "--dump-dom", "about:blank"], { env, timeout: 10_000, killSignal: "SIGKILL" }, (_error, _out, stderr) => {
      const lines = stderr.split("\n").filter((line) => line.trim() !== "");
      resolve(lines.find((line) => /FATAL|error while loading/.test(line)) ?? lines[0] ?? "");
    });
  });
}

async function closeBrowser(browser: Browser): Promise<void> {
  let timer: NodeJS.Timeout | undefined;
  const late = new Promise<"late">((resolve) => {
    timer = setTimeout(() => resolve("late"), closeTimeoutMs);
  });
  const ended = browser.close().then(
    () => "closed" as const,
    () => "late" as const,
  );
  if ((await Promise.race([ended, late])) === "late") await killBrowser(browser);
  clearTimeout(timer);
}

async function killBrowser(browser: Browser): Promise<void> {
  const child = browser.process();
  if (child?.pid === undefined || child.exitCode !== null || child.signalCode !== null) return;
  const exited = new Promise((resolve) => child.once("exit", resolve));
  try {
    // The browser leads a group of its own, its page processes in it: one that is stopped or busy would outlive its parent.
    if (process.platform === "win32") child.kill("SIGKILL");
    else process.kill(-child.pid, "SIGKILL");
  } catch {
    child.kill("SIGKILL"); // no such group: the program alone
  }
  await exited;
}

function launchFailure(chosen: ChosenBrowser, lastWords: string, error: unknown): EnvironmentError {
  const said = lastWords || (error instanceof Error ? error.message : String(error));
  const sandbox = /sandbox|namespace|clone\(\)/i.test(said);
  return new EnvironmentError(`the browser ${chosen.executable} did not start: ${said.split("\n")[0]?.trim()}`, {
    hint: sandbox
      ? "this system forbids the browser's sandbox to ordinary programs (user namespaces are blocked): install Chromium from the system's packages and name it with BRANCHWORK_BROWSER"
      : "try it by hand with --version, or name another with BRANCHWORK_BROWSER=/path/to/chrome",
    cause: error,
  });
}
