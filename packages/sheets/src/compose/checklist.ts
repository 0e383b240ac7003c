import { type Design, type DesignedCircuit, type DesignedSegment, print, printCitation, printSize } from "@branchwork/engine";
import type { Overlay, Stage } from "../overlay/schema.js";
import { type Checklist, type Draft, paragraph } from "./packet.js";
import { plainId, sectionHead, valueWithUnit } from "./worked-lines.js";

type Item = Checklist["items"][number];
const STAGE_TITLES: Record<Stage, string> = { trench: "Trench, open", rough: "Rough-in, before anything is covered", final: "Final" };

/** The inspection checklist, composed from this job: only lines that apply, with its own numbers. */
export function checklistSheet(design: Design, overlay: Overlay | null): Draft {
  const code = (section: string): string => `${section}\u00a0†`;
  const practice = printCitation({ document: "", section: "Good work", edition: null, standing: "practice" });
  const local = (stage: Stage): Item[] =>
    (overlay?.checklist ?? []).filter((c) => c.stage === stage).map((c) => ({ section: c.section, look: c.look, show: c.show ?? "" }));
  const stages: Record<Stage, Item[]> = {
    trench: [...design.circuits.flatMap((c) => trench(c, code, practice, design.edition)), ...(digs(design) ? local("trench") : [])],
    rough: [...design.circuits.flatMap((c) => rough(c, code)), ...local("rough")],
    final: [...design.circuits.flatMap((c) => final(c, code)), ...panelLines(design, code), ...local("final")],
  };
  const contacts = (overlay?.contacts ?? []).map((c) => `${c.name} ${c.phone}${c.hours === undefined ? "" : ` (${c.hours})`}`);
  return {
    title: "Inspection checklist",
    blocks: [
      paragraph(
        "Do not cover, backfill or energize anything before its stage has passed. The inspector decides what is seen and when. Sections marked † are from memory: verify them in the adopted text.",
      ),
      ...(contacts.length === 0 ? [] : [paragraph(`To ask for an inspection: ${contacts.join("; ")}.`)]),
      ...(Object.keys(stages) as Stage[])
        .filter((stage) => stages[stage].length > 0)
        .map(
          (stage): Checklist => ({
            kind: "checklist",
            caption: STAGE_TITLES[stage],
            sectionHead: sectionHead(design.edition),
            items: stages[stage],
            sign: ["Stage passed: inspector", "Date", "Remarks"],
          }),
        ),
    ],
  };
}

const digs = (design: Design): boolean => design.circuits.some((c) => c.segments.some((s) => s.segment.place === "buried"));

type Code = (section: string) => string;

function trench(c: DesignedCircuit, code: Code, practice: string, edition: Design["edition"]): Item[] {
  const buried = c.segments.filter((s) => s.segment.place === "buried");
  if (buried.length === 0) return [];
  const table = edition === "2017" || edition === "2020" ? "Table 300.5" : "Table 300.5(A)";
  return [
    { section: practice, look: "Utilities located and marked before digging", show: "locate ticket number" },
    ...buried.flatMap((s): Item[] => {
      const least = s.steps.find((step) => step.unit === "in" && step.cells.some((cell) => cell.table === "burial-cover"));
      const planned = s.segment.cover === undefined ? "cover not given: measure" : `${print(s.segment.cover)} in planned`;
      return [
        {
          section: code(table),
          look: `${s.segment.name}: cover from top of ${s.segment.method} to finished grade (${plainId(s.segment.over)})`,
          show: least === undefined ? planned : `${planned}; least ${valueWithUnit(least)}`,
        },
        { section: code("300.5(F)"), look: `${s.segment.name}: bed and backfill free of sharp rock`, show: `${print(s.segment.length)} ft; ${wiring(s)}` },
      ];
    }),
  ];
}

function rough(c: DesignedCircuit, code: Code): Item[] {
  const segments = c.segments.flatMap((s): Item[] => {
    const { name, method, place } = s.segment;
    const cable = method === "NM-B" || method === "UF-B";
    const items: Item[] = [
      { section: code("110.14(C), 310.16"), look: `${name}: size and kind of conductor`, show: wiring(s) },
      {
        section: code("250.122"),
        look: `${name}: equipment grounding conductor`,
        show: `${printSize(s.grounding.size)}; least ${printSize(s.requiredGrounding)}`,
      },
    ];
    if (!cable)
      items.push({
        section: code("Chapter 9, Table 1"),
        look: `${name}: ${method} fill`,
        show:
          s.fill === null ? "" : `${s.tradeSize ?? ""} in: ${valueWithUnit(s.fill.percent)}, ${valueWithUnit(s.fill.area)} of ${valueWithUnit(s.fill.limit)}`,
      });
    if (s.segment.bends.length > 0 && !cable)
      items.push({
        section: code(BEND_SECTIONS[method] ?? "Chapter 3"),
        look: `${name}: bends between pull points, 360° at most`,
        show: `${s.bendTotal}° in this segment`,
      });
    if (s.wet)
      items.push({
        section: code("300.9, 300.5(B), 310.10(C)"),
        look: `${name}: inside of the raceway counts as wet; conductors marked for wet places`,
        show: cable ? method : s.segment.conductors.insulation,
      });
    if (method === "NM-B")
      items.push({
        section: code("334.30, 300.4"),
        look: `${name}: cable fastened and clear of nails and edges`,
        show: `${place}, ${print(s.segment.length)} ft`,
      });
    if (s.segment.exposed_to_damage) items.push({ section: code("300.5(D)"), look: `${name}: guarded where it can be struck`, show: method });
    return items;
  });
  const boxes = c.boxes.map(
    (b): Item => ({
      section: code("314.16, 314.28"),
      look: `${b.box.name}: ${b.byDimensions ? "size of the box" : "volume marked in the box"}`,
      show: b.byDimensions
        ? `${valueWithUnit(b.required)} from raceway entry to opposite wall`
        : `${print(b.box.volume)} in³; needs ${valueWithUnit(b.required)}`,
    }),
  );
  return [...segments, ...boxes];
}

const BEND_SECTIONS: Record<string, string> = {
  EMT: "358.26",
  "PVC-40": "352.26",
  "PVC-80": "352.26",
  RMC: "344.26",
  IMC: "342.26",
  "LFNC-B": "356.26",
  FMC: "348.26",
};

function final(c: DesignedCircuit, code: Code): Item[] {
  const { circuit } = c;
  const items: Item[] = [
    {
      section: code("240.4, 210.20"),
      look: `${circuit.name}: breaker rating and poles`,
      show: `${c.rating} A, ${circuit.breaker.poles}-pole, spaces ${circuit.breaker.spaces.join(" and ")}`,
    },
    {
      section: code("110.3(B)"),
      look: `${circuit.name}: breaker listed for this panel`,
      show: circuit.breaker.listed_for_panel === true ? "listing on site" : "to be shown",
    },
    { section: code("110.14(D)"), look: `${circuit.name}: terminals torqued to the marked figures`, show: "torque record: panel, boxes, outlet" },
    { section: code("250.142(B)"), look: `${circuit.name}: neutral and equipment ground not joined at the outlet`, show: `${c.wires} wires` },
    { section: code("408.4(A)"), look: `Directory names ${circuit.name}`, show: `spaces ${circuit.breaker.spaces.join(" and ")}` },
  ];
  if (circuit.breaker.poles === 2)
    items.push({ section: code("210.4(B), 240.15(B)"), look: `${circuit.name}: poles open together, on opposite legs`, show: `${c.volts} V between legs` });
  if (circuit.breaker.gfci)
    items.push({ section: code("210.8"), look: `${circuit.name}: GFCI trips and resets by its test button`, show: "test at the breaker" });
  if (circuit.cover_plate !== undefined && circuit.cover_plate !== "none")
    items.push({ section: code("406.9(B)"), look: `${circuit.name}: cover at the outlet`, show: plainId(circuit.cover_plate) });
  if (circuit.listed_rv_power_outlet)
    items.push({ section: code("110.3(B)"), look: `${circuit.name}: assembly listed and marked as a recreational vehicle power outlet`, show: "label" });
  return items;
}

function panelLines(design: Design, code: Code): Item[] {
  return [
    { section: code("110.26"), look: `${design.job.service.panel.name}: working space clear`, show: "30 in wide, 36 in deep, 6 ft 6 in high" },
    { section: code("110.12, 408.7"), look: `${design.job.service.panel.name}: unused openings closed, front back on`, show: "no opening left" },
  ];
}

function wiring(s: DesignedSegment): string {
  const size = s.tradeSize === null ? "" : `${s.tradeSize} in `;
  return `${size}${s.segment.method}: ${s.conductor.count} × ${printSize(s.conductor.size)} ${s.segment.conductors.material}, ground ${printSize(s.grounding.size)}`;
}
