import type { Design, Finding } from "@branchwork/engine";
import { explainOverlay } from "./explain.js";
import { type FeeEstimate, permitFees } from "./fees.js";
import type { PlacedGroup } from "./placed.js";
import type { Overlay } from "./schema.js";

export interface FieldChange {
  readonly path: string;
  readonly before: unknown;
  readonly after: unknown;
}

/** Fields that differ between two flattened overlays; undefined where one has none. Days of comparison are left out. */
export function compareOverlays(before: PlacedGroup, after: PlacedGroup): readonly FieldChange[] {
  const fields = (placed: PlacedGroup) =>
    new Map(explainOverlay(placed).flatMap(({ path, value }) => (path.endsWith("checked_on") ? [] : [[path, value] as const])));
  const [a, b] = [fields(before), fields(after)];
  return [...new Set([...a.keys(), ...b.keys()])]
    .sort()
    .flatMap((path) => (a.get(path) === b.get(path) ? [] : [{ path, before: a.get(path), after: b.get(path) }]));
}

export interface FindingChange {
  readonly check: string;
  readonly subject: string;
  readonly before: string | null;
  readonly after: string | null;
}

/** What an overlay makes of one job, next to another overlay. */
export interface JobComparison {
  readonly ready: readonly [boolean, boolean];
  readonly findings: readonly FindingChange[];
  readonly fees: { readonly before: string; readonly after: string; readonly lines: readonly FieldChange[] };
  readonly sheets: { readonly only_before: readonly string[]; readonly only_after: readonly string[] };
  readonly statements: { readonly only_before: readonly string[]; readonly only_after: readonly string[] };
}

interface Side {
  readonly overlay: Overlay;
  readonly design: Design;
  /** Titles of the packet's sheets. */
  readonly sheets: readonly string[];
}

/** What changes for a job between two overlays: findings, fees, sheets and statements. */
export function compareForJob(before: Side, after: Side, date: string): JobComparison {
  const fees = [before, after].map(({ overlay, design }) => permitFees({ overlay, design, date })) as [FeeEstimate, FeeEstimate];
  return {
    ready: [before.design.ready, after.design.ready],
    findings: findingChanges(before.design.findings, after.design.findings),
    fees: { before: fees[0].total, after: fees[1].total, lines: feeChanges(...fees) },
    sheets: only(before.sheets, after.sheets),
    statements: only(...([before, after].map(({ overlay }) => overlay.statements.map((s) => `${s.title}: ${s.says}`)) as [string[], string[]])),
  };
}

const only = (a: readonly string[], b: readonly string[]) => ({ only_before: a.filter((x) => !b.includes(x)), only_after: b.filter((x) => !a.includes(x)) });

function feeChanges(before: FeeEstimate, after: FeeEstimate): readonly FieldChange[] {
  const amounts = ({ lines }: FeeEstimate) => new Map(lines.map((line) => [line.id, line.amount]));
  const [a, b] = [amounts(before), amounts(after)];
  return [...new Set([...a.keys(), ...b.keys()])].flatMap((path) => (a.get(path) === b.get(path) ? [] : [{ path, before: a.get(path), after: b.get(path) }]));
}

function findingChanges(before: readonly Finding[], after: readonly Finding[]): readonly FindingChange[] {
  // One check may say several things of one subject: each is told apart by its turn.
  const keyed = (findings: readonly Finding[]) => {
    const turns = new Map<string, number>();
    return new Map(
      findings.map((finding) => {
        const name = JSON.stringify([finding.check, finding.subject]);
        const turn = (turns.get(name) ?? 0) + 1;
        turns.set(name, turn);
        return [`${name} ${turn}`, finding] as const;
      }),
    );
  };
  const says = (finding: Finding | undefined) => (finding === undefined ? null : `${finding.verdict}: ${finding.says}`);
  const [a, b] = [keyed(before), keyed(after)];
  return [...new Set([...a.keys(), ...b.keys()])].flatMap((key) => {
    const [was, is] = [a.get(key), b.get(key)];
    const { check, subject } = (is ?? was)!;
    return says(was) === says(is) ? [] : [{ check, subject, before: says(was), after: says(is) }];
  });
}
