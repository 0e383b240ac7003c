import { type Design, type DesignedCircuit, printCitation } from "@branchwork/engine";
import { cautionsAtReadings } from "./cautions.js";
import { type Block, blanks, type Draft, paragraph, table, together, withWidths } from "./packet.js";
import { valueWithUnit } from "./worked-lines.js";

const RANGE_A = printCitation({ document: "ANSI C84.1", section: "Range A", edition: null, standing: "memory" });
const PRACTICE = printCitation({ document: "", section: "Neutral to ground", edition: null, standing: "practice" });

const LEG = ["114–126 V", RANGE_A] as const;
const LINE = ["228–252 V", RANGE_A] as const;
const NEUTRAL = ["under 1 V with nothing connected", PRACTICE] as const;

/** The pairs to be read at an outlet: six with two hots and a neutral, three otherwise. */
export function readingsAt({ volts, wires }: Pick<DesignedCircuit, "volts" | "wires">): readonly (readonly [string, string, string])[] {
  if (volts === 120)
    return [
      ["Hot to neutral", ...LEG],
      ["Hot to ground", ...LEG],
      ["Neutral to ground", ...NEUTRAL],
    ];
  const toGround = [
    ["Line 1 to ground", ...LEG],
    ["Line 2 to ground", ...LEG],
  ] as const;
  if (wires === 3) return [["Line 1 to line 2", ...LINE], ...toGround];
  return [["Line 1 to line 2", ...LINE], ["Line 1 to neutral", ...LEG], ["Line 2 to neutral", ...LEG], ...toGround, ["Neutral to ground", ...NEUTRAL]];
}

/** The record of readings to be taken before anything is plugged in. */
export function readingsSheet(design: Design): Draft {
  const outlets = design.circuits.flatMap((c): Block[] => {
    const readings = readingsAt(c);
    const sources = new Set(readings.map(([, , source]) => source));
    return [
      together(
        withWidths(
          table(
            `${c.circuit.name}: ${c.rating} A, ${c.volts} V; breaker on, nothing connected`,
            ["Between", "Expect", "Read, V", "Initials", "Date"],
            readings.map(([between, band]) => [between, band, "", "", ""]),
          ),
          ...[28, 32, 16, 12, 12],
        ),
        paragraph(`Bands: ${[...sources].join("; ")}.`),
        ...(c.volts === 120
          ? [
              paragraph(
                "About 240 V from hot to neutral means the breaker is two-pole or the neutral is on a hot: it destroys what is plugged in. Open the breaker and connect nothing.",
              ),
            ]
          : []),
        paragraph(
          `Then under load. Computed drop from the panel at full load: ${valueWithUnit(c.drop.balanced)} (${valueWithUnit(c.drop.balancedPercent)}); on the worst leg ${valueWithUnit(c.drop.worstLeg)} (${valueWithUnit(c.drop.worstLegPercent)}). A larger drop points to a loose or undersized connection: open the breaker and look.`,
        ),
        blanks("Volts under load", "Amperes", "Initials", "Date"),
      ),
    ];
  });
  return {
    title: "Acceptance test readings",
    blocks: [
      cautionsAtReadings(),
      paragraph(
        "Zero volts from neutral to ground does not prove a good ground: read each hot to ground as well. A neutral joined to ground at the outlet passes a meter and a three-lamp tester: look for it with the power off.",
      ),
      ...outlets,
      blanks("Tester make and number", "Read by", "Date"),
    ],
  };
}
