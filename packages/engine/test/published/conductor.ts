import { expect } from "vitest";
import { ampacity } from "../../src/sizing/ampacity.js";
import { leastConductor, shortfalls } from "../../src/sizing/conductor.js";
import { dwellingServiceConductor } from "../../src/sizing/dwelling-service.js";
import { overcurrentRating, standardRatingAtLeast } from "../../src/sizing/overcurrent.js";
import { AMPACITY } from "../../src/tables/ampacity.js";
import { readCell } from "../../src/tables/code-table.js";
import { compareSizes, type Size } from "../../src/tables/size.js";
import { redo } from "../redo.js";
import { agrees, edition, id, type Proofs, type Row } from "./row.js";

const celsius = (fahrenheit: number) => (fahrenheit - 32) / 1.8;
const corrected = ({ inputs: i }: Row, ambientC: number, currentCarrying: number) =>
  ampacity({ id, size: i.size_awg, material: "copper", insulation: i.insulation, ambientC, currentCarrying, terminalC: 75, edition })!.corrected;
const dwelling = (rating: number) => dwellingServiceConductor({ id, rating, material: "copper", edition });

export const CONDUCTOR_PROOFS: Proofs = {
  "amp-001": ({ inputs: i, expected: e }) => {
    const device = overcurrentRating({ id, continuous: i.load_A, noncontinuous: 0, edition });
    expect(Number(device.value)).toBe(e.ocpd_A);
    // Each test by itself: a device at the load only where the test is not about the device.
    const size = (terminalC: 60 | 75, terminalLoad: number, overcurrent: number): Size =>
      leastConductor(
        { id, material: "copper", insulation: "THW", ambientC: i.ambient_C, currentCarrying: i.ccc, terminalC, edition },
        { load: i.load_A, terminalLoad, overcurrent },
      )!.size;
    const continuous = size(i.terminal_supply_C, i.load_A * 1.25, Number(device.value));
    const conditions = size(i.conductor_rating_C, i.load_A, i.load_A);
    const loadEnd = size(i.terminal_load_C, i.load_A, i.load_A);
    expect([continuous, conditions, loadEnd]).toEqual([e.size_by_continuous, e.size_by_conditions, e.size_by_60C_terminal]);
    expect([continuous, conditions, loadEnd].sort(compareSizes).at(-1)).toBe(e.size_final);
  },
  "amp-004": (row) => agrees(row, "ampacity_A", corrected(row, row.inputs.ambient_C, row.inputs.ccc).value),
  "amp-010": (row) => {
    const { needed, size } = dwelling(row.inputs.service_A);
    agrees(row, "required_ampacity_A", needed.value);
    expect(size).toBe(row.expected.size);
  },
  "amp-011": ({ inputs: i, expected: e }) => {
    expect(dwelling(i.service_A).size).toBe(e.size);
    expect(dwelling(i.neutral_A).size).toBe(e.neutral_size);
  },
  "amp-002": {
    differs: "a 90 °C conductor is corrected from 40 A, not from the 35 A of 75 °C, and 100 °F has its factor",
    prove: (row) => {
      const found = corrected(row, celsius(row.inputs.ambient_F), row.inputs.ccc);
      agrees(row, "ampacity_A", found.value);
      // The wrong way lands within an ampere, so the way is looked at too.
      expect(found.expression).toBe("40 A × 0.91 × 70 %");
    },
  },
  "amp-006": {
    differs: "one conductor and twenty others are 21, in the row of 21 to 30: 45 %, not 50 %",
    prove: (row) => {
      const found = corrected(row, 30, row.inputs.ccc_min);
      agrees(row, "ampacity_A", found.value);
      expect(found.expression.endsWith(`× ${100 * row.expected.adj} %`)).toBe(true);
    },
  },
  "amp-007": {
    differs: "THWN is 75 °C wet or dry; the answer of 124 A is that of a 90 °C insulation",
    prove: (row) => agrees(row, "ampacity_A", corrected(row, celsius(row.inputs.ambient_F), row.inputs.ccc).value),
  },
  "ocp-001": {
    differs: "195 A goes up to 200 A (240.4(B)); it prints 180 A, which is no standard rating",
    prove: ({ inputs: i, expected: e }) => {
      expect(Number(readCell(AMPACITY, i.size, "al60", edition)!.value)).toBe(e.ampacity_A);
      expect(standardRatingAtLeast(e.ampacity_A, edition)).toBe(e.ocpd_A);
    },
  },
  "ocp-002": ({ inputs: i, expected: e }) => {
    // 500 kcmil copper is the size of 380 A at 75 °C.
    const given = { id, size: "500", material: "copper", insulation: "THW", ambientC: 30, currentCarrying: 3, terminalC: 75, edition } as const;
    expect(Number(ampacity(given)!.allowed.value)).toBe(i.ampacity_A);
    expect(standardRatingAtLeast(i.ampacity_A, edition)).toBe(e.ocpd_A);
    const short = (load: number) => shortfalls(given, { load, terminalLoad: load, overcurrent: e.ocpd_A }).short;
    expect(short(e.max_load_A)).toEqual([]);
    expect(short(e.max_load_A + 1)).toContain("load");
  },
  "cl-001": (row) => {
    const { inputs: i, expected: e } = row;
    const device = overcurrentRating({ id, continuous: i.cont_VA / i.voltage_V, noncontinuous: i.noncont_VA / i.voltage_V, edition });
    expect(Number(device.value)).toBe(e.next_standard_A);
    agrees(row, "amps", redo(device.expression));
  },
};
