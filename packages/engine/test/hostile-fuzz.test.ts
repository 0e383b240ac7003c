import { readdirSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { parse, stringify } from "yaml";
import { design } from "../src/design.js";
import { readJob } from "../src/job/read.js";
import { ODD_VALUES, treeMutation, yamlMutation } from "./hostile-mutation.js";

// A few hundred in every run; BRANCHWORK_CASES asks for more.
const CASES = Number(process.env.BRANCHWORK_CASES ?? 200);
const LIMIT_MS = 60_000 + CASES * 200;
const folder = fileURLToPath(new URL("../../../fixtures/jobs/", import.meta.url));
const jobs = readdirSync(folder).map((name) => readFileSync(`${folder}${name}`, "utf8"));
const trees = jobs.map((text) => parse(text) as object);

/** Reads, and designs what is read; what may not come out of it. */
function survives(text: string): "read" | "refused" {
  const read = readJob(text);
  if (!read.ok) {
    expect(read.issues.length).toBeGreaterThan(0);
    for (const { line, column, what, mend } of read.issues) expect(line >= 1 && column >= 1 && what !== "" && mend !== "").toBe(true);
    expect(JSON.stringify(read.issues).length).toBeLessThan(100_000);
    return "refused";
  }
  const words = JSON.stringify(design({ job: read.job }));
  expect(words).not.toMatch(/\bNaN\b|\bInfinity\b|\bundefined\b|\[object |"value":"-0"/);
  return "read";
}

describe(`any text, ${CASES} cases each way`, () => {
  it(
    "a job's text cut, doubled, shifted and spoilt is read or refused, never thrown on",
    () =>
      fc.assert(
        fc.property(fc.constantFrom(...jobs).chain(yamlMutation), (text) => {
          survives(text);
        }),
        { numRuns: CASES },
      ),
    LIMIT_MS,
  );
  it(
    "a job's tree with values odd, moved, missing and swapped is read or refused, and what is read is designed",
    () => {
      const outcomes = { read: 0, refused: 0 };
      fc.assert(
        fc.property(fc.constantFrom(...trees).chain(treeMutation), (tree) => {
          outcomes[survives(stringify(tree, { aliasDuplicateObjects: false }))] += 1;
        }),
        { numRuns: CASES },
      );
      expect(outcomes.read).toBeGreaterThan(CASES / 20); // else the design is not tried
      expect(outcomes.refused).toBeGreaterThan(CASES / 20);
    },
    LIMIT_MS,
  );
});

describe("what once broke it", () => {
  const rows = fileURLToPath(new URL("../../../fixtures/hostile/", import.meta.url));
  const names = readdirSync(rows).filter((name) => name.startsWith("job-"));
  it.each(names)("%s", (name) => {
    const started = performance.now();
    expect(survives(readFileSync(`${rows}${name}`, "utf8"))).toBe(name.startsWith("job-read-") ? "read" : "refused");
    expect(performance.now() - started).toBeLessThan(10_000);
  });
  it("there are such rows, and odd values to try", () => {
    expect(names.length).toBeGreaterThan(0);
    expect(ODD_VALUES.length).toBeGreaterThan(40);
  });
});
