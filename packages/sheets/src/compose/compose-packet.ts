import type { Design } from "@branchwork/engine";
import { drawOneLine } from "../drawing/one-line.js";
import { overlayCautions } from "../overlay/age.js";
import { basisFrom } from "../overlay/apply.js";
import type { Overlay } from "../overlay/schema.js";
import type { AmendmentTargets } from "../overlay/targets.js";
import { loadSheet, runSheet } from "./calculations.js";
import { checklistSheet, correctionResponseSheet, inspectionCardSheet } from "./checklist.js";
import { coverSheet, preparerOf, refusalSheet, statementsSheet } from "./cover.js";
import { feesSheet } from "./fees.js";
import { findingsSheet } from "./findings.js";
import { jurisdictionSheet, sheetNotes } from "./jurisdiction.js";
import { labelsSheet } from "./labels.js";
import { type Draft, drawing, type Packet } from "./packet.js";
import { faultTableSheet, readingsSheet } from "./readings.js";
import { directorySheets, schedulesSheet } from "./schedules.js";
import { plotBlocks, sectionsSheet } from "./sections.js";
import { sitePlanSheet } from "./site.js";
import { useLimitsSheet } from "./use-limits.js";

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
  const plots = plotBlocks(design);
  const sections = sectionsSheet(design);
  const site = sitePlanSheet(design);
  const faults = faultTableSheet(design);
  const limits = useLimitsSheet(design);
  const fees = feesSheet(design, overlay, date);
  const before: Draft[] = ready ? [] : [refusalSheet(design, basis.issues)];
  const computed: Draft[] = [
    statementsSheet(design, overlay),
    ...(site === null ? [] : [site]),
    ...drawings.map(
      (svg, index): Draft => ({
        title: drawings.length === 1 ? "One-line diagram" : `One-line diagram, part ${index + 1}`,
        blocks: [drawing(svg)],
      }),
    ),
    ...(sections === null ? [] : [sections]),
    loadSheet(design, plots.load),
    ...design.feeders.map((f) => runSheet(f, "Feeder", undefined)),
    ...design.circuits.map((c) => runSheet(c, "Circuit", plots.profiles.get(c.circuit.id))),
    schedulesSheet(design),
    ...directorySheets(design),
    checklistSheet(design, overlay),
    inspectionCardSheet(design, overlay),
    correctionResponseSheet(),
    readingsSheet(design),
    ...(faults === null ? [] : [faults]),
    ...(limits === null ? [] : [limits]),
    labelsSheet(design),
    ...(fees === null ? [] : [fees]),
    findingsSheet(design),
  ];
  // The jurisdiction sheet names the sheets that answer what is asked, so it is made when they are known.
  const jurisdiction = jurisdictionSheet({ overlay, basis, design, date, titles: computed.map((draft) => draft.title) });
  const after = computed.toSpliced(-1, 0, jurisdiction).map((draft): Draft => ({ ...draft, blocks: [...draft.blocks, ...sheetNotes(overlay, draft.title)] }));
  const id = (index: number) => `P-${index + 1}`;
  const titles = [...before.map((d) => d.title), "Cover", ...after.map((d) => d.title)].map((title, index) => ({ id: id(index), title }));
  const drafts = [...before, coverSheet(design, overlay, ready, titles, overlay === null ? [] : overlayCautions(overlay, date)), ...after];
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
      revision: { number: "", date: "", says: "" },
    },
    sheets: drafts.map((draft, index) => ({ ...draft, id: id(index), number: String(index + 1), of: String(drafts.length) })),
  };
}
