import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import fc from "fast-check";
import { add, complex, lusolve, type Complex as MathComplex, matrix, multiply, subtract } from "mathjs";
import { describe, expect, it } from "vitest";
import { houseCircuit, houseNetwork } from "../src/readings/house-circuit.js";
import { netlist, netlistNode } from "../src/readings/netlist.js";
import { type Complex, type Element, magnitude, minus, type Network, nodesOf, ohms, polar, solve } from "../src/readings/network.js";
import { opened, SOUND } from "../src/readings/wiring.js";

const source = (id: string, from: string, to: string, volts: number, degrees = 0): Element => ({ kind: "source", id, from, to, volts, degrees });
const between = (id: string, from: string, to: string, re: number, im = 0): Element => ({ kind: "impedance", id, from, to, ohms: ohms(re, im) });
const network = (...elements: Element[]): Network => ({ hertz: 60, reference: "0", elements });

describe("hand-worked networks", () => {
  it("open neutral: 100 W and 200 W bulbs in series across 240 V stand at 160 V and 80 V (training slides, https://studylib.net/doc/5726865/open-neutral---code)", () => {
    const { volts } = solve(network(source("v", "a", "0", 240), between("r1", "a", "n", 144), between("r2", "n", "0", 72)));
    expect(magnitude(minus(volts.a!, volts.n!))).toBeCloseTo(160, 9);
    expect(magnitude(volts.n!)).toBeCloseTo(80, 9);
  });

  it("208Y/120 V with 10, 8 and 6 A: neutral 3.46 A (formula √(A²+B²+C²−AB−BC−CA); the copied example that prints 15.1 A has a sign error)", () => {
    const legs = [10, 8, 6].flatMap((amperes, i) => [source(`v${i}`, `l${i}`, "0", 120, -120 * i), between(`r${i}`, `l${i}`, "n", 120 / amperes)]);
    const { amperes } = solve(network(...legs, between("neutral", "n", "0", 1e-9)));
    expect(magnitude(amperes.neutral!)).toBeCloseTo(3.46, 2);
  });

  it("3 + j4 Ω across 120 V draws 24 A lagging 53.13° (3-4-5 triangle)", () => {
    const { amperes } = solve(network(source("v", "a", "0", 120), between("z", "a", "0", 3, 4)));
    expect(magnitude(amperes.z!)).toBeCloseTo(24, 9);
    expect((Math.atan2(amperes.z!.im, amperes.z!.re) * 180) / Math.PI).toBeCloseTo(-53.1301, 4);
  });

  it("a source's angle turns every answer with it (phasor rule)", () => {
    const { volts } = solve(network(source("v", "a", "0", 120, 30), between("r1", "a", "b", 1), between("r2", "b", "0", 2)));
    expect(magnitude(minus(volts.b!, polar(80, 30)))).toBeLessThan(1e-9);
  });

  it("refuses a zero impedance, a repeated name and a part tied to nothing", () => {
    expect(() => solve(network(source("v", "a", "0", 120), between("r", "a", "0", 0)))).toThrow(/r has no usable impedance/);
    expect(() => solve(network(source("v", "a", "0", 120), between("r", "a", "0", 1), between("r", "a", "0", 1)))).toThrow(/two elements are called r/);
    expect(() => solve(network(source("v", "a", "0", 120), between("r", "a", "0", 1), between("s", "b", "c", 1)))).toThrow(/nothing ties [bc]/);
  });

  it("currents balance at every node of random ladders, and twice the source is twice the volts", () => {
    const anyOhms = fc.record({ re: fc.double({ min: 0.001, max: 1e4, noNaN: true }), im: fc.double({ min: -1e3, max: 1e3, noNaN: true }) });
    fc.assert(
      fc.property(fc.array(fc.tuple(anyOhms, anyOhms), { minLength: 1, maxLength: 6 }), (rungs) => {
        const ladder = (volts: number) =>
          network(
            source("v", "n0", "0", volts),
            ...rungs.flatMap(([a, b], i): Element[] => [
              { kind: "impedance", id: `s${i}`, from: `n${i}`, to: `n${i + 1}`, ohms: a },
              { kind: "impedance", id: `p${i}`, from: `n${i + 1}`, to: "0", ohms: b },
            ]),
          );
        const built = ladder(120);
        const once = solve(built);
        const twice = solve(ladder(240));
        const scale = Math.max(...Object.values(once.amperes).map(magnitude));
        for (const node of nodesOf(built)) {
          const out = built.elements.filter((e) => e.from === node).map((e) => once.amperes[e.id]!);
          const inward = built.elements.filter((e) => e.to === node).map((e) => once.amperes[e.id]!);
          const sum = (parts: Complex[]) => parts.reduce((t, p) => ({ re: t.re + p.re, im: t.im + p.im }), { re: 0, im: 0 });
          expect(magnitude(minus(sum(out), sum(inward)))).toBeLessThan(1e-6 * scale);
          expect(magnitude(twice.volts[node]!)).toBeCloseTo(2 * magnitude(once.volts[node]!), 5);
        }
      }),
    );
  });
});

// ── Six and more networks against two other solvers ────────────────────────
const circuit = houseCircuit({ outlet: "four-wire", run: { hot1: 0.0491, hot2: 0.0491, neutral: 0.0491, ground: 0.124 }, feet: 100 });
const loads = [
  { across: "L1-N", ohms: 10 },
  { across: "L2-N", ohms: 30 },
] as const;
const sound = SOUND["four-wire"];
const subpanel: Network = network(
  source("leg1", "x1", "0", 122),
  source("leg2", "x2", "0", 122, 180),
  between("service1", "x1", "m1", 0.02, 0.015),
  between("service2", "x2", "m2", 0.02, 0.015),
  between("service-neutral", "0", "mn", 0.016, 0.004),
  between("bond", "mn", "mg", 0.0005),
  between("rod", "mg", "0", 25),
  between("feeder1", "m1", "s1", 0.03, 0.005),
  between("feeder2", "m2", "s2", 0.03, 0.005),
  between("feeder-neutral", "mn", "sn", 0.03, 0.005),
  between("feeder-ground", "mg", "sg", 0.08, 0.006),
  between("branch1", "s1", "o1", 0.05),
  between("branch-neutral", "sn", "on", 0.05),
  between("branch-ground", "sg", "og", 0.12),
  between("house", "m2", "mn", 15),
  between("motor", "s1", "s2", 12, 6),
  between("heater", "o1", "on", 9),
  between("leakage", "o1", "og", 40000),
);
const NETWORKS: readonly (readonly [string, Network])[] = [
  [
    "three-wire unbalanced",
    network(
      source("leg1", "x1", "0", 120),
      source("leg2", "x2", "0", 120, 180),
      between("hot1", "x1", "o1", 0.1, 0.02),
      between("hot2", "x2", "o2", 0.1, 0.02),
      between("neutral", "0", "on", 0.1, 0.02),
      between("load1", "o1", "on", 6),
      between("load2", "o2", "on", 24, 8),
    ),
  ],
  ["open neutral", houseNetwork(circuit, opened(sound, "neutral"), loads)],
  ["subpanel chain", subpanel],
  ["ground fault", houseNetwork(circuit, sound, [{ across: "L1-G", ohms: 0.01 }])],
  ["bootleg ground", houseNetwork(circuit, { ...opened(sound, "ground"), bondedAtOutlet: true }, loads)],
  ["high-resistance neutral", houseNetwork(circuit, { ...sound, addedOhms: { neutral: 2 } }, loads)],
  ["open service neutral", houseNetwork({ ...circuit, serviceNeutralOhms: null }, sound, loads)],
  ["floating ground under a meter", houseNetwork(circuit, opened(sound, "ground"), loads, { across: "L1-G", ohms: 10e6 })],
];

/** An independent road: the whole tableau (Kirchhoff at nodes, Ohm in branches) with currents of all branches unknown, solved by mathjs. */
function tableau(given: Network): Record<string, MathComplex> {
  const nodes = nodesOf(given);
  const branches = given.elements.filter((e) => e.kind !== "open");
  const size = nodes.length + branches.length;
  const a: MathComplex[][] = Array.from({ length: size }, () => Array.from({ length: size }, () => complex(0, 0)));
  const b: MathComplex[] = Array.from({ length: size }, () => complex(0, 0));
  branches.forEach((branch, k) => {
    const row = nodes.length + k;
    for (const [name, sign] of [
      [branch.from, 1],
      [branch.to, -1],
    ] as const) {
      const node = nodes.indexOf(name);
      if (node < 0) continue;
      a[node]![row] = complex(sign, 0);
      a[row]![node] = complex(sign, 0);
    }
    if (branch.kind === "impedance") a[row]![row] = complex(-branch.ohms.re, -branch.ohms.im);
    else b[row] = complex({ r: branch.volts, phi: (branch.degrees * Math.PI) / 180 });
  });
  const x = lusolve(matrix(a), b).valueOf() as unknown as MathComplex[][];
  // The answer must satisfy its own equations before it may judge ours.
  a.forEach((row, i) => {
    const left = row.reduce((sum, cell, j) => add(sum, multiply(cell, x[j]![0]!) as MathComplex) as MathComplex, complex(0, 0));
    const rest = subtract(left, b[i]!) as MathComplex;
    expect(Math.hypot(rest.re, rest.im)).toBeLessThan(1e-6);
  });
  return Object.fromEntries(nodes.map((node, i) => [node, x[i]![0]!]));
}

function expectAgreement(given: Network, other: (node: string) => Complex): void {
  const { volts } = solve(given);
  for (const node of nodesOf(given)) {
    const apart = magnitude(minus(volts[node]!, other(node)));
    expect(apart, `${node}: ${JSON.stringify(volts[node])} against ${JSON.stringify(other(node))}`).toBeLessThan(0.001 * magnitude(volts[node]!) + 1e-6);
  }
}

describe("agreement with a tableau solved by mathjs, within 0.1 %", () => {
  it.each(NETWORKS)("%s", (_name, given) => {
    const other = tableau(given);
    expectAgreement(given, (node) => other[node]!);
  });
});

const installed = spawnSync("ngspice", ["--version"], { encoding: "utf8" }).status === 0;
if (!installed) console.warn("ngspice is not installed: its cross-check is skipped; the mathjs one ran.");

describe.skipIf(!installed)("agreement with ngspice, within 0.1 %", () => {
  it.each(NETWORKS)("%s", (name, given) => {
    const folder = mkdtempSync(join(tmpdir(), "netlist-"));
    try {
      const file = join(folder, "circuit.cir");
      writeFileSync(file, netlist(given, name));
      const run = spawnSync("ngspice", ["-b", file], { encoding: "utf8", timeout: 20_000 });
      const shown = new Map([...run.stdout.matchAll(/^v\((\w+)\) = (\S+),(\S+)$/gm)].map((m) => [m[1]!, { re: Number(m[2]), im: Number(m[3]) }]));
      expect(shown.size, run.stdout + run.stderr).toBe(nodesOf(given).length);
      expectAgreement(given, (node) => shown.get(netlistNode(node))!);
    } finally {
      rmSync(folder, { recursive: true });
    }
  });
});

it("a netlist names every element once, with an open as a comment", () => {
  const text = netlist(houseNetwork(circuit, opened(sound, "neutral"), loads), "open neutral");
  expect(text).toMatch(/^\* open neutral\n/);
  expect(text).toMatch(/^\* open: neutral n_panel_neutral n_end_neutral$/m);
  expect(text).toMatch(/^V_leg_2 n_utility_leg2 n_utility_neutral DC 0 AC 120 180$/m);
  expect(text).toMatch(/^R_load_1 n_end_hot1 n_end_neutral 10$/m);
});
