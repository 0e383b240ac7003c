import { describe, expect, it } from "vitest";
import type { Edition } from "../src/basis/edition.js";
import type { Job } from "../src/job/schema.js";
import { serviceConductor } from "../src/service/service-conductor.js";
import { dcResistance } from "../src/sizing/resistance.js";

const AL = { size: "4/0", material: "aluminum", sets: 1 } as const;
const found = (rating: number, more: object = {}, edition: Edition = "2023") =>
  serviceConductor({ service: { rating, conductors: AL, ...more } } as unknown as Job, edition)!;

describe("service conductors of a dwelling", () => {
  // 310.12(A): 83 % of a rating from 100 to 400 A. Table 310.16, aluminum at 75 °C: 4/0 AWG 180 A, 3/0 155 A.
  it.each([
    [99, null],
    [100, "83"],
    [200, "166"],
    [400, "332"],
    [401, null],
  ])("%d A: at least %s", (rating, amperes) => expect(found(rating).needed?.value ?? null).toBe(amperes));
  it("200 A: 4/0 aluminum is the least", () => {
    expect(found(200).leastSize).toBe("4/0");
    expect(found(401).leastSize).toBeNull();
  });
  it("one set is cited by its table alone, two also by the rule of parallel conductors, and counted twice", () => {
    const sections = (edition: Edition, sets: number) => found(200, { conductors: { ...AL, sets } }, edition).ampacity!.citations.map(({ section }) => section);
    const [one, two] = [found(200).ampacity!, found(200, { conductors: { ...AL, sets: 2 } }).ampacity!];
    expect([one.value, one.label]).toEqual(["180", "Service conductors, 4/0 AWG aluminum, 75 °C"]);
    expect([two.value, two.label]).toEqual(["360", "Service conductors, 2 × 4/0 AWG aluminum, 75 °C"]);
    expect(sections("2023", 1)).toHaveLength(1);
    expect(sections("2023", 2)).toContain("310.10(G)");
    expect(sections("2017", 2)).toContain("310.10(H)");
  });
  it("its lines are those that there are: what is needed, what it carries, the electrode's", () => {
    const on = { electrode: { material: "copper", electrodes: ["rod"] } };
    expect(found(200).electrode).toBeNull();
    expect(found(200).steps.map(({ id }) => id)).toEqual(["service.conductor.needed", "service.conductor.ampacity"]);
    expect(found(401, on).steps.map(({ id }) => id)).toEqual(["service.conductor.ampacity", "service.electrode-conductor"]);
    // 250.66(A): to rods no more than 6 AWG copper.
    expect(found(200, on).electrode?.value).toBe("6");
  });
});

describe("resistance by Table 8, coated and solid aside", () => {
  // Table 8, 6 AWG: copper 0.491, aluminum 0.808 Ω to 1000 ft at 75 °C.
  const of = (more: object) => dcResistance({ id: "r", label: "Resistance", size: "6", material: "copper", feet: 100, celsius: 75, edition: "2023", ...more })!;
  it("copper, aluminum, two in parallel", () => {
    expect([of({}).value, of({}).expression]).toEqual(["0.0491", "0.491 Ω / 1000 ft × 100 ft"]);
    expect(of({ material: "aluminum" }).value).toBe("0.0808");
    expect([of({ parallel: 2 }).value, of({ parallel: 2 }).expression]).toEqual(["0.02455", "0.491 Ω / 1000 ft × 100 ft / 2"]);
    expect(of({ parallel: 1 }).expression).toBe("0.491 Ω / 1000 ft × 100 ft");
  });
  it("names the rule of temperature where it is used", () => {
    const [table, note] = [of({}), of({ celsius: 60 })].map(({ citations }) => citations.length);
    expect(note).toBe(table! + 1);
  });
});
