import { readdirSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { describe, expect, it } from "vitest";
import { z } from "zod";
import type { Edition } from "../src/basis/edition.js";
import { calculate } from "../src/calculations/calculate.js";
import type { Calculation } from "../src/calculations/calculation.js";
import { CALCULATIONS, calculationOf } from "../src/calculations/registry.js";
import { boxVolume } from "../src/sizing/box-fill.js";
import type { Worked } from "../src/worked.js";

const folder = fileURLToPath(new URL("../src/calculations/", import.meta.url));
/** What stands in the folder and is not a calculation. */
const MACHINERY = ["calculate", "calculation", "fields", "given-problem", "index", "outlet-circuit", "registry", "stated-value"];

/** Lines that only add up figures as the caller gave them: there is no rule to cite and no value before them. */
const SUMS_OF_GIVEN = new Set(["managed-load.connected", ...["noncontinuous", "continuous", "motor"].map((duty) => `outbuilding-feeder-load.${duty}`)]);

/** An example as it is, and in another edition where the calculation goes by edition. */
const exampleIn = (calculation: Calculation, edition: Edition): Record<string, unknown> => ({
  ...calculation.example,
  ...("edition" in calculation.given.shape ? { edition } : {}),
});
const runs = CALCULATIONS.flatMap((calculation) => calculation.editions.map((edition) => ({ name: calculation.name, calculation, edition })));

function workedIn(at: unknown): readonly Worked[] {
  if (Object(at) !== at) return [];
  const here = "expression" in (at as object) && "citations" in (at as object) ? [at as Worked] : [];
  return [...here, ...Object.values(at as object).flatMap(workedIn)];
}

function frozen<T>(value: T): T {
  if (Object(value) === value) for (const part of Object.values(Object.freeze(value) as object)) frozen(part);
  return value;
}

/** The schema's leaves by path, with what each says of itself. */
function leaves(at: z.core.JSONSchema.BaseSchema, path: string, list?: string): readonly { readonly path: string; readonly says: string | undefined }[] {
  const under = [at, ...(at.anyOf ?? []), ...(at.oneOf ?? [])] as z.core.JSONSchema.BaseSchema[];
  const inner = under.flatMap((schema) => [
    ...Object.entries(schema.properties ?? {}).flatMap(([name, field]) => leaves(field as z.core.JSONSchema.BaseSchema, `${path}.${name}`)),
    ...(schema.items && !Array.isArray(schema.items) ? leaves(schema.items as z.core.JSONSchema.BaseSchema, path, schema.description) : []),
  ]);
  const says = under.map((schema) => schema.description).find((text) => text !== undefined) ?? list;
  return inner.length > 0 ? inner : "const" in at ? [] : [{ path, says }];
}

describe("the registry", () => {
  it("holds the files of the folder, in order", () => {
    const files = readdirSync(folder).map((file) => file.replace(/\.ts$/, ""));
    expect(CALCULATIONS.map(({ name }) => name)).toEqual(files.filter((file) => !MACHINERY.includes(file) && !file.endsWith("-fields")).sort());
    expect(CALCULATIONS.length).toBeGreaterThanOrEqual(50);
  });
  it("names each by its file, and each export by its name", () => {
    for (const { name } of CALCULATIONS) {
      const camel = name.replace(/-(.)/g, (_, letter: string) => letter.toUpperCase());
      expect(readFileSync(`${folder}${name}.ts`, "utf8")).toContain(`export const ${camel}Calculation = calculation({`);
    }
  });
  it("finds one by name, and none by another", () => {
    expect(calculationOf("box-volume")?.title).toBe("Least volume of a box");
    expect(calculationOf("toString")).toBeNull();
  });
});

describe.each(CALCULATIONS)("$name", (calculation) => {
  it("says the unit or meaning of every field", () => {
    const silent = leaves(z.toJSONSchema(calculation.given, { io: "input" }) as z.core.JSONSchema.BaseSchema, "").filter(({ says }) => says === undefined);
    expect(silent).toEqual([]);
  });
  it("is strict: a field it does not know is told by name", () => {
    const result = calculate(calculation, { ...exampleIn(calculation, "2023"), amps: 40 });
    expect(result).toMatchObject({ ok: false, problems: [{ field: "amps", what: "is not a field here" }] });
  });
  it("gives one message for each field that is left out", () => {
    const needed = (z.toJSONSchema(calculation.given, { io: "input" }).required ?? []) as string[];
    const result = calculate(calculation, {});
    if (needed.length === 0) expect(result.ok).toBe(true);
    else expect(result.ok ? [] : result.problems.map(({ field, what }) => `${field} ${what}`)).toEqual(needed.map((field) => `${field} is missing`));
  });
  it("takes nothing for a number that is text", () => {
    const numeric = Object.entries(calculation.example as Record<string, unknown>).filter(([, value]) => typeof value === "number");
    for (const [field, value] of numeric) {
      const result = calculate(calculation, { ...calculation.example, [field]: `${value}` });
      expect(result.ok ? [] : result.problems.map((problem) => problem.field)).toEqual([field]);
    }
  });
});

describe.each(runs)("$name in $edition", ({ calculation, edition }) => {
  const given = exampleIn(calculation, edition);
  it("runs its example: plain data, twice the same, the input left alone, every value with citations or inputs", () => {
    const result = calculate(calculation, frozen(structuredClone(given)));
    if (!result.ok) throw new Error(JSON.stringify(result.problems));
    expect(result.result).not.toBeNull();
    expect(JSON.parse(JSON.stringify(result.result))).toEqual(plainly(result.result));
    expect(calculate(calculation, given)).toEqual(result);
    for (const value of workedIn(result.result)) {
      if (!SUMS_OF_GIVEN.has(value.id)) expect(value.citations.length + value.inputs.length, `${value.id} rests on nothing`).toBeGreaterThan(0);
      expect(value.value, value.id).not.toMatch(/NaN|Infinity/);
    }
  });
});

/** A clone that fails on functions and keeps classes: a decimal would show as an object that JSON does not give back. */
const plainly = (value: unknown) => JSON.parse(JSON.stringify(structuredClone(value)));

describe("calculate", () => {
  const box = calculationOf("box-volume")!;
  const given = box.example as Record<string, unknown>;
  it("gives what the function itself gives", () => {
    const { contents } = given as unknown as Pick<Parameters<typeof boxVolume>[0], "contents">;
    expect(calculate(box, given)).toEqual({ ok: true, result: boxVolume({ id: "box-volume", contents, edition: "2023" }), none: null });
  });
  it("takes an id for the result", () => {
    expect(calculate(box, { ...given, id: "kitchen" })).toMatchObject({ result: { id: "kitchen" } });
  });
  it("an edition without the rule is a problem of the edition", () => {
    expect(calculate({ ...box, editions: ["2020"] }, given)).toMatchObject({ ok: false, problems: [{ field: "edition", what: "2023 has no such rule" }] });
  });
  it("says why there is no result", () => {
    // 314.16 lists 18 to 6 AWG, so a 4 AWG conductor has no allowance: NFPA 70 Table 314.16(B) as in src/tables/box-allowance.ts.
    const result = calculate(box, { ...given, contents: { ...(given.contents as object), conductors: [{ size: "4", count: 2 }] } });
    expect(result).toMatchObject({ ok: true, result: null, none: expect.stringContaining("314.28") });
  });
  it.each([
    [{ ...given, edition: "2011" }, "edition", '"2011" does not serve', 'give one of "2017", "2020", "2023", "2026"'],
    [{ ...given, contents: 3 }, "contents", "3 does not serve", "give a group of fields in { }"],
    [
      { ...given, contents: { ...(given.contents as object), conductors: [{ size: "12", count: -1 }] } },
      "contents.conductors[0].count",
      "-1 does not serve",
      "give 0 or more",
    ],
    [{ ...given, contents: { ...(given.contents as object), internalClamps: "yes" } }, "contents.internalClamps", '"yes" does not serve', "give true or false"],
    [[1, 2], "", "[1,2] does not serve", "give a group of fields in { }"],
    [null, "", "null does not serve", "give a group of fields in { }"],
  ])("%j: field, what and how to mend", (plain, field, what, mend) => {
    expect(calculate(box, plain)).toEqual({ ok: false, problems: [{ field, what, mend }] });
  });
  it("what the rule's table does not reach is a problem of the whole: Table 240.6(A) as entered ends at 600 A", () => {
    const rating = calculationOf("overcurrent-rating")!;
    expect(calculate(rating, { continuous: 480, noncontinuous: 0, edition: "2023" }).ok).toBe(true);
    expect(calculate(rating, { continuous: 481, noncontinuous: 0, edition: "2023" })).toMatchObject({ ok: false, problems: [{ field: "" }] });
  });
});
