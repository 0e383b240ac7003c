import { type PriceBook, readPriceBook } from "@branchwork/engine";
import { InputError, readText } from "./load-design.js";

/** Reads a price book from disk. Throws InputError with file, line and column for one that cannot be read. */
export async function loadPriceBook(file: string): Promise<PriceBook> {
  const reading = readPriceBook(await readText(file));
  if (!reading.ok) throw new InputError(file, reading.issues);
  return reading.book;
}
