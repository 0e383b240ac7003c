import { readdirSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { composePacket, flattenOverlay, readOverlay, renderHtml } from "@branchwork/sheets";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { treeMutation, yamlMutation } from "../../../packages/engine/test/hostile-mutation.js";
import { designText, InputError } from "../src/load-design.js";

// A hundred in every run; BRANCHWORK_CASES asks for more.
const CASES = Number(process.env.BRANCHWORK_CASES ?? 100);
const LIMIT_MS = 60_000 + CASES * 400;
const root = fileURLToPath(new URL("../../../fixtures/", import.meta.url));
const job = { file: "job.yaml", text: readFileSync(`${root}jobs/rv-50-carport.yaml`, "utf8") };
const named = Object.fromEntries(readdirSync(`${root}overlays`).map((name) => [name.replace(".yaml", ""), readFileSync(`${root}overlays/${name}`, "utf8")]));
const flat = Object.keys(named).flatMap((name) => {
  const result = flattenOverlay(name, named);
  if (!result.ok) throw new Error(`${name} is not an overlay`);
  const { changes: _changes, extends: _extends, ...rest } = result.overlay;
  return [JSON.parse(JSON.stringify(rest)) as object];
});
const FONTS = { family: "Any", faces: [{ weight: 400, base64: "AAAA" }] };

/** Reads an overlay, designs and lays out with it. */
function survives(text: string): "read" | "refused" {
  try {
    const { design, overlay, targets } = designText({ job, overlay: { file: "overlay.yaml", text } });
    const html = renderHtml({ packet: composePacket({ design, overlay, date: "2026-11-25", targets }), fonts: FONTS });
    expect(html).not.toMatch(/\bNaN\b|\bInfinity\b|\bundefined\b|\[object /);
    return "read";
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    expect(error.issues.length).toBeGreaterThan(0);
    for (const { line, column, what, mend } of error.issues) expect(Number(line) >= 1 && Number(column) >= 1 && what !== "" && mend !== "").toBe(true);
    expect(error.message.length).toBeLessThan(100_000);
    return "refused";
  }
}

describe(`any overlay, ${CASES} cases each way`, () => {
  it(
    "a text spoilt is read or refused with its line, never thrown on",
    () =>
      fc.assert(
        fc.property(fc.constantFrom(...Object.values(named)).chain(yamlMutation), (text) => {
          const reading = readOverlay(text);
          if (!reading.ok) expect(reading.issues.every(({ line, column, mend }) => line >= 1 && column >= 1 && mend !== "")).toBe(true);
        }),
        { numRuns: CASES },
      ),
    LIMIT_MS,
  );
  it(
    "a tree spoilt is refused with its line, or read and laid out",
    () => {
      const outcomes = { read: 0, refused: 0 };
      fc.assert(
        fc.property(fc.constantFrom(...flat).chain(treeMutation), (tree) => {
          outcomes[survives(JSON.stringify(tree))] += 1;
        }),
        { numRuns: CASES },
      );
      expect(outcomes.read).toBeGreaterThan(CASES / 20);
      expect(outcomes.refused).toBeGreaterThan(CASES / 20);
    },
    LIMIT_MS,
  );
});

describe("what once broke it", () => {
  const names = readdirSync(`${root}hostile`).filter((name) => name.startsWith("overlay-"));
  it.each(names)("%s", (name) => expect(survives(readFileSync(`${root}hostile/${name}`, "utf8"))).toBe(name.startsWith("overlay-read-") ? "read" : "refused"));
  it("there are such rows", () => expect(names.length).toBeGreaterThan(0));
});
