import { readdirSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { describe, expect, it } from "vitest";
import * as engine from "../src/index.js";

const source = fileURLToPath(new URL("../src/", import.meta.url));
const calculations = readdirSync(`${source}calculations`).map((file) => readFileSync(`${source}calculations/${file}`, "utf8"));

/** Exported functions that no calculation wraps, each with what it is instead. */
const NOT_WRAPPED: Readonly<Record<string, readonly string[]>> = {
  "takes a job, a part of one or its design, not figures": [
    "boxSteps",
    "chooseSizes",
    "compareAllEditions",
    "compareEditions",
    "design",
    "faultTable",
    "feedersTo",
    "gfciDevice",
    "inspectionChecklist",
    "lawfulAlternatives",
    "ownStructure",
    "materialsCsv",
    "materialsList",
    "mayRunTogether",
    "orderOfWork",
    "outletUse",
    "outletCircuit",
    "panelsOf",
    "priceMaterials",
    "regrets",
    "sectionOf",
    "voltageProfile",
    "wiringShape",
  ],
  "reads or writes a file, or words for one": [
    "changesBetween",
    "editDistance",
    "entryProblems",
    "firstOf",
    "jobJsonSchema",
    "offsetOf",
    "parseStrictly",
    "printCitation",
    "printSize",
    "problemsOf",
    "readingWords",
    "readJob",
    "readPriceBook",
    "readReadings",
  ],
  "a step of one that is wrapped: overcurrent-rating, multiwire-circuit, neutral-conductor, conductor-resistance, expected-readings, outlet-diagnosis": [
    "acceptanceTest",
    "diagnoseOutlet",
    "neutralCounts",
    "simulateReadings",
    "standardRatingAtLeast",
    "standardRatingAtMost",
    "temperatureFactor",
  ],
  "the number itself": ["Decimal"],
};

const exported = Object.entries(engine).flatMap(([name, value]) => (typeof value === "function" ? [name] : []));
const wrapped = (name: string) => calculations.some((text) => new RegExp(`import \\{[^}]*\\b${name}\\b[^}]*\\} from "\\.\\./`).test(text));
const named = Object.values(NOT_WRAPPED).flat();

describe("every calculation the engine exports can be called by name", () => {
  it("is wrapped in calculations, or named here with what it is instead", () => {
    expect(exported.length).toBeGreaterThan(100);
    expect(exported.filter((name) => !wrapped(name) && !named.includes(name))).toEqual([]);
  });
  it("names nothing that is wrapped, nor what the engine does not export", () => {
    expect(named.filter((name) => wrapped(name) || !exported.includes(name))).toEqual([]);
    expect(new Set(named).size).toBe(named.length);
  });
});
