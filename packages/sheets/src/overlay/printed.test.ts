import { readFileSync } from "node:fs";
import { design, type Job, readJob } from "@branchwork/engine";
import { describe, expect, it } from "vitest";
import { composePacket } from "../compose/compose-packet.js";
import type { Block } from "../compose/packet.js";
import type { PacketSet } from "../compose/packet-set.js";
import { renderHtml } from "../render/html.js";
import { basisFrom } from "./apply.js";
import { flattenOverlay } from "./flatten.js";
import { overlaySchema } from "./schema.js";

const fixture = (path: string) => readFileSync(new URL(`../../../../fixtures/${path}`, import.meta.url), "utf8");
const texts = Object.fromEntries(
  ["base-2017", "base-2020", "base-2023", "saltmarsh-point", "ironbridge-mills", "quillback-county", "otter-fell", "tamarack-hollow"].map((name) => [
    name,
    fixture(`overlays/${name}.yaml`),
  ]),
);
const overlayOf = (name: string) => {
  const result = flattenOverlay(name, texts);
  if (!result.ok) throw new Error(JSON.stringify(result.issues));
  return result.overlay;
};
function carport(): Job {
  const read = readJob(fixture("jobs/rv-50-carport.yaml"));
  if (!read.ok) throw new Error(JSON.stringify(read.issues));
  return read.job;
}
function packetOf(name: string, date = "2026-11-25", job = carport(), set: PacketSet = "submittal") {
  const overlay = overlayOf(name);
  const made = design({ job, basis: basisFrom(overlay, overlay.edition ?? "2023") });
  return { made, packet: composePacket({ design: made, overlay, date, set }) };
}
/** What the counter does not take goes to the owner. */
const quillback = () => packetOf("quillback-county", "2026-11-25", carport(), "owner").packet;
const all = (blocks: readonly Block[]): readonly Block[] => blocks.flatMap((b) => (b.kind === "together" ? [b, ...all(b.blocks)] : [b]));
const sheetText = (packet: ReturnType<typeof packetOf>["packet"], title: string) =>
  JSON.stringify(packet.sheets.find((s) => s.title.startsWith(title))?.blocks ?? []);

describe("an overlay in print", () => {
  it("prints intake, persons, proofs, and where each sheet asked for stands", () => {
    const text = sheetText(quillback(), "Jurisdiction notes");
    for (const words of [
      "Over the counter",
      "none on paper",
      "NO",
      "Photo identification at the counter",
      "wait 2 full working days",
      "Quillback Light Cooperative",
    ])
      expect(text).toContain(words);
    const asked = sheetText(packetOf("saltmarsh-point").packet, "Jurisdiction notes");
    expect(asked).toContain("One-line diagram");
    expect(asked).toContain('["Cut sheets with the mark of a testing laboratory","not in this packet: bring it",""]');
    expect(asked).toContain('["Load calculation existing and new","Load calculation",""]');
    expect(asked).toContain("Tabloid, 11 × 17 in");
  });

  // One 50 A circuit: 32.50; openings 1 − 1 = 0; 4 % of 32.50 = 1.30, at least 2.
  it("prints the fees worked, with what was not counted and what is due only if it happens", () => {
    const text = sheetText(quillback(), "Fees and inspections");
    for (const words of [
      "1 × 32.50 (above 30 to 100 A)",
      "max(32.50 × 4 / 100, 2.00)",
      '"$34.50"',
      "Openings after the first: 1 covered by another fee",
      "$55.00",
    ])
      expect(text).toContain(words);
  });

  it("prints inspections in order with who must be there, and the terms of the permit", () => {
    const text = sheetText(quillback(), "Fees and inspections");
    expect(text.indexOf("1. Underground")).toBeLessThan(text.indexOf("2. Final"));
    for (const words of ["an adult who can open the gate", "within 20 calendar days", "180 days from last inspection", "No house number"])
      expect(text).toContain(words);
  });

  it("prints statements in exact words with initials, perjury and notary", () => {
    const { packet } = packetOf("otter-fell");
    const blocks = all(packet.sheets.find((s) => s.title.startsWith("Cautions"))?.blocks ?? []);
    const text = JSON.stringify(blocks);
    for (const words of [
      overlayOf("otter-fell").statements[0]?.says ?? "?",
      "penalty of perjury",
      "before a notary",
      "Notary: name and commission",
      "Owner's signature",
    ])
      expect(text).toContain(words);
  });

  it("puts notes on the sheet and the checklist line they name, and on a kind of outlet only where the job has it", () => {
    const { packet } = packetOf("saltmarsh-point");
    expect(sheetText(packet, "One-line diagram")).toContain("Local note: Print the voltage drop");
    const field = packetOf("saltmarsh-point", "2026-11-25", carport(), "field").packet;
    expect(sheetText(field, "Inspection checklist")).toContain("Ground water stands at 30 in");
    expect(sheetText(packet, "Jurisdiction notes")).toContain("Name the outlet's listing");
    const job = carport();
    const other = {
      ...job,
      service: { ...job.service, panel: { ...job.service.panel, circuits: job.service.panel.circuits.map((c) => ({ ...c, serves: "rv-30" as const })) } },
    };
    expect(sheetText(packetOf("saltmarsh-point", "2026-11-25", other).packet, "Jurisdiction notes")).not.toContain("Name the outlet's listing");
  });

  it("metal raceway only and deeper burial fail the carport job and say why on the first sheet", () => {
    const { made, packet } = packetOf("ironbridge-mills");
    const failed = new Set(made.findings.filter((f) => f.verdict === "fail").map((f) => f.check));
    for (const check of ["local-wiring-methods", "riser-protection", "burial-cover"]) expect(failed).toContain(check);
    expect(packet.sheets[0]?.title).toBe("Not ready to submit");
    expect(JSON.stringify(packet.sheets[0])).toContain("wiring in metal raceway only");
    const notes = sheetText(packet, "Jurisdiction notes");
    for (const words of ["36 in", "GFCI not asked of a listed and labelled RV outlet", "only RMC, IMC", "Outlet guarded from vehicles"])
      expect(notes).toContain(words);
  });

  it("cautions on the cover and the notes when what it says is older than 180 days", () => {
    const fresh = packetOf("tamarack-hollow", "2026-11-25").packet;
    const old = packetOf("tamarack-hollow", "2027-06-25").packet;
    expect(sheetText(fresh, "Cover")).not.toContain("CAUTION: see the jurisdiction notes");
    expect(sheetText(old, "Cover")).toContain("CAUTION: see the jurisdiction notes");
    expect(sheetText(old, "Jurisdiction notes")).toContain("235 days before this packet"); // 2 Nov 2026 to 25 June 2027: 28+31+31+28+31+30+31+25
  });

  it("keeps the carport ready in Tamarack Hollow", () => expect(packetOf("tamarack-hollow").packet.ready).toBe(true));

  it("escapes what an overlay says", () => {
    const hostile = "<script>alert(1)</script>{{x}}";
    const of = { citation: hostile };
    const overlay = overlaySchema.parse({
      format: "branchwork-overlay/1",
      id: "t",
      name: hostile,
      checked_on: "2026-01-01",
      intake: { mode: "small-plan-set", sheet_size: "a4", copies: 1, sheets: [{ asks: hostile }], title_block: [hostile], file_rules: hostile, ...of },
      who_may_work: [{ who: "owner", may: true, says: hostile, ...of }],
      fees: [{ id: "f", kind: "flat", says: hostile, amount: 1, ...of }],
      inspections: [{ id: "i", name: hostile, stage: "final", when: hostile, lead: hostile, call: hostile, ...of }],
      statements: [{ title: hostile, says: hostile, notary: true }],
      zoning: { says: hostile, intended_use: hostile, ...of },
    });
    const packet = composePacket({ design: design({ job: carport() }), overlay, date: "2026-11-25" });
    const html = renderHtml({ packet, fonts: { family: "Any", faces: [{ weight: 400, base64: "AAAA" }] } });
    expect(html).not.toContain("<script>");
    expect(html).toContain("{{x}}");
  });
});
