import { describe, expect, it } from "vitest";
import { cite, citeOther, printCitation } from "../src/basis/citation.js";
import { article220, EDITIONS, everyEdition } from "../src/basis/edition.js";
import { decimal } from "../src/quantity.js";
import { dryerDemand } from "../src/service/dryer-demand.js";
import { managedLoad } from "../src/service/managed-load.js";
import { leastRvFeederAmperes, type RvSites, rvParkDemand } from "../src/service/rv-park-demand.js";
import { longestAcRuns } from "../src/sizing/ac-longest-run.js";
import { mixedArea } from "../src/sizing/cable-fill.js";
import { leastConductor, OVER, shortfalls } from "../src/sizing/conductor.js";
import { conductorWeight } from "../src/sizing/conductor-weight.js";
import { expansion, fittingsNeeded, yearlySpan } from "../src/sizing/expansion-fitting.js";
import { parallelAmpacity, parallelGrounding } from "../src/sizing/parallel.js";
import { groundUnder } from "../src/sizing/riser.js";
import { circularMils, supplyArea, supplyRow } from "../src/sizing/supply.js";
import { ELECTRODE_CONDUCTOR } from "../src/tables/electrode.js";
import type { Size } from "../src/tables/size.js";
import { worked } from "../src/worked.js";

// What the smaller calculations print and cite, row by row; figures by hand from the tables that tables.test.ts proves.
const id = "x";
const edition = "2023";
const sections = (line: { readonly citations: readonly { readonly section: string }[] } | null | undefined) => line?.citations.map((c) => c.section);

describe("citations", () => {
  const of = (standing: "published" | "one-source" | "memory" | "practice") => printCitation({ document: "NFPA 70", section: "250.122", edition, standing });
  it("say how well they are known", () => {
    expect(of("published")).toBe("NFPA 70-2023 250.122");
    expect(of("one-source")).toBe("NFPA 70-2023 250.122 (one source)");
    expect(of("memory")).toBe("NFPA 70-2023 250.122 (from memory: verify)");
    expect(of("practice")).toBe("NFPA 70-2023 250.122 (common practice, no source)");
    expect(printCitation(citeOther("A standard", "", "published"))).toBe("A standard");
  });
  it("are none where an edition has no such rule", () => {
    const rule = { sections: { ...everyEdition("1.1"), "2017": null }, standing: "memory" } as const;
    expect(cite(rule, "2017")).toBeNull();
    expect(cite(rule, "2026")).toEqual({ document: "NFPA 70", section: "1.1", edition: "2026", standing: "memory" });
  });
  it("Article 220 moves to 120 in 2026, and may have had another number in 2017", () => {
    expect(EDITIONS.map((year) => article220("61(A)")[year])).toEqual(["220.61(A)", "220.61(A)", "220.61(A)", "120.61(A)"]);
    expect(EDITIONS.map((year) => article220("5", "6")[year])).toEqual(["220.6", "220.5", "220.5", "120.5"]);
  });
});

describe("RV sites, 551.73(A): 12,000 VA a 50 A site, 3,600 VA a 30 A site, 600 VA a tent; one at 100 %, two at 90, three at 80", () => {
  const of = (sites: readonly RvSites[], otherVA = 0) => rvParkDemand({ id, sites, otherVA, edition });
  const lines = (sites: readonly RvSites[], otherVA = 0) => of(sites, otherVA).steps.map((step) => `${step.label}: ${step.expression} = ${step.value}`);

  it("a group of none is no group", () =>
    expect(
      lines(
        [
          { site: "50", count: 1 },
          { site: "30", count: 0 },
          { site: "tent", count: 2 },
        ],
        500,
      ),
    ).toEqual([
      "Sites, 50 A: 1 × 12,000 VA = 12000",
      "Tent sites: 2 × 600 VA = 1200",
      "Connected site load: 12,000 VA + 1,200 VA = 13200",
      "Demand of 3 sites: 13,200 VA × 0.8 = 10560",
      "Sites and other loads: 10,560 VA + 500 VA = 11060",
    ]));
  it("one site", () => expect(lines([{ site: "30", count: 1 }])[2]).toBe("Demand of 1 site: 3,600 VA × 1 = 3600"));
  it("none", () => {
    expect(lines([])).toEqual(["Connected site load: 0 VA = 0", "Demand of 0 sites: 0 VA × 0 = 0", "Sites and other loads: 0 VA + 0 VA = 0"]);
    expect(of([]).steps[1]?.cells).toEqual([]);
  });
  it("a load told otherwise reads no cell and cites the rule", () => {
    const told = of([{ site: "50", count: 2, eachVA: 9600 }]).steps;
    expect([told[0]?.value, told[0]?.cells.length, sections(told[0])]).toEqual(["19200", 0, ["551.73(A)"]]);
    expect([told[2]?.value, told[2]?.inputs, told[2]?.cells.length]).toEqual(["17280", ["x.connected"], 1]);
    const by = of([{ site: "50", count: 2 }]).steps[0];
    expect([by?.cells.length, by?.id]).toEqual([1, "x.sites-1"]);
  });
  it("the total cites the rule", () => expect(sections(of([]).total)).toEqual(["551.73(A)"]));
  it("a site feeder has 30 A at least, 551.73(D)", () => {
    const amperes = (va: string) => leastRvFeederAmperes({ id, va, volts: 240, edition });
    expect(["7199", "7200", "7224"].map((va) => amperes(va).value)).toEqual(["30", "30", "30.1"]);
    expect([amperes("7224").expression, amperes("7224").unit, sections(amperes("7224"))]).toEqual(["max(30 A; 7,224 VA / 240 V)", "A", ["551.73(D)"]]);
  });
});

describe("dryers, 220.54", () => {
  const lines = (...dryers: number[]) => dryerDemand({ id, dryers, edition }).steps.map((step) => `${step.label}: ${step.expression} = ${step.value}`);
  it("none", () => expect(lines()).toEqual(["Clothes dryers: 0 VA = 0"]));
  it("one", () =>
    expect(lines(4500)).toEqual([
      "Clothes dryers, each 5,000 VA or nameplate: max(5,000 VA; 4,500 VA) = 5000",
      "Demand factor of 1 dryer: 100 = 100",
      "Clothes dryers: 5,000 VA × 1 = 5000",
    ]));
  it("two, and twelve by the formula 47 - (12 - 11)", () => {
    expect(lines(5000, 6000)[1]).toBe("Demand factor of 2 dryers: 100 = 100");
    expect(lines(...Array.from({ length: 12 }, () => 5000)).slice(1)).toEqual([
      "Demand factor of 12 dryers: 47 - 1 × (12 - 11) = 46",
      "Clothes dryers: 60,000 VA × 0.46 = 27600",
    ]);
  });
  it("names where it comes from", () => expect(dryerDemand({ id, dryers: [5000], edition }).total.inputs).toEqual(["x.connected", "x.percent"]));
});

describe("load under a setpoint", () => {
  const of = (managedVA: readonly number[], manages: "any" | "ev-only" = "any", year: "2017" | "2020" | "2023" | "2026" = edition) =>
    managedLoad({ id, setpointAmperes: 30, volts: 240, managedVA, manages, edition: year });
  it("as printed: 30 A × 240 V under 9,600 VA", () =>
    expect(of([4800, 4800])?.steps.map((step) => `${step.id}: ${step.expression} = ${step.value}`)).toEqual([
      "x.connected: 4,800 VA + 4,800 VA = 9600",
      "x.setpoint: 30 A × 240 V = 7200",
      "x.total: min(9,600 VA; 7,200 VA) = 7200",
      "x.sizing: 7,200 VA × 1.25 = 9000",
    ]));
  it("its own sum where less; nothing is nothing", () => {
    expect(of([4800])?.total.value).toBe("4800");
    expect(of([])?.steps[0]?.expression).toBe("0 VA");
  });
  it("names its rule in each edition, or has none", () => {
    expect(sections(of([1])?.total)).toEqual(["220.70", "750.30"]);
    expect(sections(of([1], "any", "2026")?.total)).toEqual(["120.7", "130.30"]);
    expect([of([1], "any", "2017"), of([1], "any", "2020")]).toEqual([null, null]);
    expect(EDITIONS.map((year) => sections(of([1], "ev-only", year)?.sizing))).toEqual([
      ["625.42"],
      ["625.42"],
      ["625.42(A)", "750.30"],
      ["625.42(A)", "130.30"],
    ]);
  });
  it("each line names those before it", () => expect(of([1])?.steps.map(({ inputs }) => inputs)).toEqual([[], [], ["x.connected", "x.setpoint"], ["x.total"]]));
});

describe("weight of a conductor: 12 × (1.02 × metal + insulation), metal 26,240 cmil × π / 4 × 10⁻⁶ in² at 0.321 or 0.0975 lb/in³ (memory)", () => {
  const of = (insulation: string, material: "copper" | "aluminum" = "copper", size: Size = "6") => conductorWeight({ id, size, material, insulation, edition });
  it("thermoplastic and thermoset, by Python", () => {
    expect(of("THWN-2")?.value).toBe("0.0990277");
    expect(of("THWN-2", "aluminum")?.value).toBe("0.0426493");
    expect(of("XHHW-2")?.value).toBe("0.0970973");
  });
  it("as printed", () => {
    expect(of("XHHW-2")?.expression).toBe("12 × (1.02 × 0.02061 × 0.321 + 0.03839 × 0.035)");
    expect([of("THWN-2")?.unit, of("THWN-2")?.cells.map(({ column }) => column), of("THWN-2")?.edition]).toEqual(["lb/ft", ["cmil", "area"], edition]);
    expect(sections(of("THWN-2"))).toContain("lb/in³; strands lie 2 % longer than the conductor");
  });
  it("none for what the tables lack", () => expect([of("NM-B"), of("THWN-2", "copper", "18")]).toEqual([null, null]));
});

describe("longest run by an alternating-current method: 6 AWG copper in PVC, 0.49 + j0.051 Ω / 1000 ft, 50 A, 3 % of 240 V", () => {
  const of = (method: "ac-exact" | "ac-effective", powerFactor: number, current = 50, sizes: readonly Size[] = ["6"]) =>
    longestAcRuns({
      method,
      powerFactor,
      current,
      sizes,
      sourceVolts: 240,
      limitPercent: 3,
      like: { material: "copper", conduit: "PVC", celsius: 75 },
      edition,
    });
  it("by feet tried one after another in Python", () => {
    expect([of("ac-exact", 1), of("ac-exact", 0.85)].map((runs) => runs[0]?.feet)).toEqual(["146", "161"]);
    expect([of("ac-effective", 1), of("ac-effective", 0.85)].map((runs) => runs[0]?.feet)).toEqual(["146", "162"]);
  });
  it("a lead of no current has no longest; a size that Table 9 lacks none either", () => {
    expect([of("ac-exact", 1, 0), of("ac-effective", 1, 0)].map((runs) => runs[0]?.feet)).toEqual([null, null]);
    expect(of("ac-exact", 1, 50, ["18"])).toEqual([{ size: "18", feet: null }]);
  });
});

describe("expansion, as printed", () => {
  it("the year's span, with 30 °F for the sun and a frost in brackets", () => {
    const of = (lowF: number, highF: number, inSun: boolean) => yearlySpan({ id, lowF, highF, inSun });
    expect([of(10, 100, true).expression, of(10, 100, true).value, of(10, 100, true).citations.length]).toEqual(["100 - 10 + 30 (sun)", "120", 1]);
    expect([of(-10, 100, false).expression, of(-10, 100, false).value, of(-10, 100, false).citations]).toEqual(["100 - (-10)", "110", []]);
    expect(of(0, 100, false).expression).toBe("100 - 0");
  });
  it("PVC: by the coefficient at 98 °F, by the table at the next 5 °F up; its number in each edition", () => {
    const { change, byTable, fittingNeeded } = expansion({ id, material: "PVC", feet: 100, spanF: 98, edition });
    expect([change.value, change.expression, sections(change)]).toEqual(["3.97488", "100 ft × 12 × 98 × 0.0000338", ["352.44(A)"]]);
    expect([byTable?.value, byTable?.expression, byTable?.label]).toEqual(["4.06", "100 ft / 100 × 4.06 in", "Change in length by the table at 100 °F"]);
    expect(fittingNeeded).toBe(true);
    expect(EDITIONS.map((year) => sections(expansion({ id, material: "PVC", feet: 1, spanF: 100, edition: year }).change)![0])).toEqual([
      "352.44",
      "352.44",
      "352.44(A)",
      "352.44(A)",
    ]);
  });
  it("steel by 300.7(B), without a table; PVC beyond 200 °F without one", () => {
    const steel = expansion({ id, material: "steel", feet: 100, spanF: 100, edition });
    expect([steel.change.value, sections(steel.change), steel.byTable]).toEqual(["0.78", ["300.7(B)"], null]);
    expect(expansion({ id, material: "PVC", feet: 1, spanF: 200, edition }).byTable?.cells[0]?.row).toBe("200");
    expect(expansion({ id, material: "PVC", feet: 1, spanF: 201, edition }).byTable).toBeNull();
  });
  it("fittings: whole ones, none under a quarter inch", () => {
    const of = (feet: number, travelIn: number) =>
      fittingsNeeded({ id: "f", expansion: expansion({ id, material: "PVC", feet, spanF: 100, edition }), travelIn });
    expect([of(100, 4).value, of(100, 4).expression]).toEqual(["2", "4.056 in / 4 in, rounded up"]);
    expect([of(6, 4).value, of(6, 4).expression]).toEqual(["0", "0.243 in is under 0.25 in"]);
    expect([of(7, 4).value, of(7, 4).inputs, sections(of(7, 4))]).toEqual(["1", ["x"], ["352.44(A)"]]);
    expect(() => of(7, 0)).toThrow("a fitting's travel is more than nothing");
  });
});

describe("cables and conductors in one raceway", () => {
  const of = (cables: Parameters<typeof mixedArea>[0]["cables"], conductors: Parameters<typeof mixedArea>[0]["conductors"]) =>
    mixedArea({ id, cables, conductors, edition });
  const cable = (count: number) => ({ name: "c", majorIn: 0.5, count });
  const wire = (count: number, more: object = {}) => ({ size: "6" as const, insulation: "THWN-2", count, ...more });
  it("a circle on the cable's wider side, and Table 5: 2 × π / 4 × 0.25 + 3 × 0.0507 in²", () => {
    const found = of([cable(2)], [wire(3)]);
    expect([found?.area.value, found?.count]).toEqual(["0.5447990817", 5]);
    expect([found?.area.expression, sections(found?.area)?.[0]]).toEqual(["2 × 0.7854 × 0.5 in × 0.5 in + 3 × 0.0507 in²", "Chapter 9 Notes 5 and 9"]);
    expect(found?.area.cells.length).toBe(1);
  });
  it("what there is none of is not there", () => {
    const found = of([cable(0)], [wire(0, { insulation: "none such" })]);
    expect([found?.area.value, found?.area.expression, found?.count, found?.area.citations]).toEqual(["0", "0 in²", 0, []]);
    expect(sections(of([], [wire(1)])?.area)).not.toContain("Chapter 9 Notes 5 and 9");
  });
  it("none where a table lacks one of them", () => {
    expect(of([], [wire(1), wire(1, { insulation: "none such" })])).toBeNull();
    expect(of([], [wire(1), wire(1, { compact: true, size: "14" })])).toBeNull();
  });
});

describe("sets in parallel, as printed", () => {
  const each = worked({ id: "each", label: "each", value: "150", unit: "A", expression: "150 A" });
  const ampacity = (sets: number, size: Size = "1/0") => parallelAmpacity({ id, each, size, sets, edition });
  it("one set is no parallel, and may be of any size", () => {
    expect([ampacity(1, "6")?.label, ampacity(1, "6")?.value, ampacity(1, "6")?.citations]).toEqual(["1 set of 6 AWG, ampacity", "150", []]);
    expect(ampacity(2, "1")).toBeNull();
  });
  it("two sets", () => {
    const two = ampacity(2);
    expect([two?.label, two?.value, two?.expression, two?.inputs, sections(two)]).toEqual([
      "2 sets in parallel of 1/0 AWG, ampacity",
      "300",
      "150 A × 2",
      ["each"],
      ["310.10(G)"],
    ]);
    expect(sections(parallelAmpacity({ id, each, size: "1/0", sets: 2, edition: "2017" }))).toEqual(["310.10(H)"]);
  });
  it("no set, and half a set, are faults of whoever asks", () => {
    expect(() => ampacity(0)).toThrow("not a count of sets: 0");
    expect(() => ampacity(1.5)).toThrow("not a count of sets: 1.5");
  });
  it("a whole ground in each raceway, and it says so", () => {
    const ground = (raceways: number) => parallelGrounding({ id, overcurrent: 200, material: "copper", leastSize: "1/0", usedSize: "1/0", raceways, edition });
    expect([ground(2).size, ground(2).count, ground(2).worked.label.endsWith(", whole size in each of 2 raceways")]).toEqual(["6", 2, true]);
    expect(ground(1).worked.label).not.toContain("whole size");
    expect(sections(ground(2).worked)).toContain("250.122(F)");
    expect(sections(ground(2).worked)?.[0]).toBe("Table 250.122");
  });
});

describe("a conductor for a load", () => {
  const wire = { id, material: "copper", insulation: "THWN-2", ambientC: 30, currentCarrying: 2, terminalC: 75, wet: true, edition } as const;
  const demand = (amperes: number) => ({ load: amperes, terminalLoad: amperes, overcurrent: amperes });
  it("a size that the table lacks has no ampacity, and falls short of that alone", () =>
    expect(shortfalls({ ...wire, size: "18" }, demand(1))).toEqual({ short: ["no-ampacity"], ampacity: null }));
  it("the least with its ampacity: 6 AWG of 65 A for 60 A; none for what no size carries", () => {
    expect(leastConductor(wire, demand(60))).toMatchObject({ size: "6", ampacity: { allowed: { value: "65" } } });
    expect(leastConductor(wire, demand(5000))).toBeNull();
  });
  it("a device is over the next standard rating, and never where the ampacity is past the last of them, 6,000 A (240.6(A))", () => {
    const over = (ampacity: number, device: number) => OVER["next-size-up"](decimal(ampacity), device, edition);
    expect([over(55, 60), over(55, 70), over(6001, 100)]).toEqual([false, true, false]);
    expect([OVER.ampacity(decimal(50), 50, edition), OVER.ampacity(decimal(49), 50, edition)]).toEqual([false, true]);
  });
});

describe("a riser out of the ground", () => {
  const run = (...places: string[]) =>
    ({ segments: places.map((place, i) => ({ segment: { name: String(i), place } })) }) as unknown as Parameters<typeof groundUnder>[0];
  const under = (i: number, ...places: string[]) => groundUnder(run(...places), i).map(({ name }) => name);
  it.each<readonly [string, readonly string[], readonly string[]]>([
    ["after the trench", under(1, "buried", "outdoors"), ["0"]],
    ["before it", under(0, "outdoors", "buried"), ["1"]],
    ["between two", under(1, "buried", "outdoors", "buried"), ["0", "2"]],
    ["beside a wall alone", under(1, "indoors", "outdoors"), []],
    ["not beside it", under(0, "outdoors", "outdoors", "buried"), []],
    ["indoors", under(1, "buried", "indoors"), []],
    ["no such stretch", under(5, "buried"), []],
  ])("%s", (_name, found, expected) => expect(found).toEqual(expected));
});

describe("area of a supply", () => {
  const of = (size: Size, sets: number) => supplyArea({ size, sets, material: "copper" }, edition);
  it("one set and two: 211,600 cmil each (Table 8)", () => {
    expect([of("4/0", 1).total.toFixed(), of("4/0", 1).shown]).toEqual(["211600", "211,600 cmil"]);
    expect([of("4/0", 2).total.toFixed(), of("4/0", 2).shown]).toEqual(["423200", "211,600 cmil × 2"]);
  });
  it("a size without circular mils is a fault of whoever asks", () => expect(() => circularMils("no such" as Size, edition)).toThrow("no circular mils for"));
  it("the row whose top it does not pass, Table 250.66: copper to 2 AWG, to 1/0, to 3/0, to 350, over 1,100 kcmil", () => {
    const row = (cmil: number, material: "copper" | "aluminum" = "copper") =>
      supplyRow(ELECTRODE_CONDUCTOR, { size: "4/0", sets: 1, material }, decimal(cmil), edition);
    const rows = Object.keys(ELECTRODE_CONDUCTOR.rows).filter((name) => name.startsWith("copper"));
    expect([66360, 66361, 105600, 105601].map((cmil) => rows.indexOf(row(cmil)))).toEqual([0, 1, 1, 2]);
    expect(rows.indexOf(row(1100000))).toBe(rows.length - 2);
    expect(rows.indexOf(row(1100001))).toBe(rows.length - 1);
    expect(row(66360, "aluminum")).toMatch(/^aluminum/);
    expect(() => row(1, "gold" as "copper")).toThrow("has no row for gold");
  });
});
