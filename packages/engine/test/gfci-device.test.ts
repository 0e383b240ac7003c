import { describe, expect, it } from "vitest";
import { stringify } from "yaml";
import { unamended } from "../src/basis/basis.js";
import { EDITIONS } from "../src/basis/edition.js";
import { design } from "../src/design.js";
import { inspectionChecklist } from "../src/inspection/checklist.js";
import { readJob } from "../src/job/read.js";
import { USUAL_ALLOWANCES } from "../src/materials/allowances.js";
import { materialsList } from "../src/materials/materials-list.js";
import { plainJob } from "./plain-job.js";

const outlet = (fields: object = {}, gfci = false, spaces = [1]) => ({
  id: "c",
  name: "Outlet",
  serves: "receptacle-20",
  breaker: { rating: "20 A", poles: 1, spaces, gfci },
  route: [
    { name: "in", place: "indoors", method: "EMT", length: "10 ft" },
    { name: "trench", place: "buried", method: "PVC-40", length: "30 ft", cover: "12 in" },
  ],
  boxes: [{ name: "end", after: "trench", volume: "30 in3", device: true, wet_location: true }],
  ...fields,
});
const feeder = (id: string, gfci: boolean, panel: object) => ({
  id,
  name: `Feeder ${id}`,
  breaker: { rating: "60 A", poles: 2, spaces: [5, 7], gfci },
  building: "same",
  route: [{ name: "way", place: "indoors", method: "EMT", length: "20 ft" }],
  panel: { id: `${id}-panel`, name: `Panel ${id}`, bus: "100 A", spaces: 12, ...panel },
});
const read = (panel: object) => readJob(stringify(plainJob({ panel }), { aliasDuplicateObjects: false }));
function made(panel: object, edition: (typeof EDITIONS)[number] = "2023") {
  const found = read(panel);
  if (!found.ok) throw new Error(JSON.stringify(found.issues));
  return { ...found, design: design({ job: found.job, basis: unamended(edition), assumptions: found.assumptions }) };
}
const verdict = (panel: object, check: string, edition?: (typeof EDITIONS)[number]) =>
  made(panel, edition).design.findings.flatMap((f) => (f.check === check ? [f.verdict] : []));

describe("where the ground-fault protection sits", () => {
  it.each(EDITIONS)("a 20 A outlet outdoors with nothing fails, with a GFCI receptacle passes, in %s (210.8(A)(3), from memory in 2026)", (edition) => {
    expect(verdict({ circuits: [outlet()] }, "gfci", edition)).toEqual(["fail"]);
    expect(verdict({ circuits: [outlet({ gfci_device: "receptacle" })] }, "gfci", edition)).toEqual(["pass"]);
  });
  it("a job that says nothing is taken to have none outside the breaker, and the record says so; a GFCI breaker leaves nothing to take", () => {
    const says = (gfci: boolean) => made({ circuits: [outlet({}, gfci)] }).assumptions.filter(({ path }) => path.includes("gfci_device"));
    expect(says(false).map((a) => a.says)).toEqual(["Outlet: no ground-fault protection taken outside its breaker"]);
    expect(says(true)).toEqual([]);
  });
  it("12 in of cover serves behind a GFCI breaker alone: the buried wires lie ahead of a device at the outlet (Table 300.5(A) column 4: 12 in, else 18 in)", () => {
    expect(verdict({ circuits: [outlet({}, true)] }, "burial-cover")).toEqual(["pass"]);
    for (const gfci_device of ["receptacle", "dead-front", "disconnect"])
      expect(verdict({ circuits: [outlet({ gfci_device })] }, "burial-cover"), gfci_device).toEqual(["fail"]);
  });
  it("a feeder with a GFCI breaker protects what is behind it, at any depth of the tree (215.9, from memory)", () => {
    const behind = (first: boolean, second: boolean) => ({
      feeders: [feeder("f", first, { feeders: [feeder("g", second, { circuits: [outlet()] })] })],
    });
    expect(verdict(behind(false, false), "gfci")).toEqual(["fail"]);
    expect(verdict(behind(false, true), "gfci")).toEqual(["pass"]);
    expect(verdict(behind(true, false), "gfci")).toEqual(["pass"]);
    const beside = { circuits: [outlet()], feeders: [feeder("f", true, { circuits: [] })] };
    expect(verdict(beside, "gfci")).toEqual(["fail"]);
  });
  it("a receptacle cannot hold it where the equipment is wired in: told with the mend", () => {
    const heat = outlet({ serves: "heat", nameplate: { load: "1.5 kW", volts: 120 }, gfci_device: "receptacle" });
    const found = read({ circuits: [heat] });
    expect(found.ok ? [] : found.issues).toMatchObject([{ path: "service.panel.circuits[0].gfci_device", mend: "write dead-front or disconnect" }]);
    expect(read({ circuits: [{ ...heat, gfci_device: "dead-front" }] }).ok).toBe(true);
  });
});

describe("what follows from it on paper", () => {
  const keys = (fields: object, gfci = false) =>
    materialsList({ design: made({ circuits: [outlet(fields, gfci)] }).design, allowances: USUAL_ALLOWANCES }).rows.map(({ key }) => key);
  it.each([
    ["receptacle", "receptacle receptacle-20 GFCI"],
    ["dead-front", "dead-front GFCI"],
    ["disconnect", "GFCI disconnect 20 A"],
  ])("%s: bought as %s, with a plain breaker", (gfci_device, key) => {
    expect(keys({ gfci_device })).toContain(key);
    expect(keys({ gfci_device })).toContain("breaker 20 A 1-pole");
    expect(keys({})).not.toContain(key);
  });
  const tests = (fields: object, gfci: boolean) =>
    inspectionChecklist(made({ circuits: [outlet(fields, gfci)] }).design)
      .flatMap((part) => part.lines)
      .filter(({ id }) => id === "gfci-test" || id === "gfci-neutral")
      .map(({ id }) => id);
  it("is tried at the final visit; the breaker's white lead is looked for at a breaker alone", () => {
    expect(tests({}, true)).toEqual(["gfci-test", "gfci-neutral"]);
    expect(tests({ gfci_device: "receptacle" }, false)).toEqual(["gfci-test"]);
    expect(tests({}, false)).toEqual([]);
  });
});
