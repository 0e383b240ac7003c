import { describe, expect, it } from "vitest";
import { multiwireCircuit } from "../src/equipment/multiwire.js";

const edition = "2023" as const;
const id = "x";

describe("multiwire circuit", () => {
  const circuit = {
    id,
    legA: 15,
    legB: 10,
    oppositeLegs: true,
    breaker: "common-trip",
    lineToLineLoads: false,
    onlyOneEquipment: false,
    groupedOrOwnCable: true,
    neutralSplicedThrough: true,
    edition,
  } as const;
  it("the neutral carries the difference on opposite legs and the sum on one (arithmetic)", () => {
    expect(multiwireCircuit(circuit).neutral.value).toBe("5");
    expect(multiwireCircuit({ ...circuit, legA: 10, legB: 15 }).neutral.value).toBe("5");
    const wrong = multiwireCircuit({ ...circuit, oppositeLegs: false });
    expect(wrong.neutral.value).toBe("25");
    expect(wrong.faults).toHaveLength(1);
  });
  it("opens together; identified ties serve line-to-neutral loads (EC&M, http://ecmweb.com/qampa/code-qa-disconnect-requirements-ungrounded-conductors)", () => {
    expect(multiwireCircuit(circuit).faults).toHaveLength(0);
    expect(multiwireCircuit({ ...circuit, breaker: "identified-handle-tie" }).faults).toHaveLength(0);
    expect(multiwireCircuit({ ...circuit, breaker: "separate" }).faults.map((f) => f.citation.section)).toEqual(["210.4(B)"]);
  });
  it("trips together where 240 V loads are on it, unless it is one piece of equipment (Mike Holt Forums, https://forums.mikeholt.com/threads/6-disconnect-rule-violation.13853/page-16)", () => {
    const tied = { ...circuit, breaker: "identified-handle-tie", lineToLineLoads: true } as const;
    expect(multiwireCircuit(tied).faults.map((f) => f.citation.section)).toEqual(["210.4(C)"]);
    expect(multiwireCircuit({ ...tied, onlyOneEquipment: true }).faults).toHaveLength(0);
    expect(multiwireCircuit({ ...tied, breaker: "common-trip" }).faults).toHaveLength(0);
  });
  it("is grouped, and its neutral not run through a device (EC&M, http://ecmweb.com/nec/2014-national-electrical-code-changes?page=5)", () => {
    expect(multiwireCircuit({ ...circuit, groupedOrOwnCable: false }).faults.map((f) => f.citation.section)).toEqual(["210.4(D)"]);
    expect(multiwireCircuit({ ...circuit, neutralSplicedThrough: false }).faults.map((f) => f.citation.section)).toEqual(["300.13(B)"]);
  });
});
