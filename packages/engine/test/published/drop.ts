import { expect } from "vitest";
import { dropPercent, longestRuns, sizeForDrop, voltageDrop } from "../../src/sizing/voltage-drop.js";
import { readCell } from "../../src/tables/code-table.js";
import { CONDUCTOR } from "../../src/tables/conductor.js";
import type { Size } from "../../src/tables/size.js";
import { agrees, edition, id, type Proofs, type Row } from "./row.js";

const drop = (current: number, size: Size, feet: number, method: "K" | "dc-resistance" = "K") =>
  voltageDrop({ id, label: id, current, segments: [{ size, material: "copper", feet }], method, edition });
const ofInputs = ({ inputs: i }: Row, method: "K" | "dc-resistance") => drop(i.current_A, i.size_awg, i.length_one_way_ft, method);

function sized(row: Row): void {
  const { inputs: i, expected: e } = row;
  const found = sizeForDrop({
    current: i.current_A,
    feet: i.length_one_way_ft,
    allowedVolts: (i.voltage_V * i.limit_pct) / 100,
    material: "copper",
    edition,
  });
  agrees(row, "cm_required", found.cmil);
  expect(found.size).toBe(e.size_awg);
}

/** Volts lost in coated solid copper: the engine takes uncoated copper, so only its table is on trial here. */
function coated({ inputs: i }: Row): number {
  const cell = readCell(CONDUCTOR, `${i.size_awg} solid`, "dcCopperCoated", edition)!;
  expect(Number(cell.value)).toBe(i.R_ohm_per_kft);
  return (2 * (i.load_W / i.voltage_V) * Number(cell.value) * i.length_one_way_ft) / 1000;
}

export const DROP_PROOFS: Proofs = {
  "vd-001": (row) => {
    const lost = ofInputs(row, "K");
    const percent = dropPercent({ id, label: id, drop: lost, volts: row.inputs.voltage_V, edition }).value;
    agrees(row, "vd_V", lost.value);
    agrees(row, "vd_pct", percent);
    expect(Number(percent) <= 3).toBe(row.expected.meets_3pct);
  },
  "vd-003": sized,
  "vd-005": sized,
  "vd-006": (row) => {
    const cell = (column: "dcAluminum" | "cmil") => Number(readCell(CONDUCTOR, row.inputs.size_awg, column, edition)!.value);
    expect([cell("dcAluminum"), cell("cmil")]).toEqual([row.inputs.R_ohm_per_kft, row.inputs.cm]);
    agrees(row, "K_exact", (cell("dcAluminum") * cell("cmil")) / 1000);
  },
  // The longest run within the limit still has the voltage at its end; one foot more has not.
  "vd-009": (row) => {
    const { voltage_V: volts, limit_pct: limitPercent } = row.inputs;
    const given = { current: 16, volts, limitPercent, material: "copper", method: "K", edition } as const;
    for (const { size, feet } of longestRuns({ ...given, sizes: ["12", "10", "6"] })) {
      const atEnd = (more: number) => volts - Number(drop(16, size, Number(feet) + more).value);
      expect(atEnd(0)).toBeGreaterThanOrEqual(row.expected.min_voltage_V);
      expect(atEnd(1)).toBeLessThan(row.expected.min_voltage_V);
    }
    const atLimit = { ...drop(16, "12", 100), value: String(volts - row.expected.min_voltage_V) };
    expect(Number(dropPercent({ id, label: id, drop: atLimit, volts, edition }).value)).toBeCloseTo(limitPercent, 9);
  },
  "vd-008": {
    differs: "its answer needs 0.778 Ω per 1000 ft, the table's; its shown working takes 0.64 and the length twice",
    prove: (row) => {
      expect(readCell(CONDUCTOR, "8", "dcCopper", edition)!.value).toBe(String(row.inputs.R_ohm_per_kft));
      agrees(row, "vd_V", ofInputs(row, "dc-resistance").value);
    },
  },
  "vd-012": (row) => agrees(row, "delivered_V", row.inputs.voltage_V - coated(row)),
  "vd-013": (row) => agrees(row, "vd_V", coated(row)),
  "vd-015": (row) => agrees(row, "vd_V", ofInputs(row, "K").value),
};
