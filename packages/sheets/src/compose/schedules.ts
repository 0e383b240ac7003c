import { type Design, type DesignedCircuit, gfciDevice, ownStructure, type Panel, panelsOf, print, printSize, type Worked } from "@branchwork/engine";
import { faultAtPanel } from "../drawing/fault-at-panel.js";
import { svgOfDrawing } from "../drawing/marks-svg.js";
import { drawPanelElevation } from "../drawing/panel-elevation.js";
import { type AnyRun, runsOf, tagsOf } from "../drawing/tags.js";
import { type Block, type Draft, figure, table, withLines, withWidths } from "./packet.js";
import { SHEETS } from "./sheet-titles.js";
import { plainId, valueWithUnit } from "./worked-lines.js";

/** The cells of the conductor schedule before the ampacity. */
const AMPACITY_AFTER = [null, null, null, null, null, null] as const;

const yes = (value: boolean | undefined): string => (value === undefined ? "ask" : value ? "yes" : "no");

/** Equipment, conductor, raceway and box schedules. */
export function schedulesSheet(design: Design): Draft {
  const { panel, rating } = design.job.service;
  const atPanel = (id: string) => {
    const fault = faultAtPanel(design, id);
    return fault === null ? "" : `; fault current ${fault}`;
  };
  const tags = tagsOf(design);
  const runs = runsOf(design);
  const segments = runs.flatMap((c) => c.segments.map((s, i) => ({ c, s, tag: tags.get(c.run.id)!.conductors[i]! })));
  const equipment = [
    [
      "Service",
      `${print(rating)} A`,
      design.serviceFault === null ? "fault current not given: ask the utility" : `greatest fault current ${faultAtPanel(design, panel.id) ?? "not known"}`,
      "existing",
    ],
    ...serviceConductorRows(design),
    [
      panel.name,
      `bus ${print(panel.bus)} A${panel.main === undefined ? ", no main" : `, main ${print(panel.main)} A`}`,
      `${panel.spaces} spaces, ${panel.terminal_temperature} °C terminals${atPanel(panel.id)}`,
      "existing",
    ],
    ...design.feeders.flatMap((f) => [
      breakerRow(f, f.feeder.existing),
      [
        f.feeder.panel.name,
        `bus ${print(f.feeder.panel.bus)} A${f.feeder.panel.main === undefined ? ", no main" : `, main ${print(f.feeder.panel.main)} A`}`,
        `${f.feeder.panel.spaces} spaces; fed by ${f.feeder.name}; neutral isolated from equipment ground; neutral load ${valueWithUnit(f.neutralLoad)}; disconnect there ${yes(f.feeder.disconnect)}${atPanel(f.feeder.panel.id)}`,
        f.feeder.existing ? "existing" : "NEW",
      ],
    ]),
    ...design.circuits.flatMap((c) => [breakerRow(c, false), [c.circuit.name, `${print(c.circuit.current)} A, ${c.volts} V`, equipmentWords(c), "NEW"]]),
  ];
  const raceways = segments.filter(({ s }) => s.tradeSize !== null);
  const boxes = runs.flatMap((c) => c.boxes.map((b, i) => ({ c, b, tag: tags.get(c.run.id)!.boxes[i]! })));
  return {
    title: SHEETS.schedules,
    blocks: [
      withWidths(
        table("Equipment", ["Item", "Rating", "Notes", "Status"], equipment, (i) => equipment[i]?.[3] === "NEW"),
        ...[25, 22, 42, 11],
      ),
      withLines(
        withWidths(
          table(
            "Conductors (given: entered in the job; computed: sized here; cable: part of the cable)",
            ["Tag", "Run and segment", "Method and place", "Conductors", "Equipment ground", "Least size required", "Ampacity", "Length"],
            segments.map(({ c, s, tag }) => {
              const cable = s.grounding.chosen === "cable";
              return [
                tag,
                runs.length === 1 ? s.segment.name : `${c.run.name}: ${s.segment.name}`,
                `${s.segment.method}, ${s.segment.place}${s.wet ? ", wet" : ""}`,
                `${wires(s)} ${s.segment.conductors.material}${cable ? "" : ` ${s.segment.conductors.insulation}`} (${s.conductor.chosen})`,
                `${printSize(s.grounding.size)} (${s.grounding.chosen})`,
                `${printSize(s.requiredSize)}; ground ${printSize(s.requiredGrounding)}`,
                s.ampacity === null ? "none in the tables" : valueWithUnit(s.ampacity),
                `${print(s.segment.length)} ft`,
              ];
            }),
          ),
          ...[5, 17, 15, 20, 12, 15, 9, 7],
        ),
        segments.map(({ s }) => [...AMPACITY_AFTER, s.ampacity?.id ?? null]),
      ),
      ...(raceways.length === 0
        ? []
        : [
            withLines(
              withWidths(
                table(
                  "Raceways",
                  ["Tag", "Segment", "Type", "Size", "Fill", "Smallest", "Bends"],
                  raceways.map(({ s, tag }) => [
                    tag,
                    s.segment.name,
                    s.segment.method,
                    s.tradeSize === null ? "" : `${s.tradeSize} in`,
                    s.fill === null ? "—" : `${valueWithUnit(s.fill.area)} of ${valueWithUnit(s.fill.limit)} allowed (${valueWithUnit(s.fill.percent)})`,
                    s.fill?.smallest == null ? "—" : `${s.fill.smallest} in`,
                    `${s.bendTotal}°`,
                  ]),
                ),
                ...[5, 20, 9, 9, 35, 12, 10],
              ),
              raceways.map(({ s }) => [null, null, null, null, s.fill?.percent.id ?? null]),
            ),
          ]),
      ...fasteningTable(segments),
      ...(boxes.length === 0
        ? []
        : [
            withLines(
              withWidths(
                table(
                  "Boxes",
                  ["Tag", "Box", "After segment", "Volume", "Needed", "Room left", "For a quarter more room"],
                  boxes.map(({ c, b, tag }) => [
                    tag,
                    `${b.box.name} (${c.run.name})`,
                    b.box.after,
                    `${print(b.box.volume)} in³`,
                    b.byDimensions ? dimensionWords(b) : valueWithUnit(b.required),
                    b.room === null ? "by dimensions" : valueWithUnit(b.room),
                    b.nextBetter,
                  ]),
                ),
                ...[5, 28, 15, 11, 17, 11, 13],
              ),
              boxes.map(({ b }) => [null, null, null, null, b.byDimensions ? null : b.required.id, b.room?.id ?? null]),
            ),
          ]),
    ],
  };
}

/** What a circuit ends in: its receptacle or equipment, wires, cover, disconnect. */
function equipmentWords({ equipment, wires, circuit, serves }: DesignedCircuit): string {
  const { receptacle, disconnect } = equipment;
  // An outlet's kind names its receptacle already.
  const form = receptacle === null ? "hard-wired" : serves.includes(receptacle.says) ? null : `receptacle ${receptacle.says}`;
  const cover = circuit.cover_plate === undefined ? (receptacle === null ? null : "cover not given") : `cover ${plainId(circuit.cover_plate)}`;
  const structure = ownStructure(circuit);
  const stands = structure && `on ${structure.says}, ${circuit.disconnect_there === true ? "with a disconnect there" : "the disconnect there not named"}`;
  const none = stands === null ? "no disconnect of its own asked" : null;
  const own = disconnect.required === "no" ? none : `disconnect ${disconnect.required === "yes" ? "asked" : "to be settled on site"}: ${disconnect.says}`;
  return [serves, form, `${wires} wires with equipment ground`, cover, own, stands].filter((x) => x !== null).join("; ");
}

/** The service conductors, their grounding electrode conductor and the neutral's load, where they are known. */
function serviceConductorRows({ job, serviceConductor: found, service }: Design): readonly string[][] {
  const { conductors } = job.service;
  const neutral = service.neutral === null ? null : `neutral load ${valueWithUnit(service.neutral)}`;
  if (conductors === undefined || found === null) return neutral === null ? [] : [["Service neutral", neutral, "with the new work", "existing"]];
  const words = [
    found.ampacity === null ? null : `ampacity ${valueWithUnit(found.ampacity)}`,
    found.needed === null ? null : `${valueWithUnit(found.needed)} needed`,
    found.leastSize === null ? null : `least ${printSize(found.leastSize)}`,
    found.electrode === null ? null : `grounding electrode conductor ${valueWithUnit(found.electrode)}`,
    neutral,
  ];
  return [
    [
      "Service conductors",
      `${conductors.sets > 1 ? `${conductors.sets} × ` : ""}${printSize(conductors.size)} ${conductors.material}`,
      words.filter((x) => x !== null).join("; "),
      "existing",
    ],
  ];
}

/** How each stretch above ground is fastened, and the least radius of its bends. */
function fasteningTable(segments: readonly { readonly s: AnyRun["segments"][number]; readonly tag: string }[]): readonly Block[] {
  const fastened = segments.filter(({ s }) => s.supports !== null || s.bendRadius !== null);
  const refs = fastened.map(({ s }) => [
    null,
    null,
    s.supports?.within.id ?? null,
    s.supports?.apart.id ?? null,
    s.supports?.count.id ?? null,
    s.bendRadius?.id ?? null,
  ]);
  const rows = segments.flatMap(({ s, tag }) =>
    s.supports === null && s.bendRadius === null
      ? []
      : [
          [
            tag,
            s.segment.name,
            s.supports === null ? "—" : valueWithUnit(s.supports.within),
            s.supports === null ? "—" : valueWithUnit(s.supports.apart),
            s.supports === null ? "—" : `${valueWithUnit(s.supports.count)} at least`,
            s.bendRadius === null ? "—" : valueWithUnit(s.bendRadius),
          ],
        ],
  );
  if (rows.length === 0) return [];
  const head = ["Tag", "Segment", "Fastened from each end, within", "Between supports, at most", "Supports", "Radius of a bend, at least"];
  return [withLines(withWidths(table("Supports and bends", head, rows), ...[6, 28, 19, 17, 14, 16]), refs)];
}

/** Hots and neutral of a stretch; a neutral of its own size by itself. */
function wires({ conductor: { count, size }, neutral }: AnyRun["segments"][number]): string {
  return neutral === null ? `${count} × ${printSize(size)}` : `${count - 1} × ${printSize(size)} and neutral ${printSize(neutral.size)}`;
}

/** Least inside dimensions of a box for 4 AWG and larger. */
function dimensionWords({ dimensions, required }: AnyRun["boxes"][number]): string {
  if (dimensions === null) return `${valueWithUnit(required)} across, entry to opposite wall`;
  const side = (name: string, value: Worked | null) => (value === null ? [] : [`${valueWithUnit(value)} ${name}`]);
  const apart = dimensions.distances.map((d) => `${valueWithUnit(d)} between entries`);
  const found = [...side("wide", dimensions.width), ...side("high", dimensions.height), ...side("deep", dimensions.depth), ...apart];
  return found.length === 0 ? `${valueWithUnit(required)} across, entry to opposite wall` : found.join(", ");
}

/** A breaker as the schedule lists it. */
function breakerRow(run: ReturnType<typeof runsOf>[number], existing: boolean): string[] {
  const { poles, gfci, listed_for_panel, interrupting_kA } = run.run.breaker;
  const device = run.kind === "circuit" ? gfciDevice(run.circuit) : null;
  return [
    `Breaker, ${run.run.name}`,
    `${run.rating} A, ${poles}-pole`,
    `GFCI ${gfci || device === null ? yes(gfci) : `in the ${device}`}; listed for panel ${yes(listed_for_panel)}; interrupting ${interrupting_kA === undefined ? "ask" : `${print(interrupting_kA)} kA`}`,
    existing ? "existing" : "NEW",
  ];
}

/** Each panel as it will look and read when the work is done: front view and directory, odd spaces left and even right. */
export function directorySheets(design: Design): readonly Draft[] {
  return panelsOf(design.job).map(({ panel, feeder }) => directorySheet(design, panel, feeder !== null && !feeder.existing));
}

function directorySheet(design: Design, panel: Panel, fresh: boolean): Draft {
  const leaving = runsOf(design).filter((run) => run.panel === panel.id);
  const elevations = drawPanelElevation({
    name: panel.name,
    bus_A: panel.bus,
    ...(panel.main === undefined ? {} : { main_A: panel.main }),
    spaces: panel.spaces,
    positions: [
      ...panel.directory.map((p) => ({ space: p.space, poles: p.poles, ...(p.rating === undefined ? {} : { rating_A: p.rating }), serves: p.serves, fresh })),
      ...leaving.map((run) => ({
        space: Math.min(...run.run.breaker.spaces),
        poles: run.run.breaker.poles,
        rating_A: Number(run.rating),
        serves: run.run.name,
        fresh: !("feeder" in run && run.feeder.existing),
      })),
    ],
  });
  return {
    title: `${SHEETS.panel} ${panel.name}`,
    blocks: [directoryTable(panel, leaving), ...elevations.map((drawn, i) => figure(svgOfDrawing(drawn, `panel-${panel.id}-${i + 1}`)))],
  };
}

function directoryTable(panel: Panel, leaving: readonly ReturnType<typeof runsOf>[number][]) {
  const at = new Map<number, { readonly serves: string; readonly rating: string; readonly fresh: boolean }[]>();
  const put = (space: number, serves: string, rating: string, fresh: boolean) => at.set(space, [...(at.get(space) ?? []), { serves, rating, fresh }]);
  for (const p of panel.directory) {
    const rating = p.rating === undefined ? "" : `${print(p.rating)} A`;
    // A two-pole breaker takes the next space on the same side, which is the other leg.
    for (const space of p.poles === 2 ? [p.space, p.space + 2] : [p.space]) put(space, p.serves, rating, false);
  }
  for (const run of leaving) {
    const stands = "feeder" in run && run.feeder.existing;
    for (const space of run.run.breaker.spaces) put(space, stands ? run.run.name : `NEW: ${run.run.name}`, `${run.rating} A`, !stands);
  }
  const side = (space: number) => {
    const here = at.get(space) ?? [];
    return {
      serves: here.length === 0 ? "(blank)" : here.map((h) => h.serves).join(" / "),
      rating: here.map((h) => h.rating).join(" / "),
      fresh: here.some((h) => h.fresh),
    };
  };
  const rows: string[][] = [];
  const fresh: boolean[] = [];
  for (let odd = 1; odd <= panel.spaces; odd += 2) {
    const left = side(odd);
    const right = odd + 1 <= panel.spaces ? side(odd + 1) : null;
    rows.push([left.serves, left.rating, String(odd), right === null ? "" : String(odd + 1), right?.rating ?? "", right?.serves ?? ""]);
    fresh.push(left.fresh || (right?.fresh ?? false));
  }
  return withWidths(
    table(`${panel.name}: directory when the work is done`, ["Serves", "Rating", "Space", "Space", "Rating", "Serves"], rows, (i) => fresh[i] ?? false),
    ...[32, 9, 9, 9, 9, 32],
  );
}
