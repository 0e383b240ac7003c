import { type Design, type Finding, printCitation } from "@branchwork/engine";
import { type Block, type Brief, type Draft, heading, paragraph, table, withWidths } from "./packet.js";
import { SHEETS } from "./sheet-titles.js";
import { sectionHead, sectionOrDash } from "./worked-lines.js";

const ORDER = ["fail", "caution", "needs-person", "pass", "not-applicable"] as const satisfies readonly Finding["verdict"][];
const VERDICTS: Record<Finding["verdict"], string> = {
  fail: "FAILS",
  caution: "CAUTION",
  "needs-person": "LOOK ON SITE",
  pass: "passes",
  "not-applicable": "does not apply",
};

function next(finding: Finding): string {
  switch (finding.verdict) {
    case "fail":
    case "caution":
      return finding.mend;
    case "needs-person":
      return finding.look;
    case "pass":
    case "not-applicable":
      return "—";
    default:
      return finding satisfies never;
  }
}

/** One entry a check: its section, then what was found, each thing found once with all its subjects. */
function brief(findings: readonly Finding[], onlyCircuit: string | null): Brief {
  const entries = new Map<string, Map<string, string[]>>();
  for (const f of findings) {
    const title = f.citation === null ? f.title : `${f.title} (${printCitation(f.citation)})`;
    const found = entries.get(title) ?? new Map<string, string[]>();
    found.set(f.says, [...(found.get(f.says) ?? []), place(f.subject, onlyCircuit)]);
    entries.set(title, found);
  }
  const words = (found: ReadonlyMap<string, readonly string[]>) =>
    [...found].map(([says, places]) => [places.filter(Boolean).join(", "), says].filter(Boolean).join(": ")).join("; ");
  return { kind: "brief", entries: [...entries].map(([title, found]) => ({ title, text: ended(words(found)) })) };
}

const ended = (text: string): string => (/[.!?]$/.test(text) ? text : `${text}.`);

/** Where a job has one circuit its name goes without saying. */
function place(subject: string, onlyCircuit: string | null): string {
  if (onlyCircuit === null) return subject;
  return subject === onlyCircuit ? "" : subject.startsWith(`${onlyCircuit}: `) ? subject.slice(onlyCircuit.length + 2) : subject;
}

/** All findings, the failing ones first; those that ask nothing of anybody in brief. */
export function findingsSheet(design: Design): Draft {
  const sorted = ORDER.flatMap((verdict) => design.findings.filter((f) => f.verdict === verdict));
  const telling = sorted.filter((f) => f.verdict !== "pass" && f.verdict !== "not-applicable");
  // The same thing found at several places is one row.
  const found = new Map<string, { readonly finding: Finding; readonly subjects: string[] }>();
  for (const finding of telling) {
    const key = JSON.stringify([finding.check, finding.verdict, finding.says, next(finding)]);
    const row = found.get(key) ?? { finding, subjects: [] };
    row.subjects.push(finding.subject);
    found.set(key, row);
  }
  const rows = [...found.values()].map(({ finding: f, subjects }) => [
    VERDICTS[f.verdict],
    subjects.join("; "),
    f.says,
    next(f),
    sectionOrDash(f.citation, design.edition),
  ]);
  const onlyCircuit = design.circuits.length === 1 ? (design.circuits[0]?.circuit.name ?? null) : null;
  const quietPart = (title: string, verdict: Finding["verdict"]): Block[] => {
    const quiet = sorted.filter((f) => f.verdict === verdict);
    return quiet.length === 0 ? [] : [heading(title), { ...brief(quiet, onlyCircuit), runOn: verdict === "not-applicable" }];
  };
  return {
    title: SHEETS.findings,
    blocks: [
      paragraph("What each check found. A check that passes is no approval; one from memory must be compared with the adopted text."),
      withWidths(
        table("What needs doing", ["Verdict", "Subject", "Finding", "To do", sectionHead(design.edition)], rows, (i) => rows[i]?.[0] === VERDICTS.fail),
        ...[12, 17, 25, 30, 16],
      ),
      ...quietPart("What passes", "pass"),
      ...quietPart("What does not apply", "not-applicable"),
    ],
  };
}
