import { mkdtemp, readdir, readFile, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { setTimeout as sleep } from "node:timers/promises";
import { afterAll, afterEach, beforeAll, describe, expect, it } from "vitest";
import { inspectPdf } from "./inspect-pdf.js";
import { PrintError } from "./print-error.js";
import { openPrinterPool, type PoolOptions, type PrinterPool } from "./printer-pool.js";

const date = new Date("2026-03-04T05:06:07Z");
const html = (name: string, lines = 3) =>
  `<!doctype html><html lang="en"><title>${name}</title><h1>${name}</h1>${Array.from({ length: lines }, (_, i) => `<p>line ${i} of the schedule</p>`).join("")}`;
/** Takes seconds to print: time enough to kill what prints it. */
const long = (name: string) => html(name, 4000);
const outcome = (pdf: Promise<Uint8Array>) =>
  pdf.then(
    (bytes) => `${inspectPdf(bytes).title}`,
    (error) => error,
  );

// A temporary directory of this file's own: its browsers are told from others' by it.
const usual = process.env.TMPDIR;
let own: string;
beforeAll(async () => {
  own = await mkdtemp(join(tmpdir(), "branchwork-pool-"));
  process.env.TMPDIR = own;
});
afterAll(async () => {
  if (usual === undefined) delete process.env.TMPDIR;
  else process.env.TMPDIR = usual;
  await rm(own, { recursive: true });
});

/** Process numbers of the browsers of this file, or of their page processes. */
async function processes(kind: "browser" | "page"): Promise<number[]> {
  const all = await Promise.all(
    (await readdir("/proc"))
      .filter((name) => /^\d+$/.test(name))
      .map(async (pid) => {
        const [status, command] = await Promise.all([readFile(`/proc/${pid}/status`, "utf8"), readFile(`/proc/${pid}/cmdline`, "utf8")]).catch(() => ["", ""]); // ended meanwhile
        return { pid: Number(pid), parent: Number(/^PPid:\s*(\d+)/m.exec(status ?? "")?.[1] ?? 0), command: command ?? "" };
      }),
  );
  const browsers = all.filter(({ command }) => command.includes(`--user-data-dir=${own}/`) && !command.includes("--type=")).map(({ pid }) => pid);
  if (kind === "browser") return browsers;
  const isBelow = (pid: number): boolean => browsers.includes(pid) || (pid > 1 && isBelow(all.find((one) => one.pid === pid)?.parent ?? 0));
  return all.filter(({ pid, command }) => command.includes("--type=renderer") && isBelow(pid)).map(({ pid }) => pid);
}

/** Waits for a browser other than `not` that has a page process. */
async function browserAtWork(not?: number): Promise<number> {
  for (let i = 0; i < 500; i += 1) {
    const [pid] = (await processes("browser")).filter((one) => one !== not);
    if (pid !== undefined && (await processes("page")).length > 0) return pid;
    await sleep(20);
  }
  throw new Error("no browser at work");
}

let pool: PrinterPool | undefined;
const open = async (options: Partial<PoolOptions> = {}) => {
  pool = await openPrinterPool({ warn: () => undefined, ...options });
  return pool;
};
const print = (name: string, source = html(name), timeoutMs = 60_000) => outcome((pool as PrinterPool).print(source, { date, expectText: name, timeoutMs }));
afterEach(() => pool?.close());

describe("openPrinterPool", () => {
  it("prints many documents side by side, each its own, and the same bytes on any page", async () => {
    const { print: bytes } = await open({ pages: 3, printsPerPage: 2 });
    const names = Array.from({ length: 15 }, (_, i) => `Packet ${i}`);
    expect(await Promise.all(names.map((name) => print(name)))).toEqual(names);
    const copies = await Promise.all(names.map(() => bytes(html("Packet"), { date, expectText: "Packet" })));
    for (const copy of copies) expect(Buffer.compare(Buffer.from(copy), Buffer.from(copies[0] as Uint8Array))).toBe(0);
  });

  it("tells a document's own fault at once and goes on", async () => {
    await open();
    expect(await Promise.all([print("A", html("B")), print("C")])).toEqual([expect.any(PrintError), "C"]);
  });

  it("refuses when too many wait, and no page", async () => {
    await expect(openPrinterPool({ warn: () => undefined, pages: 0 })).rejects.toThrow(RangeError);
    await open({ pages: 1, waiting: 1 });
    expect(await Promise.all([print("A"), print("B"), print("C")])).toEqual([
      "A",
      "B",
      expect.objectContaining({ name: "EnvironmentError", message: expect.stringContaining("1 documents wait") }),
    ]);
  });

  it("finishes what it prints and refuses what waits when closed", async () => {
    const { close } = await open({ pages: 1 });
    const [first, second] = [print("A", html("A", 500)), print("B")];
    await close();
    expect([await first, await second, await print("C")]).toEqual([
      "A",
      expect.objectContaining({ name: "EnvironmentError" }),
      expect.objectContaining({ name: "EnvironmentError" }),
    ]);
    expect(await processes("browser")).toEqual([]);
  });
});

describe.runIf(process.platform === "linux")("a pool whose browser is harmed", () => {
  it("starts another and prints every document that was in the one killed, and those that waited", async () => {
    await open({ pages: 2 });
    const documents = [print("A", long("A")), print("B", long("B")), print("C")];
    await sleep(300);
    const killed = await browserAtWork();
    process.kill(killed, "SIGKILL");
    expect(await Promise.all(documents)).toEqual(["A", "B", "C"]);
    expect(await processes("browser")).toHaveLength(1);
    expect(await processes("browser")).not.toContain(killed);
  });

  it("gives a document up whose browser ends twice, and prints the next", async () => {
    await open({ pages: 1 });
    const [document, next] = [print("A", long("A")), print("B")];
    await sleep(300);
    const first = await browserAtWork();
    process.kill(first, "SIGKILL");
    const second = await browserAtWork(first);
    await sleep(200);
    process.kill(second, "SIGKILL");
    const failed = await document;
    expect(failed).toBeInstanceOf(PrintError);
    expect(failed).toMatchObject({ message: expect.stringMatching(/two attempts: the browser ended/) });
    expect(await next).toBe("B");
  });

  it("replaces a browser that hangs when the time limit is over", async () => {
    await open({ pages: 2 });
    await print("warm");
    const hung = await browserAtWork();
    process.kill(hung, "SIGSTOP");
    expect(await Promise.all([print("A", html("A"), 3000), print("B", html("B"), 3000)])).toEqual(["A", "B"]);
    await pool?.close();
    expect(await processes("browser")).toEqual([]);
  });

  it("prints again when only the page crashed, in the same browser", async () => {
    await open({ pages: 1 });
    await print("warm");
    const browser = await browserAtWork();
    const document = print("A", long("A"));
    await sleep(300);
    for (const page of await processes("page")) process.kill(page, "SIGKILL");
    expect(await document).toBe("A");
    expect(await processes("browser")).toEqual([browser]);
  });

  it("gives a document up that twice takes longer than it may", async () => {
    await open({ pages: 1 });
    const failed = await print("A", long("A"), 150);
    expect(failed).toBeInstanceOf(PrintError);
    expect(failed).toMatchObject({ message: expect.stringContaining("within 150 ms") });
    expect(await print("B")).toBe("B");
  });

  it("leaves no process and no profile behind", async () => {
    await open();
    const document = print("A", long("A"));
    await sleep(300);
    process.kill(await browserAtWork(), "SIGKILL");
    expect(await document).toBe("A");
    await pool?.close();
    expect([await processes("browser"), await processes("page")]).toEqual([[], []]);
    expect(await readdir(own)).toEqual([]);
  });
});
