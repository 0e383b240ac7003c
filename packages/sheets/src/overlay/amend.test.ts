import { describe, expect, it } from "vitest";
import { basisFrom } from "./apply.js";
import { nameOneOf } from "./name-near.js";
import { overlaySchema } from "./schema.js";

const of = { reason: "because", citation: "Code" };
const basis = (more: object, edition: "2017" | "2023" = "2023") =>
  basisFrom(overlaySchema.parse({ format: "branchwork-overlay/1", id: "t", name: "T", checked_on: "2026-01-01", ...more }), edition);
const amended = (...amendments: object[]) => basis({ amendments: amendments.map((a) => ({ ...of, ...a })) });

describe("what an overlay makes of the basis", () => {
  it("drop limits and their force", () => {
    expect(amended({ target: "drop-force", replaces: "advisory", value: "required" }).drop).toEqual({
      limitPercent: 3,
      wholeWayPercent: 5,
      required: true,
      ...of,
    });
    const limit = amended({ target: "parameter", parameter: "drop-limit-percent", replaces: 3, value: 2 });
    expect(limit.drop).toMatchObject({ limitPercent: 2, wholeWayPercent: 5, required: false });
    expect(limit.issues).toEqual([]);
    expect(amended().drop).toBeNull();
  });
  it("changed verdicts, added checks and GFCI relief", () => {
    expect(amended({ target: "verdict", check: "torque", replaces: "needs-person", value: "fail" }).changedVerdicts).toEqual({
      torque: { from: "needs-person", to: "fail", ...of },
    });
    expect(amended({ target: "added-check", check: "bollard", title: "Bollard", look: "a post" }).addedChecks).toEqual([
      { id: "bollard", title: "Bollard", look: "a post", onlyTrench: false, ...of },
    ]);
    expect(amended({ target: "gfci-rv-outlet", replaces: "required", value: "relieved" }).gfciRelief).toEqual(of);
  });
  it("a warning ribbon becomes something to look at in the trench", () =>
    expect(basis({ warning_ribbon: { says: "12 in above", citation: "Code" } }).addedChecks).toMatchObject([
      { id: "local-warning-ribbon", look: "12 in above", onlyTrench: true, citation: "Code" },
    ]));
  it("wiring methods, risers and load methods", () => {
    const made = basis({
      wiring_methods: [{ places: ["indoors"], methods: ["EMT"], ...of }],
      riser: { methods: ["RMC"], ...of },
      load_calculation: { methods: ["measured-demand"], ...of },
    });
    expect(made.issues).toEqual([]);
    expect(made.methodLimits).toEqual([{ places: ["indoors"], methods: ["EMT"], ...of }]);
    expect(made.riserMethods).toEqual({ methods: ["RMC"], ...of });
    expect(made.loadMethods).toEqual({ methods: ["measured-demand"], ...of });
  });

  const fee = (more: object) => ({ id: "f", says: "F", citation: "Code", ...more });
  it.each([
    ["an unknown check", { amendments: [{ ...of, target: "check", check: "no-such", off: true }] }, "amendments.0.check"],
    ["an unknown check's verdict", { amendments: [{ ...of, target: "verdict", check: "no-such", replaces: "caution", value: "fail" }] }, "amendments.0.check"],
    ["a verdict for itself", { amendments: [{ ...of, target: "verdict", check: "torque", replaces: "fail", value: "fail" }] }, "amendments.0.value"],
    ["an added check of a known id", { amendments: [{ ...of, target: "added-check", check: "torque", title: "T", look: "L" }] }, "amendments.0.check"],
    [
      "a wrong base per cent",
      { amendments: [{ ...of, target: "parameter", parameter: "drop-limit-percent", replaces: 4, value: 2 }] },
      "amendments.0.replaces",
    ],
    ["a wrong base force", { amendments: [{ ...of, target: "drop-force", replaces: "required", value: "advisory" }] }, "amendments.0.replaces"],
    [
      "two amendments to one check",
      {
        amendments: [
          { ...of, target: "check", check: "torque", off: true },
          { ...of, target: "verdict", check: "torque", replaces: "needs-person", value: "fail" },
        ],
      },
      "amendments.1",
    ],
    ["an unknown wiring method", { wiring_methods: [{ places: ["indoors"], methods: ["EMT", "WOOD"], ...of }] }, "wiring_methods.0.methods.1"],
    ["a place limited twice", { wiring_methods: [0, 1].map(() => ({ places: ["indoors"], methods: ["EMT"], ...of })) }, "wiring_methods.1.places"],
    ["an unknown riser method", { riser: { methods: ["WOOD"], ...of } }, "riser.methods.0"],
    ["an unknown load method", { load_calculation: { methods: ["guess"], ...of } }, "load_calculation.methods.0"],
    ["a note on no checklist line", { notes: [{ says: "N", citation: "C", checklist: "none" }] }, "notes.0.checklist"],
    ["a note on no kind of outlet", { notes: [{ says: "N", citation: "C", device: "rv-90" }] }, "notes.0.device"],
    ["a surcharge of nothing", { fees: [fee({ kind: "surcharge", percent: 5, of: ["permit"] })] }, "fees.0.of.0"],
    ["two fees of one id", { fees: [fee({ kind: "flat", amount: 1 }), fee({ kind: "flat", amount: 1 })] }, "fees.1.id"],
    [
      "bands out of order",
      {
        fees: [
          fee({
            kind: "per-circuit",
            bands: [
              { to: 50, amount: 1 },
              { to: 30, amount: 2 },
            ],
          }),
        ],
      },
      "fees.0.bands.1.to",
    ],
    ["an open band before another", { fees: [fee({ kind: "per-circuit", bands: [{ amount: 1 }, { to: 30, amount: 2 }] })] }, "fees.0.bands.0"],
    ["a fee for no kind of outlet", { fees: [fee({ kind: "per-opening", amount: 1, serves: ["rv-90"] })] }, "fees.0.serves.0"],
    ["a day there is none of", { checked_on: "2026-02-30" }, "checked_on"],
  ])("%s is an issue", (_, more, path) => expect(basis(more).issues.map((i) => i.path)).toEqual([path]));

  it("relief from what 2017 does not ask is an issue", () =>
    expect(basis({ amendments: [{ ...of, target: "gfci-rv-outlet", replaces: "required", value: "relieved" }] }, "2017").issues.map((i) => i.path)).toEqual([
      "amendments.0.replaces",
    ]));
});

describe("a name that leads nowhere is told the one it is nearest to", () => {
  it.each([
    ["Load Calculation", ["Cover", "Load calculation"], 'did you mean "Load calculation"?'],
    ["One line diagram", ["Cover", "One-line diagram"], 'did you mean "One-line diagram"?'],
    ["torque-screws", ["gfci", "torque"], 'did you mean "torque"?'],
    ["rv50", ["rv-30", "rv-50"], 'did you mean "rv-50"?'],
    ["rigid conduit", ["EMT", "RMC"], "name one of EMT, RMC"],
    ["x", ["EMT", "RMC"], "name one of EMT, RMC"],
  ])("%s", (given, known, mend) => expect(nameOneOf(given, known)).toContain(mend));
  it("titles that hold commas are told apart", () =>
    expect(nameOneOf("x", ["Cautions, assumptions", "Cover"])).toBe("name one of Cautions, assumptions; Cover"));
});
