import { type Design, print, printSize, type SegmentSection, sectionOf, voltageProfile } from "@branchwork/engine";
import type { DrawnConductor } from "../drawing/conductor-round.js";
import { drawLoadBar } from "../drawing/load-bar.js";
import type { Drawing as Drawn } from "../drawing/marks.js";
import { svgOfDrawing } from "../drawing/marks-svg.js";
import { drawRacewaySection } from "../drawing/raceway-section.js";
import { type AnyRun, runsOf, tagsOf } from "../drawing/tags.js";
import { drawTrenchSection } from "../drawing/trench-section.js";
import { drawVoltageProfile } from "../drawing/voltage-profile.js";
import { type Block, type Draft, figure, heading, together } from "./packet.js";
import { SHEETS } from "./sheet-titles.js";
import { valueWithUnit } from "./worked-lines.js";

/** Width of a trench dug by hand or with a narrow machine. Common practice, no source. */
const TRENCH_WIDTH_IN = 8;
const NOMINAL_LEG_VOLTS = 120;
const SURFACES: Readonly<Record<string, string>> = {
  general: "soil",
  "under-concrete-2in": "concrete, 2 in or more",
  "under-building": "building",
  "under-slab-4in": "outdoor slab, 4 in or more",
  "under-street": "street or parking lot",
  "under-dwelling-driveway": "driveway of the dwelling",
};

/** A drawing with its place in the sheet, kept with its heading. */
const placed = (title: string, drawn: Drawn, id: string): Block => together(heading(title), figure(svgOfDrawing(drawn, id)));

/** Trench and raceway sections, drawn to scale from the computed sizes; null where the job has no raceway. */
export function sectionsSheet(design: Design): Draft | null {
  const tags = tagsOf(design);
  const cuts = runsOf(design).flatMap((run) =>
    run.segments.flatMap((s, i) => {
      const section = sectionOf(run, s, design.edition);
      return section === null ? [] : [{ run, s, section, tag: tags.get(run.run.id)!.conductors[i]! }];
    }),
  );
  const alike = new Map<string, typeof cuts>();
  for (const cut of cuts) {
    const key = JSON.stringify([cut.s.segment.method, cut.s.tradeSize, cut.section.conductors, cut.section.fillPercent]);
    alike.set(key, [...(alike.get(key) ?? []), cut]);
  }
  const blocks = [
    ...cuts.flatMap(({ s, section, tag }) => trenchBlock(s, section, tag)),
    ...[...alike.values()].map((same): Block => {
      const { s, section, tag } = same[0]!;
      const name = `${s.tradeSize} in ${s.segment.method}`;
      const drawn = drawRacewaySection({
        name,
        inside_in: Number(section.insideIn),
        outside_in: Number(section.outsideIn),
        conductors: section.conductors.map(conductorWords),
        fill_percent: Number(section.fillPercent),
        limit_percent: Number(section.limitPercent),
      });
      return placed(`${same.map((cut) => cut.tag).join(", ")}: ${name}`, drawn, `section-${tag.toLowerCase()}`);
    }),
  ];
  return blocks.length === 0 ? null : { title: SHEETS.sections, blocks };
}

function trenchBlock(s: AnyRun["segments"][number], section: SegmentSection, tag: string): readonly Block[] {
  const { trench } = section;
  if (trench === null) return [];
  const drawn = drawTrenchSection({
    cover_in: Number(trench.coverIn),
    depth_in: Number(trench.depth.value),
    width_in: TRENCH_WIDTH_IN,
    bedding_in: Number(trench.beddingIn),
    wiring: {
      kind: "raceway",
      name: `${s.tradeSize} in ${s.segment.method}`,
      outside_in: Number(section.outsideIn),
      inside_in: Number(section.insideIn),
      conductors: section.conductors.map(conductorWords),
    },
    surface: SURFACES[s.segment.over] ?? s.segment.over,
    ...(s.leastCover === null ? {} : { least_cover_words: `least cover ${valueWithUnit(s.leastCover)}` }),
  });
  return [placed(`${tag} ${s.segment.name}: trench`, drawn, `trench-${tag.toLowerCase()}`)];
}

const conductorWords = (c: SegmentSection["conductors"][number]): DrawnConductor => ({
  tag: c.mark,
  words: `${printSize(c.size)} ${c.insulation}`,
  diameter_in: Number(c.diameterIn),
  role: c.role,
});

/** The service's load as a bar, and the voltage along the way to each new outlet. */
export function plotBlocks(design: Design): { readonly load: Block; readonly profiles: ReadonlyMap<string, Block> } {
  const s = design.service;
  const bar = drawLoadBar({
    existing_A: Number(s.amperesWithout.value),
    added_A: Number(s.amperes.value) - Number(s.amperesWithout.value),
    rating_A: Number(s.amperes.value) + Number(s.margin.value),
    existing_words: "house as it stands",
    added_words: "new work",
  });
  const profiles = design.circuits.map((c): readonly [string, Block] => {
    const way = wayTo(design, c);
    const points = voltageProfile({ from: design.job.service.panel.name, nominalVolts: NOMINAL_LEG_VOLTS, way });
    const { limit_percent, total_percent } = design.job.drop;
    const percent = way.length > 1 ? total_percent : limit_percent;
    const limit = NOMINAL_LEG_VOLTS * (1 - percent / 100);
    const drawn = drawVoltageProfile({
      points: points.map((p) => ({ name: p.name, distance_ft: Number(p.feet), volts: Number(p.volts) })),
      limit: { volts: limit, words: `${print(percent)} % of ${NOMINAL_LEG_VOLTS} V${way.length > 1 ? " from the service" : ""}` },
      load_words: `${print(c.current)} A at the outlet, ${c.neutral ? "worst leg" : "alike on both legs"}`,
    });
    return [c.circuit.id, placed("Voltage along the way", drawn, `profile-${c.circuit.id}`)];
  });
  return { load: placed("Service load", bar, "load-bar"), profiles: new Map(profiles) };
}

/** The runs from the service to the end of one, that one last. */
function wayTo(design: Design, run: AnyRun): readonly AnyRun[] {
  const above = design.feeders.find((f) => f.feeder.panel.id === run.panel);
  return above === undefined ? [run] : [...wayTo(design, above), run];
}
