import { type Design, type DesignedCircuit, printCitation } from "@branchwork/engine";
import { cautions } from "./cautions.js";
import { type Block, blanks, type Draft, heading, paragraph, table } from "./packet.js";
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
  const outlets = design.circuits.flatMap((c): Block[] => [
    heading(`${c.circuit.name}: ${c.rating} A, ${c.volts} V`),
    table(
      `Readings at ${c.circuit.name}, nothing connected`,
      ["Between", "Band", "Source", "Read", "Initials", "Date"],
      readingsAt(c).map(([between, band, source]) => [between, band, source, "", "", ""]),
    ),
    paragraph(
      `Computed drop at full load: ${valueWithUnit(c.drop.balanced)} (${valueWithUnit(c.drop.balancedPercent)}); worst leg ${valueWithUnit(c.drop.worstLeg)} (${valueWithUnit(c.drop.worstLegPercent)}). Read again under load and compare.`,
    ),
    blanks("Volts under load", "Amperes", "Initials", "Date"),
  ]);
  return {
    title: "Acceptance test readings",
    blocks: [
      paragraph(
        "Prove the tester on a known source before and after. Stop if any reading is out of band: open the breaker and connect nothing. Zero volts from neutral to ground does not prove a good ground; each hot must be read to ground. A neutral joined to ground at the outlet passes a meter and a three-lamp tester: look for it with the power off.",
      ),
      ...outlets,
      cautions(),
      blanks("Tester make and number", "Read by", "Date"),
    ],
  };
}
