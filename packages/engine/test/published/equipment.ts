import { expect } from "vitest";
import { airConditionerCircuit } from "../../src/equipment/air-conditioner.js";
import type { EquipmentCircuit } from "../../src/equipment/equipment-circuit.js";
import { evSupplyCircuit } from "../../src/equipment/ev-supply.js";
import { spaCircuit } from "../../src/equipment/spa.js";
import { subpanelFeeder } from "../../src/equipment/subpanel.js";
import { waterHeaterCircuit } from "../../src/equipment/water-heater.js";
import { welderCircuit } from "../../src/equipment/welder.js";
import { evLoad } from "../../src/service/ev-load.js";
import { ampacity } from "../../src/sizing/ampacity.js";
import { type ConductorProtection, leastConductor, ORDINARY, shortfalls } from "../../src/sizing/conductor.js";
import { standardRatingAtLeast } from "../../src/sizing/overcurrent.js";
import { readCell } from "../../src/tables/code-table.js";
import { WELDER_DUTY } from "../../src/tables/welder-duty.js";
import { redo } from "../redo.js";
import { agrees, edition, id, type Proofs, type Row } from "./row.js";

const least = (c: EquipmentCircuit) => c.overcurrent.least!.rating;
const most = (c: EquipmentCircuit) => c.overcurrent.most!.rating;
const OWN_ARTICLE: ConductorProtection = { smallConductorCap: false, limit: "own-article" };
const WELDER: ConductorProtection = { smallConductorCap: false, limit: "twice" };
const PLACE = { id, material: "copper", insulation: "THHN", ambientC: 30, currentCarrying: 2, terminalC: 75, edition } as const;
const NM = { ...PLACE, insulation: "NM-B" } as const;

/** Least copper for a circuit's ampacity behind a device. */
const size = (c: EquipmentCircuit, overcurrent: number, protection: ConductorProtection = ORDINARY, place: Parameters<typeof leastConductor>[0] = PLACE) =>
  leastConductor(place, { load: c.ampacity.value, terminalLoad: c.ampacity.value, overcurrent, protection })!.size;

function evSupply(row: Row): void {
  const c = evSupplyCircuit({ id, amperes: row.inputs.evse_A, place: "garage", edition });
  agrees(row, "min_circuit_A", c.ampacity.value);
  agrees(row, "breaker_A", least(c));
}
const unit = (compressor: number, others = 0) => airConditionerCircuit({ id, rating: { compressor, others }, edition });
const building = (continuous: number) => subpanelFeeder({ id, continuous, noncontinuous: 20, bus: 100, building: "other", edition });
const disconnectRating = (c: EquipmentCircuit) => Number(/rated (\d+) A/.exec(c.disconnect.says)?.[1]);

export const EQUIPMENT_PROOFS: Proofs = {
  "ev-001": (row) => {
    evSupply(row);
    // 6 AWG NM-B is 55 A: the next size up would let 60 A protect it, but it does not carry the 60 A asked.
    expect(Number(ampacity({ ...NM, size: "6" })!.allowed.value)).toBe(55);
    expect(size(evSupplyCircuit({ id, amperes: row.inputs.evse_A, place: "garage", edition }), 60, ORDINARY, NM)).toBe("4");
  },
  "ev-003": evSupply,
  "ev-004": (row) => agrees(row, "load_VA", evLoad({ id, nameplateVA: row.inputs.evse_VA, edition }).value),
  "ht-001": (row) => {
    const c = spaCircuit({ id, amperes: row.inputs.nameplate_A, neutral: true, integralGfci: false, edition });
    agrees(row, "min_A", c.ampacity.value);
    agrees(row, "breaker_A", least(c));
  },
  "ht-003": ({ inputs: i, expected: e }) => {
    const c = spaCircuit({ id, amperes: i.heater_A, fieldAssembledHeater: i.heater_A, neutral: true, integralGfci: false, edition });
    expect(c.gfci.required === "yes").toBe(e.gfci_required);
    expect(c.volts).toBe(i.voltage_V);
  },
  "wh-001": (row) => {
    const { inputs: i, expected: e } = row;
    const c = waterHeaterCircuit({ id, watts: i.W, volts: i.voltage_V, gallons: 120, edition });
    agrees(row, "load_A", c.steps[0]!.value);
    agrees(row, "conductor_A", c.ampacity.value);
    agrees(row, "ocpd_calc_A", redo(c.overcurrent.most!.worked.expression.replace(" W", "")));
    agrees(row, "ocpd_max_A", most(c));
    expect([size(c, least(c)), size(c, most(c))]).toEqual([e.size_awg, e.size_awg]);
  },
  "ac-001": (row) => {
    const c = unit(row.inputs.rla_A);
    agrees(row, "conductor_A", c.ampacity.value);
    agrees(row, "ocpd_175_A", most(c));
    agrees(row, "ocpd_225_A", c.ceiling!.rating);
    // 10 AWG carries the 30 A at 60 °C terminals already, and at 75 °C 12 AWG does not.
    for (const terminalC of [60, 75] as const) expect(size(c, most(c), OWN_ARTICLE, { ...PLACE, terminalC })).toBe(row.expected.size_awg);
  },
  "ac-003": (row) => {
    const { ceiling } = unit(row.inputs.rla_A, row.inputs.others_A);
    agrees(row, "calc_A", redo(ceiling!.worked.expression));
    agrees(row, "ocpd_A", ceiling!.rating);
  },
  "ac-004": (row) => {
    const { inputs: i } = row;
    const c = unit(i.load1_A, i.load2_A + i.load4_A);
    agrees(row, "mca_A", c.ampacity.value);
    agrees(row, "mop_calc_A", redo(c.ceiling!.worked.expression));
    agrees(row, "mop_A", c.ceiling!.rating);
  },
  "ac-006": ({ inputs: i, expected: e }) => {
    const c = airConditionerCircuit({ id, rating: { minimumCircuit: i.mca_A, largestDevice: i.mop_A }, edition });
    expect(most(c)).toBe(i.mop_A);
    const given = { ...PLACE, size: i.size_awg, terminalC: i.terminal_C };
    const short = (protection: ConductorProtection) =>
      shortfalls(given, { load: c.ampacity.value, terminalLoad: c.ampacity.value, overcurrent: most(c), protection }).short;
    expect(c.smallConductorCap.applies).toBe(false);
    expect(short(OWN_ARTICLE).length === 0).toBe(e.allowed);
    expect(short(ORDINARY)).toContain("small-conductor");
  },
  "wl-001": (row) => {
    const { inputs: i, expected: e } = row;
    const c = welderCircuit({ id, primary: i.primary_A, dutyPercent: i.duty_pct, kind: i.type, edition });
    agrees(row, "multiplier", readCell(WELDER_DUTY, String(i.duty_pct) as "50", i.type, edition)!.value);
    agrees(row, "ampacity_A", c.ampacity.value);
    expect(size(c, least(c), WELDER)).toBe(e.size_awg);
  },
  "wl-003": (row) => {
    const { inputs: i, expected: e } = row;
    const plain = { id, primary: i.primary_A, dutyPercent: i.duty_pct, kind: i.type, edition };
    const chosen = size(welderCircuit(plain), e.ocpd_source_choice_A, WELDER, NM);
    expect(chosen).toBe(e.size_awg);
    const c = welderCircuit({ ...plain, conductorAmpacity: Number(ampacity({ ...NM, size: chosen })!.allowed.value) });
    agrees(row, "ampacity_A", c.ampacity.value);
    agrees(row, "ocpd_max_A", most(c));
    expect(e.ocpd_source_choice_A).toBeLessThanOrEqual(most(c));
    expect(standardRatingAtLeast(e.ocpd_source_choice_A, edition)).toBe(e.ocpd_source_choice_A);
    expect(c.smallConductorCap.applies).toBe(false);
  },
  "db-001": (row) => agrees(row, "min_disconnect_A", disconnectRating(building(16))),
  "db-003": ({ inputs: i, expected: e }) => {
    const small = building(16);
    expect(disconnectRating(small)).toBe(i.disconnect_A);
    expect(least(small) >= i.disconnect_A).toBe(e.feeder_must_be_60);
  },
};
