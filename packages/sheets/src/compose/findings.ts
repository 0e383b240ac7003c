import { type Design, type Finding, printCitation } from "@branchwork/engine";
import type { AmendedBasis } from "../overlay/apply.js";
import type { Overlay } from "../overlay/schema.js";
import { type Block, type Brief, type Draft, heading, paragraph, table, withWidths } from "./packet.js";
import { citationOrDash } from "./worked-lines.js";

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

/** One entry a check: its section, then each subject with what was found. */
function brief(findings: readonly Finding[]): Brief {
  const entries = new Map<string, string[]>();
  for (const f of findings) {
    const title = f.citation === null ? f.title : `${f.title} (${printCitation(f.citation)})`;
    entries.set(title, [...(entries.get(title) ?? []), `${f.subject}: ${f.says}`]);
  }
  return { kind: "brief", entries: [...entries].map(([title, says]) => ({ title, text: says.join("; ") })) };
}

/** All findings, the failing ones first; those that ask nothing of anybody in brief. */
export function findingsSheet(design: Design): Draft {
  const sorted = ORDER.flatMap((verdict) => design.findings.filter((f) => f.verdict === verdict));
  const telling = sorted.filter((f) => f.verdict !== "pass" && f.verdict !== "not-applicable");
  const quietPart = (title: string, verdict: Finding["verdict"]): Block[] => {
    const found = sorted.filter((f) => f.verdict === verdict);
    return found.length === 0 ? [] : [heading(title), brief(found)];
  };
  return {
    title: "Findings",
    blocks: [
      paragraph("What each check found. A check that passes is no approval; one from memory must be compared with the adopted text."),
      withWidths(
        table(
          "What asks something of somebody",
          ["Verdict", "Subject", "Finding", "To do", "Section"],
          telling.map((f) => [VERDICTS[f.verdict], f.subject, f.says, next(f), citationOrDash(f.citation)]),
          (i) => telling[i]?.verdict === "fail",
        ),
        ...[15, 13, 23, 28, 21],
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
      table(
        "Notes",
        ["Concerns", "Note", "Source"],
        overlay.notes.map((n) => [[n.sheet, n.section].filter((x) => x !== undefined).join(", ") || "all", n.says, n.citation]),
      ),
    );
  if (cover.length > 0)
    blocks.push(
      table(
        "Cover",
        ["Place", "Inches here", "Inches in the table", "Source"],
        cover.map(([row, c]) => [row, String(c.inches), String(c.replaces), c.citation]),
      ),
    );
  if (waived.length > 0)
    blocks.push(
      table(
        "Checks turned off",
        ["Check", "Reason", "Source"],
        waived.map(([check, w]) => [check, w.reason, w.citation]),
      ),
    );
  if (basis.issues.length > 0)
    blocks.push(
      table(
        "Amendments that were not applied",
        ["Where", "What", "To mend it"],
        basis.issues.map((i) => [i.path, i.what, i.mend]),
      ),
    );
  if (overlay.contacts !== undefined && overlay.contacts.length > 0) {
    blocks.push(
      heading("Contacts"),
      table(
        "Contacts",
        ["Name", "Phone", "Hours"],
        overlay.contacts.map((c) => [c.name, c.phone, c.hours ?? ""]),
      ),
    );
  }
  return { title: "Jurisdiction notes", blocks };
}
