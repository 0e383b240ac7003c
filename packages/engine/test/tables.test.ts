import { describe, expect, it } from "vitest";
import { EDITIONS } from "../src/basis/edition.js";
import { COUNT_ADJUSTMENT } from "../src/tables/adjustment.js";
import { AMBIENT_CORRECTION } from "../src/tables/ambient.js";
import { AMPACITY } from "../src/tables/ampacity.js";
import { BEND_RADIUS } from "../src/tables/bend-radius.js";
import { BENDING_SPACE_OPPOSITE, BENDING_SPACE_SIDE } from "../src/tables/bending-space.js";
import { BOX_ALLOWANCE } from "../src/tables/box-allowance.js";
import { BURIAL_COVER } from "../src/tables/burial.js";
import { type CodeTable, readCell } from "../src/tables/code-table.js";
import { COMPACT_CONDUCTOR } from "../src/tables/compact-conductor.js";
import { CONDUCTOR } from "../src/tables/conductor.js";
import { DRYER_DEMAND } from "../src/tables/dryer-demand.js";
import { ELECTRODE_CONDUCTOR, SUPPLY_BONDING } from "../src/tables/electrode.js";
import { FILL_PERCENT } from "../src/tables/fill-percent.js";
import { GROUNDING_CONDUCTOR } from "../src/tables/grounding.js";
import { AC_IMPEDANCE } from "../src/tables/impedance.js";
import { INSULATED_CONDUCTOR } from "../src/tables/insulated.js";
import { LIGHTING_DEMAND } from "../src/tables/lighting-demand.js";
import { METAL_BOX } from "../src/tables/metal-box.js";
import { MOTOR_CURRENT } from "../src/tables/motor-current.js";
import { PVC_EXPANSION } from "../src/tables/pvc-expansion.js";
import { RACEWAY } from "../src/tables/raceway.js";
import { RANGE_DEMAND } from "../src/tables/range-demand.js";
import { RV_SITE_DEMAND, RV_SITE_LOAD } from "../src/tables/rv-site-demand.js";
import { SIZES } from "../src/tables/size.js";
import { SMALL_CONDUCTOR } from "../src/tables/small-conductor.js";
import { PVC_SUPPORT, SUPPORT, THREADED_SUPPORT } from "../src/tables/support.js";
import { WELDER_DUTY } from "../src/tables/welder-duty.js";

const TABLES: readonly CodeTable[] = [
  AC_IMPEDANCE,
  AMBIENT_CORRECTION,
  AMPACITY,
  BENDING_SPACE_OPPOSITE,
  BENDING_SPACE_SIDE,
  BEND_RADIUS,
  BOX_ALLOWANCE,
  BURIAL_COVER,
  COMPACT_CONDUCTOR,
  CONDUCTOR,
  COUNT_ADJUSTMENT,
  DRYER_DEMAND,
  ELECTRODE_CONDUCTOR,
  FILL_PERCENT,
  GROUNDING_CONDUCTOR,
  INSULATED_CONDUCTOR,
  LIGHTING_DEMAND,
  METAL_BOX,
  MOTOR_CURRENT,
  PVC_EXPANSION,
  PVC_SUPPORT,
  RACEWAY,
  RANGE_DEMAND,
  RV_SITE_DEMAND,
  RV_SITE_LOAD,
  SMALL_CONDUCTOR,
  SUPPLY_BONDING,
  SUPPORT,
  THREADED_SUPPORT,
  WELDER_DUTY,
];

describe("every table", () => {
  for (const table of TABLES) {
    it(`${table.id}: every cell answers in every edition with a citation and a numeral, and rows fit the columns`, () => {
      expect(table.sources.length).toBeGreaterThan(0);
      for (const [row, cells] of Object.entries(table.rows)) {
        expect(cells).toHaveLength(table.columns.length);
        for (const column of table.columns) {
          for (const edition of EDITIONS) {
            const cell = readCell(table, row, column, edition);
            if (cell === null) continue;
            expect(cell.citation.section).toBeTruthy();
            expect(cell.value).toMatch(/^\d+(\.\d+)?$|^\d\/0$/);
          }
        }
      }
    });
  }
});

describe("ambient correction: √((Tc − Ta)/(Tc − 30)) at the top of the band, to two places", () => {
  for (const [upTo, cells] of Object.entries(AMBIENT_CORRECTION.rows)) {
    it(`${upTo} °C`, () => {
      for (const [i, limit] of [60, 75, 90].entries()) {
        const cell = cells[i + 1];
        if (cell == null) continue;
        expect(Math.abs(Number(cell) - Math.sqrt((limit - Number(upTo)) / (limit - 30)))).toBeLessThanOrEqual(0.0051);
      }
    });
  }
});

describe("conductors: AWG diameter by ASTM B258, 0.005 in × 92^((36 − n)/39)", () => {
  const gauge = (size: string) => (size.endsWith("/0") ? 1 - Number(size[0]) : Number(size));
  for (const size of SIZES.slice(0, SIZES.indexOf("250"))) {
    it(`${size} AWG: circular mils within 0.35 % and dc copper resistance within 2.5 % of 10.371 Ω·cmil/ft at 20 °C brought to 75 °C`, () => {
      const mils = 5 * 92 ** ((36 - gauge(size)) / 39);
      const cmil = Number(readCell(CONDUCTOR, size, "cmil", "2023")!.value);
      expect(Math.abs(cmil - mils * mils) / cmil).toBeLessThan(0.0035);
      // IACS copper, 0.00393 per °C at 20 °C; a stranded conductor is about 2 % longer than its axis (ASTM B8).
      const ohms = (10.371 * (1 + 0.00393 * 55) * 1.02 * 1000) / cmil;
      const cell = Number(readCell(CONDUCTOR, size, "dcCopper", "2023")!.value);
      expect(Math.abs(cell - ohms) / ohms).toBeLessThan(0.025);
    });
  }
});

describe("areas are circles: πd²/4", () => {
  it("insulated conductors, within the rounding of the printed diameter", () => {
    for (const [row, [diameter, area]] of Object.entries(INSULATED_CONDUCTOR.rows)) {
      const [low, high] = [-0.0006, 0.0006].map((slack) => (Math.PI / 4) * (Number(diameter) + slack) ** 2);
      expect(Number(area), row).toBeGreaterThanOrEqual(low! - 0.0006);
      expect(Number(area), row).toBeLessThanOrEqual(high! + 0.0006);
    }
  });
  it("raceways, and their 40 % column", () => {
    for (const [row, cells] of Object.entries(RACEWAY.rows)) {
      const [inside, area, , , , area40] = cells.map(Number);
      expect(Math.abs(area! - (Math.PI / 4) * inside! ** 2) / area!, row).toBeLessThan(0.006);
      expect(Math.abs(area40! - 0.4 * area!), row).toBeLessThan(0.0025);
    }
  });
});

describe("ampacity grows with size and with the column", () => {
  it("in every column", () => {
    for (const column of AMPACITY.columns) {
      const values = SIZES.map((size) => readCell(AMPACITY, size, column, "2023")?.value)
        .filter((v) => v !== undefined)
        .map(Number);
      expect(values).toEqual([...values].sort((a, b) => a - b));
    }
  });
});
