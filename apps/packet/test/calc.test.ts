import { spawnSync } from "node:child_process";
import { fileURLToPath } from "node:url";
import { CALCULATIONS } from "@branchwork/engine/calculations";
import { describe, expect, it } from "vitest";

const main = fileURLToPath(new URL("../dist/main.js", import.meta.url));

function calc(args: readonly string[], input = "") {
  const { status, stdout, stderr } = spawnSync(process.execPath, [main, "calc", ...args], { input, encoding: "utf8" });
  return { status, stdout, stderr, lines: stdout.split("\n").filter((line) => line !== "") };
}
const drop = { current: 40, volts: 240, segments: [{ size: "6", material: "copper", feet: 120 }], method: "K", edition: "2023" };

describe("calc", () => {
  it("--list names every calculation, one a line", () => {
    const { status, lines } = calc(["--list"]);
    expect(lines.map((line) => line.split(" ")[0])).toEqual(CALCULATIONS.map(({ name }) => name));
    expect(status).toBe(0);
  });
  it("--schema gives a strict JSON Schema with units, and --example what it takes", () => {
    const schema = JSON.parse(calc(["voltage-drop", "--schema"]).stdout);
    expect(schema).toMatchObject({
      title: "Voltage drop",
      type: "object",
      additionalProperties: false,
      properties: { current: { description: "load current, A" } },
    });
    const example = calc(["voltage-drop", "--example"]).stdout;
    expect(calc(["voltage-drop"], example).status).toBe(0);
  });
  it("one object over several lines: 2 × K × I × L / cmil with K 12.9 and 26,240 cmil of 6 AWG, NFPA 70 Chapter 9 Table 8", () => {
    const { status, lines } = calc(["voltage-drop"], JSON.stringify(drop, null, 2));
    const { result } = JSON.parse(lines[0]!);
    expect(Number(result.drop.value)).toBeCloseTo((2 * 12.9 * 40 * 120) / 26240, 8);
    expect(lines).toHaveLength(1);
    expect(status).toBe(0);
  });
  it("JSON Lines: one result a line with its line's number, empty lines passed over", () => {
    const input = `${JSON.stringify({ ...drop, id: "a" })}\n\n${JSON.stringify({ ...drop, id: "b" })}\r\n`;
    const { status, lines } = calc(["voltage-drop"], input);
    expect(lines.map((line) => JSON.parse(line)).map(({ line, result }) => [line, result.percent.id])).toEqual([
      [1, "a"],
      [3, "b"],
    ]);
    expect(status).toBe(0);
  });
  it("a bad line is told by line, field, what and how to mend, the others are worked: exit 2", () => {
    const input = [drop, { ...drop, current: "40", segment: 3 }, drop].map((given) => JSON.stringify(given)).join("\n");
    const { status, lines, stderr } = calc(["voltage-drop"], `${input}\n{"current": 40,}`);
    expect(lines).toHaveLength(2);
    expect(stderr).toContain('line 2: current: "40" does not serve; give a number without quotation marks');
    expect(stderr).toContain("line 2: segment: is not a field here; leave it out");
    expect(stderr).toMatch(/^line 4: not JSON: /m);
    expect(status).toBe(2);
  });
  it("a broken object is told by its line", () => {
    const { status, stderr } = calc(["voltage-drop"], '{\n  "current": 40,\n  "volts": 240,\n}\n');
    expect(stderr).toMatch(/^line 4: not JSON/);
    expect(stderr.trim().split("\n")).toHaveLength(1);
    expect(status).toBe(2);
  });
  it("--edition stands in place of the object's, and for one that names none", () => {
    const { edition: _, ...none } = drop;
    expect(calc(["voltage-drop"], JSON.stringify(none))).toMatchObject({ status: 2, stderr: expect.stringContaining("line 1: edition: is missing") });
    for (const given of [none, drop])
      expect(JSON.parse(calc(["voltage-drop", "--edition", "2017"], JSON.stringify(given)).stdout).result.percent.edition).toBe("2017");
    // A calculation from mechanics alone has no edition, and takes the option in silence.
    expect(calc(["wedging-factor", "--edition", "2017"], '{"boreIn": 2, "conductorIn": 0.5, "count": 3}').status).toBe(0);
  });
  it("says why a result is null", () => {
    const given = { size: "10", wiresPerTerminal: 1, opposite: false, edition: "2023" };
    expect(JSON.parse(calc(["wire-bending-space"], JSON.stringify(given)).stdout)).toMatchObject({
      result: null,
      none: expect.stringContaining("14 to 10 AWG"),
    });
  });
  it.each([
    [["voltage-dorp"], "{}", 'there is no calculation "voltage-dorp"; near it: '],
    [[], "{}", "say which calculation"],
    [["voltage-drop"], " \n", "standard input is empty"],
    [["voltage-drop"], "[1]", "line 1: [1] does not serve; give a group of fields in { }"],
    [["voltage-drop", "--edition", "2018"], "{}", "2018"],
  ])("calc %j on %j: exit 2", (args, input, says) => {
    const { status, stderr, stdout } = calc(args, input);
    expect(stderr).toContain(says);
    expect(stdout).toBe("");
    expect(status).toBe(2);
  });
});
