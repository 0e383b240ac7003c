import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { PassThrough } from "node:stream";
import { fileURLToPath } from "node:url";
import { afterAll, afterEach, describe, expect, it, vi } from "vitest";
import { type ReadingsOptions, readings } from "../src/readings.js";

const root = fileURLToPath(new URL("../../../", import.meta.url));
const job = (name: string) => join(root, "fixtures/jobs", `${name}.yaml`);
const scratch = mkdtempSync(join(tmpdir(), "branchwork-readings-"));
afterAll(() => rmSync(scratch, { recursive: true }));
afterEach(() => vi.restoreAllMocks());

async function run(name: string, options: ReadingsOptions, typed?: readonly string[]) {
  const out: string[] = [];
  const err: string[] = [];
  vi.spyOn(console, "log").mockImplementation((text: string) => void out.push(text));
  vi.spyOn(console, "error").mockImplementation((text: string) => void err.push(text));
  const input = Object.assign(new PassThrough(), { isTTY: typed !== undefined });
  const output = new PassThrough();
  const questions: string[] = [];
  // One answer a question, as a person would give them.
  const answers = [...(typed ?? [])];
  output.on("data", (chunk: Buffer) => {
    questions.push(chunk.toString());
    if (/: $/.test(chunk.toString())) input.write(`${answers.shift() ?? ""}\n`);
  });
  const status = await readings(job(name), options, { input, output });
  return { status, out: out.join("\n"), err: err.join("\n"), asked: questions.join("") };
}
const file = (text: string): string => {
  const path = join(scratch, "readings.yaml");
  writeFileSync(path, text);
  return path;
};
const FOUR = "L1-N=123,L2-N=123,L1-L2=246.7,L1-G=123,L2-G=123,N-G=0";

describe("verdicts and their exits", () => {
  it("every reading in band: exit 0, and what a meter cannot show is said (bootleg passes a meter: https://rvelectricity.substack.com/p/accidental-rpbg-wiring)", async () => {
    const { status, out } = await run("rv-50-carport", { idle: FOUR });
    expect(status).toBe(0);
    expect(out).toMatch(/PASS {2}/);
    expect(out).toMatch(/Prove the tester[\s\S]*Stop if any reading is out of band/);
    expect(out).toContain("not proved absent: neutral and equipment ground are joined at the outlet");
  });
  it("hot to ground not read: exit 1 and which reading decides (N-G of 0 V proves no ground: common practice, no source)", async () => {
    const { status, out } = await run("rv-50-carport", { idle: "L1-N=123,L2-N=123,L1-L2=246.7,N-G=0" });
    expect(status).toBe(1);
    expect(out).toMatch(/NOT A PASS YET[\s\S]*read next: L1-G/);
  });
  it("240 V on a 125 V outlet: exit 1, fault first, what to stop (https://www.rvtravel.com/rv-electricity-dryer-and-welder-outlet-dangers/)", async () => {
    const { status, out } = await run("rv-pedestal", { circuit: "trailer-30", idle: "L1-N=243,L1-G=121.5,N-G=121.5" });
    expect(status).toBe(1);
    expect(out).toMatch(/1\. a 125 V outlet is wired with two hots[\s\S]*STOP: Stop: plug nothing in/);
  });
  it("a loaded pair gives the loop's ohms: (123 − 121) V / 12.5 A = 0.16 Ω (Ohm's law)", async () => {
    const { out } = await run("rv-50-carport", {
      idle: FOUR,
      loaded: "L1-N=121,L2-N=124,L1-L2=245,L1-G=122,L2-G=123.5,N-G=1",
      amperes: "12.5",
      across: "L1-N",
    });
    expect(out).toContain("loop 0.16 Ω");
  });
  it("the feeder above is in the run: the loop computed at the pedestal is over twice 118 ft of its feeder's hot (tables apart)", async () => {
    const json = async (name: string, circuit: string, idle: string) =>
      JSON.parse((await run(name, { circuit, idle, loaded: "L1-N=120", amperes: "10", across: "L1-N", json: true })).out);
    const far = await json("rv-pedestal", "trailer-30", "L1-N=122,L1-G=122,N-G=0");
    // Own wiring is 2 ft; supply alone is 0.025 + 0.016 Ω assumed.
    expect(far.loop.computedOhms).toBeGreaterThan(0.1);
  });
  it("supply equipment has no neutral to read: three readings (240 V two hots)", async () => {
    const { status, out } = await run("ev-48-attic", { idle: "L1-L2=243,L1-G=121.5,L2-G=121.5" });
    expect(status).toBe(0);
    expect(out).toContain("PASS");
  });
});

describe("a file of readings", () => {
  const GOOD = `format: branchwork-readings/1
circuit: trailer-30
meter: low-impedance
idle: { L1-N: 122.4 V, L1-G: 122.5, N-G: 0.1 V }
`;
  it("is judged", async () => expect((await run("rv-pedestal", { file: file(GOOD) })).status).toBe(0));
  it.each([
    ["a reading that is none", GOOD.replace("L1-G", "L1-X"), /readings\.yaml:4:\d+: .*L1-X/],
    ["a reading the outlet lacks", GOOD.replace("N-G: 0.1 V", "L1-L2: 240"), /no reading L1-L2/],
    ["volts that are not", GOOD.replace("122.4 V", "about 120"), /readings\.yaml:4:15: .*volts/],
    ["more than a meter reads", GOOD.replace("122.4 V", "12240"), /outside 0 to 1000 V/],
    ["a field that is none", `${GOOD}weather: fine\n`, /readings\.yaml:5:1: .*weather/],
    ["a meter that is none", GOOD.replace("low-impedance", "wooden"), /readings\.yaml:3:\d+: .*meter/],
    ["no readings", "format: branchwork-readings/1\n", /idle/],
    ["not YAML", "format: [", /readings\.yaml:1:\d+/],
    ["another circuit", GOOD.replace("trailer-30", "nowhere"), /no circuit "nowhere"/],
    ["an empty file", "", /holds no readings/],
  ])("%s: exit 2", async (_what, text, message) => {
    const { status, err, out } = await run("rv-pedestal", { file: file(text) });
    expect(err).toMatch(message);
    expect(err).toContain("mend:");
    expect(out).toBe("");
    expect(status).toBe(2);
  });
});

describe("the command line and the terminal", () => {
  it.each([
    ["no circuit named where there are two", "rv-pedestal", { idle: "L1-N=120" }, /name one of trailer-50, trailer-30/],
    ["a list that is none", "rv-50-carport", { idle: "L1-N:120" }, /is not a reading/],
    ["loaded without its load", "rv-50-carport", { idle: FOUR, loaded: "L1-N=119" }, /--amperes and --across/],
    ["a load to ground", "rv-50-carport", { idle: FOUR, loaded: "L1-N=119", amperes: "10", across: "L1-G" }, /across/],
    ["no amperes", "rv-50-carport", { idle: FOUR, loaded: "L1-N=119", amperes: "0", across: "L1-N" }, /more than 0 A/],
    ["nothing, and no terminal", "rv-50-carport", {}, /--file readings\.yaml/],
  ] as const)("%s: exit 2", async (_what, name, options, message) => {
    const { status, err } = await run(name, options);
    expect(err).toMatch(message);
    expect(status).toBe(2);
  });
  it("asks each reading in order, cautions first", async () => {
    const { status, asked } = await run("rv-pedestal", { circuit: "trailer-30" }, ["122", "122", "0", ""]);
    expect(asked).toMatch(/Electricity kills[\s\S]*Hot to neutral, V: [\s\S]*Hot to ground, V: [\s\S]*Neutral to ground, V: /);
    expect(status).toBe(0);
  });
  it("the fixtures that these rows read are there", () => expect(readFileSync(job("rv-pedestal"), "utf8")).toContain("trailer-30"));
});
