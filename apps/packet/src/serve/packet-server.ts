import { createServer, type IncomingMessage, type Server, type ServerResponse } from "node:http";
import type { AddressInfo } from "node:net";
import type { PrintDocument } from "../build.js";
import { EnvironmentError } from "../print/environment-error.js";
import { PrintError } from "../print/print-error.js";
import { ANSWER_HEADERS } from "./answer-headers.js";
import { type MakerLimits, openPacketMakers } from "./packet-makers.js";
import { type BodyLimits, readBody } from "./read-body.js";
import { Refusal } from "./refusal.js";
import { assertOwn, assertOwnAction } from "./same-site.js";
import type { StaticFile } from "./static-files.js";

/** What the server is given. Times in milliseconds. */
export interface PacketServerOptions {
  /** 0 takes a free one. */
  readonly port: number;
  /** The page's files; null where it is not built. */
  readonly files: ReadonlyMap<string, StaticFile> | null;
  readonly print: PrintDocument;
  /** The program of a maker's thread; packet-worker beside this file unless told. */
  readonly maker?: URL;
  /** Receives what went wrong in the program itself. */
  readonly warn: (message: string) => void;
  readonly limits?: Partial<ServerLimits>;
}

export interface ServerLimits {
  readonly body: BodyLimits;
  readonly headersMs: number;
  readonly idleMs: number;
  /** Packets made or waited for at once. */
  readonly packets: number;
  readonly maker: MakerLimits;
  readonly connections: number;
}

const USUAL: ServerLimits = {
  body: { bytes: 4_500_000, pauseMs: 5_000, wholeMs: 30_000 },
  headersMs: 5_000,
  idleMs: 5_000,
  packets: 4,
  maker: { computeMs: 20_000, megabytes: 512 },
  connections: 64,
};

/** A server that listens. */
export interface PacketServer {
  readonly port: number;
  /** Takes nothing new, finishes what it has begun. */
  close(): Promise<void>;
}

const PACKET = "/packet";
const NOT_BUILT = "The planner is not built here. In the repository: run `pnpm build`, then start this again. Packets are made all the same: POST /packet.";

/** Serves the planner's page and makes packets, on the loopback interface alone. */
export async function openPacketServer(options: PacketServerOptions): Promise<PacketServer> {
  const limits = { ...USUAL, ...options.limits };
  const server = createServer({
    headersTimeout: limits.headersMs,
    requestTimeout: limits.body.wholeMs + limits.headersMs,
    keepAliveTimeout: limits.idleMs,
    connectionsCheckingInterval: Math.min(1_000, limits.headersMs),
    maxHeaderSize: 8_192,
    requireHostHeader: false, // told by assertOwn, in the same words as a foreign one
  });
  server.maxConnections = limits.connections;
  const makers = openPacketMakers({ print: options.print, limits: limits.maker, program: options.maker ?? new URL("./packet-worker.js", import.meta.url) });
  let making = 0;

  server.on("request", (request: IncomingMessage, response: ServerResponse) => {
    void answer(request, response).catch((error: unknown) => sendError(response, error, options.warn));
  });
  server.on("clientError", (error: NodeJS.ErrnoException, socket) => {
    if (!socket.writable) return;
    const status =
      error.code === "HPE_HEADER_OVERFLOW"
        ? "431 Request Header Fields Too Large"
        : error.code === "ERR_HTTP_REQUEST_TIMEOUT"
          ? "408 Request Timeout"
          : "400 Bad Request";
    socket.end(`HTTP/1.1 ${status}\r\nconnection: close\r\ncontent-length: 0\r\n\r\n`);
  });
  const port = await listen(server, options.port);

  async function answer(request: IncomingMessage, response: ServerResponse): Promise<void> {
    assertOwn(request.headers, port);
    const path = (request.url ?? "").split("?", 1)[0] ?? "";
    if (path === PACKET) {
      allow(request, "POST");
      assertOwnAction(request.headers);
      if (!/^application\/json\s*(;|$)/i.test(request.headers["content-type"] ?? "")) throw new Refusal(415, "send application/json");
      await sendPacket(request, response);
      return;
    }
    allow(request, "GET", "HEAD");
    if (options.files === null && path === "/") throw new Refusal(404, NOT_BUILT);
    const file = options.files?.get(path);
    if (file === undefined) throw new Refusal(404, "there is no such page");
    send(request, response, 200, { "content-type": file.media, "cache-control": "no-cache" }, file.bytes);
  }

  async function sendPacket(request: IncomingMessage, response: ServerResponse): Promise<void> {
    if (making >= limits.packets) throw new Refusal(503, `${making} packets are being made already`, { "retry-after": "2" });
    making += 1;
    try {
      const { pdf, ready } = await makers.make(await readBody(request, limits.body));
      const headers = {
        "content-type": "application/pdf",
        "content-disposition": 'attachment; filename="packet.pdf"',
        "cache-control": "no-store",
        "x-branchwork-ready": String(ready),
      };
      send(request, response, 200, headers, pdf);
    } finally {
      making -= 1;
    }
  }

  return { port, close: () => close(server).then(() => makers.close()) };
}

function allow(request: IncomingMessage, ...methods: readonly string[]): void {
  if (!methods.includes(request.method ?? "")) throw new Refusal(405, `only ${methods.join(" and ")} here`, { allow: methods.join(", ") });
}

function send(request: IncomingMessage, response: ServerResponse, status: number, headers: Readonly<Record<string, string>>, bytes: Uint8Array | string): void {
  // What is left of a body nobody reads would be taken for the next request.
  const rest = request.complete || request.method === "GET" || request.method === "HEAD" ? {} : { connection: "close" };
  response.writeHead(status, { ...ANSWER_HEADERS, ...rest, ...headers, "content-length": Buffer.byteLength(bytes) });
  response.end(request.method === "HEAD" ? undefined : bytes);
}

function sendError(response: ServerResponse, error: unknown, warn: (message: string) => void): void {
  const refusal = refusalOf(error, warn);
  if (response.headersSent) {
    response.destroy();
    return;
  }
  const { status, message, headers, issues } = refusal;
  const text = `${JSON.stringify({ error: message, ...(issues.length > 0 ? { issues } : {}) })}\n`;
  send(response.req, response, status, { "content-type": "application/json; charset=utf-8", "cache-control": "no-store", ...headers }, text);
  if (!response.req.complete) response.once("finish", () => response.req.socket.destroySoon());
}

/** What went wrong, in words fit for whoever asked; a fault of the program is told to its owner alone. */
function refusalOf(error: unknown, warn: (message: string) => void): Refusal {
  if (error instanceof Refusal) return error;
  if (error instanceof PrintError) return new Refusal(422, error.message);
  if (error instanceof EnvironmentError) return new Refusal(503, error.message, { "retry-after": "5" });
  warn(`a fault of the program: ${error instanceof Error ? (error.stack ?? error.message) : String(error)}`);
  return new Refusal(500, "a fault of the program; it is told on the terminal the server runs in");
}

function listen(server: Server, port: number): Promise<number> {
  return new Promise((resolve, reject) => {
    server.once("error", (error: NodeJS.ErrnoException) => {
      const taken = error.code === "EADDRINUSE" || error.code === "EACCES";
      reject(taken ? new EnvironmentError(`port ${port} cannot be had (${error.code})`, { hint: "name another with --port, or 0 for any free one" }) : error);
    });
    server.listen({ port, host: "127.0.0.1" }, () => resolve((server.address() as AddressInfo).port));
  });
}

function close(server: Server): Promise<void> {
  return new Promise((resolve, reject) => {
    server.close((error) => (error && (error as NodeJS.ErrnoException).code !== "ERR_SERVER_NOT_RUNNING" ? reject(error) : resolve()));
    server.closeIdleConnections();
  });
}
