import { expect } from "vitest";
import { diagnose } from "../../src/readings/diagnose.js";
import { houseCircuit, type OutletLoad, simulateReadings } from "../../src/readings/house-circuit.js";
import { type Element, magnitude, minus, type Network, ohms, solve } from "../../src/readings/network.js";
import type { Readings } from "../../src/readings/pattern.js";
import { opened, SOUND, swapped, type Wiring } from "../../src/readings/wiring.js";
import { agrees, type Proofs } from "./row.js";

const source = (name: string, from: string, to: string, volts: number, degrees = 0): Element => ({ kind: "source", id: name, from, to, volts, degrees });
const resistor = (name: string, from: string, to: string, r: number): Element => ({ kind: "impedance", id: name, from, to, ohms: ohms(r) });
const network = (...elements: Element[]): Network => ({ hertz: 60, reference: "0", elements });
const three = (hn: number, hg: number, ng: number): Readings => ({ "L1-N": hn, "L1-G": hg, "N-G": ng });
const outlet = (each: number) => houseCircuit({ outlet: "one-hot", run: { hot1: each, hot2: each, neutral: each, ground: each }, feet: 100 });
const house = houseCircuit({ outlet: "four-wire", run: { hot1: 0.05, hot2: 0.05, neutral: 0.05, ground: 0.12 }, feet: 100 });
const first = (d: ReturnType<typeof diagnose>) => (d.verdict === "faults" ? d.ranked[0]!.id : d.verdict);
const sound = SOUND["one-hot"];
const BONDS = ["bootleg-ground", "open-ground-bootleg", "reverse-polarity-bootleg", "neutral-bonded-at-outlet"];
const loadedAt = (hn: number, hg: number, ng: number, amperes: number) =>
  diagnose({ circuit: outlet(0.2), idle: three(120, 120, 0), loaded: { amperes, across: "L1-N", readings: three(hn, hg, ng) } });

/** The lamps of a three-lamp tester: neutral to ground, hot to neutral, hot to ground; each about as a low-impedance meter sees it. */
function lamps(wiring: Wiring, loads: readonly OutletLoad[] = []): readonly [0 | 1, 0 | 1, 0 | 1] {
  const shown = simulateReadings(outlet(0.1), wiring, loads, "low-impedance");
  const lit = (volts: number) => (volts > 60 ? 1 : 0);
  return [lit(shown["N-G"]!), lit(shown["L1-N"]!), lit(shown["L1-G"]!)];
}
const LOAD = [{ across: "L1-N", ohms: 20 }] as const;

export const READING_PROOFS: Proofs = {
  "nt-001": ({ inputs: i, expected: e }) => {
    const power = (r: number) => magnitude(solve(network(source("v", "a", "0", i.V_ln), resistor("r", "a", "0", r))).amperes.r!) * i.V_ln;
    expect(power(e.R1_ohm)).toBeCloseTo(i.P1_W, 9);
    expect(power(e.R2_ohm)).toBeCloseTo(i.P2_W, 9);
    const { volts } = solve(network(source("v", "a", "0", 2 * i.V_ln), resistor("r1", "a", "n", e.R1_ohm), resistor("r2", "n", "0", e.R2_ohm)));
    expect(magnitude(minus(volts.a!, volts.n!))).toBeCloseTo(e.V1_V, 9);
    expect(magnitude(volts.n!)).toBeCloseTo(e.V2_V, 9);
  },
  "nt-003": ({ inputs: i, expected: e }) => {
    const { V1, V2 } = i;
    expect(V1 + V2).toBe(e.sum_V);
    const d = diagnose({ circuit: house, idle: { "L1-N": V1, "L2-N": V2, "L1-L2": e.sum_V, "L1-G": V1, "L2-G": V2, "N-G": 0 } });
    expect(first(d)).toBe("open-service-neutral");
    expect(e.fault).toBe("open_neutral");
    if (d.verdict === "faults") expect(d.ranked[0]!.wouldRead.idle["L1-L2"]).toBeCloseTo(e.sum_V, -1);
  },
  "nt-005": {
    differs: "its working adds BC and CA where they are taken off, and prints 15.1 A",
    prove: (row) => {
      const { IA, IB, IC } = row.inputs;
      const legs = [IA, IB, IC].flatMap((amperes, n) => [source(`v${n}`, `l${n}`, "0", 120, -120 * n), resistor(`r${n}`, `l${n}`, "n", 120 / amperes)]);
      agrees(row, "neutral_A", magnitude(solve(network(...legs, resistor("neutral", "n", "0", 1e-9))).amperes.neutral!));
    },
  },
  "rt-001": ({ inputs: i, expected: e }) => {
    // 10 A through 0.15 Ω of neutral is the 1.5 V read; the supply stands 1.9 V above what is left.
    const circuit = outlet(0.15);
    const d = diagnose({ circuit, idle: three(121.9, 121.9, 0), loaded: { amperes: 10, across: "L1-N", readings: three(i.HN, i.HG, i.NG) } });
    expect([d.verdict, e.verdict]).toEqual(["pass", "correct_wiring_under_load"]);
    expect(i.HN + i.NG === i.HG).toBe(e.HG_equals_sum);
    const shown = simulateReadings({ ...circuit, legVolts: 121.9 }, sound, [{ across: "L1-N", ohms: i.HN / 10 }]);
    expect(shown["L1-N"]! + shown["N-G"]!).toBeCloseTo(shown["L1-G"]!, 2);
    expect(shown["N-G"]).toBeCloseTo(i.NG, 1);
  },
  "rt-002": ({ inputs: i, expected: e }) => {
    const VERDICTS = { normal: loadedAt(115.6, 117.6, i.cases[0].NG, 10), suspect_NG_bond: loadedAt(115.6, 115.6, i.cases[1].NG, 10) };
    expect(Object.keys(VERDICTS)).toEqual(e.verdict);
    expect(first(VERDICTS.normal)).toBe("pass");
    expect(BONDS).toContain(first(VERDICTS.suspect_NG_bond));
  },
  "rt-004": ({ inputs: i, expected: e }) => {
    const [dead, risen, half] = i.cases_V;
    expect(e.verdict).toEqual(["false_ground_at_outlet", "problem_or_heavy_load", "miswire_or_open_ground"]);
    expect(BONDS).toContain(first(loadedAt(115.6, 115.6, dead, 10)));
    // 3.5 V is too much for 10 A in 0.2 Ω and right for 17.5 A.
    expect(loadedAt(115.6 - risen + 2, 117.6, risen, 10).verdict).toBe("faults");
    expect(loadedAt(112.3, 115.8, risen, 17.5).verdict).toBe("pass");
    expect(diagnose({ circuit: outlet(0.1), idle: three(120, 120, risen) }).verdict).toBe("faults");
    expect(first(diagnose({ circuit: outlet(0.1), idle: { "L1-N": 120, "N-G": half } }))).toBe("open-equipment-ground");
  },
  "rt-005": ({ inputs: i, expected: e }) => {
    expect(first(diagnose({ circuit: outlet(0.1), idle: three(i.HN, i.HG, i.NG) })).replaceAll("-", "_")).toBe(e.verdict);
  },
  "rt-007": ({ inputs: i, expected: e }) => {
    const [right, wrong] = i.cases.map(({ NG, HN, HG }: Record<string, number>) => [NG, HN, HG]);
    expect(e.verdict).toEqual(["normal", "hot_ground_reversed_or_open_neutral_with_load"]);
    expect(lamps(sound)).toEqual(right);
    expect(lamps(swapped(sound, "L1", "G"))).toEqual(wrong);
    expect(lamps(opened(sound, "neutral"), LOAD)).toEqual(wrong);
    expect(lamps(opened(sound, "neutral"))).not.toEqual(wrong);
  },
  "rt-008": ({ expected: e }) => {
    // An open neutral lights the lamps of a reversed hot and ground as soon as a load hangs on; without it the lamps differ.
    expect(lamps(opened(sound, "neutral"), LOAD)).toEqual(lamps(swapped(sound, "L1", "G")));
    const open = opened(sound, "neutral");
    const circuit = outlet(0.1);
    const d = diagnose({
      circuit,
      idle: simulateReadings(circuit, open),
      loaded: { amperes: 6, across: "L1-N", readings: three(0, 120, 120) },
    });
    expect(first(d).replaceAll("-", "_")).toBe(e.verdict);
    // Read with nothing stated on it a true reversal comes first, but the open neutral fits too, and unplugging is asked for before rewiring.
    const idle = diagnose({ circuit, idle: three(0, 120, 120) });
    const fits = idle.verdict === "faults" ? idle.ranked.filter((fault) => fault.fits) : [];
    expect(fits.map((fault) => fault.id)).toEqual(["hot-ground-swapped", "open-neutral"]);
    expect(fits[0]!.toDo).toMatch(/unplug every load/);
  },
  "rt-010": ({ inputs: i, expected: e }) => {
    const VERDICTS: Readonly<Record<string, string>> = { pass: "normal", "long-run-low-source": "low", "high-source": "high" };
    expect(i.cases_V.map((volts: number) => VERDICTS[first(diagnose({ circuit: outlet(0.1), idle: three(volts, volts, 0) }))])).toEqual(e.verdict);
  },
};
