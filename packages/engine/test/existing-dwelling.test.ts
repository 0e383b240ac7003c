import { describe, expect, it } from "vitest";
import { EDITIONS, type Edition } from "../src/basis/edition.js";
import { type ExistingDwelling, existingDwellingLoad, existingFrom, existingOf } from "../src/service/existing-dwelling.js";

// 3 VA/ft² (220.41, before 220.12; 2 VA/ft² in 2026, one source), 1,500 VA a circuit (220.52), 8 kVA whole and 40 % above (220.83).
const house: ExistingDwelling = {
  floorAreaFt2: 1000,
  smallApplianceCircuits: 2,
  laundryCircuits: 1,
  appliancesVA: 0,
  heatingOrCoolingVA: 0,
  heatingOrCoolingAdded: false,
};
const load = (fields: Partial<ExistingDwelling>, edition: Edition = "2023") => existingDwellingLoad({ id: "e", dwelling: { ...house, ...fields }, edition });

describe("existing dwelling, 220.83", () => {
  it.each([
    ["3,000 + 3 × 1,500 below the first tier", {}, "7500"],
    ["8,000 is whole", { appliancesVA: 500 }, "8000"],
    ["40 % of what is over", { appliancesVA: 1500 }, "8400"],
    ["heating that stands is in the tiers: 8,000 + 0.4 × 4,500", { heatingOrCoolingVA: 5000 }, "9800"],
    ["heating that is added counts whole beside them: 7,500 + 5,000", { heatingOrCoolingVA: 5000, heatingOrCoolingAdded: true }, "12500"],
    ["nothing added is nothing more", { heatingOrCoolingAdded: true }, "7500"],
    ["four small-appliance circuits and no laundry", { smallApplianceCircuits: 4, laundryCircuits: 0 }, "8400"],
  ])("%s", (_, fields, total) => expect(load(fields).total.value).toBe(total));
  it("2 VA/ft² in 2026 leaves 6,500 VA", () => expect(EDITIONS.map((edition) => load({}, edition).total.value)).toEqual(["7500", "7500", "7500", "6500"]));
  it.each(EDITIONS)("cites its own part of the section in %s", (edition) => {
    const article = edition === "2026" ? "120" : "220";
    const sections = (added: boolean) => [
      ...new Set(load({ heatingOrCoolingVA: 5000, heatingOrCoolingAdded: added }, edition).steps.flatMap((s) => s.citations.map((c) => c.section))),
    ];
    expect(sections(false)).toEqual([`${article}.83(A)`]);
    expect(sections(true)).toEqual([`${article}.83(B)`]);
    const standings = load({}, edition).steps.map((s) => s.citations[0]!.standing);
    expect(standings).toEqual(edition === "2026" ? ["one-source", ...Array(6).fill("memory")] : Array(7).fill("published"));
  });
  it("shows each line from the lines before it, heating where it counts", () => {
    const shown = (fields: Partial<ExistingDwelling>) => load(fields).steps.map((s) => `${s.id} = ${s.expression} < ${s.inputs.join(" ")}`);
    expect(shown({ appliancesVA: 6000, heatingOrCoolingVA: 5000 })).toEqual([
      "e.lighting = 1,000 ft² × 3 VA/ft² < ",
      "e.small-appliance = 3 × 1,500 VA < ",
      "e.appliances = 6,000 VA < ",
      "e.climate = 5,000 VA < ",
      "e.sum = 3,000 + 4,500 + 6,000 + 5,000 < e.lighting e.small-appliance e.appliances e.climate",
      "e.tiers = 8,000 + 10,500 × 0.40 < e.sum",
      "e.total = 12,200 < e.tiers",
    ]);
    expect(shown({ heatingOrCoolingVA: 5000, heatingOrCoolingAdded: true }).slice(4)).toEqual([
      "e.sum = 3,000 + 4,500 + 0 < e.lighting e.small-appliance e.appliances",
      "e.tiers = 7,500 + 0 × 0.40 < e.sum",
      "e.total = 7,500 + 5,000 < e.tiers e.climate",
    ]);
    expect(shown({ heatingOrCoolingAdded: true }).at(-1)).toBe("e.total = 7,500 < e.tiers");
    expect(load({ heatingOrCoolingAdded: true }).steps[3]!.label).toContain("whole");
    expect(load({}).steps[3]!.label).not.toContain("whole");
  });
});

describe("the house of a job, as this method takes it", () => {
  const standing = { floor_area: 1200, small_appliance_circuits: 3, laundry_circuits: 2, heating_or_cooling_added: false };
  it("appliances by nameplate and number; the larger of heating and cooling", () => {
    const appliances = [
      { name: "range", load: 8000, count: 1 },
      { name: "heater", load: 1500, count: 3 },
    ];
    const of = (climate: object) => existingOf({ ...standing, appliances, ...climate });
    expect(of({})).toEqual({
      floorAreaFt2: 1200,
      smallApplianceCircuits: 3,
      laundryCircuits: 2,
      appliancesVA: 12500,
      heatingOrCoolingVA: 0,
      heatingOrCoolingAdded: false,
    });
    const [heating, cooling] = [
      { name: "heat", load: 6000 },
      { name: "cool", load: 4000 },
    ];
    expect(of({ heating }).heatingOrCoolingVA).toBe(6000);
    expect(of({ cooling }).heatingOrCoolingVA).toBe(4000);
    expect(of({ heating, cooling }).heatingOrCoolingVA).toBe(6000);
    expect(of({ heating: cooling, cooling: heating }).heatingOrCoolingVA).toBe(6000);
    expect(of({ heating_or_cooling_added: true }).heatingOrCoolingAdded).toBe(true);
  });
  const told = (fields: object) =>
    existingFrom({
      floor_area: 1200,
      small_appliance_circuits: 2,
      laundry_circuits: 1,
      appliances: [],
      cooking: [],
      dryers: [],
      ev: [],
      climate: [],
      ...fields,
    });
  it("every list by nameplate; a charger of unknown nameplate at 7,200 VA (220.57)", () => {
    const row = (load: number, count: number) => ({ name: "x", load, count, motor: false, neutral: true });
    const found = told({ appliances: [row(1000, 2)], cooking: [row(8000, 1)], dryers: [row(5000, 1)], ev: [{ name: "a", count: 2 }, row(9600, 1)] });
    expect(found.appliancesVA).toBe(2000 + 8000 + 5000 + 2 * 7200 + 9600);
    expect([found.floorAreaFt2, found.smallApplianceCircuits, found.laundryCircuits, found.heatingOrCoolingAdded]).toEqual([1200, 2, 1, false]);
  });
  const unit = (kind: string, load: number, more: object = {}) => ({ name: kind, kind, load, interlocked: false, controls: 1, ...more });
  it.each([
    ["nothing", [], 0],
    ["cooling alone", [unit("cooling", 4000)], 4000],
    ["heat alone", [unit("space-heating", 6000)], 6000],
    ["heat stored and not", [unit("space-heating", 6000), unit("thermal-storage", 3000)], 9000],
    ["the larger of the two", [unit("space-heating", 6000), unit("cooling", 7000)], 7000],
    ["a heat pump heats and cools", [unit("heat-pump", 4000), unit("cooling", 1000)], 5000],
    ["with its electric heat", [unit("heat-pump", 4000, { supplement: 5000 })], 9000],
    ["interlocked: the larger of pump and heat", [unit("heat-pump", 4000, { supplement: 5000, interlocked: true })], 5000],
    ["interlocked with less heat than pump", [unit("heat-pump", 4000, { supplement: 3000, interlocked: true })], 4000],
    ["a supplement of what is no heat pump is none", [unit("cooling", 4000, { supplement: 5000 })], 4000],
  ])("%s", (_, climate, va) => expect(told({ climate }).heatingOrCoolingVA).toBe(va));
});
