import { expect } from "vitest";
import { type Electrode, electrodeConductor } from "../../src/sizing/electrode-conductor.js";
import { buildingGrounding } from "../../src/sizing/electrodes.js";
import { groundingConductor } from "../../src/sizing/grounding.js";
import type { Size } from "../../src/tables/size.js";
import { agrees, edition, id, type Proofs, type Row } from "./row.js";

const grounding = ({ inputs: i }: Row, usedSize: Size = i.new_size) =>
  groundingConductor({ id, overcurrent: i.ocpd_A, material: "copper", leastSize: i.base_size, usedSize, edition });

function proportional(row: Row): void {
  const found = grounding(row);
  agrees(row, "egc_cm", found.leastCmil);
  expect(found.size).toBe(row.expected.egc_size);
  expect(grounding(row, row.inputs.base_size).size).toBe(row.inputs.egc_base);
}

const electrode = (sizes: readonly Size[], electrodes: readonly Electrode[]) =>
  electrodeConductor({ id, supply: { size: sizes[0]!, material: "copper", sets: sizes.length }, material: "copper", electrodes, edition });

export const GROUNDING_PROOFS: Proofs = {
  "egc-001": (row) => {
    proportional(row);
    expect(Number(grounding(row).leastCmil)).toBeCloseTo(Number(grounding(row, row.inputs.base_size).leastCmil) * row.expected.ratio, 0);
  },
  "egc-003": proportional,
  "egc-005": proportional,
  "egc-006": ({ inputs: i, expected: e }) => {
    const size = (usedSize: Size) => groundingConductor({ id, overcurrent: 100, material: "copper", leastSize: "3", usedSize, edition }).size;
    expect(size("1/0") !== size("3")).toBe(e.egc_increase_required && i.increased_for_voltage_drop);
  },
  "gec-002": ({ inputs: i, expected: e }) => expect(electrode(i.service, ["water-pipe"]).size).toBe(e.gec),
  "gec-001": {
    differs: "335,600 cmil is within the row through 350 kcmil, whose top counts in: 2 AWG; a reply reads 1/0 from the next row",
    prove: ({ inputs: i, expected: e }) => {
      for (const kind of ["water-pipe", "structural-metal"] as const) {
        const found = electrode(i.service, [kind]);
        expect(found.size).toBe(e.gec);
        expect(found.worked.expression.replaceAll(",", "")).toContain(`${e.total_cm} cmil`);
      }
    },
  },
  // 2/0 copper is what a 200 A dwelling service takes; the limit of a rod holds for any larger supply too.
  "gec-004": ({ expected: e }) => {
    expect(electrode(["2/0"], ["rod"]).size).toBe(e.gec);
    expect(electrode(["500"], ["rod"]).size).toBe(e.gec);
  },
  "gec-005": ({ inputs: i, expected: e }) => {
    const path: Electrode[] = i.path.map((kind: string) => kind.replace("_", "-"));
    expect(electrode(["500"], path).size).toBe(e.gec);
    expect(electrode(["500"], path.slice(0, 1)).size).not.toBe(e.gec);
  },
  "db-004": ({ inputs: i, expected: e }) => {
    const SUPPLY = { feeder_4wire: "feeder", single_branch_with_egc: "one-branch-circuit" } as const;
    const found = i.cases.map((supply: keyof typeof SUPPLY) => buildingGrounding({ supply: SUPPLY[supply], edition }));
    expect(found.map((each: { electrodes: boolean }) => each.electrodes)).toEqual(e.electrode_required);
    for (const each of found) expect(each.neutralBonded).toBe(e.neutral_bonded);
  },
};
