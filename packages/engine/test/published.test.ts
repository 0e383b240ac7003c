import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { unamended } from "../src/basis/basis.js";
import { existingDwellingLoad } from "../src/service/existing-dwelling.js";
import { ampacity, type Insulation } from "../src/sizing/ampacity.js";
import { boxVolume } from "../src/sizing/box-fill.js";
import { leastCover, trenchDepth } from "../src/sizing/burial.js";
import { dwellingServiceConductor } from "../src/sizing/dwelling-service.js";
import { groundingConductor } from "../src/sizing/grounding.js";
import { overcurrentRating, standardRatingAtLeast } from "../src/sizing/overcurrent.js";
import { conductorArea, fillLimit, leastRaceway } from "../src/sizing/raceway-fill.js";
import { sizeForDrop, voltageDrop } from "../src/sizing/voltage-drop.js";
import { AMPACITY } from "../src/tables/ampacity.js";
import { BOX_ALLOWANCE } from "../src/tables/box-allowance.js";
import { readCell } from "../src/tables/code-table.js";
import { CONDUCTOR } from "../src/tables/conductor.js";
import type { Size } from "../src/tables/size.js";

interface Row {
  readonly id: string;
  readonly topic: string;
  // biome-ignore lint/suspicious/noExplicitAny: rows of many shapes, each read by the test of its own id
  readonly inputs: any;
  // biome-ignore lint/suspicious/noExplicitAny: as above
  readonly expected: any;
  readonly tolerance: Record<string, number>;
  readonly evidence: string;
  readonly status: string;
  readonly source: { publisher: string; url: string };
}
const rows = JSON.parse(readFileSync(new URL("../cases/published.json", import.meta.url), "utf8")) as Row[];
const row = (id: string): Row => {
  const found = rows.find((r) => r.id === id);
  if (!found) throw new Error(`no case ${id}`);
  return found;
};
const near = (actual: string | number, expected: number, tolerance: number) => expect(Math.abs(Number(actual) - expected)).toBeLessThanOrEqual(tolerance);
const edition = "2023" as const;

/** One test a published row; the source stands in the test's name. */
const proofs: Record<string, (r: Row) => void> = {
  "vd-001": ({ inputs: i, expected: e, tolerance: t }) => {
    const drop = voltageDrop({
      id: "x",
      label: "x",
      current: i.current_A,
      segments: [{ size: i.size_awg, material: "copper", feet: i.length_one_way_ft }],
      method: "K",
      edition,
    });
    near(drop.value, e.vd_V, t.vd_V!);
    near((Number(drop.value) / i.voltage_V) * 100, e.vd_pct, t.vd_pct!);
  },
  "vd-003": ({ inputs: i, expected: e, tolerance: t }) => {
    const found = sizeForDrop({
      current: i.current_A,
      feet: i.length_one_way_ft,
      allowedVolts: (i.voltage_V * i.limit_pct) / 100,
      material: "copper",
      edition,
    });
    near(found.cmil, e.cm_required, t.cm_required!);
    expect(found.size).toBe(e.size_awg);
  },
  "vd-005": ({ inputs: i, expected: e, tolerance: t }) => {
    const found = sizeForDrop({
      current: i.current_A,
      feet: i.length_one_way_ft,
      allowedVolts: (i.voltage_V * i.limit_pct) / 100,
      material: "copper",
      edition,
    });
    near(found.cmil, e.cm_required, t.cm_required!);
    expect(found.size).toBe(e.size_awg);
  },
  "vd-008": ({ inputs: i, expected: e, tolerance: t }) =>
    near(
      voltageDrop({
        id: "x",
        label: "x",
        current: i.current_A,
        segments: [{ size: i.size_awg, material: "copper", feet: i.length_one_way_ft }],
        method: "dc-resistance",
        edition,
      }).value,
      e.vd_V,
      t.vd_V!,
    ),
  "vd-015": ({ inputs: i, expected: e, tolerance: t }) =>
    near(
      voltageDrop({
        id: "x",
        label: "x",
        current: i.current_A,
        segments: [{ size: i.size_awg, material: "copper", feet: i.length_one_way_ft }],
        method: "K",
        edition,
      }).value,
      e.vd_V,
      t.vd_V!,
    ),
  "vd-012": ({ inputs: i, expected: e, tolerance: t }) =>
    near(
      i.voltage_V - (2 * (i.load_W / i.voltage_V) * Number(readCell(CONDUCTOR, "12 solid", "dcCopperCoated", edition)!.value) * i.length_one_way_ft) / 1000,
      e.delivered_V,
      t.delivered_V!,
    ),
  "vd-013": ({ inputs: i, expected: e, tolerance: t }) =>
    near(
      (2 * (i.load_W / i.voltage_V) * Number(readCell(CONDUCTOR, "10 solid", "dcCopperCoated", edition)!.value) * i.length_one_way_ft) / 1000,
      e.vd_V,
      t.vd_V!,
    ),
  "vd-006": ({ expected: e, tolerance: t }) =>
    near(
      (Number(readCell(CONDUCTOR, "8", "dcAluminum", edition)!.value) * Number(readCell(CONDUCTOR, "8", "cmil", edition)!.value)) / 1000,
      e.K_exact,
      t.K_exact!,
    ),
  "bf-008": ({ inputs: i, expected: e }) => expect(Math.floor(i.box_in3 / Number(readCell(BOX_ALLOWANCE, i.awg, "volume", edition)!.value))).toBe(e.n),
  "bf-010": ({ inputs: i, expected: e }) =>
    expect(i.boxes.map((b: { in3: number; awg: string }) => Math.floor(b.in3 / Number(readCell(BOX_ALLOWANCE, b.awg, "volume", edition)!.value)))).toEqual(e.n),
  "ed-002": ({ inputs: i, expected: e }) => {
    const { total } = existingDwellingLoad({
      id: "x",
      dwelling: {
        floorAreaFt2: 1000,
        smallApplianceCircuits: 2,
        laundryCircuits: 1,
        appliancesVA: i.connected_existing_VA - 7500 + i.new_VA,
        heatingOrCoolingVA: 0,
        heatingOrCoolingAdded: false,
      },
      edition,
    });
    near(total.value, e.demand_VA, 0);
  },
  "amp-001": ({ inputs: i, expected: e }) =>
    expect(overcurrentRating({ id: "x", continuous: i.load_A, noncontinuous: 0, edition }).value).toBe(String(e.ocpd_A)),
  "amp-010": ({ inputs: i, expected: e }) => {
    const { needed, size } = dwellingServiceConductor({ id: "x", rating: i.service_A, material: "copper", edition });
    near(needed.value, e.required_ampacity_A, 0);
    expect(size).toBe(e.size);
  },
  "amp-011": ({ inputs: i, expected: e }) => {
    expect(dwellingServiceConductor({ id: "x", rating: i.service_A, material: "copper", edition }).size).toBe(e.size);
    expect(dwellingServiceConductor({ id: "x", rating: i.neutral_A, material: "copper", edition }).size).toBe(e.neutral_size);
  },
  "egc-005": ({ inputs: i, expected: e, tolerance: t }) => {
    const found = groundingConductor({ id: "x", overcurrent: i.ocpd_A, material: "copper", leastSize: i.base_size, usedSize: i.new_size, edition });
    near(found.leastCmil, e.egc_cm, t.egc_cm!);
    expect(found.size).toBe(e.egc_size);
  },
  "egc-006": ({ expected: e }) => {
    const size = (usedSize: Size) => groundingConductor({ id: "x", overcurrent: 100, material: "copper", leastSize: "3", usedSize, edition }).size;
    expect(size("1/0") !== size("3")).toBe(e.egc_increase_required);
  },
  "cf-004": (r) => nipple(r),
  "cf-007": (r) => nipple(r),
  "cf-008": ({ inputs: i, expected: e, tolerance: t }) => {
    const conductors = i.conductors.map((c: { n: number; awg: Size; ins: string }) => ({
      size: c.awg,
      insulation: c.ins === "XHHW" ? "XHHW-2" : c.ins,
      count: c.n,
    }));
    near(conductorArea({ id: "x", conductors, othersIn2: 0, edition })!.value, e.area_in2, t.area_in2!);
  },
  "cf-009": ({ inputs: i, expected: e, tolerance: t }) =>
    near(fillLimit({ id: "x", raceway: i.raceway, tradeSize: i.trade_size, count: 3, nipple: true, edition })!.value, e.area_in2, t.area_in2!),
  "cf-011": ({ inputs: i, expected: e }) => {
    const [cable] = i.cables;
    const area = ((Math.PI / 4) * cable.major_diameter_in ** 2 * cable.n).toFixed(4);
    expect(leastRaceway({ raceway: i.raceway, areaIn2: area, count: cable.n, edition })).toBe(e.trade_size);
  },
  "ed-004": ({ expected: e }) => {
    const total = (heatingOrCoolingVA: number) =>
      Number(
        existingDwellingLoad({
          id: "x",
          dwelling: {
            floorAreaFt2: 3000,
            smallApplianceCircuits: 2,
            laundryCircuits: 1,
            appliancesVA: 0,
            heatingOrCoolingVA,
            heatingOrCoolingAdded: e.hvac_at_100pct_separately,
          },
          edition,
        }).total.value,
      );
    near(total(5000) - total(0), (5000 * e.rest_pct) / 100, 0);
  },
  "bd-003": ({ expected: e }) =>
    expect(leastCover({ id: "x", method: "UF-B", place: "general", basis: unamended(edition), small120V: true }).value).toBe(String(e.cover_in)),
  "bd-006": ({ inputs: i, expected: e, tolerance: t }) =>
    near(
      trenchDepth({ id: "y", cover: leastCover({ id: "x", method: "PVC-40", place: "general", basis: unamended(edition) }), outsideIn: i.od_in, beddingIn: 0 })
        .value,
      e.trench_in,
      t.trench_in!,
    ),
  "amp-002": (r) => near(ampacityOf(r, (100 - 32) / 1.8), r.expected.ampacity_A, r.tolerance.ampacity_A!),
  "amp-004": (r) => near(ampacityOf(r, 30), r.expected.ampacity_A, r.tolerance.ampacity_A!),
  "amp-006": (r) => near(ampacityOf(r, 30, r.inputs.ccc_min), r.expected.ampacity_A, r.tolerance.ampacity_A!),
  // THWN is a 75 °C insulation, as THW is here.
  "amp-007": (r) => near(ampacityOf(r, 40, 4, "THW"), r.expected.ampacity_A, r.tolerance.ampacity_A!),
  "ocp-001": ({ expected: e }) => {
    expect(readCell(AMPACITY, "300", "al60", edition)?.value).toBe(String(e.ampacity_A));
    expect(standardRatingAtLeast(e.ampacity_A, edition)).toBe(e.ocpd_A);
  },
  "ocp-002": ({ inputs: i, expected: e }) => expect(standardRatingAtLeast(i.ampacity_A, edition)).toBe(e.ocpd_A),
  "egc-001": (r) => egc(r),
  "egc-003": (r) => egc(r),
  "cf-001": (r) => fill(r, "EMT"),
  "cf-003": (r) => fill(r, "PVC-40"),
  "bf-001": ({ expected: e }) =>
    near(
      boxVolume({
        id: "x",
        contents: { conductors: [{ size: "14", count: 6 }], grounds: { size: "14", count: 2 }, devices: [], internalClamps: false, fittingKinds: 2 },
        edition,
      })!.value,
      e.volume_in3,
      0,
    ),
  "bf-003": ({ expected: e }) =>
    near(
      boxVolume({
        id: "x",
        contents: { conductors: [{ size: "12", count: 10 }], grounds: { size: "12", count: 5 }, devices: [], internalClamps: false },
        edition: "2017",
      })!.value,
      e.fill_in3,
      0,
    ),
  "bf-005": ({ expected: e }) =>
    near(
      boxVolume({
        id: "x",
        contents: { conductors: [{ size: "14", count: 4 }], grounds: { size: "14", count: 2 }, devices: [{ size: "14", gangs: 1 }], internalClamps: false },
        edition,
      })!.value,
      e.volume_in3,
      0,
    ),
  "bf-007": ({ expected: e, tolerance: t }) =>
    near(
      boxVolume({
        id: "x",
        contents: {
          conductors: [
            { size: "12", count: 4 },
            { size: "14", count: 4 },
          ],
          grounds: { size: "12", count: 4 },
          devices: [
            { size: "12", gangs: 1 },
            { size: "14", gangs: 1 },
          ],
          internalClamps: true,
        },
        edition,
      })!.value,
      e.volume_in3,
      t.volume_in3!,
    ),
  "ed-001": ({ inputs: i, expected: e, tolerance: t }) => {
    const { total } = existingDwellingLoad({
      id: "x",
      dwelling: {
        floorAreaFt2: i.area_ft2,
        smallApplianceCircuits: 2,
        laundryCircuits: 1,
        appliancesVA: i.range_VA + i.dryer_VA + i.disposer_VA,
        heatingOrCoolingVA: 0,
        heatingOrCoolingAdded: false,
      },
      edition,
    });
    near(total.value, e.demand_VA, 0);
    near(Number(total.value) / i.voltage_V, e.amps, t.amps!);
  },
  "cl-001": ({ inputs: i, expected: e }) =>
    expect(overcurrentRating({ id: "x", continuous: i.cont_VA / i.voltage_V, noncontinuous: i.noncont_VA / i.voltage_V, edition }).value).toBe(
      String(e.next_standard_A),
    ),
  "bd-001": ({ expected: e }) => expect(leastCover({ id: "x", method: "UF-B", place: "general", basis: unamended(edition) }).value).toBe(String(e.cover_in)),
  "bd-004": ({ expected: e }) =>
    expect(["PVC-40", "RMC", "IMC"].map((method) => Number(leastCover({ id: "x", method, place: "general", basis: unamended(edition) }).value))).toEqual(
      e.cover_in,
    ),
};

function ampacityOf({ inputs: i }: Row, ambientC: number, count = i.ccc, insulation: Insulation = i.insulation): string {
  const found = ampacity({ id: "x", size: i.size_awg, material: "copper", insulation, ambientC, currentCarrying: count, terminalC: 75, edition });
  return found!.corrected.value;
}
function nipple({ inputs: i, expected: e, tolerance: t }: Row): void {
  const conductors = i.conductors.map((c: { n: number; awg: Size }) => ({ size: c.awg, insulation: "THHN", count: c.n }));
  const area = conductorArea({ id: "x", conductors, othersIn2: 0, edition })!;
  near(area.value, e.area_in2, t.area_in2!);
  expect(leastRaceway({ raceway: i.raceway, areaIn2: area.value, count: 5, nipple: true, edition })).toBe(e.trade_size);
}
function egc({ inputs: i, expected: e, tolerance: t }: Row): void {
  const found = groundingConductor({
    id: "x",
    overcurrent: i.ocpd_A,
    material: "copper",
    leastSize: i.base_size as Size,
    usedSize: i.new_size as Size,
    edition,
  });
  near(found.leastCmil, e.egc_cm, t.egc_cm!);
  expect(found.size).toBe(e.egc_size);
}
function fill({ inputs: i, expected: e, tolerance: t }: Row, raceway: string): void {
  const conductors = i.conductors.map((c: { n: number; awg: Size }) => ({ size: c.awg, insulation: "THWN-2", count: c.n }));
  const area = conductorArea({ id: "x", conductors, othersIn2: 0, edition })!;
  near(area.value, e.area_in2, t.area_in2!);
  expect(leastRaceway({ raceway, areaIn2: area.value, count: 5, edition })).toBe(e.trade_size);
}

describe("published worked examples", () => {
  for (const [id, prove] of Object.entries(proofs)) {
    const r = row(id);
    it(`${id} ${r.topic}: ${r.source.publisher}${r.status.startsWith("source in error") ? " (source in error, corrected as its note says)" : ""}`, () =>
      prove(r));
  }
});

describe("fill limits", () => {
  it("goes by the count of conductors: 53, 31, 40 % (Chapter 9 Table 1)", () => {
    const limit = (count: number) => fillLimit({ id: "x", raceway: "EMT", tradeSize: "1", count, edition })!.value;
    expect([limit(1), limit(2), limit(3)]).toEqual(["0.458", "0.268", "0.346"]);
  });
});
