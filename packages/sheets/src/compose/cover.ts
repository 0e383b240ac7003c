import { type Design, printCitation } from "@branchwork/engine";
import { amendmentWords } from "../overlay/amendment-words.js";
import type { AmendmentIssue } from "../overlay/apply.js";
import type { Overlay } from "../overlay/schema.js";
import { assumptionsPart } from "./assumptions.js";
import { cautions } from "./cautions.js";
import { type Block, blanks, type Draft, heading, paragraph, table, together, withLines, withWidths } from "./packet.js";
import { SHEETS } from "./sheet-titles.js";
import { statementBlocks } from "./statements.js";
import { sectionHead, sectionOrDash, valueWithUnit } from "./worked-lines.js";

/** The sheet that goes before all others while a check fails. */
export function refusalSheet(design: Design, issues: readonly AmendmentIssue[]): Draft {
  const failed = new Map<string, { readonly title: string; readonly subjects: string[]; readonly lines: readonly string[] }>();
  for (const f of design.findings) {
    if (f.verdict !== "fail") continue;
    // The same fault at several places is one entry.
    const lines = [`${f.says} (${f.citation === null ? "no section" : printCitation(f.citation)}).`, `To mend it: ${f.mend}.`];
    const key = JSON.stringify([f.title, lines]);
    const entry = failed.get(key) ?? { title: f.title, subjects: [], lines };
    entry.subjects.push(f.subject);
    failed.set(key, entry);
  }
  const entries = [
    ...[...failed.values()].map(({ title, subjects, lines }) => ({ title: `${title}.`, lines: [`${subjects.join("; ")}: ${lines[0]}`, ...lines.slice(1)] })),
    ...issues.map((i) => ({ title: `Jurisdiction overlay, ${i.path}.`, lines: [`${i.what}.`, `To mend it: ${i.mend}.`] })),
  ];
  return {
    title: SHEETS.refusal,
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

/** More than this many would push the sheet index off the cover. */
const MOST_ON_COVER = 6;

export interface CoverGiven {
  readonly design: Design;
  readonly overlay: Overlay | null;
  readonly ready: boolean;
  /** Of the whole set, in order. */
  readonly titles: readonly { readonly id: string; readonly title: string }[];
  readonly overlayCautions: readonly string[];
  /** Which sheets were made and are not handed in, set by set. */
  readonly left: readonly string[];
}

const scopeOf = ({ job, circuits }: Design): string =>
  job.project.scope ?? circuits.map((c) => `Install ${c.circuit.name}, ${c.rating} A, ${c.volts} V, from ${job.service.panel.name}.`).join(" ");

/** What the job is, in one paragraph each. */
function jobLines({ job }: Design): readonly Block[] {
  const { project } = job;
  return [
    heading(project.title),
    paragraph(
      [
        `Site: ${project.site}`,
        ...(project.parcel === undefined ? [] : [`parcel: ${project.parcel}`]),
        `owner: ${project.owner}`,
        `prepared by: ${preparerOf(project.preparer)}`,
      ].join("; "),
    ),
  ];
}

/** Cover of the submittal: scope, code basis, index, readiness. */
export function coverSheet({ design, overlay, ready, titles, overlayCautions, left }: CoverGiven): Draft {
  const { project, code } = design.job;
  const use: Block[] = project.intended_use === undefined ? [] : [paragraph(`Intended use: ${project.intended_use}`)];
  const confirmed = code.confirmed_with_authority ? "confirmed with the authority" : "NOT yet confirmed with the authority: ask before submitting";
  return {
    title: SHEETS.cover,
    blocks: [
      ...jobLines(design),
      paragraph(`Scope of work: ${scopeOf(design)}`),
      ...use,
      paragraph(
        ready
          ? "No check failed. What is to be looked at on site and the cautions among the findings still stand."
          : "NOT READY TO SUBMIT: see the first sheet.",
      ),
      withWidths(
        table(
          "Code basis",
          ["Item", "Basis"],
          [
            ["Edition", `NFPA 70-${design.edition}; ${confirmed}`],
            [
              "Jurisdiction",
              overlay === null
                ? "No overlay was used. Ask the authority for its amendments, forms, fees and inspection stages before submitting"
                : `${overlay.name}; overlay ${overlay.id} last compared ${overlay.checked_on}${overlayCautions.length > 0 ? ". CAUTION: see the jurisdiction notes" : ""}`,
            ],
            ["Amendments", overlay === null || overlay.amendments.length === 0 ? "None entered" : overlay.amendments.map(amendmentWords).join("; ")],
          ],
        ),
        ...[22, 78],
      ),
      serviceSummary(design),
      ...onSite(design),
      { kind: "sheetIndex", caption: "Sheet index", entries: titles },
      ...(left.length === 0 ? [] : [paragraph(`Not asked for here, available on request: ${left.join("; ")}.`)]),
    ],
  };
}

/** Cover of a set that is not handed in: what the job is, whether it is ready, the cautions, the index. */
export function shortCover({ design, overlay, ready, titles }: Omit<CoverGiven, "left" | "overlayCautions">, what: string, look: boolean): Draft {
  return {
    title: SHEETS.cover,
    blocks: [
      ...jobLines(design),
      paragraph(`Scope of work: ${scopeOf(design)}`),
      paragraph(what),
      paragraph(
        `By NFPA 70-${design.edition}${overlay === null ? "; no jurisdiction overlay was used: ask the authority for its amendments" : `; ${overlay.name}`}. ${ready ? "No check failed." : "NOT READY: see the first sheet. Buy and build nothing from this set."}`,
      ),
      cautions(),
      ...(look ? lookList(design) : []),
      { kind: "sheetIndex", caption: "Sheet index", entries: titles },
    ],
  };
}

/** Who prepared the packet, in the order the title block prints it. */
export function preparerOf({ name, role, licence, phone }: Design["job"]["project"]["preparer"]): string {
  return [name, role, licence ?? "", phone ?? ""].filter(Boolean).join(", ");
}

function serviceSummary(design: Design): Block {
  const s = design.service;
  const summary = withWidths(
    table(
      "Load on the service",
      ["Without the new work", "With the new work", "Margin"],
      [
        [
          `${valueWithUnit(s.without)} (${valueWithUnit(s.amperesWithout)})`,
          `${valueWithUnit(s.with)} (${valueWithUnit(s.amperes)})`,
          `${valueWithUnit(s.margin)} (${valueWithUnit(s.marginVA)}, ${valueWithUnit(s.marginPercent)} of the rating)`,
        ],
      ],
    ),
    ...[30, 30, 40],
  );
  return withLines(summary, [[s.without.id, s.with.id, s.margin.id]]);
}

function onSite(design: Design): Block[] {
  const toLook = design.findings.flatMap((f) => (f.verdict === "needs-person" ? [f] : []));
  if (toLook.length === 0) return [];
  if (toLook.length > MOST_ON_COVER) return [paragraph(`To be looked at on site: ${toLook.length} items, told among the findings.`)];
  return [
    withWidths(
      table(
        "To be looked at on site",
        ["Item", "Look for", sectionHead(design.edition)],
        toLook.map((f) => [`${f.title}: ${f.subject}`, f.look, sectionOrDash(f.citation, design.edition)]),
      ),
      ...[36, 44, 20],
    ),
  ];
}

const MOST_ON_SHORT_COVER = 8;

/** Everything that is to be looked at on site, close-set. */
function lookList(design: Design): Block[] {
  const found = new Map<string, string[]>();
  for (const f of design.findings) if (f.verdict === "needs-person") found.set(f.look, [...(found.get(f.look) ?? []), f.subject]);
  if (found.size === 0) return [];
  if (found.size > MOST_ON_SHORT_COVER) return [paragraph(`To be looked at on site: ${found.size} things, told among the findings of the submittal set.`)];
  return [
    heading("To be looked at on site"),
    { kind: "brief", entries: [...found].map(([look, subjects]) => ({ title: [...new Set(subjects)].join("; "), text: `${look}.` })) },
  ];
}

/** Cautions, assumptions, and statements to be signed. */
export function statementsSheet(design: Design, overlay: Overlay | null): Draft {
  const { preparer } = design.job.project;
  const [first, ...more] = statementBlocks(overlay);
  return {
    title: SHEETS.statements,
    blocks: [
      cautions(),
      ...assumptionsPart(design.assumptions),
      together(heading("Statements"), ...(first?.kind === "together" ? first.blocks : first === undefined ? [] : [first])),
      ...more,
      together(
        paragraph(preparer.licence === undefined ? "Signed for the whole packet. The preparer states no licence." : "Signed for the whole packet."),
        blanks("Preparer's signature", "Date", "Owner's signature", "Date"),
      ),
    ],
  };
}
