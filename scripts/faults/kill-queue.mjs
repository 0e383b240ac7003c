import { spawn, spawnSync } from "node:child_process";
import { once } from "node:events";
import { readdirSync } from "node:fs";
import { createServer } from "node:net";
import { join } from "node:path";
import { setTimeout as sleep } from "node:timers/promises";

/** Redis and the workers killed in turn; every order is filled once, with the bytes of an undisturbed batch (`calm`). Null where there is no Redis. */
export async function killQueue({ main, jobs, top, calm, calmMs, random, sha256 }) {
  if (spawnSync("redis-server", ["--version"]).error !== undefined) return null;
  const server = createServer().listen(0, "127.0.0.1");
  await once(server, "listening");
  const { port } = server.address();
  await new Promise((resolve) => server.close(resolve));
  const queue = ["--queue", `redis://127.0.0.1:${port}/0`];
  const out = join(top, "queued");
  const quiet = { stdio: "ignore" };
  const running = [];
  const stop = async (child) => {
    if (child.exitCode !== null || child.signalCode !== null) return;
    child.kill("SIGKILL");
    await once(child, "exit");
  };
  const start = (program, ...args) => {
    const child = spawn(program, args, quiet);
    running.push(child);
    return child;
  };
  const redisUp = async () => {
    const redis = start(
      "redis-server",
      "--port",
      `${port}`,
      "--bind",
      "127.0.0.1",
      "--dir",
      top,
      "--appendonly",
      "yes",
      "--appendfsync",
      "always",
      "--save",
      "",
    );
    for (let i = 0; i < 200 && spawnSync("redis-cli", ["-p", `${port}`, "ping"], { encoding: "utf8" }).stdout?.trim() !== "PONG"; i += 1) await sleep(50);
    return redis;
  };
  const workerUp = () => start(process.execPath, main, "work", ...queue, "--out", out, "--lock", "2", "--jobs", "1");
  try {
    let redis = await redisUp();
    const order = (...more) => spawnSync(process.execPath, [main, "enqueue", jobs, ...queue, "--date", "2026-01-01", ...more], { encoding: "utf8" });
    const ids = order()
      .stdout.split("\n")
      .flatMap((line) => line.split("\t")[0] || []);
    let hits = 0;
    for (let n = 0; n < 4; n += 1) {
      const workers = [workerUp(), workerUp()];
      await sleep(1500 + random() * calmMs * 0.5);
      if (n % 2 === 1) {
        await stop(redis);
        await sleep(random() * 1000);
        redis = await redisUp();
        await sleep(random() * 1000);
        hits += 1;
      }
      for (const worker of workers) await stop(worker);
      hits += 2;
    }
    workerUp();
    const { status, stderr } = order("--wait");
    const folders = readdirSync(out).filter((name) => !name.startsWith("."));
    const bytes = folders.flatMap((id) =>
      readdirSync(join(out, id))
        .filter((name) => name.endsWith(".pdf"))
        .map((name) => sha256(join(out, id, name))),
    );
    const wanted = [...calm].filter(([name]) => name.endsWith(".pdf")).map(([, sum]) => sum);
    const wrong = [
      ...(status === 0 ? [] : [`exit code ${status}: ${stderr}`]),
      ...(folders.sort().join() === [...ids].sort().join() ? [] : [`${folders.length} packets of ${ids.length} orders`]),
    ];
    return {
      hits,
      lost: wanted.filter((sum) => !bytes.includes(sum)).length,
      corrupt: bytes.filter((sum) => !wanted.includes(sum)).length,
      wrong,
    };
  } finally {
    for (const child of running) await stop(child);
  }
}
