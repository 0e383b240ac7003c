import type { Design } from "@branchwork/engine";
import { drawOneLine } from "../drawing/one-line.js";
import { type AmendmentTargets, basisFrom } from "../overlay/apply.js";
import type { Overlay } from "../overlay/schema.js";
import { circuitSheet, loadSheet } from "./calculations.js";
import { checklistSheet } from "./checklist.js";
import { coverSheet, preparerOf, refusalSheet, statementsSheet } from "./cover.js";
import { findingsSheet, jurisdictionSheet } from "./findings.js";
import { type Draft, drawing, type Packet } from "./packet.js";
import { readingsSheet } from "./readings.js";
import { directorySheet, schedulesSheet } from "./schedules.js";

export interface PacketParts {
  readonly design: Design;
  readonly overlay: Overlay | null;
  /** Printed in the title block as given. */
  readonly date: string;
  /** What the overlay's amendments are compared with. */
  readonly targets?: AmendmentTargets;
}

/** The whole packet as plain data. While a check fails or an amendment does not fit, the first sheet is a refusal. */
export function composePacket({ design, overlay, date, targets }: PacketParts): Packet {
  const basis = basisFrom(overlay, design.edition, targets);
  const ready = design.ready && basis.issues.length === 0;
  const drawings = drawOneLine(design);
  const before: Draft[] = ready ? [] : [refusalSheet(design, basis.issues)];
  const after: Draft[] = [
    statementsSheet(design, overlay),
    ...drawings.map(
      (svg, index): Draft => ({
        title: drawings.length === 1 ? "One-line diagram" : `One-line diagram, part ${index + 1}`,
        blocks: [drawing(svg)],
      }),
    ),
    loadSheet(design),
    ...design.circuits.map(circuitSheet),
    schedulesSheet(design),
    directorySheet(design),
    checklistSheet(design, overlay),
    readingsSheet(design),
    jurisdictionSheet(overlay, basis),
    findingsSheet(design),
  ];
  const id = (index: number) => `P-${index + 1}`;
  const titles = [...before.map((d) => d.title), "Cover", ...after.map((d) => d.title)].map((title, index) => ({ id: id(index), title }));
  const drafts = [...before, coverSheet(design, overlay, ready, titles), ...after];
  const { project } = design.job;
  return {
    title: project.title,
    ready,
    foot: {
      project: project.title,
      owner: project.owner,
      site: project.site,
      parcel: project.parcel ?? "",
      jurisdiction: overlay?.name ?? "",
      edition: `NFPA 70-${design.edition}${overlay !== null && overlay.amendments.length > 0 ? " as amended" : ""}`,
      preparer: preparerOf(project.preparer),
      date,
    },
    sheets: drafts.map((draft, index) => ({ ...draft, id: id(index), number: String(index + 1), of: String(drafts.length) })),
  };
}
