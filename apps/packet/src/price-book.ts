import { type PriceBook, readPriceBook } from "@branchwork/engine";
import { InputError, type NamedText, readText } from "./load-design.js";

/** A price book and the text it was read from. */
export interface Prices {
  readonly book: PriceBook;
  readonly source: NamedText;
}

/** A price book of its text. Throws InputError with file, line and column for one that cannot be read. */
export function pricesOf(source: NamedText): Prices {
  const reading = readPriceBook(source.text);
  if (!reading.ok) throw new InputError(source.file, reading.issues);
  return { book: reading.book, source };
}

/** Reads a price book from disk. Throws InputError with file, line and column for one that cannot be read. */
export async function loadPrices(file: string): Promise<Prices> {
  return pricesOf({ file, text: await readText(file) });
}

/** The price book of a file, where one is named. */
export async function namedPrices(file: string | undefined): Promise<Prices | undefined> {
  return file === undefined ? undefined : loadPrices(file);
}
