import { type Design, type DesignedCircuit, type DesignedFeeder, feedersTo, gfciDevice, print } from "@branchwork/engine";
import { LINE_HEIGHT, wrap } from "../drawing/lettering.js";
import { box, fitted, line, type Mark, type Drawing as MarkedDrawing, text } from "../drawing/marks.js";
import { svgOfDrawing } from "../drawing/marks-svg.js";
import { abreast, type Draft, figure, heading, paragraph, together } from "./packet.js";
import { SHEETS } from "./sheet-titles.js";

const INCH = 72;
const MARGIN = 9;
const WIDEST = { width: 3.5, height: 2 } as const;

interface Label {
  readonly title: string;
  readonly where: string;
  readonly lines: readonly string[];
  /** Inches. */
  readonly width: number;
  readonly height: number;
}

/** Labels at their own size, to be printed at 100 %, cut out and set under a lasting cover or copied by an engraver. */
export function labelsSheet(design: Design): Draft {
  const labels = [
    ...directoryLabels(design),
    ...design.feeders.filter((f) => !f.feeder.existing).map((f) => disconnectLabel(design, f)),
    ...design.circuits.map((c) => outletLabel(design, c)),
  ];
  const drawn = labels.map((label, i) =>
    together(heading(`${label.title}: ${label.width} in × ${label.height} in; ${label.where}`), figure(drawLabel(label, `label-${i + 1}`))),
  );
  return {
    title: SHEETS.labels,
    blocks: [
      paragraph(
        "Print at 100 %, not fitted to the page, and measure the bar before cutting. A label outdoors must last where it is: paper does not. Sections 110.21(B), 110.22(A) and 408.4(A) (from memory: verify).",
      ),
      figure(scaleBar()),
      // Two of the widest lie beside one another.
      ...drawn.flatMap((_, i) => (i % 2 === 1 ? [] : [abreast(...drawn.slice(i, i + 2))])),
    ],
  };
}

/** One strip for each panel that new work leaves. */
function directoryLabels(design: Design): readonly Label[] {
  const runs = [...design.feeders, ...design.circuits].filter((run) => run.kind === "circuit" || !run.feeder.existing);
  const panels = [
    { id: design.job.service.panel.id, name: design.job.service.panel.name },
    ...design.feeders.map(({ feeder }) => ({ id: feeder.panel.id, name: feeder.panel.name })),
  ];
  return panels.flatMap(({ id, name }) => {
    const rows = runs.filter((run) => run.panel === id);
    return rows.length === 0
      ? []
      : [
          label("Panel directory label", `beside the directory of ${name}`, [
            name,
            ...rows.map(({ run, rating }) => `${run.breaker.spaces.join(", ")}: ${run.name}, ${rating} A`),
          ]),
        ];
  });
}

function disconnectLabel(design: Design, { feeder, rating, panel }: DesignedFeeder): Label {
  return label("Disconnect label", `on the disconnect of ${feeder.panel.name}`, [
    `DISCONNECT: ${feeder.panel.name}`,
    `fed from ${panelName(design, panel)}`,
    spacesOf(feeder.breaker.spaces),
    `${rating} A, 120/240 V`,
    ...(feeder.panel.main === undefined ? [] : [`main here ${print(feeder.panel.main)} A`]),
  ]);
}

function outletLabel(design: Design, c: DesignedCircuit): Label {
  const { circuit, volts, rating, neutral } = c;
  const system = volts === 120 ? "120 V ONLY, one hot" : neutral ? "120/240 V, four wires" : "240 V, no neutral";
  const device = gfciDevice(circuit);
  const above = feedersTo(design, c).map(({ feeder }) => feeder.panel.name);
  if (circuit.serves === "generator-inlet")
    return label("Inlet label", `at ${circuit.name}`, [
      `GENERATOR INLET: ${circuit.name}`,
      `${rating} A, ${volts} V`,
      circuit.nameplate?.neutral_bonded === true ? "for a generator with BONDED neutral" : "for a generator with FLOATING neutral",
      "dead while the house is on the utility",
    ]);
  return label(circuit.serves === "ev-supply" ? "Equipment label" : "Outlet label", `at ${circuit.name}`, [
    `${circuit.name}`,
    `${rating} A, ${system}`,
    `breaker: ${panelName(design, c.panel)}`,
    spacesOf(circuit.breaker.spaces),
    ...(above.length > 1 ? [`by way of ${above.slice(0, -1).join(", ")}`] : []),
    ...(device === null ? [] : [`GFCI at the ${device}: test monthly`]),
  ]);
}

const spacesOf = (spaces: readonly number[]): string => `${spaces.length === 1 ? "space" : "spaces"} ${spaces.join(" and ")}`;

function panelName(design: Design, id: string): string {
  const { panel } = design.job.service;
  return panel.id === id ? panel.name : (design.feeders.find(({ feeder }) => feeder.panel.id === id)?.feeder.panel.name ?? id);
}

function label(title: string, where: string, lines: readonly string[]): Label {
  const width = WIDEST.width;
  const laid = lines.flatMap((words) => wrap(words, width * INCH - 2 * MARGIN));
  const needed = (laid.length * LINE_HEIGHT + 2 * MARGIN) / INCH;
  return { title, where, lines: laid, width, height: Math.max(WIDEST.height / 2, Math.ceil(needed * 4) / 4) };
}

function drawLabel({ title, lines, width, height }: Label, id: string): string {
  const marks: Mark[] = [
    box(0.75, 0.75, width * INCH - 1.5, height * INCH - 1.5, "thin"),
    ...lines.map((words, i) => text([MARGIN, MARGIN + (i + 1) * LINE_HEIGHT - 4], fitted(words, width * INCH - 2 * MARGIN), { bold: i === 0 })),
  ];
  return svgOfDrawing({ title, alt: lines.join("; "), width: width * INCH, height: height * INCH, marks } satisfies MarkedDrawing, id);
}

function scaleBar(): string {
  const ticks = [0, 1, 2, 3].flatMap((inch): Mark[] => [line([1 + inch * INCH, 4], [1 + inch * INCH, 16], "thin")]);
  const marks = [line([1, 10], [1 + 3 * INCH, 10], "thin"), ...ticks, text([1 + 3 * INCH + 8, 15], "this bar is 3 in long at 100 %")];
  return svgOfDrawing({ title: "Scale bar", alt: "A bar 3 inches long", width: 460, height: 20, marks }, "label-scale");
}
