import { randomBytes } from "node:crypto";
import { mkdir, readFile, rename, rm, stat } from "node:fs/promises";
import { join } from "node:path";
import { type Press, press, written } from "../batch/make-row.js";
import { sha256 } from "../batch/packet-digest.js";
import type { Row } from "../batch/row.js";
import { pricesOf } from "../price-book.js";
import { writeWhole } from "../print/atomic-write.js";
import { EnvironmentError } from "../print/environment-error.js";
import type { Answer, Order } from "./packet-queue.js";

/** Where packets grow before they are shown. */
export const UNFINISHED = ".unfinished";
/** A packet's own record, in its folder. */
export const RECORD = "row.json";

/**
 * Makes one order's packet into `out/<id>/`, a folder that appears whole or not at all. One that is there and sound is left as it
 * is: however often an order is delivered, and to however many workers, one packet comes of it.
 */
export async function fillOrder(given: {
  readonly id: string;
  readonly order: Order;
  readonly out: string;
  readonly fonts: Press["fonts"];
  readonly print: Press["print"];
  readonly tell: (step: "computing" | "writing") => Promise<void>;
}): Promise<Answer> {
  const { id, order, out } = given;
  const growing = join(out, UNFINISHED, id);
  const done = await readDone(out, id);
  if (done) {
    await rm(growing, { recursive: true, force: true }); // of a worker that was lost, or is late and finds this one on its next attempt
    return { outcome: done.outcome as Answer["outcome"], folder: id };
  }
  await given.tell("computing");
  const terms = {
    overlay: order.overlay,
    edition: order.edition,
    date: order.date,
    formats: order.formats,
    sets: order.sets,
    paper: order.paper,
    prices: order.prices,
    program: "",
  };
  const made = await press(
    { name: `${order.stem}.yaml`, stem: order.stem, bytes: Buffer.from(order.job, "utf8") },
    { terms, prices: () => order.prices && pricesOf(order.prices), fonts: given.fonts, print: given.print },
  );
  const row: Row = {
    format: "branchwork-batch-row/1",
    job: order.stem,
    digest: id,
    outcome: made.outcome,
    folder: id,
    files: written(made.files),
    says: made.says,
  };
  await given.tell("writing");
  const fresh = join(growing, randomBytes(6).toString("hex"));
  const show = join(out, id);
  await writeWhole(fresh, [...made.files, { name: RECORD, bytes: `${JSON.stringify(row, null, 2)}\n` }]);
  try {
    if ((await exists(show)) && !(await readDone(out, id))) await rename(show, join(growing, `spoilt-${randomBytes(6).toString("hex")}`));
    await rename(fresh, show);
  } catch (error) {
    // Another worker with the same order was first: its packet stands.
    if (!(await readDone(out, id))) throw new EnvironmentError(`${show} cannot be made: ${(error as Error).message}`, { cause: error });
  }
  await rm(growing, { recursive: true, force: true });
  return { outcome: made.outcome, folder: id };
}

/** A packet's record when the packet is there with every file as written. */
export async function readDone(out: string, id: string): Promise<Row | undefined> {
  try {
    const row = JSON.parse(await readFile(join(out, id, RECORD), "utf8")) as Row;
    if (row.digest !== id) return undefined;
    for (const { name, sha256: sum } of row.files) if (sha256(await readFile(join(out, id, name))) !== sum) return undefined;
    return row;
  } catch {
    return undefined; // not there, or not sound: it is made
  }
}

async function exists(path: string): Promise<boolean> {
  return stat(path).then(
    () => true,
    () => false,
  );
}

/** Makes the output folder and its workplace; throws EnvironmentError when it cannot. */
export async function prepareOut(out: string): Promise<void> {
  try {
    await mkdir(join(out, UNFINISHED), { recursive: true });
  } catch (error) {
    throw new EnvironmentError(`${out} cannot be used: ${(error as Error).message}`, { hint: "mend its permissions or give another --out", cause: error });
  }
}
