import type { Diagnosis } from "@branchwork/engine";
import type { PacketSet } from "@branchwork/sheets";
import type { ShownAlternatives, ShownChoice } from "./choosing.js";
import type { Digest } from "./digest.js";

/** What the page asks of the worker. The overlay's text stands alone: what it extends is written out in it. */
export interface Given {
  readonly job: string;
  readonly overlay: string | null;
}
export type Request =
  | ({ readonly ask: "design" } & Given)
  | ({ readonly ask: "packet"; readonly date: string; readonly set: PacketSet } & Given)
  | ({ readonly ask: "design-json" } & Given)
  | ({ readonly ask: "materials"; readonly prices: string | null } & Given)
  | ({ readonly ask: "readings"; readonly circuit: string; readonly entered: string | null } & Given)
  | ({ readonly ask: "choose"; readonly prices: string | null; readonly anyMethod: boolean } & Given)
  | { readonly ask: "overlays" };

export interface ShownIssue {
  readonly path: string;
  readonly line: number;
  readonly what: string;
  readonly mend: string;
  readonly of: "job" | "overlay" | "readings" | "prices";
}
export type DesignAnswer =
  | {
      readonly ok: true;
      readonly digest: Digest;
      /** What the packet wants yet and the numbers do not need: names and the address. */
      readonly issues: readonly ShownIssue[];
      readonly ms: number;
    }
  | { readonly ok: false; readonly issues: readonly ShownIssue[]; readonly ms: number };
export type TextAnswer = { readonly ok: true; readonly text: string } | { readonly ok: false; readonly issues: readonly ShownIssue[] };

export interface ShownCost {
  readonly currency: string;
  readonly date: string;
  readonly source: string;
  readonly low: string;
  readonly likely: string;
  readonly high: string;
  /** Items without a price: the sum leaves them out. */
  readonly unpriced: readonly string[];
}
export type MaterialsAnswer =
  | { readonly ok: true; readonly csv: string; readonly cost: ShownCost | null }
  | { readonly ok: false; readonly issues: readonly ShownIssue[] };

export type ChooseAnswer =
  | {
      readonly ok: true;
      /** Where the prices are from, and of which day. */
      readonly source: string;
      readonly currency: string;
      readonly runs: readonly ShownChoice[];
      readonly alternatives: readonly ShownAlternatives[];
      readonly withinWholeWay: boolean;
    }
  | { readonly ok: false; readonly issues: readonly ShownIssue[] };

export interface ShownBand {
  readonly reading: string;
  readonly words: string;
  readonly least: number;
  readonly most: number;
  readonly expected: number;
  readonly basis: string;
}
export interface ReadingsAnswer {
  readonly ok: boolean;
  readonly issues: readonly ShownIssue[];
  readonly idle: readonly ShownBand[];
  readonly loaded: readonly { readonly across: string; readonly amperes: number; readonly says: string; readonly bands: readonly ShownBand[] }[];
  readonly assumptions: readonly string[];
  readonly diagnosis: Diagnosis | null;
}
export interface ShippedOverlay {
  readonly id: string;
  readonly name: string;
  readonly edition: string | null;
  readonly text: string;
}
export interface Answers {
  readonly design: DesignAnswer;
  readonly packet: TextAnswer;
  readonly "design-json": TextAnswer;
  readonly materials: MaterialsAnswer;
  readonly readings: ReadingsAnswer;
  readonly choose: ChooseAnswer;
  readonly overlays: readonly ShippedOverlay[];
}
