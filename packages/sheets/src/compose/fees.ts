import type { Design } from "@branchwork/engine";
import { feeRows, permitFees } from "../overlay/fees.js";
import type { Overlay } from "../overlay/schema.js";
import { type Block, type Draft, paragraph, table, withWidths } from "./packet.js";
import { SHEETS } from "./sheet-titles.js";

/** Fees by the overlay's schedule, visits and the permit's own terms; null where the overlay has none of them. */
export function feesSheet(design: Design, overlay: Overlay | null, date: string): Draft | null {
  if (overlay === null) return null;
  const blocks = [...fees(design, overlay, date), ...visits(design, overlay), ...terms(overlay)];
  return blocks.length === 0 ? null : { title: SHEETS.fees, blocks };
}

function fees(design: Design, overlay: Overlay, date: string): readonly Block[] {
  if (overlay.fees.length === 0) return [];
  const estimate = permitFees({ overlay, design, date });
  const rows = feeRows(estimate);
  return [
    paragraph("An estimate from the schedule entered in the overlay. The jurisdiction's own invoice decides."),
    withWidths(
      table("Permit fees, US dollars", ["Fee", "Worked", "Amount", "Source"], rows, (i) => i === rows.length - 1),
      ...[30, 30, 12, 28],
    ),
    ...(estimate.left.length === 0 ? [] : [paragraph(`Not counted: ${estimate.left.join("; ")}.`)]),
    ...(estimate.contingent.length === 0
      ? []
      : [
          withWidths(
            table(
              "Due only if it happens, not in the total",
              ["Fee", "When", "Amount", "Source"],
              estimate.contingent.map((c) => [c.label, c.when, `$${c.amount}`, c.citation]),
            ),
            ...[26, 34, 12, 28],
          ),
        ]),
  ];
}

function visits(design: Design, overlay: Overlay): readonly Block[] {
  const digs = [...design.feeders, ...design.circuits].some((run) => run.segments.some(({ segment }) => segment.place === "buried"));
  const asked = overlay.inspections.filter((visit) => digs || !visit.only_trench);
  if (asked.length === 0) return [];
  return [
    withWidths(
      table(
        "Inspections, in order",
        ["Inspection", "When", "How long before", "Who is there", "How to ask", "Source"],
        asked.map((visit, i) => [`${i + 1}. ${visit.name}`, visit.when, visit.lead, visit.present ?? "ask", visit.call, visit.citation]),
      ),
      ...[15, 23, 14, 16, 14, 18],
    ),
  ];
}

function terms({ corrections, expiry, reinspection }: Overlay): readonly Block[] {
  const rows = [
    ...(corrections === undefined
      ? []
      : [
          [
            "Corrections",
            `within ${corrections.within_days} ${corrections.counted} days${corrections.says === undefined ? "" : `. ${corrections.says}`}`,
            corrections.citation,
          ],
        ]),
    ...expiry.map((e) => ["End of the permit", `${e.after_days} days from ${e.from}. ${e.says}`, e.citation]),
    ...reinspection.map((r) => ["Second visit", r.says, r.citation]),
  ];
  return rows.length === 0 ? [] : [withWidths(table("Terms of the permit", ["Term", "What holds", "Source"], rows), ...[20, 50, 30])];
}
