import {
  type AcceptanceTest,
  acceptanceTest,
  type Band,
  type Design,
  type DesignedCircuit,
  type FaultRow,
  faultTable,
  printCitation,
  readingWords,
  type WiringShape,
} from "@branchwork/engine";
import { cautionsAtReadings } from "./cautions.js";
import { type Block, blanks, type Draft, heading, paragraph, type Table, table, together, withWidths } from "./packet.js";
import { SHEETS } from "./sheet-titles.js";
import { valueWithUnit } from "./worked-lines.js";

const VOLTS_PLACES = 1;
const volts = (value: number): string => value.toFixed(VOLTS_PLACES).replace(/\.0$/, "");

/** "114–126 V"; a band from nothing up is "under 1 V". */
function bandWords({ least, most }: Band): string {
  return least === 0 ? `under ${volts(most)} V` : `${volts(least)}–${volts(most)} V`;
}

function record(caption: string, bands: readonly Band[], shape: WiringShape): Table {
  return withWidths(
    table(
      caption,
      ["Between", "Expect", "Read, V", "In band?", "Initials", "Date"],
      bands.map((band) => [readingWords(band.reading, shape), bandWords(band), "", "", "", ""]),
    ),
    ...[26, 26, 14, 12, 11, 11],
  );
}

/** Outlets that the house feeds. An inlet is fed from its other end and must be dead while the house is on the utility. */
export const fedByHouse = (c: DesignedCircuit): boolean => c.circuit.serves !== "generator-inlet";

/** The record of readings to be taken before anything is plugged in, and then under a test load. */
export function readingsSheet(design: Design): Draft {
  const fed = design.circuits.filter(fedByHouse);
  const tests = fed.map((c) => ({ c, test: acceptanceTest(design, c) }));
  const bases = new Set(tests.flatMap(({ test }) => [...test.idle, ...test.loaded.flatMap((set) => set.bands)]).map((band) => printCitation(band.citation)));
  return {
    title: SHEETS.readings,
    blocks: [
      cautionsAtReadings(),
      paragraph(
        "A blank is not a pass. Zero volts from neutral to ground does not prove a good ground: read each hot to ground as well, and again with a low-impedance meter, which takes away what a floating conductor only seems to read. A neutral joined to ground at the outlet passes a meter and a three-lamp tester: look for it with the power off.",
      ),
      ...tests.flatMap(({ c, test }) => outletRecord(c, test)),
      ...design.circuits
        .filter((c) => !fedByHouse(c))
        .map((c) =>
          together(
            paragraph(
              `${c.circuit.name} is an inlet. With the house on the utility every pair of its blades must read 0 V: any voltage there can kill. Stop, open its breaker, and have the transfer equipment looked at.`,
            ),
            blanks("Greatest volts between any two blades", "Initials", "Date"),
          ),
        ),
      ...(bases.size === 0 ? [] : [paragraph(`Bands: ${[...bases].join("; ")}.`)]),
      ...(tests[0] === undefined ? [] : [paragraph(`Assumed for the computed bands: ${tests[0].test.assumptions.join("; ")}.`)]),
      blanks("Tester make and number", "Proved on a live source before and after", "Read by", "Date"),
    ],
  };
}

function outletRecord(c: DesignedCircuit, test: AcceptanceTest): Block[] {
  const { shape } = test;
  const drop = paragraph(
    `Computed drop from the panel at full load: ${valueWithUnit(c.drop.balanced)} (${valueWithUnit(c.drop.balancedPercent)}); on the worst leg ${valueWithUnit(c.drop.worstLeg)} (${valueWithUnit(c.drop.worstLegPercent)}). A larger drop points to a loose or undersized connection: open the breaker and look.`,
  );
  return [
    together(
      record(`${c.circuit.name}: ${c.rating} A, ${c.volts} V; breaker on, nothing connected`, test.idle, shape),
      ...(shape === "one-hot"
        ? [
            paragraph(
              "About 240 V from hot to neutral means the breaker is two-pole or the neutral is on a hot: it destroys what is plugged in. Open the breaker and connect nothing. Set the meter above 300 V before this reading.",
            ),
          ]
        : []),
    ),
    ...test.loaded.map((set) => together(record(`${c.circuit.name}: ${set.says}`, set.bands, shape), blanks("Amperes by clamp meter", "Initials", "Date"))),
    drop,
  ];
}

export const SHAPES: Readonly<Record<WiringShape, string>> = {
  "four-wire": "Two hots, neutral and ground",
  "one-hot": "One hot, neutral and ground",
  "two-hot": "Two hots and ground, no neutral",
};
/** Said once above the table instead of in each of its rows. */
const OFF_FIRST = "Turn the breaker off, lock it, prove it dead (prove the tester, test, prove the tester again); then ";

/** What wrong readings point to, worked by simulation for each kind of wiring in the job; null where there is no outlet to read. */
export function faultTableSheet(design: Design): Draft | null {
  const tests = design.circuits.filter(fedByHouse).map((c) => ({ c, test: acceptanceTest(design, c) }));
  const shapes = tests.filter(({ test }, i) => tests.findIndex((other) => other.test.shape === test.shape) === i);
  if (shapes.length === 0) return null;
  return {
    title: SHEETS.faultTable,
    blocks: [
      {
        kind: "boxed",
        title: "Stop",
        lead: "Any reading out of band: plug nothing in.",
        entries: [
          {
            title: "Turn the breaker off, lock it, and prove it dead.",
            lines: ["Prove the tester on a live source, test, prove the tester again. Only then do what the table says."],
          },
          {
            title: "No single row need fit.",
            lines: ["Two faults at once, a dying battery in the meter and a wrong range all read strangely. What is not found is for a licensed electrician."],
          },
        ],
      },
      ...shapes.flatMap(({ c, test }): Block[] => {
        const rows = faultTable(test.circuit, test.loaded[0]!.load);
        const shown = rows.filter((row) => row.shows !== "nothing");
        const hidden = rows.filter((row) => row.shows !== "idle");
        return [
          withWidths(
            table(
              `${SHAPES[test.shape]} (worked for ${c.circuit.name})`,
              ["If you read", "Likely", "Do", "Stop"],
              shown.map((row) => [readsWords(row, test.shape), likelyWords(row), capital(row.toDo.replace(OFF_FIRST, "")), row.stop]),
            ),
            ...[26, 24, 25, 25],
          ),
          ...(hidden.length === 0
            ? []
            : [
                heading("What a pass with nothing connected does not prove absent"),
                {
                  kind: "brief",
                  entries: hidden.map((row) => ({ title: capital(row.likely.split(":")[0]!), text: `Shown by: ${row.provedBy}.` })),
                } satisfies Block,
              ]),
        ];
      }),
      paragraph("Readings are simulated at 120 V on each leg with a 10 MΩ meter unless said; yours will differ by what the supply and the cable are."),
    ],
  };
}

const WITH: Readonly<Record<FaultRow["shows"], string>> = {
  idle: "Nothing connected",
  loaded: "With the test load",
  "low-impedance": "With a low-impedance meter, nothing connected",
  nothing: "No reading",
};

function readsWords(row: FaultRow, shape: WiringShape): string {
  return `${WITH[row.shows]}: ${row.outOfBand.map((reading) => `${readingWords(reading, shape).toLowerCase()} about ${Math.round(row.reads[reading] ?? 0)} V`).join(", ")}`;
}

const likelyWords = (row: FaultRow): string => capital(row.variant === "" ? row.likely : `${row.likely} (${row.variant})`);
const capital = (text: string): string => `${text.charAt(0).toUpperCase()}${text.slice(1)}`;
