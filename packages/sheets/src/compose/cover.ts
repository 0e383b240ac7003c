import type { Design } from "@branchwork/engine";
import type { AmendmentIssue } from "../overlay/apply.js";
import type { Overlay } from "../overlay/schema.js";
import { cautions } from "./cautions.js";
import { type Block, blanks, type Draft, heading, paragraph, table } from "./packet.js";
import { citationOrDash, valueWithUnit } from "./worked-lines.js";

/** The sheet that goes before all others while a check fails. */
export function refusalSheet(design: Design, issues: readonly AmendmentIssue[]): Draft {
  const failed = design.findings.flatMap((f) => (f.verdict === "fail" ? [f] : []));
  const entries = [
    ...failed.map((f) => ({ title: `${f.title}: ${f.subject}`, lines: [f.says, `Section: ${citationOrDash(f.citation)}`, `To mend it: ${f.mend}`] })),
    ...issues.map((i) => ({ title: `Jurisdiction overlay, ${i.path}`, lines: [i.what, `To mend it: ${i.mend}`] })),
  ];
  return {
    title: "Not ready to submit",
    blocks: [
      {
        kind: "boxed",
        title: "NOT READY TO SUBMIT",
        lead: "The checks below failed. Mend them and make the packet again; do not submit or build from it as it is.",
        entries,
      },
    ],
  };
}

/** Cover: scope, code basis, index, readiness. The titles are those of the whole set, in order. */
export function coverSheet(design: Design, overlay: Overlay | null, ready: boolean, titles: readonly { readonly id: string; readonly title: string }[]): Draft {
  const { project, code } = design.job;
  const scope =
    project.scope ?? design.circuits.map((c) => `Install ${c.circuit.name}, ${c.rating} A, ${c.volts} V, from ${design.job.service.panel.name}.`).join(" ");
  const use: Block[] = project.intended_use === undefined ? [] : [paragraph(`Intended use: ${project.intended_use}`)];
  const toLook = design.findings.filter((f) => f.verdict === "needs-person");
  const confirmed = code.confirmed_with_authority ? "confirmed with the authority" : "NOT yet confirmed with the authority: ask before submitting";
  return {
    title: "Cover",
    blocks: [
      heading("Scope of work"),
      paragraph(scope),
      ...use,
      heading("Code basis"),
      table(
        "Code basis",
        ["Item", "Basis"],
        [
          ["Edition", `NFPA 70-${design.edition}; ${confirmed}`],
          [
            "Jurisdiction",
            overlay === null
              ? "No overlay: local amendments not known, ask the authority"
              : `${overlay.name}; overlay ${overlay.id} last compared ${overlay.checked_on}`,
          ],
          [
            "Amendments",
            overlay === null || overlay.amendments.length === 0
              ? "None entered"
              : overlay.amendments
                  .map((a) =>
                    a.target === "cover"
                      ? `Cover, ${a.row}: ${a.value} in instead of ${a.replaces} in (${a.citation})`
                      : `Check ${a.check} off: ${a.reason} (${a.citation})`,
                  )
                  .join("; "),
          ],
        ],
      ),
      heading("Readiness"),
      paragraph(
        ready
          ? "No check failed. The items to be looked at on site and the cautions on the findings sheet still stand."
          : "NOT READY TO SUBMIT: see the first sheet.",
      ),
      ...(toLook.length === 0
        ? []
        : [
            table(
              "To be looked at on site",
              ["Item", "Look for", "Section"],
              toLook.map((f) => [`${f.title}: ${f.subject}`, f.verdict === "needs-person" ? f.look : "", citationOrDash(f.citation)]),
            ),
          ]),
      table(
        "Service summary",
        ["Item", "Value"],
        [
          ["Load without the new work", valueWithUnit(design.service.without)],
          ["Load with the new work", `${valueWithUnit(design.service.with)} (${valueWithUnit(design.service.amperes)})`],
          ["Margin", `${valueWithUnit(design.service.margin)}; ${valueWithUnit(design.service.marginVA)}; ${valueWithUnit(design.service.marginPercent)}`],
        ],
      ),
      heading("Sheets"),
      table(
        "Sheet index",
        ["Sheet", "Title"],
        titles.map((t) => [t.id, t.title]),
      ),
    ],
  };
}

/** Cautions, assumptions, and statements to be signed. */
export function statementsSheet(design: Design, overlay: Overlay | null): Draft {
  const { preparer } = design.job.project;
  const statements = overlay?.statements ?? [];
  return {
    title: "Cautions, assumptions and statements",
    blocks: [
      cautions(),
      design.assumptions.length === 0
        ? paragraph("Nothing was assumed: every value was given.")
        : table(
            "Assumptions",
            ["Where in the job", "What was assumed"],
            design.assumptions.map((a) => [a.path, a.says]),
          ),
      heading("Statements"),
      ...(statements.length === 0 ? [paragraph("No statement of the jurisdiction was entered. Use the jurisdiction's own forms.")] : []),
      ...statements.flatMap((s): Block[] => [heading(s.title), paragraph(s.says), ...(s.initials === true ? [blanks("Initials", "Date")] : [])]),
      paragraph(
        `Prepared by ${[preparer.name, preparer.role, preparer.licence === undefined ? "no licence stated" : `licence ${preparer.licence}`, preparer.phone ?? ""].filter(Boolean).join(", ")}.`,
      ),
      blanks("Preparer's signature", "Date"),
      blanks("Owner's signature", "Date"),
    ],
  };
}
