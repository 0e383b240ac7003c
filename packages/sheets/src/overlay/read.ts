import { offsetOf } from "@branchwork/engine";
import { isNode, LineCounter, parseDocument } from "yaml";
import type { z } from "zod";
import { type Overlay, overlaySchema } from "./schema.js";

export interface OverlayIssue {
  readonly line: number;
  readonly column: number;
  readonly path: string;
  readonly what: string;
  readonly mend: string;
}
export type OverlayReading = { readonly ok: true; readonly overlay: Overlay } | { readonly ok: false; readonly issues: readonly OverlayIssue[] };

/** Reads an overlay file (YAML text). Every issue names the line and column it stands on, both counted from 1. */
export function readOverlay(text: string): OverlayReading {
  const lines = new LineCounter();
  const document = parseDocument(text, { lineCounter: lines, uniqueKeys: true });
  const at = (offset: number) => {
    const { line, col } = lines.linePos(offset);
    return { line: line > 0 ? line : 1, column: col > 0 ? col : 1 };
  };
  const broken = [...document.errors, ...document.warnings];
  if (broken.length > 0) {
    return { ok: false, issues: broken.map((e) => ({ ...at(e.pos[0]), path: "", what: firstLine(e.message), mend: "correct the YAML at this line" })) };
  }
  let plain: unknown;
  try {
    plain = document.toJS({ maxAliasCount: 20 });
  } catch (error) {
    return { ok: false, issues: [{ line: 1, column: 1, path: "", what: firstLine(String(error)), mend: "write the values out instead of using aliases" }] };
  }
  const root = isNode(document.contents) ? document.contents : null;
  const result = overlaySchema.safeParse(plain);
  if (result.success) return { ok: true, overlay: result.data };
  const issues = result.error.issues.flatMap((issue) =>
    spread(issue).map(({ path, what, mend, key }) => ({ ...at(offsetOf(root, path, key)), path: path.join("."), what, mend })),
  );
  return { ok: false, issues };
}

interface Spread {
  readonly path: readonly (string | number)[];
  readonly what: string;
  readonly mend: string;
  readonly key: boolean;
}

function spread(issue: z.core.$ZodIssue): readonly Spread[] {
  const path = issue.path.map((step) => (typeof step === "number" ? step : String(step)));
  if (issue.code === "unrecognized_keys") {
    return issue.keys.map((key) => ({ path: [...path, key], what: `"${key}" is not a field here`, mend: "remove it or correct its spelling", key: true }));
  }
  const name = path.length > 0 ? path.join(".") : "the file";
  if (issue.code === "invalid_value") {
    return [{ path, what: `${name}: ${issue.message}`, mend: `write one of ${issue.values.map((v) => `"${String(v)}"`).join(", ")}`, key: false }];
  }
  if (issue.code === "invalid_type") return [{ path, what: `${name}: ${issue.message}`, mend: `give ${name} as ${issue.expected}`, key: false }];
  return [{ path, what: `${name}: ${issue.message}`, mend: issue.message, key: false }];
}

function firstLine(message: string): string {
  return message.split("\n", 1)[0] ?? message;
}
