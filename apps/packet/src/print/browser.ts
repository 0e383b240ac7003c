import { execFile } from "node:child_process";
import { accessSync, constants, statSync } from "node:fs";
import { delimiter, join } from "node:path";
import { findPacked, unpackBrowser } from "./bundled.js";
import { openCacheDir } from "./cache-dir.js";
import { EnvironmentError } from "./environment-error.js";

type Env = Readonly<Record<string, string | undefined>>;

/** A browser that can be started: its program and what must be added to its environment. */
export interface ChosenBrowser {
  readonly executable: string;
  readonly origin: "named" | "bundled" | "installed";
  readonly env: Readonly<Record<string, string>>;
}

/**
 * Chooses the browser that prints: the one named (option, then BRANCHWORK_BROWSER), which must work and is never replaced by
 * another; else the bundled one; else one installed on the machine. Nothing is ever downloaded.
 */
export async function findBrowser({ named, env = process.env }: { named?: string | undefined; env?: Env }): Promise<ChosenBrowser> {
  const wanted = named ?? (env.BRANCHWORK_BROWSER || undefined);
  if (wanted !== undefined) {
    if (!isProgram(wanted)) {
      throw new EnvironmentError(`the browser named, ${wanted}, is not a program that can be run`, {
        hint: "give the full path of a Chromium or Chrome program, or leave the browser option and BRANCHWORK_BROWSER out",
      });
    }
    return { executable: wanted, origin: "named", env: {} };
  }
  const packed = await findPacked();
  if (packed) {
    const unpacked = await unpackBrowser(packed, openCacheDir(env));
    const fonts = { FONTCONFIG_PATH: unpacked.fontConfig };
    // The system's own libraries get security updates, the packed ones do not: use those only where the system has none.
    if (await starts(unpacked.executable, fonts)) return { executable: unpacked.executable, origin: "bundled", env: fonts };
    const withLibraries = { ...fonts, LD_LIBRARY_PATH: unpacked.libraries };
    if (await starts(unpacked.executable, withLibraries)) return { executable: unpacked.executable, origin: "bundled", env: withLibraries };
  }
  const installed = installedCandidates(env).find(isProgram);
  if (installed) return { executable: installed, origin: "installed", env: {} };
  throw new EnvironmentError(packed ? "the bundled browser does not start and no other browser was found" : "no browser was found to print the PDF with", {
    hint: "install Chromium or Chrome (on Debian: apt install chromium-headless-shell) or name one with BRANCHWORK_BROWSER=/path/to/chrome",
  });
}

/** Places a browser is usually installed, best first. */
export function installedCandidates(env: Env, platform: NodeJS.Platform = process.platform): string[] {
  if (platform === "darwin") {
    return ["Google Chrome", "Chromium", "Microsoft Edge"].map((app) => `/Applications/${app}.app/Contents/MacOS/${app}`);
  }
  if (platform === "win32") {
    const roots = [env.PROGRAMFILES, env["PROGRAMFILES(X86)"], env.LOCALAPPDATA].filter((root) => root !== undefined);
    return roots.flatMap((root) => [`${root}\\Google\\Chrome\\Application\\chrome.exe`, `${root}\\Microsoft\\Edge\\Application\\msedge.exe`]);
  }
  const names = ["chromium-headless-shell", "chromium", "chromium-browser", "google-chrome-stable", "google-chrome", "microsoft-edge"];
  const dirs = (env.PATH ?? "/usr/local/bin:/usr/bin:/bin").split(delimiter).filter((dir) => dir.startsWith("/"));
  return names.flatMap((name) => dirs.map((dir) => join(dir, name)));
}

function isProgram(path: string): boolean {
  try {
    accessSync(path, constants.X_OK);
    return statSync(path).isFile();
  } catch {
    return false;
  }
}

function starts(executable: string, env: Readonly<Record<string, string>>): Promise<boolean> {
  return new Promise((resolve) => {
    execFile(executable, ["--version"], { env, timeout: 20_000, killSignal: "SIGKILL" }, (error) => resolve(error === null));
  });
}
