import { type Design, print, printSize } from "@branchwork/engine";
import { type Draft, table, withWidths } from "./packet.js";
import { plainId, valueWithUnit } from "./worked-lines.js";

const yes = (value: boolean | undefined): string => (value === undefined ? "ask" : value ? "yes" : "no");

/** Equipment, conductor, raceway and box schedules. */
export function schedulesSheet(design: Design): Draft {
  const { panel, rating, fault_current_kA } = design.job.service;
  const segments = design.circuits.flatMap((c) => c.segments.map((s) => ({ c, s })));
  const equipment = [
    [
      "Service",
      `${print(rating)} A`,
      fault_current_kA === undefined ? "fault current not given: ask the utility" : `${print(fault_current_kA)} kA available`,
      "existing",
    ],
    [
      panel.name,
      `bus ${print(panel.bus)} A${panel.main === undefined ? ", no main" : `, main ${print(panel.main)} A`}`,
      `${panel.spaces} spaces, ${panel.terminal_temperature} °C terminals`,
      "existing",
    ],
    ...design.circuits.flatMap((c) => [
      [
        `Breaker, ${c.circuit.name}`,
        `${c.rating} A, ${c.circuit.breaker.poles}-pole`,
        `GFCI ${yes(c.circuit.breaker.gfci)}; listed for panel ${yes(c.circuit.breaker.listed_for_panel)}; interrupting ${c.circuit.breaker.interrupting_kA === undefined ? "ask" : `${print(c.circuit.breaker.interrupting_kA)} kA`}`,
        "NEW",
      ],
      [
        c.circuit.name,
        `${print(c.circuit.current)} A, ${c.volts} V`,
        `${c.serves}; ${c.wires} wires with equipment ground; cover ${plainId(c.circuit.cover_plate ?? "not given")}`,
        "NEW",
      ],
    ]),
  ];
  const raceways = segments.filter(({ s }) => s.tradeSize !== null);
  const boxes = design.circuits.flatMap((c) => c.boxes.map((b) => ({ c, b })));
  return {
    title: "Schedules",
    blocks: [
      withWidths(
        table("Equipment", ["Item", "Rating", "Notes", "Status"], equipment, (i) => equipment[i]?.[3] === "NEW"),
        ...[25, 22, 42, 11],
      ),
      withWidths(
        table(
          "Conductors (given: entered in the job; computed: sized here; cable: part of the cable)",
          ["Circuit", "Segment", "Method and place", "Conductors", "Equipment ground", "Least size required", "Ampacity", "Length"],
          segments.map(({ c, s }) => {
            const cable = s.grounding.chosen === "cable";
            return [
              c.circuit.name,
              s.segment.name,
              `${s.segment.method}, ${s.segment.place}${s.wet ? ", wet" : ""}`,
              `${s.conductor.count} × ${printSize(s.conductor.size)} ${s.segment.conductors.material}${cable ? "" : ` ${s.segment.conductors.insulation}`} (${s.conductor.chosen})`,
              `${printSize(s.grounding.size)} (${s.grounding.chosen})`,
              `${printSize(s.requiredSize)}; ground ${printSize(s.requiredGrounding)}`,
              s.ampacity === null ? "none in the tables" : valueWithUnit(s.ampacity),
              `${print(s.segment.length)} ft`,
            ];
          }),
        ),
        ...[13, 14, 14, 16, 12, 12, 10, 9],
      ),
      ...(raceways.length === 0
        ? []
        : [
            withWidths(
              table(
                "Raceways",
                ["Segment", "Type", "Trade size", "Fill", "Smallest that fits", "Bends in the segment"],
                raceways.map(({ s }) => [
                  s.segment.name,
                  s.segment.method,
                  s.tradeSize === null ? "" : `${s.tradeSize} in`,
                  s.fill === null ? "—" : `${valueWithUnit(s.fill.area)} of ${valueWithUnit(s.fill.limit)} allowed (${valueWithUnit(s.fill.percent)})`,
                  s.fill?.smallest == null ? "—" : `${s.fill.smallest} in`,
                  `${s.bendTotal}°`,
                ]),
              ),
              ...[20, 10, 10, 30, 14, 16],
            ),
          ]),
      ...(boxes.length === 0
        ? []
        : [
            withWidths(
              table(
                "Boxes",
                ["Circuit", "Box", "After segment", "Volume", "Needed", "Room left", "For a quarter more room"],
                boxes.map(({ c, b }) => [
                  c.circuit.name,
                  b.box.name,
                  b.box.after,
                  `${print(b.box.volume)} in³`,
                  b.byDimensions ? `${valueWithUnit(b.required)} across, entry to opposite wall` : valueWithUnit(b.required),
                  b.room === null ? "by dimensions" : valueWithUnit(b.room),
                  b.nextBetter,
                ]),
              ),
              ...[16, 19, 16, 12, 13, 11, 13],
            ),
          ]),
    ],
  };
}

/** The panel's directory as it will read when the work is done, odd spaces left and even right. */
export function directorySheet(design: Design): Draft {
  const { panel } = design.job.service;
  const at = new Map<number, { readonly serves: string; readonly rating: string; readonly fresh: boolean }[]>();
  const put = (space: number, serves: string, rating: string, fresh: boolean) => at.set(space, [...(at.get(space) ?? []), { serves, rating, fresh }]);
  for (const p of panel.directory) {
    const rating = p.rating === undefined ? "" : `${print(p.rating)} A`;
    // A two-pole breaker takes the next space on the same side, which is the other leg.
    for (const space of p.poles === 2 ? [p.space, p.space + 2] : [p.space]) put(space, p.serves, rating, false);
  }
  for (const c of design.circuits) for (const space of c.circuit.breaker.spaces) put(space, `NEW: ${c.circuit.name}`, `${c.rating} A`, true);
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
  return {
    title: "Panel directory",
    blocks: [
      withWidths(
        table(`${panel.name}: directory when the work is done`, ["Serves", "Rating", "Space", "Space", "Rating", "Serves"], rows, (i) => fresh[i] ?? false),
        ...[32, 9, 9, 9, 9, 32],
      ),
    ],
  };
}
