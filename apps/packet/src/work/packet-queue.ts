import { setTimeout as sleep } from "node:timers/promises";
import type { Edition } from "@branchwork/engine";
import { PACKET_SETS, PAPERS, type PacketSet, type Paper } from "@branchwork/sheets";
import type { JobsOptions } from "bullmq";
import { packetDigest, sha256, type Terms } from "../batch/packet-digest.js";
import { FORMATS, type Format } from "../build.js";
import { InputError, type NamedText } from "../load-design.js";
import { EnvironmentError } from "../print/environment-error.js";

/** What waits in the queue: all a packet is made of, so that a worker needs no file of the sender's. */
export interface Order {
  readonly format: "branchwork-order/1";
  /** The name the packet's files carry. */
  readonly stem: string;
  readonly job: string;
  readonly overlay?: NamedText | undefined;
  readonly edition?: Edition | undefined;
  readonly date: string;
  readonly formats: readonly Format[];
  readonly sets: readonly PacketSet[];
  readonly paper?: Paper | undefined;
  readonly prices?: NamedText | undefined;
  /** The sender's program; see programStamp. Only the same makes it. */
  readonly program: string;
}

/** What a worker answers. */
export interface Answer {
  readonly outcome: "ready" | "findings" | "bad-input";
  /** The packet's folder below the worker's output. */
  readonly folder: string;
}

/** An order's id: its digest. */
export function orderId(order: Order): string {
  const { stem, overlay, edition, date, formats, sets, paper, prices, program } = order;
  const terms: Terms = { overlay, edition, date, formats, sets, paper, prices, program };
  return sha256(JSON.stringify(["branchwork-order/1", stem, overlay?.file ?? null, prices?.file ?? null, packetDigest(order.job, terms)]));
}

/** Tried again after 1, 2, 4 … s; what is done is forgotten by the queue after a week, never by the output folder. */
export const ORDER_OPTIONS: JobsOptions = {
  attempts: 6,
  backoff: { type: "exponential", delay: 1000, jitter: 0.2 },
  removeOnComplete: { age: 7 * 86_400, count: 200_000 },
};

/** A queue's order, checked: whoever can reach the queue can put anything there. Undefined when it is none. */
export function readOrder(data: unknown): Order | undefined {
  const order = data as Partial<Order> | null;
  const isText = (value: unknown, most: number): value is string => typeof value === "string" && value.length <= most;
  const good =
    typeof order === "object" &&
    order?.format === "branchwork-order/1" &&
    isText(order.stem, 150) &&
    isStem(order.stem) &&
    isText(order.job, 2_000_000) &&
    (order.overlay === undefined || (isText(order.overlay.file, 1000) && isText(order.overlay.text, 2_000_000))) &&
    (order.prices === undefined || (isText(order.prices.file, 1000) && isText(order.prices.text, 2_000_000))) &&
    (order.edition === undefined || ["2017", "2020", "2023", "2026"].includes(order.edition)) &&
    isText(order.program, 100) &&
    isText(order.date, 10) &&
    /^\d{4}-\d{2}-\d{2}$/.test(order.date) &&
    Array.isArray(order.formats) &&
    order.formats.length > 0 &&
    order.formats.every((format) => FORMATS.includes(format)) &&
    Array.isArray(order.sets) &&
    order.sets.length > 0 &&
    order.sets.every((set) => PACKET_SETS.includes(set)) &&
    (order.paper === undefined || PAPERS.includes(order.paper));
  return good ? (order as Order) : undefined;
}

/** Whether a name can stand alone as a file's. */
export const isStem = (name: string) => name !== "" && !name.startsWith(".") && !/[/\\\p{Cc}]/u.test(name);

/** How a Redis server is reached. */
export interface ServerAddress {
  readonly host: string;
  readonly port: number;
  readonly db: number;
  readonly username?: string;
  readonly password?: string;
  readonly tls?: Readonly<Record<string, never>>;
}

/** The connection a redis:// or rediss:// address names. The address may hold a password: it is in no message. */
export function connectionOf(address: string): ServerAddress {
  const wrong = (what: string) => new InputError("--queue", [{ path: "", what, mend: "write it as redis://127.0.0.1:6379/0" }]);
  let url: URL;
  try {
    url = new URL(address);
  } catch {
    throw wrong("not an address");
  }
  const db = /^\/?(\d*)$/.exec(url.pathname)?.[1];
  if (!["redis:", "rediss:"].includes(url.protocol) || url.hostname === "" || db === undefined) throw wrong("not the address of a Redis server");
  return {
    host: url.hostname.replace(/^\[|\]$/g, ""),
    port: url.port === "" ? 6379 : Number(url.port),
    db: Number(db),
    ...(url.username ? { username: decodeURIComponent(url.username) } : {}),
    ...(url.password ? { password: decodeURIComponent(url.password) } : {}),
    ...(url.protocol === "rediss:" ? { tls: {} } : {}),
  };
}

/** Throws EnvironmentError when no Redis answers there within 5 s; one that does not answer is asked again while `patienceMs` last. */
export async function assertReachable(connection: ServerAddress, patienceMs = 0): Promise<void> {
  const until = performance.now() + patienceMs;
  for (;;) {
    try {
      return await askOnce(connection);
    } catch (error) {
      if (!(error instanceof EnvironmentError) || performance.now() >= until) throw error;
      await sleep(250);
    }
  }
}

async function askOnce(connection: ServerAddress): Promise<void> {
  const { Redis } = await import("ioredis");
  const client = new Redis({ ...connection, lazyConnect: true, connectTimeout: 5000, maxRetriesPerRequest: 0, retryStrategy: () => null });
  let last: Error | undefined;
  client.on("error", (error: Error) => {
    last = error;
  });
  try {
    await client.connect();
    await client.ping();
  } catch (error) {
    const { message } = last ?? (error as Error);
    throw new EnvironmentError(`no Redis answers at ${connection.host}:${connection.port}: ${message}`, { hint: "start it, or mend --queue", cause: error });
  } finally {
    client.disconnect();
  }
}
