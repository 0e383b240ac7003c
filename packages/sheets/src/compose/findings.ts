import { type Design, type Finding, printCitation } from "@branchwork/engine";
import type { AmendedBasis } from "../overlay/apply.js";
import type { Overlay } from "../overlay/schema.js";
import { type Block, type Brief, type Draft, heading, paragraph, table, withWidths } from "./packet.js";
import { plainId, sectionHead, sectionOrDash } from "./worked-lines.js";

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
  return { kind: "brief", entries: [...entries].map(([title, found]) => ({ title, text: words(found) })) };
}

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
    return quiet.length === 0 ? [] : [heading(title), brief(quiet, onlyCircuit)];
  };
  return {
    title: "Findings",
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

/** What the jurisdiction asks for, and what was turned off in its name. */
export function jurisdictionSheet(overlay: Overlay | null, basis: AmendedBasis): Draft {
  if (overlay === null) {
    return {
      title: "Jurisdiction notes",
      blocks: [paragraph("No jurisdiction overlay was used. Ask the authority for its amendments, forms, fees and inspection stages before submitting.")],
    };
  }
  const waived = Object.entries(basis.waivedChecks);
  const cover = Object.entries(basis.leastCover);
  const blocks: Block[] = [
    paragraph(`${overlay.name}. Last compared with the jurisdiction's own words on ${overlay.checked_on}; ask whether anything has changed.`),
  ];
  if (overlay.notes.length > 0)
    blocks.push(
      withWidths(
        table(
          "Notes",
          ["Concerns", "Note", "Source"],
          overlay.notes.map((n) => [[n.sheet, n.section].filter((x) => x !== undefined).join(", ") || "all", n.says, n.citation]),
        ),
        ...[14, 56, 30],
      ),
    );
  if (cover.length > 0)
    blocks.push(
      withWidths(
        table(
          "Least cover of buried wiring",
          ["Place", "Here", "In the code's table", "Source"],
          cover.map(([row, c]) => [plainId(row), `${c.inches} in`, `${c.replaces} in`, c.citation]),
        ),
        ...[30, 14, 20, 36],
      ),
    );
  if (waived.length > 0)
    blocks.push(
      withWidths(
        table(
          "Checks turned off",
          ["Check", "Reason", "Source"],
          waived.map(([check, w]) => [check, w.reason, w.citation]),
        ),
        ...[25, 45, 30],
      ),
    );
  if (basis.issues.length > 0)
    blocks.push(
      withWidths(
        table(
          "Amendments that were not applied",
          ["Where", "What", "To mend it"],
          basis.issues.map((i) => [i.path, i.what, i.mend]),
        ),
        ...[30, 40, 30],
      ),
    );
  if (overlay.contacts !== undefined && overlay.contacts.length > 0) {
    blocks.push(
      withWidths(
        table(
          "Contacts",
          ["Name", "Phone", "Hours"],
          overlay.contacts.map((c) => [c.name, c.phone, c.hours ?? ""]),
        ),
        ...[40, 25, 35],
      ),
    );
  }
  return { title: "Jurisdiction notes", blocks };
}
