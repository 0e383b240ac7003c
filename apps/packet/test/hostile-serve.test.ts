import { spawn } from "node:child_process";
import { mkdirSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import { request as ask } from "node:http";
import { connect, type Socket } from "node:net";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { inspectPdf } from "../src/print/inspect-pdf.js";
import { PrintError } from "../src/print/print-error.js";
import { openPrinterPool, type PrinterPool } from "../src/print/printer-pool.js";
import { openPacketServer, type PacketServer } from "../src/serve/packet-server.js";
import { staticFiles } from "../src/serve/static-files.js";
import { plainOf } from "./hostile-text.js";

const root = fileURLToPath(new URL("../../../", import.meta.url));
const job = readFileSync(join(root, "fixtures/jobs/rv-30-small-service.yaml"), "utf8");
const extending = readFileSync(join(root, "fixtures/overlays/otter-fell.yaml"), "utf8");
const scratch = mkdtempSync(join(tmpdir(), "branchwork-serve-"));
const told: string[] = [];
/** A thread takes no TypeScript: the built program. */
const maker = new URL("../dist/serve/packet-worker.js", import.meta.url);

interface Answer {
  readonly status: number;
  readonly headers: Readonly<Record<string, string | string[] | undefined>>;
  readonly body: Buffer;
}

function asked(port: number, path: string, options: { method?: string; headers?: Record<string, string>; body?: string } = {}): Promise<Answer> {
  return new Promise((resolve, reject) => {
    const request = ask({ host: "127.0.0.1", port, path, method: options.method ?? "GET", headers: options.headers ?? {}, agent: false }, (response) => {
      const parts: Buffer[] = [];
      response.on("data", (part: Buffer) => parts.push(part));
      response.on("end", () => resolve({ status: response.statusCode ?? 0, headers: response.headers, body: Buffer.concat(parts) }));
      response.on("error", reject);
    });
    request.on("error", reject);
    request.end(options.body);
  });
}

const posted = (port: number, body: string, headers: Record<string, string> = {}) =>
  asked(port, "/packet", { method: "POST", headers: { "content-type": "application/json", ...headers }, body });

/** Bytes sent as they are, and all that comes back until the server ends the connection. */
function raw(port: number, send: (socket: Socket) => void): Promise<string> {
  return new Promise((resolve, reject) => {
    let said = "";
    const socket = connect(port, "127.0.0.1", () => send(socket));
    socket.on("data", (part) => {
      said += part.toString("latin1");
    });
    socket.on("close", () => resolve(said));
    socket.on("error", (error: NodeJS.ErrnoException) => (error.code === "ECONNRESET" || error.code === "EPIPE" ? resolve(said) : reject(error)));
  });
}

/** The demonstration job with its circuit thirty times over, in the house's panel and in two below it. JSON is YAML. */
function ninetyCircuits(): string {
  const tree = plainOf(job) as { service: { panel: { circuits: object[]; feeders?: object[] } } };
  const { panel } = tree.service;
  const [circuit] = panel.circuits as { id: string; breaker: object }[];
  const thirty = (of: string) =>
    Array.from({ length: 30 }, (_, i) => ({ ...circuit, id: `${of}-${i}`, name: `Outlet ${of} ${i}`, breaker: { ...circuit!.breaker, spaces: [i + 1] } }));
  const route = [{ name: "Along the joists", place: "indoors", method: "NM-B", length: "30 ft" }];
  const breaker = { rating: "60 A", poles: 2, gfci: false, listed_for_panel: true, interrupting_kA: 10 };
  const below = (id: string, space: number) => ({
    id: `to-${id}`,
    name: `Feeder ${id}`,
    building: "same",
    breaker: { ...breaker, spaces: [space, space + 2] },
    route,
    panel: { ...panel, id, name: `Panel ${id}`, directory: [], spaces: 84, circuits: thirty(id) },
  });
  const house = { ...panel, directory: [], spaces: 84, circuits: thirty("house") };
  return JSON.stringify({ ...tree, service: { ...tree.service, panel: { ...house, feeders: [below("east", 41), below("west", 45)] } } });
}

/** A printer that ends when it is told to. */
function heldPrinter() {
  const waiting: (() => void)[] = [];
  const print = () => new Promise<Uint8Array>((_done, failed) => waiting.push(() => failed(new Error("let go"))));
  return { print, waiting };
}

let page: string;
beforeAll(() => {
  page = join(scratch, "dist");
  mkdirSync(join(page, "assets"), { recursive: true });
  writeFileSync(join(page, "index.html"), "<!doctype html><title>Planner</title>");
  writeFileSync(join(page, "assets", "a.js"), "export {};");
  writeFileSync(join(page, ".secret.html"), "hidden");
  writeFileSync(join(page, "key.pem"), "hidden");
  writeFileSync(join(scratch, "outside.html"), "outside");
  symlinkSync(join(scratch, "outside.html"), join(page, "link.html"));
  symlinkSync(scratch, join(page, "up"));
});
afterAll(() => rmSync(scratch, { recursive: true, force: true }));

async function served(options: Partial<Parameters<typeof openPacketServer>[0]> = {}): Promise<PacketServer> {
  return openPacketServer({
    port: 0,
    files: await staticFiles(page),
    maker,
    print: () => Promise.reject(new Error("nothing is printed here")),
    warn: (message) => told.push(message),
    ...options,
  });
}

describe("the page", () => {
  let server: PacketServer;
  beforeAll(async () => {
    server = await served();
  });
  afterAll(() => server.close());

  it("is served with a strict policy, and its types are not to be guessed", async () => {
    const { status, headers, body } = await asked(server.port, "/");
    expect(status).toBe(200);
    expect(body.toString()).toContain("Planner");
    expect(headers["content-security-policy"]).toMatch(/^default-src 'none'; script-src 'self';/);
    expect(headers["content-security-policy"]).not.toMatch(/script-src[^;]*unsafe|\*/);
    expect(headers["x-content-type-options"]).toBe("nosniff");
    expect(headers["cross-origin-resource-policy"]).toBe("same-origin");
    expect(headers["access-control-allow-origin"]).toBeUndefined();
    expect((await asked(server.port, "/assets/a.js")).headers["content-type"]).toMatch(/^text\/javascript/);
    expect((await asked(server.port, "/?x=1", { method: "HEAD" })).body.length).toBe(0);
  });

  it.each([
    "/../outside.html",
    "/%2e%2e/outside.html",
    "/..%2foutside.html",
    "/assets/../../outside.html",
    "/assets/..%5c..%5coutside.html",
    "//etc/passwd",
    "/up/outside.html",
    "/link.html",
    "/.secret.html",
    "/key.pem",
    "/index.html%00.js",
    "/index.html/",
    "/__proto__",
    "/constructor",
    "file:///etc/passwd",
    "http://127.0.0.1/../outside.html",
    "*",
  ])("reaches no file but the page's: %s", async (path) => {
    const said = await raw(server.port, (socket) => socket.end(`GET ${path} HTTP/1.1\r\nHost: 127.0.0.1:${server.port}\r\nConnection: close\r\n\r\n`));
    expect(said).toMatch(/^HTTP\/1\.1 (404|400) /);
    expect(said).not.toMatch(/outside<|hidden|root:/);
  });

  it.each(["evil.test", "evil.test:80", "127.0.0.1", "127.0.0.1.evil.test", "localhost:1", "[::1]", "0.0.0.0", "user@127.0.0.1"])(
    "answers to no other name (DNS rebinding): Host %s",
    async (host) => {
      expect((await asked(server.port, "/", { headers: { host } })).status).toBe(421);
      expect((await posted(server.port, "{}", { host })).status).toBe(421);
    },
  );
  it("answers to localhost, and to no request without a Host", async () => {
    expect((await asked(server.port, "/", { headers: { host: `localhost:${server.port}` } })).status).toBe(200);
    const said = await raw(server.port, (socket) => socket.end("GET / HTTP/1.1\r\n\r\n"));
    expect(said).toMatch(/^HTTP\/1\.1 (400|421) /);
  });

  it.each(["PUT", "DELETE", "PATCH", "OPTIONS", "TRACE", "POST"])("takes no %s of a page", async (method) => {
    const { status, headers } = await asked(server.port, "/", { method });
    expect(status).toBe(405);
    expect(headers.allow).toBe("GET, HEAD");
  });
  it("tunnels nothing and changes to no other protocol", async () => {
    expect(await raw(server.port, (s) => s.end(`CONNECT evil.test:443 HTTP/1.1\r\nHost: 127.0.0.1:${server.port}\r\n\r\n`))).not.toMatch(/ 200 /);
    const upgrade = `GET / HTTP/1.1\r\nHost: 127.0.0.1:${server.port}\r\nConnection: Upgrade, close\r\nUpgrade: websocket\r\n\r\n`;
    expect(await raw(server.port, (s) => s.end(upgrade))).not.toMatch(/ 101 /);
  });
  it("is plainly said to be missing where it is not built", async () => {
    const bare = await served({ files: await staticFiles(join(scratch, "nowhere")) });
    const { status, body } = await asked(bare.port, "/");
    await bare.close();
    expect(status).toBe(404);
    expect(JSON.parse(body.toString()).error).toMatch(/not built.*pnpm build/s);
  });
});

describe("a packet asked for", () => {
  let server: PacketServer;
  let pool: PrinterPool;
  beforeAll(async () => {
    pool = await openPrinterPool({ warn: () => undefined, pages: 1 });
    server = await served({ print: pool.print });
  });
  afterAll(async () => {
    await server.close();
    await pool.close();
  });

  it("is made", async () => {
    const { status, headers, body } = await posted(server.port, JSON.stringify({ job, date: "2026-11-25" }), { origin: `http://127.0.0.1:${server.port}` });
    expect(status).toBe(200);
    expect(headers["content-type"]).toBe("application/pdf");
    expect(headers["x-branchwork-ready"]).toBe("true");
    expect(headers["x-content-type-options"]).toBe("nosniff");
    expect(body.subarray(0, 5).toString()).toBe("%PDF-");
  });

  it.each([
    ["no JSON", "{", 400],
    ["a list", "[]", 400],
    ["no job", "{}", 400],
    ["a job that is no text", '{"job":{}}', 400],
    ["a field more", '{"job":"a","path":"/etc/passwd"}', 400],
    ["a prototype", '{"job":"a","__proto__":{"x":1}}', 400],
    ["a job that is none", '{"job":"a"}', 422],
    ["a date that is none", JSON.stringify({ job, date: "2026-99-99" }), 422],
    ["an overlay that wants a file", JSON.stringify({ job, overlay: extending }), 422],
  ])("is refused in words for %s", async (_what, body, status) => {
    const answer = await posted(server.port, body);
    expect(answer.status).toBe(status);
    const { error } = JSON.parse(answer.body.toString());
    expect(error.length).toBeGreaterThan(10);
    expect(error).not.toMatch(/\n\s+at /);
  });
  it("is of the set asked, on the paper asked", async () => {
    const pages = async (more: object) => inspectPdf((await posted(server.port, JSON.stringify({ job, date: "2026-11-25", ...more }))).body);
    const [submittal, owner, tabloid] = [await pages({}), await pages({ set: "owner" }), await pages({ paper: "tabloid" })];
    expect(owner.outline[0]?.title).toMatch(/^O-1/);
    expect(submittal.outline[0]?.title).toMatch(/^P-1/);
    expect([...new Set(tabloid.sizes.map(([width]) => Math.round(width)))].sort()).toEqual([1224, 612]);
    expect((await posted(server.port, JSON.stringify({ job, set: "all" }))).status).toBe(400);
  });
  it("names the character that no font draws, and its place", async () => {
    const { status, body } = await posted(server.port, JSON.stringify({ job: job.replace(/^( {2}title: ).*$/m, '$1"Outlet \u{13080}"') }));
    expect({ status, issue: JSON.parse(body.toString()).issues[0] }).toMatchObject({
      status: 422,
      issue: { file: "job.yaml", line: expect.any(Number), what: expect.stringContaining("U+13080") },
    });
  });
  it("names line and column and the mend where the job is at fault", async () => {
    const { body } = await posted(server.port, JSON.stringify({ job: job.replace("format: branchwork-job/1", "format: branchwork-job/9") }));
    expect(JSON.parse(body.toString()).issues[0]).toMatchObject({ file: "job.yaml", path: "format", line: expect.any(Number), mend: expect.any(String) });
  });
  it("is no UTF-8: refused", async () => {
    const said = await raw(server.port, (socket) => {
      socket.write(
        `POST /packet HTTP/1.1\r\nHost: 127.0.0.1:${server.port}\r\nContent-Type: application/json\r\nContent-Length: 2\r\nConnection: close\r\n\r\n`,
      );
      socket.end(Buffer.from([0xff, 0xfe]));
    });
    expect(said).toMatch(/^HTTP\/1\.1 400 /);
  });

  it.each([
    ["another site's Origin", { origin: "http://evil.test" }, 403],
    ["an opaque Origin", { origin: "null" }, 403],
    ["the same host, another port", { origin: "http://127.0.0.1:1" }, 403],
    ["https of the same name", { origin: "https://127.0.0.1" }, 403],
    ["another site by Sec-Fetch-Site", { "sec-fetch-site": "cross-site" }, 403],
    ["another site of the same machine", { "sec-fetch-site": "same-site" }, 403],
    ["a form", { "content-type": "application/x-www-form-urlencoded" }, 415],
    ["plain text, which a form may send", { "content-type": "text/plain" }, 415],
  ])("is refused from %s", async (_what, headers, status) => {
    expect((await posted(server.port, JSON.stringify({ job }), headers)).status).toBe(status);
  });
  it("is not made by GET", async () => {
    const { status, headers } = await asked(server.port, "/packet");
    expect(status).toBe(405);
    expect(headers.allow).toBe("POST");
  });
});

describe("bodies and crowds", () => {
  const limits = { body: { bytes: 100_000, pauseMs: 300, wholeMs: 1_000 }, headersMs: 500, idleMs: 500, packets: 2, connections: 8 };
  const head = (port: number, more: string) => `POST /packet HTTP/1.1\r\nHost: 127.0.0.1:${port}\r\nContent-Type: application/json\r\n${more}\r\n`;

  it("a body told to be huge is refused before it comes", async () => {
    const server = await served({ limits });
    const said = await raw(server.port, (socket) => socket.write(head(server.port, "Content-Length: 99999999999\r\n")));
    await server.close();
    expect(said).toMatch(/^HTTP\/1\.1 413 /);
  });
  it("a body that grows without end is cut off", async () => {
    const server = await served({ limits });
    const said = await raw(server.port, (socket) => {
      socket.write(head(server.port, "Transfer-Encoding: chunked\r\n"));
      const chunk = `4000\r\n${"x".repeat(0x4000)}\r\n`;
      const more = () => socket.writable && socket.write(chunk, () => setImmediate(more));
      more();
    });
    await server.close();
    expect(said === "" || /^HTTP\/1\.1 413 /.test(said)).toBe(true);
  });
  it.each([
    ["stops", 0],
    ["drips", 100],
  ])("a body that %s is given up", async (_how, everyMs) => {
    const server = await served({ limits });
    const started = performance.now();
    let timer: NodeJS.Timeout | undefined;
    const said = await raw(server.port, (socket) => {
      socket.write(head(server.port, "Content-Length: 1000\r\n"));
      if (everyMs > 0) timer = setInterval(() => socket.writable && socket.write("x"), everyMs);
    });
    clearInterval(timer);
    await server.close();
    expect(said).toMatch(/^HTTP\/1\.1 408 /);
    expect(performance.now() - started).toBeLessThan(5_000);
  });
  it("a head that never ends is given up", async () => {
    const server = await served({ limits });
    const started = performance.now();
    await raw(server.port, (socket) => socket.write("GET / HTTP/1.1\r\nHost: "));
    await server.close();
    expect(performance.now() - started).toBeLessThan(5_000);
  });
  it("a huge head is refused", async () => {
    const server = await served({ limits });
    const said = await raw(server.port, (socket) => socket.write(`GET / HTTP/1.1\r\nHost: 127.0.0.1:${server.port}\r\nX: ${"y".repeat(20_000)}\r\n\r\n`));
    await server.close();
    expect(said).toMatch(/^HTTP\/1\.1 431 /);
  });
  it("two lengths of one body (request smuggling) are refused", async () => {
    const server = await served({ limits });
    const said = await raw(server.port, (socket) =>
      socket.write(`${head(server.port, "Content-Length: 5\r\nTransfer-Encoding: chunked\r\n")}0\r\n\r\nGET / HTTP/1.1\r\n\r\n`),
    );
    await server.close();
    expect(said).toMatch(/^HTTP\/1\.1 400 /);
    expect(said.match(/HTTP\/1\.1/g)).toHaveLength(1);
  });

  it("more packets at once than it makes: 503 for those over, and room again after", async () => {
    const { print, waiting } = heldPrinter();
    const server = await served({ limits, print });
    const two = [posted(server.port, JSON.stringify({ job })), posted(server.port, JSON.stringify({ job }))];
    while (waiting.length < 2) await new Promise((resolve) => setTimeout(resolve, 10));
    const over = await posted(server.port, JSON.stringify({ job }));
    expect(over.status).toBe(503);
    expect(over.headers["retry-after"]).toBe("2");
    expect((await asked(server.port, "/")).status).toBe(200);
    for (const letGo of waiting.splice(0)) letGo();
    const ended = await Promise.all(two);
    expect(ended.map(({ status }) => status)).toEqual([500, 500]);
    expect(ended[0]?.body.toString()).not.toMatch(/let go|\bat /); // a fault is told on the terminal alone
    expect(told.at(-1)).toMatch(/let go/);
    const next = posted(server.port, JSON.stringify({ job }));
    while (waiting.length < 1) await new Promise((resolve) => setTimeout(resolve, 10));
    for (const letGo of waiting.splice(0)) letGo();
    expect((await next).status).toBe(500);
    await server.close();
  });

  it("a job that is long to work out, or takes memory without end, is refused, and holds up neither page nor packet", async () => {
    const program = join(scratch, "maker.mjs");
    writeFileSync(
      program,
      `import { parentPort } from "node:worker_threads";
       parentPort.on("message", ({ kind, body }) => {
         if (kind === "printed") return parentPort.postMessage({ kind: "made", pdf: new Uint8Array(5), ready: true });
         if (body === "long") for (;;);
         if (body === "deep") for (const all = []; ; ) all.push({ of: all.length });
         parentPort.postMessage({ kind: "print", html: body, date: new Date(0), expectText: body });
       });`,
    );
    const server = await served({
      limits: { ...limits, packets: 4, maker: { computeMs: 3_000, megabytes: 32 } },
      maker: pathToFileURL(program),
      print: async () => new Uint8Array(5),
    });
    const started = performance.now();
    const long = [posted(server.port, "long"), posted(server.port, "long")];
    const deep = posted(server.port, "deep");
    for (let i = 0; i < 5; i += 1) {
      const asking = performance.now();
      expect((await asked(server.port, "/")).status).toBe(200);
      expect(performance.now() - asking).toBeLessThan(1_000);
    }
    expect((await posted(server.port, "short")).status).toBe(200);
    expect(performance.now() - started).toBeLessThan(2_900); // the long ones are still at work
    for (const one of await Promise.all([...long, deep])) {
      expect(one.status).toBe(422);
      expect(JSON.parse(one.body.toString()).error).toMatch(/not worked out within 3 s|more than 32 MB to work out/);
    }
    expect((await posted(server.port, "short")).status).toBe(200);
    await server.close();
  });
  it("the time the print takes is not counted, and what remains after it is", async () => {
    const server = await served({
      limits: { ...limits, maker: { computeMs: 3_000, megabytes: 256 } },
      print: () => new Promise((_done, failed) => setTimeout(() => failed(new PrintError("seen on paper")), 4_000)),
    });
    const { status, body } = await posted(server.port, JSON.stringify({ job }));
    expect([status, body.toString()]).toEqual([422, expect.stringContaining("seen on paper")]);
    await server.close();
  });
  it("the page is answered while a job of ninety circuits is worked out", async () => {
    let begun = 0;
    const print = () => {
      begun += 1;
      return Promise.reject(new PrintError("not here"));
    };
    const server = await served({ print });
    let answered = false;
    const packet = posted(server.port, JSON.stringify({ job: ninetyCircuits() })).finally(() => {
      answered = true;
    });
    let slowest = 0;
    while (!answered) {
      const asking = performance.now();
      expect((await asked(server.port, "/")).status).toBe(200);
      slowest = Math.max(slowest, performance.now() - asking);
    }
    expect((await packet).body.toString()).toContain("not here");
    expect(begun).toBe(1); // it was worked out and laid out whole
    expect(slowest).toBeLessThan(1_000);
    await server.close();
  });

  it("closing finishes what is begun and takes nothing new", async () => {
    const { print, waiting } = heldPrinter();
    const server = await served({ limits, print });
    const begun = posted(server.port, JSON.stringify({ job }));
    while (waiting.length < 1) await new Promise((resolve) => setTimeout(resolve, 10));
    const closed = server.close();
    await expect(asked(server.port, "/")).rejects.toThrow(/ECONNREFUSED/);
    for (const letGo of waiting) letGo();
    expect((await begun).status).toBe(500);
    await closed;
  });
  it("a taken port is said so", async () => {
    const server = await served();
    await expect(served({ port: server.port })).rejects.toThrow(/port \d+ cannot be had[\s\S]*--port/);
    await server.close();
  });
});

describe("the command", () => {
  it("listens on 127.0.0.1 alone, and ends in order when told to", async () => {
    const child = spawn(process.execPath, [join(root, "apps/packet/dist/main.js"), "serve", "--port", "0"], { stdio: ["ignore", "pipe", "pipe"] });
    const ended = new Promise<number | null>((resolve) => child.once("exit", resolve));
    const address = await new Promise<string>((resolve, reject) => {
      let said = "";
      child.stdout.on("data", (part: Buffer) => {
        said += part.toString();
        if (said.includes("\n")) resolve(said.trim());
      });
      child.once("exit", () => reject(new Error(`ended: ${said}`)));
    });
    expect(address).toMatch(/^http:\/\/127\.0\.0\.1:\d+\/$/);
    expect([200, 404]).toContain((await fetch(address)).status);
    child.kill("SIGTERM");
    expect(await ended).toBe(0);
  });
});
