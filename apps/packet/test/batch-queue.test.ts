import { type ChildProcess, spawn, spawnSync } from "node:child_process";
import { createHash } from "node:crypto";
import { once } from "node:events";
import { existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { createServer } from "node:net";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { setTimeout as sleep } from "node:timers/promises";
import { fileURLToPath } from "node:url";
import { Queue } from "bullmq";
import { afterAll, afterEach, beforeAll, describe, expect, it } from "vitest";
import type { Row } from "../src/batch/row.js";
import { inspectPdf } from "../src/print/inspect-pdf.js";
import { connectionOf, type Order, orderId, readOrder } from "../src/work/packet-queue.js";

const root = fileURLToPath(new URL("../../../", import.meta.url));
const main = join(root, "apps/packet/dist/main.js");
const good = readFileSync(join(root, "fixtures/jobs/rv-30-small-service.yaml"), "utf8");
const scratch = mkdtempSync(join(tmpdir(), "branchwork-queue-"));

const order: Order = { format: "branchwork-order/1", stem: "a", job: good, date: "2026-11-25", formats: ["pdf"], sets: ["submittal"], program: "0" };

describe("an order", () => {
  it("is read back as it was, and its id is of all it says", () => {
    expect(readOrder(JSON.parse(JSON.stringify(order)))).toEqual(order);
    const others: Order[] = [
      { ...order, stem: "b" },
      { ...order, job: `${good}\n` },
      { ...order, date: "2026-11-26" },
      { ...order, edition: "2020" },
      { ...order, formats: ["pdf", "html"] },
      { ...order, program: "1" },
      { ...order, sets: ["submittal", "owner"] },
      { ...order, paper: "a4" },
      { ...order, overlay: { file: "t.yaml", text: "" } },
      { ...order, prices: { file: "p.yaml", text: "" } },
      { ...order, prices: { file: "q.yaml", text: "" } },
    ];
    expect(new Set([order, ...others].map(orderId)).size).toBe(12);
  });
  it.each([
    [null],
    ["x"],
    [{}],
    [{ ...order, stem: "../../etc/x" }],
    [{ ...order, stem: "a\\b" }],
    [{ ...order, stem: ".." }],
    [{ ...order, formats: ["exe"] }],
    [{ ...order, formats: [] }],
    [{ ...order, sets: [] }],
    [{ ...order, sets: ["all"] }],
    [{ ...order, paper: "b5" }],
    [{ ...order, date: "tomorrow" }],
    [{ ...order, job: 7 }],
    [{ ...order, job: "x".repeat(2_000_001) }],
    [{ ...order, edition: "1999" }],
  ])("that is none is refused: %#", (data) => expect(readOrder(data)).toBeUndefined());
});

describe("--queue", () => {
  it("reads an address", () => {
    expect(connectionOf("redis://127.0.0.1:6380/2")).toEqual({ host: "127.0.0.1", port: 6380, db: 2 });
    expect(connectionOf("rediss://me:p%40ss@[::1]")).toEqual({ host: "::1", port: 6379, db: 0, username: "me", password: "p@ss", tls: {} });
  });
  it.each(["", "localhost", "http://localhost", "redis:///0", "redis://localhost/x"])("refuses %j without repeating it", (address) =>
    expect(() => connectionOf(address)).toThrow(/mend:/),
  );
  it("where nobody answers: exit 3, and the password is not told", () => {
    const { status, stderr } = spawnSync(process.execPath, [main, "work", "--queue", "redis://:geheim@127.0.0.1:1/0", "--out", join(scratch, "none")], {
      encoding: "utf8",
    });
    expect(status).toBe(3);
    expect(stderr).toContain("no Redis answers at 127.0.0.1:1");
    expect(stderr).not.toContain("geheim");
  });
  it("is loaded by no other command", () => {
    const { status, stderr } = spawnSync(
      process.execPath,
      ["--input-type=module", "-e", `process.argv = ["node", "branchwork", "--help"]; await import(${JSON.stringify(main)});`],
      {
        encoding: "utf8",
        env: { ...process.env, NODE_DEBUG: "esm" },
      },
    );
    expect(status).toBe(0);
    expect(stderr).toContain("commander"); // what is loaded does show
    expect(stderr).not.toMatch(/bullmq|ioredis/);
  });
});

const absent = spawnSync("redis-server", ["--version"]).error !== undefined;

describe.skipIf(absent)("a queue on a real Redis (skipped where redis-server is not installed)", { timeout: 240_000 }, () => {
  let port = 0;
  let redis: ChildProcess;
  const workers = new Set<ChildProcess>();
  const out = join(scratch, "out");
  const jobs = join(scratch, "jobs");
  const address = () => `redis://127.0.0.1:${port}/0`;

  async function startRedis() {
    redis = spawn(
      "redis-server",
      ["--port", `${port}`, "--bind", "127.0.0.1", "--dir", scratch, "--appendonly", "yes", "--appendfsync", "always", "--save", ""],
      { stdio: "ignore" },
    );
    for (let i = 0; i < 200; i += 1) {
      if (spawnSync("redis-cli", ["-p", `${port}`, "ping"], { encoding: "utf8" }).stdout?.trim() === "PONG") return;
      await sleep(50);
    }
    throw new Error("redis-server did not start");
  }
  const stop = async (child: ChildProcess, signal: NodeJS.Signals) => {
    if (child.exitCode !== null || child.signalCode !== null) return;
    child.kill(signal);
    await once(child, "exit");
  };
  function startWorker() {
    const worker = spawn(process.execPath, [main, "work", "--queue", address(), "--out", out, "--lock", "2", "--jobs", "1"], {
      stdio: ["ignore", "pipe", "pipe"],
    });
    workers.add(worker);
    return worker;
  }
  const enqueue = (...more: string[]) =>
    spawn(process.execPath, [main, "enqueue", jobs, "--queue", address(), "--date", "2026-11-25", ...more], { stdio: ["ignore", "pipe", "inherit"] });
  async function ended(child: ChildProcess) {
    let text = "";
    child.stdout?.on("data", (piece) => {
      text += piece;
    });
    const [status] = await once(child, "close");
    return { status, ids: text.split("\n").flatMap((line) => line.split("\t")[0] || []) };
  }
  const packets = () => (existsSync(out) ? readdirSync(out).filter((name) => !name.startsWith(".")) : []);

  beforeAll(async () => {
    const server = createServer().listen(0, "127.0.0.1");
    await once(server, "listening");
    port = (server.address() as { port: number }).port;
    await new Promise((resolve) => server.close(resolve));
    mkdirSync(jobs);
    for (let n = 1; n <= 8; n += 1) writeFileSync(join(jobs, `job-${n}.yaml`), good.replace(/^( {2}title: ).*$/m, `$1Job ${n}`));
    writeFileSync(join(jobs, "broken.yaml"), "format: nothing\n");
    await startRedis();
  });
  afterEach(async () => {
    await Promise.all([...workers].map((worker) => stop(worker, "SIGKILL")));
    workers.clear();
  });
  afterAll(async () => {
    await stop(redis, "SIGKILL");
  });

  it("makes every packet once, none corrupt, with workers killed at work and Redis killed and started again", async () => {
    const first = await ended(enqueue());
    expect([first.status, first.ids.length]).toEqual([0, 9]);
    expect((await ended(enqueue())).ids).toEqual(first.ids); // again: the same orders
    const queue = new Queue("packets", { connection: { host: "127.0.0.1", port } });
    queue.on("error", () => undefined); // Redis is about to be killed
    expect(await queue.getJobCountByTypes("waiting", "active", "delayed", "completed", "failed")).toBe(9);

    for (const made of [1, 3]) {
      const worker = startWorker();
      for (let i = 0; i < 2400 && packets().length < made; i += 1) await sleep(25);
      expect(packets().length).toBeGreaterThanOrEqual(made);
      await stop(worker, "SIGKILL");
    }
    const pair = [startWorker(), startWorker()];
    const lost = pair.map((worker) => once(worker, "exit").then(([code]) => code));
    await sleep(2500);
    await stop(redis, "SIGKILL");
    await sleep(500);
    await startRedis();
    const waited = ended(enqueue("--wait"));
    // Neither worker ends for it, whether it was at work or still starting.
    expect(await Promise.race([waited, ...lost])).toMatchObject({ status: 2 });

    const { status } = await waited;
    expect(status).toBe(2); // one is bad input, none failed
    expect(packets().sort()).toEqual([...first.ids].sort());
    for (const id of packets()) {
      const row = JSON.parse(readFileSync(join(out, id, "row.json"), "utf8")) as Row;
      expect(row.digest).toBe(id);
      expect(readdirSync(join(out, id)).sort()).toEqual([...row.files.map(({ name }) => name), "row.json"].sort());
      for (const { name, sha256 } of row.files) {
        const bytes = readFileSync(join(out, id, name));
        expect(createHash("sha256").update(bytes).digest("hex")).toBe(sha256);
        expect(inspectPdf(bytes).pages).toBeGreaterThan(3);
      }
    }
    expect(await queue.getJobCountByTypes("failed")).toBe(0);
    await queue.close();
  });

  it("an order that is none fails at once and stops nobody; a worker told to end does so in order", async () => {
    const queue = new Queue("sly", { connection: { host: "127.0.0.1", port } });
    const worker = spawn(process.execPath, [main, "work", "--queue", address(), "--name", "sly", "--out", join(scratch, "sly")], {
      stdio: ["ignore", "pipe", "pipe"],
    });
    workers.add(worker);
    const sly = await queue.add("packet", { ...order, stem: "../../x" }, { jobId: "id-a", attempts: 5 });
    const forged = await queue.add("packet", order, { jobId: "id-b", attempts: 5 });
    for (let i = 0; i < 400 && (await queue.getJobCountByTypes("failed")) < 2; i += 1) await sleep(50);
    const reasons = await Promise.all([sly, forged].map(async ({ id }) => (await queue.getJob(id as string))?.failedReason));
    expect(reasons).toEqual(["not an order of a packet", "the order's id is not its digest"]);
    expect(existsSync(join(scratch, "x"))).toBe(false);
    worker.kill("SIGTERM");
    expect((await once(worker, "exit"))[0]).toBe(0);
    expect(readdirSync(join(scratch, "sly"))).toEqual([".unfinished"]);
    await queue.close();
  });
});

afterAll(() => rmSync(scratch, { recursive: true, force: true }));
