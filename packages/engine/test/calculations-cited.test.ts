import { describe, expect, it } from "vitest";
import { EDITIONS, type Edition } from "../src/basis/edition.js";
import { calculate } from "../src/calculations/calculate.js";
import { CALCULATIONS, calculationOf } from "../src/calculations/registry.js";
import type { Worked } from "../src/worked.js";
import { CITED_LINES } from "./cited-lines.js";
import { again, chosen } from "./redo.js";

interface Line {
  readonly id: string;
  readonly sources: readonly string[];
  readonly inputs: readonly string[];
}

const list = (text: string, by: string) => text.split(by).flatMap((part) => (part.trim() === "" ? [] : [part.trim()]));

/** Calculations by name, each with its lines as written down. */
const EXPECTED: ReadonlyMap<string, readonly Line[]> = CITED_LINES.split("\n").reduce((all, row) => {
  const name = [...all.keys()].at(-1) ?? "";
  if (row.trim() === "") return all;
  if (!row.startsWith("  ")) return all.set(row, []);
  const [id = "", ...rest] = row.trim().split(/:(?: |$)/);
  const [said = "", inputs = ""] = rest.join(": ").split("< ");
  const whole = (part: string) => part.replace("~", name);
  return all.set(name, [...all.get(name)!, { id: whole(id), sources: list(said, "; "), inputs: list(inputs, ", ").map(whole) }]);
}, new Map<string, readonly Line[]>());

function workedIn(at: unknown): readonly Worked[] {
  if (Object(at) !== at) return [];
  const here = "expression" in (at as object) && "citations" in (at as object) ? [at as Worked] : [];
  return [...here, ...Object.values(at as object).flatMap(workedIn)];
}

/** Every worked line of a calculation's example, each id once. */
function linesOf(name: string, edition: Edition): readonly Worked[] {
  const calculation = calculationOf(name)!;
  const result = calculate(calculation, { ...calculation.example, ...("edition" in calculation.given.shape ? { edition } : {}) });
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  return [...new Map(workedIn(result.result).map((line) => [line.id, line])).values()];
}
const sourcesOf = ({ citations }: Worked) => citations.map(({ document, section }) => (document === "NFPA 70" ? section : document)).sort();

/** Lines of a number that no sum gives: two rods, for one alone was not measured. */
const IN_WORDS = ["ground-rods"];

/** Calculations whose result is no worked value: yes or no, sizes, bands, faults. */
const WITHOUT_LINES = [
  "building-grounding",
  "expected-readings",
  "gfci-need",
  "longest-ac-run",
  "longest-run",
  "neutral-switching",
  "outlet-diagnosis",
  "parallel-conductors",
  "pull-box-marking",
  "voltage-drop-conductor",
];

describe("what each line of each calculation rests on", () => {
  it("is written down for every calculation that gives a worked value", () => {
    expect([...EXPECTED.keys(), ...WITHOUT_LINES].sort()).toEqual(CALCULATIONS.map(({ name }) => name).sort());
    for (const name of WITHOUT_LINES) expect(linesOf(name, "2023"), name).toEqual([]);
  });
  describe.each([...EXPECTED])("%s", (name, expected) => {
    const lines = linesOf(name, "2023");
    it("has the lines written down", () => expect(lines.map(({ id }) => id).sort()).toEqual(expected.map(({ id }) => id).sort()));
    it.each(expected)("$id cites $sources from $inputs", ({ id, sources, inputs }) => {
      const line = lines.find((one) => one.id === id)!;
      expect(sourcesOf(line)).toEqual([...sources].sort());
      expect([...line.inputs].sort()).toEqual([...inputs].sort());
      expect(line.edition === null || line.edition === "2023").toBe(true);
      for (const cell of line.cells) expect(line.citations).toContainEqual(cell.citation);
    });
    const editions = calculationOf(name)!.editions;
    it.each(editions)("cites as many sources in %s, each of that edition", (edition) => {
      for (const line of linesOf(name, edition)) {
        const known = expected.find(({ id }) => id === line.id);
        if (known !== undefined && edition === "2026") expect(sourcesOf(line).length, line.id).toBe(known.sources.length);
        for (const citation of line.citations) expect([edition, null], `${line.id} ${citation.section}`).toContain(citation.edition);
      }
    });
    it("prints what a pencil can redo, and it comes to the value", () => {
      for (const edition of editions)
        for (const line of linesOf(name, edition).filter((one) => !chosen(one) && !IN_WORDS.includes(one.id))) {
          const value = again(line);
          expect(value, `${line.id}: ${line.expression}`).not.toBeNull();
          // Inputs are printed to a few digits.
          const near = Math.max(0.006, Math.abs(Number(line.value)) * 0.001);
          expect(Math.abs(value! - Number(line.value)), `${line.id}: ${line.expression} = ${line.value}`).toBeLessThanOrEqual(near);
        }
    });
  });
});

it("every edition has a calculation of each kind", () => expect(EDITIONS.every((edition) => linesOf("ampacity", edition).length === 3)).toBe(true));
