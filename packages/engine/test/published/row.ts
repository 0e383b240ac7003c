import { readFileSync } from "node:fs";
import { expect } from "vitest";

/** A published worked example as transcribed in cases/published.json. */
export interface Row {
  readonly id: string;
  readonly topic: string;
  // biome-ignore lint/suspicious/noExplicitAny: rows of many shapes, each read by the proof of its own id
  readonly inputs: any;
  // biome-ignore lint/suspicious/noExplicitAny: as above
  readonly expected: any;
  readonly tolerance: Readonly<Record<string, number>>;
  readonly evidence: keyof typeof EVIDENCE;
  readonly status: string;
  /** What the source prints where it is in error. */
  readonly published?: Readonly<Record<string, unknown>>;
  readonly source: { readonly publisher: string; readonly title: string; readonly url: string };
}

/** What of a row the source prints; the rest of its figures are this project's own. */
export const EVIDENCE = {
  published_answer: "answer printed",
  published_partial: "printed in part, the rest our own figures",
  published_rule_own_figures: "rule printed, our own figures",
  published_rule_statement: "rule printed, no figures",
  our_correction_of_published: "our correction of the printed answer",
} as const;

/** Runs the engine on a row; one whose source is in error also says why the engine differs from it. */
export type Proof = ((row: Row) => void) | { readonly differs: string; readonly prove: (row: Row) => void };
export type Proofs = Readonly<Record<string, Proof>>;

export const rows = JSON.parse(readFileSync(new URL("../../cases/published.json", import.meta.url), "utf8")) as readonly Row[];
export const edition = "2023" as const;
export const id = "x";

/** Within the tolerance the row states for the key; exact where it states none. */
export function agrees(row: Row, key: string, actual: string | number): void {
  expect(Math.abs(Number(actual) - row.expected[key]), `${row.id} ${key}: ${actual}, expected ${row.expected[key]}`).toBeLessThanOrEqual(
    (row.tolerance[key] ?? 0) + 1e-9,
  );
}

/** The row with its expected figures watched, and the keys a proof never looked at. */
export function watched(row: Row): { readonly row: Row; readonly unread: () => readonly string[] } {
  const read = new Set<string | symbol>();
  const expected = new Proxy(row.expected, {
    get(target, key) {
      read.add(key);
      return target[key];
    },
  });
  return { row: { ...row, expected }, unread: () => Object.keys(row.expected).filter((key) => !read.has(key)) };
}
