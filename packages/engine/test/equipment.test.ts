import fc from "fast-check";
import { evaluate } from "mathjs";
import { describe, expect, it } from "vitest";
import { printCitation } from "../src/basis/citation.js";
import { EDITIONS, type Edition } from "../src/basis/edition.js";
import { airConditionerCircuit } from "../src/equipment/air-conditioner.js";
import { dryerCircuit } from "../src/equipment/dryer.js";
import { EQUIPMENT, EQUIPMENT_KINDS, RECEPTACLES } from "../src/equipment/equipment.js";
import type { EquipmentCircuit } from "../src/equipment/equipment-circuit.js";
import { evSupplyCircuit } from "../src/equipment/ev-supply.js";
import { generatorInletCircuit } from "../src/equipment/generator-inlet.js";
import { gfciNeed, type OutletPlace } from "../src/equipment/gfci-need.js";
import { heatCircuit } from "../src/equipment/heat.js";
import { motorCircuit } from "../src/equipment/motor.js";
import { standardRatingAtMost } from "../src/equipment/overcurrent-bound.js";
import { rangeCircuit } from "../src/equipment/range.js";
import { receptacleCircuit } from "../src/equipment/receptacle.js";
import { spaCircuit } from "../src/equipment/spa.js";
import { subpanelFeeder } from "../src/equipment/subpanel.js";
import { waterHeaterCircuit } from "../src/equipment/water-heater.js";
import { welderCircuit } from "../src/equipment/welder.js";
import { readCell } from "../src/tables/code-table.js";
import { type Horsepower, MOTOR_CURRENT } from "../src/tables/motor-current.js";
import { WELDER_DUTY } from "../src/tables/welder-duty.js";

const edition = "2023" as const;
const id = "x";
const least = (c: EquipmentCircuit) => c.overcurrent.least?.rating ?? null;
const most = (c: EquipmentCircuit) => c.overcurrent.most?.rating ?? null;
const amperes = (c: EquipmentCircuit) => Number(c.ampacity.value);

describe("EV supply equipment", () => {
  const ev = (a: number, more: { receptacle?: number; place?: OutletPlace; edition?: Edition } = {}) =>
    evSupplyCircuit({ id, amperes: a, place: "garage", edition, ...more });

  it("48 A asks 60 A (EV owners' forum, http://mynissanleaf.com/viewtopic.php?f=12&t=27385)", () => {
    expect(amperes(ev(48))).toBe(60);
    expect(least(ev(48))).toBe(60);
  });
  it("32 A asks 40 A (mPower Electric, https://mpowerelectricllc.com/ev-charger-installation-load-calculation-example/)", () => {
    expect(amperes(ev(32))).toBe(40);
    expect(least(ev(32))).toBe(40);
  });
  it("goes up a standard rating just over 32 A", () => {
    expect([least(ev(31)), least(ev(32)), least(ev(32.1))]).toEqual([40, 40, 45]);
  });
  it("has a disconnect over 60 A to 2023, and whenever hard-wired in 2026 (625.43; SolveForce, https://solveforce.com/nec-article-625-electric-vehicle-charging-and-supply-equipment-sections-625-1-to-625-60)", () => {
    expect([59, 60, 61].map((a) => ev(a).disconnect.required)).toEqual(["no", "no", "yes"]);
    expect([59, 60, 61].map((a) => ev(a, { edition: "2026" }).disconnect.required)).toEqual(["yes", "yes", "yes"]);
    expect(ev(32, { edition: "2026", receptacle: 50 }).disconnect.required).toBe("no");
  });
  it("a charging receptacle has GFCI from 2020 wherever it is (EC&M, https://ecmweb.com/national-electrical-code/quizzes/article/21155460/code-quiz-wiring-requirements-for-ev-charging-equipment)", () => {
    const asked = EDITIONS.map((e) => ev(32, { receptacle: 50, place: "indoors", edition: e }).gfci.required);
    // 2017: an amendment, TIA 17-2, Electrician Talk, https://www.electriciantalk.com/f5/evse-gfci-redux-2017-nec-tia-625-54-a-276856/
    expect(asked).toEqual(["ask", "yes", "yes", "yes"]);
  });
  it("hard-wired in a garage: 210.8(F) from 2023 to 50 A, in 2026 to 60 A", () => {
    expect(EDITIONS.map((e) => ev(40, { edition: e }).gfci.required)).toEqual(["no", "no", "yes", "yes"]);
    expect(EDITIONS.map((e) => ev(48, { edition: e }).gfci.required)).toEqual(["no", "no", "no", "yes"]);
  });
  it("says so when the outlet is too small for it: 48 A on a 50 A receptacle", () => {
    expect(ev(40, { receptacle: 50 }).notes.some((n) => n.says.includes("at the least"))).toBe(false);
    expect(ev(48, { receptacle: 50 }).notes[0]?.says).toContain("60 A at the least, but 50 A");
  });
  it("wants a listed receptacle in 2026 alone (EC&M, https://www.ecmweb.com/national-electrical-code/article/55330438/top-25-changes-to-the-2026-national-electrical-code)", () => {
    const listed = EDITIONS.map((e) => ev(32, { receptacle: 50, edition: e }).notes.some((n) => n.says.includes("listed for EV")));
    expect(listed).toEqual([false, false, false, true]);
  });
});

describe("hot tub", () => {
  const tub = { id, neutral: true, integralGfci: false, edition };
  it("48 A unmarked: 60 A (Mike Holt Forums, https://forums.mikeholt.com/threads/hot-tub-breaker-size.2569989)", () => {
    const c = spaCircuit({ ...tub, amperes: 48 });
    expect([amperes(c), least(c), most(c)]).toEqual([60, 60, 60]);
  });
  it("a marked 50 A device governs, and 49 A unmarked is over the 60 A of one heater group", () => {
    const marked = spaCircuit({ ...tub, amperes: 40, marked: 50 });
    expect([least(marked), most(marked)]).toEqual([50, 50]);
    expect(spaCircuit({ ...tub, amperes: 49 }).notes[0]?.says).toContain("70 A at the least");
  });
  it("240 V with a 46 A heater has GFCI; exempt only over 50 A field-assembled, or listed with its own (HowToWireAHouse.com, https://www.howtowireahouse.com/hot-tub-codes/)", () => {
    expect(spaCircuit({ ...tub, amperes: 46 }).gfci.required).toBe("yes");
    expect([46, 50, 51].map((h) => spaCircuit({ ...tub, amperes: h, fieldAssembledHeater: h }).gfci.required)).toEqual(["yes", "yes", "no"]);
    expect(spaCircuit({ ...tub, amperes: 46, integralGfci: true }).gfci.required).toBe("no");
  });
  it("has a disconnect 5 ft off and in sight, and an insulated 12 AWG ground, in every edition", () => {
    for (const e of EDITIONS) {
      const c = spaCircuit({ ...tub, amperes: 40, edition: e });
      expect(c.disconnect.required).toBe("yes");
      expect(c.disconnect.says).toContain("5 ft");
      expect(c.notes.some((n) => n.says.includes("12 AWG"))).toBe(true);
    }
  });
});

describe("range", () => {
  const one = (kW: number, e: Edition = edition) => rangeCircuit({ id, appliances: [{ is: "range", kW }], receptacle: 50, edition: e })!;
  const demand = (c: EquipmentCircuit) => Number(c.steps.find((s) => s.id === "x.demand")?.value);

  it("14 kW: 8.8 kW (Note 1 by hand: 8 kW and 5 % for each of 2 kW over 12)", () => expect(demand(one(14))).toBe(8800));
  it("11.5 kW: 8,000/240 = 33.33 A, on 40 A at the least (Mike Holt Forums, https://forums.mikeholt.com/threads/demand-factor-on-range.2577848)", () => {
    expect(amperes(one(11.5))).toBeCloseTo(33.33, 2);
    expect(least(one(11.5))).toBe(40);
  });
  it("8 kW cooktop and two 6 kW ovens on one circuit: 11.2 kW, 46.67 A (electrical exchange question, https://www.venkatsacademy.com/2016/09/earth-magnetic-field-and-bar-magnet.html)", () => {
    const c = rangeCircuit({
      id,
      appliances: [
        { is: "cooktop", kW: 8 },
        { is: "oven", kW: 6 },
        { is: "oven", kW: 6 },
      ],
      edition,
    })!;
    expect(demand(c)).toBe(11200);
    expect(amperes(c)).toBeCloseTo(46.67, 2);
    expect([least(c), most(c)]).toEqual([50, 50]);
  });
  it("a single 3 kW oven goes by its nameplate on a branch circuit (Note 4; 2.4 kW is for the service: Electrical Knowhow, http://www.electrical-knowhow.com/2013/02/receptacle-branch-circuit-design_24.html)", () => {
    expect(demand(rangeCircuit({ id, appliances: [{ is: "oven", kW: 3 }], edition })!)).toBe(3000);
    expect(demand(one(3))).toBe(2400);
  });
  it("40 A from 8.75 kW (NECA, http://www.neca-neis.org/code-question-of-the-day/code-question/cqd-3-16-2015)", () => {
    expect([8.74, 8.75, 8.76].map((kW) => least(one(kW)))).toEqual([30, 40, 40]);
  });
  it("5 % for each kW or major fraction over 12", () => {
    expect([12, 12.49, 12.5, 13].map((kW) => demand(one(kW)))).toEqual([8000, 8000, 8400, 8400]);
  });
  it("has no answer for a set that is no one circuit", () => {
    expect(
      rangeCircuit({
        id,
        appliances: [
          { is: "range", kW: 12 },
          { is: "oven", kW: 4 },
        ],
        edition,
      }),
    ).toBeNull();
    expect(
      rangeCircuit({
        id,
        appliances: [
          { is: "cooktop", kW: 4 },
          { is: "oven", kW: 4 },
          { is: "oven", kW: 4 },
          { is: "oven", kW: 4 },
        ],
        edition,
      }),
    ).toBeNull();
  });
  it("GFCI: listed by name from 2023 (Eaton, http://eaton.rs/us/en-us/markets/residential/nec-2023-updates/210-8d-appliances-gfci-requirements.html)", () => {
    expect(EDITIONS.map((e) => one(12, e).gfci.required)).toEqual(["no", "ask", "yes", "yes"]);
  });
  it("has four wires", () => expect(one(12).neutral && one(12).notes.some((n) => n.says.includes("four wires"))).toBe(true));
});

describe("dryer", () => {
  const dryer = (nameplate: number) => dryerCircuit({ id, nameplate, edition });
  it("5,000 VA at the least (Electrician Talk, https://electriciantalk.com, clothes dryer circuit)", () => {
    expect([4999, 5000, 5001].map((va) => dryer(va).steps[0]?.value)).toEqual(["5000", "5000", "5001"]);
    expect(amperes(dryer(4500))).toBeCloseTo(20.83, 2);
    expect([least(dryer(4500)), most(dryer(4500))]).toEqual([25, 30]);
  });
  it("7,200 VA fills the 30 A outlet, and one VA more does not fit", () => {
    expect(least(dryer(7200))).toBe(30);
    expect(dryer(7200).notes.some((n) => n.says.includes("at the least"))).toBe(false);
    expect(dryer(7201).notes[0]?.says).toContain("35 A at the least, but 30 A");
  });
});

describe("water heater", () => {
  const heater = (watts: number, gallons: number, marked?: number) =>
    waterHeaterCircuit({ id, watts, volts: 240, gallons, edition, ...(marked ? { marked } : {}) });
  it("4,500 W: 18.75 A, 23.44 A, at most 30 A (EC&M, https://www.ecmweb.com/national-electrical-code/qa/article/20899335/code-qa-electric-water-heaters)", () => {
    const c = heater(4500, 50);
    expect(c.steps[0]?.value).toBe("18.75");
    expect(amperes(c)).toBeCloseTo(23.44, 2);
    expect([least(c), most(c)]).toEqual([25, 30]);
    expect(c.overcurrent.most?.rounds).toBe("up");
  });
  it("is continuous to 120 gal, not above (422.13)", () => {
    expect([119, 120, 121].map((g) => amperes(heater(4800, g)))).toEqual([25, 25, 20]);
  });
  it("20 A at the most to 13.3 A, and as marked", () => {
    expect([3192, 3216].map((w) => most(heater(w, 50)))).toEqual([20, 25]); // 13.3 A, 13.4 A × 1.5 = 20.1 A
    expect(most(heater(4500, 50, 25))).toBe(25);
  });
});

describe("space heating", () => {
  it("4,000 W: 16.67 A, 20.84 A, so 25 A (Mike Holt Forums, http://forums.mikeholt.com/showthread.php?t=143547)", () => {
    const c = heatCircuit({ id, watts: 4000, volts: 240, edition });
    expect(amperes(c)).toBeCloseTo(20.83, 2);
    expect(least(c)).toBe(25);
  });
  it("20 A carries 3,840 W (heating maker's table, https://www.formsbank.com/template/123203/king-electric-breaker-size-chart.html)", () => {
    expect([2880, 3840, 3841, 5760, 7680].map((watts) => least(heatCircuit({ id, watts, volts: 240, edition })))).toEqual([15, 20, 25, 30, 40]);
  });
  it("is 424.4(B) from 2020, 424.3(B) in 2017 (FastTrax, https://fasttraxsystem.com/fixed-electric-space-heating-calculations/)", () => {
    expect(EDITIONS.map((e) => heatCircuit({ id, watts: 1000, volts: 120, edition: e }).ampacity.citations[0]?.section)).toEqual([
      "424.3(B)",
      "424.4(B)",
      "424.4(B)",
      "424.4(B)",
    ]);
  });
});

describe("arc welder", () => {
  it("40 A at 50 %: 28.4 A (EC&M, http://ecmweb.com/print/qampa/code-qa-45?page=2)", () => {
    expect(welderCircuit({ id, primary: 40, dutyPercent: 50, kind: "nonmotor", edition }).ampacity.value).toBe("28.4");
  });
  it("50 A at 20 %: 22.5 A, and 10 AWG NM (30 A) may have 50 A, at most 60 A (Mike Holt Forums, https://forums.mikeholt.com/threads/630-12-over-current-protection-for-welders.2559497)", () => {
    const c = welderCircuit({ id, primary: 50, dutyPercent: 20, kind: "nonmotor", conductorAmpacity: 30, edition });
    expect(amperes(c)).toBe(22.5);
    expect(most(c)).toBe(60);
    expect(c.smallConductorCap.applies).toBe(false);
  });
  it("six welders of a group (EC&M, https://www.ecmweb.com/nec/code-quiz-61)", () => {
    const rows = [
      [80, 100, "nonmotor", 80],
      [70, 90, "motorGenerator", 67.2],
      [60, 70, "nonmotor", 50.4],
      [50, 80, "nonmotor", 44.5],
      [40, 60, "motorGenerator", 32.4],
      [25, 40, "nonmotor", 15.75],
    ] as const;
    for (const [primary, dutyPercent, kind, expected] of rows)
      expect(amperes(welderCircuit({ id, primary, dutyPercent, kind, edition }))).toBeCloseTo(expected, 9);
  });
  it("takes the row above between two, and 20 % for less", () => {
    const at = (dutyPercent: number) => amperes(welderCircuit({ id, primary: 100, dutyPercent, kind: "nonmotor", edition }));
    expect([5, 20, 21, 30, 31].map(at)).toEqual([45, 45, 55, 55, 63]);
    expect(() => at(101)).toThrow(RangeError);
  });
  it("is held by the welder when its conductors are large: 200 % of 48 A is 96 A, so 100 A", () => {
    expect(most(welderCircuit({ id, primary: 48, dutyPercent: 100, kind: "nonmotor", conductorAmpacity: 200, edition }))).toBe(100);
  });
});

describe("motor", () => {
  const motor = (horsepower: Horsepower, motorVolts: "115" | "230", nameplate: number, serviceFactor?: number) =>
    motorCircuit({ id, horsepower, motorVolts, nameplate, edition, ...(serviceFactor ? { serviceFactor } : {}) });
  it("5 hp 230 V: Table 430.248 gives 28 A; 125 % is 35 A and 250 % is 70 A (arithmetic by hand)", () => {
    const c = motor("5", "230", 24);
    expect([Number(c.steps[0]?.value), amperes(c), most(c)]).toEqual([28, 35, 70]);
  });
  it("3/4 hp 115 V, 10.6 A, factor 1.0: 13.8 A, 17.25 A, 34.5 so 35 A, overload 12.19 A (Mike Holt Forums, https://forums.mikeholt.com/threads/wire-size.71776/post-1188564)", () => {
    const c = motor("3/4", "115", 10.6, 1);
    expect(c.steps[0]?.value).toBe("13.8");
    expect(amperes(c)).toBe(17.25);
    expect(most(c)).toBe(35);
    expect(Number(c.overload.value)).toBeCloseTo(12.19, 2);
    expect(c.poles).toBe(1);
  });
  it("1 hp 115 V: 16 A, 20 A, breaker to 40 A (Mike Holt Forums, https://forums.mikeholt.com/threads/motor-branch-circuit-minimum-ampacity.95099/)", () => {
    const c = motor("1", "115", 14);
    expect([Number(c.steps[0]?.value), amperes(c), most(c)]).toEqual([16, 20, 40]);
    expect(c.smallConductorCap.applies).toBe(false);
  });
  it("7 1/2 hp 230 V: 50 A wire, breaker to 100 A (Dave's Lamont St. Auto, https://daveslamontstauto.com/car-parts/how-do-you-size-a-circuit-breaker-for-a-motor.html)", () => {
    expect([amperes(motor("7-1/2", "230", 35)), most(motor("7-1/2", "230", 35))]).toEqual([50, 100]);
  });
  it("overload 125 % from a factor of 1.15 or a rise of 40 °C, else 115 % (430.32(A)(1), from memory)", () => {
    expect([1.14, 1.15, 1.16].map((f) => motor("1", "115", 10, f).overload.value)).toEqual(["11.5", "12.5", "12.5"]);
    expect([40, 41].map((riseC) => motorCircuit({ id, horsepower: "1", motorVolts: "115", nameplate: 10, riseC, edition }).overload.value)).toEqual([
      "12.5",
      "11.5",
    ]);
  });
  it("the table's 230 V column is half its 115 V column (how the table is built), within its own rounding", () => {
    for (const row of Object.keys(MOTOR_CURRENT.rows)) {
      const at = (column: "115" | "230") => Number(readCell(MOTOR_CURRENT, row, column, edition)?.value);
      expect(Math.abs(at("115") / 2 - at("230"))).toBeLessThanOrEqual(0.05);
    }
  });
});

describe("air conditioner", () => {
  const unit = (compressor: number, others = 0) => airConditionerCircuit({ id, rating: { compressor, others }, edition });
  it("24 A: 30 A, device 40 A, ceiling 50 A, each down (EC&M, https://www.ecmweb.com/national-electrical-code/qa/article/20899028/code-qa-air-conditioner-calculations)", () => {
    const c = unit(24);
    expect([amperes(c), most(c), c.ceiling?.rating]).toEqual([30, 40, 50]);
    expect(c.overcurrent.most?.rounds).toBe("down");
    expect(c.smallConductorCap.applies).toBe(false);
  });
  it("20 A + 2.5 A: 27.5 A, ceiling 47.5 so 45 A (EC&M, http://www.ecmweb.com/content/quizzes-code-1?page=17; http://www.aecinfo.com/1/resourcefile/00/32/35/cgds25.htm)", () => {
    expect([amperes(unit(20, 2.5)), unit(20, 2.5).ceiling?.rating]).toEqual([27.5, 45]);
  });
  it("a device under the ampacity gives way to the next standard one at or above it (rule as in http://www.aecinfo.com/1/resourcefile/00/32/35/cgds25.htm; figures by hand)", () => {
    // 5 × 1.25 + 30 = 36.25 A; 5 × 1.75 + 30 = 38.75 A, down to 35 A, so 40 A
    expect([least(unit(5, 30)), most(unit(5, 30))]).toEqual([40, 40]);
  });
  it("as marked: 28 A and 45 A, whatever the small-conductor cap of 10 AWG (Mike Holt Forums, https://forums.mikeholt.com/threads/how-to-determine-mca-and-mocp-for-packaged-ac-units.126158/)", () => {
    const c = airConditionerCircuit({ id, rating: { minimumCircuit: 28, largestDevice: 45 }, edition });
    expect([amperes(c), least(c), most(c)]).toEqual([28, 30, 45]);
    expect(c.ceiling).toBeNull();
  });
  it("rounds down at the step: 20 A × 1.75 = 35 A stays, 19.9 A gives 30 A", () => {
    expect([most(unit(20)), most(unit(19.9))]).toEqual([35, 30]);
    expect([
      standardRatingAtMost(34.99, edition),
      standardRatingAtMost(35, edition),
      standardRatingAtMost(9, edition),
      standardRatingAtMost(10, "2020"),
    ]).toEqual([30, 35, null, null]);
  });
});

describe("generator inlet", () => {
  const inlet = { id, inlet: 30, generatorWatts: 7200, loadVa: 9600, edition } as const;
  it("bonded neutral wants a switched one, floating a solid one (Mike Holt Forums, https://forums.mikeholt.com/threads/portable-generators-used-with-manual-transfer-equipment.6073)", () => {
    const met = (neutralBonded: boolean, transfer: Parameters<typeof generatorInletCircuit>[0]["transfer"]) =>
      generatorInletCircuit({ ...inlet, neutralBonded, transfer }).neutralSwitching;
    expect(met(true, "interlock")).toMatchObject({ needed: "switched", met: false });
    expect(met(true, "manual-switch-with-neutral")).toMatchObject({ needed: "switched", met: true });
    expect(met(false, "interlock")).toMatchObject({ needed: "solid", met: true });
    expect(met(false, "automatic-with-neutral")).toMatchObject({ needed: "solid", met: false });
  });
  it("always has transfer equipment and its device is at most the inlet's rating", () => {
    const c = generatorInletCircuit({ ...inlet, neutralBonded: false, transfer: "interlock" });
    expect(c.transfer.required).toBe("yes");
    expect([most(c), Number(c.steps[0]?.value)]).toEqual([30, 30]);
  });
  it("an automatic means carries what it transfers; a person may choose instead (702.4)", () => {
    const short = (loadVa: number, transfer: "automatic" | "interlock") =>
      generatorInletCircuit({ ...inlet, loadVa, transfer, neutralBonded: false }).capacity.short;
    expect([7199, 7200, 7201].map((va) => short(va, "automatic"))).toEqual([false, false, true]);
    expect(short(9600, "interlock")).toBe(false);
  });
});

describe("subpanel feeder", () => {
  const feeder = { id, continuous: 16, noncontinuous: 20, bus: 100, building: "other", edition } as const;
  it("16 A continuous and 20 A: 40 A; at most the bus", () => {
    expect([amperes(subpanelFeeder(feeder)), least(subpanelFeeder(feeder)), most(subpanelFeeder(feeder))]).toEqual([40, 40, 100]);
  });
  it("the building's disconnect, not its feeder, is 15, 30, 100 or 60 A (225.39; DIY Chatroom, https://diychatroom.com; ECN, https://www.electrical-contractor.net/forums/ubbthreads.php/ubb/printthread/Board/2/main/9448/type/thread.html)", () => {
    const rated = (["one-circuit", "two-circuits", "dwelling", "other"] as const).map(
      (building) => /rated (\d+) A/.exec(subpanelFeeder({ ...feeder, building }).disconnect.says)?.[1],
    );
    expect(rated).toEqual(["15", "30", "100", "60"]);
    expect(subpanelFeeder({ ...feeder, building: "same" }).disconnect.required).toBe("no");
  });
  it("a 60 A load does not go behind a 50 A bus", () =>
    expect(subpanelFeeder({ ...feeder, noncontinuous: 40, bus: 50 }).notes[0]?.says).toContain("60 A at the least, but 50 A"));
});

describe("GFCI of outlets at a dwelling", () => {
  it("a 50 A receptacle outdoors: not in 2017, from 2020 on; a 20 A one always (Leviton, https://captaincode2020.leviton.com/node/243; Mike Holt Forums, https://forums.mikeholt.com/threads/update-to-nec.2580883)", () => {
    const of = (rating: number, volts: 120 | 240) => EDITIONS.map((e) => gfciNeed({ place: "outdoors", receptacle: true, rating, volts, edition: e }).required);
    expect(of(50, 240)).toEqual(["no", "yes", "yes", "yes"]);
    expect(of(20, 120)).toEqual(["yes", "yes", "yes", "yes"]);
    expect(of(30, 120)).toEqual(["no", "yes", "yes", "yes"]);
  });
  it("hard-wired outdoors: 50 A in 2020 and 2023, 60 A in 2026 (Leviton, https://captaincode2020.leviton.com/node/243; https://www.nssltd.com/nec-information/2026-Code-Year-NEC-210.8)", () => {
    const of = (rating: number) => EDITIONS.map((e) => gfciNeed({ place: "outdoors", receptacle: false, rating, volts: 240, edition: e }).required);
    expect(of(50)).toEqual(["no", "yes", "yes", "yes"]);
    expect(of(60)).toEqual(["no", "no", "no", "yes"]);
    expect(of(70)).toEqual(["no", "no", "no", "no"]);
  });
});

describe("the record of equipment", () => {
  it("answers for every kind; receptacles as in ANSI/NEMA WD 6", () => {
    expect(Object.keys(EQUIPMENT)).toEqual([...EQUIPMENT_KINDS]);
    for (const needs of Object.values(EQUIPMENT)) {
      expect(needs.poles).toBe(needs.hots);
      expect(needs.volts).toBe(needs.poles === 2 ? 240 : 120);
      if (needs.receptacle === null) continue;
      const form = RECEPTACLES[needs.receptacle];
      expect(form.says.startsWith(needs.receptacle)).toBe(true);
      expect(needs.receptacleAmperes).toBe(form.amperes);
      // Wires of the outlet: hots, neutral, equipment ground.
      expect(form.wires).toBe(needs.hots + (needs.neutral ? 1 : 0) + 1);
      expect(form.poles).toBe(form.wires - 1);
      expect(needs.receptacle).toContain(String(form.amperes));
    }
  });
  it("several receptacles have no next size up, one has", () => {
    const of = (several: boolean) => receptacleCircuit({ id, receptacle: "5-20R", several, place: "garage", edition });
    expect([of(true).nextSizeUp.applies, of(false).nextSizeUp.applies]).toEqual([false, true]);
    expect([least(of(false)), of(false).gfci.required]).toEqual([20, "yes"]);
  });
});

/** Every circuit there is, over editions and loads. */
const all = (e: Edition, a: number, place: OutletPlace): EquipmentCircuit[] => [
  evSupplyCircuit({ id, amperes: a, place, edition: e }),
  evSupplyCircuit({ id, amperes: a, place, receptacle: 50, edition: e }),
  spaCircuit({ id, amperes: a, neutral: true, integralGfci: false, edition: e }),
  rangeCircuit({ id, appliances: [{ is: "range", kW: a / 4 }], place, edition: e })!,
  dryerCircuit({ id, nameplate: a * 200, place, edition: e }),
  waterHeaterCircuit({ id, watts: a * 200, volts: 240, gallons: a * 3, place, edition: e }),
  heatCircuit({ id, watts: a * 200, motorAmperes: 1.5, volts: 120, place, edition: e }),
  welderCircuit({ id, primary: a, dutyPercent: Math.min(a, 100), kind: "motorGenerator", place, edition: e }),
  motorCircuit({ id, horsepower: "1-1/2", motorVolts: "230", nameplate: a, place, edition: e }),
  airConditionerCircuit({ id, rating: { compressor: a, others: 1.2 }, edition: e }),
  airConditionerCircuit({ id, rating: { minimumCircuit: a, largestDevice: 60 }, edition: e }),
  generatorInletCircuit({ id, inlet: 50, generatorWatts: a * 100, loadVa: 9000, neutralBonded: a > 20, transfer: "automatic", edition: e }),
  subpanelFeeder({ id, continuous: a, noncontinuous: 7, bus: 125, building: "other", edition: e }),
  receptacleCircuit({ id, receptacle: "14-50R", several: false, place, edition: e }),
];
const plain = (expression: string) =>
  expression
    .replaceAll(",", "")
    .replaceAll(";", ",")
    .replaceAll("×", "*")
    .replaceAll("−", "-")
    .replace(/(\d) %/g, "$1 / 100")
    .replace(/\b(VA|A|V|W)\b/g, "");

describe("every equipment circuit", () => {
  const places = fc.constantFrom<OutletPlace>(
    "indoors",
    "outdoors",
    "garage",
    "accessory-building",
    "basement",
    "crawl-space",
    "kitchen",
    "laundry",
    "bathroom",
  );
  it("has lines a pencil can redo, cited in their own edition, with rounding to the side it says", () =>
    fc.assert(
      fc.property(fc.constantFrom(...EDITIONS), fc.integer({ min: 1, max: 400 }), places, (e, a, place) => {
        for (const c of all(e, a, place)) {
          for (const step of c.steps) {
            expect(step.value).toMatch(/^\d+(\.\d+)?$/);
            expect(step.citations.length).toBeGreaterThan(0);
            for (const citation of step.citations) expect(citation.edition).toBe(e);
            const redone = Number(evaluate(plain(step.expression)));
            if (step.rounding === null) expect(Math.abs(redone - Number(step.value))).toBeLessThanOrEqual(0.006 * Math.max(1, redone));
            else if (step.rounding.startsWith("to the nearest")) expect(Math.abs(redone - Number(step.value))).toBeLessThanOrEqual(0.5);
            else if (step.rounding.startsWith("up")) expect(Number(step.value)).toBeGreaterThanOrEqual(redone - 0.006 * Math.max(1, redone));
            else expect(Number(step.value) <= redone || Number(step.value) === 15).toBe(true);
          }
          for (const said of [c.disconnect, c.gfci, c.smallConductorCap, c.nextSizeUp, ...c.notes]) {
            expect(said.says.length).toBeGreaterThan(10);
            expect(printCitation(said.citation)).not.toBe("");
          }
          expect(new Set(c.steps.map((s) => s.id)).size).toBe(c.steps.length);
          const carries = c.overcurrent.least;
          if (carries && c.says !== "Motor, 1-1/2 hp") expect(carries.rating).toBeGreaterThanOrEqual(amperes(c));
        }
      }),
      { numRuns: 60 },
    ));
  it("marks what 2026 takes from memory", () => {
    for (const c of all("2026", 20, "garage").slice(0, 13)) expect(c.steps.some((s) => s.citations.some((x) => x.standing === "memory"))).toBe(true);
  });
});

describe("the welder table", () => {
  it("falls with the duty cycle, and a motor generator is never under a nonmotor one", () => {
    const rows = Object.values(WELDER_DUTY.rows)
      .map(([n, m]) => [Number(n), Number(m)] as const)
      .sort((x, y) => x[0] - y[0]);
    for (const [i, [n, m]] of rows.entries()) {
      expect(m).toBeGreaterThanOrEqual(n);
      if (i > 0) expect(m).toBeGreaterThan(rows[i - 1]![1]);
    }
  });
});
