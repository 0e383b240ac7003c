import type { Edition } from "../basis/edition.js";
import { terminalWireRange } from "../checks/terminal-wire-range.js";
import type { DesignedCircuit, DesignedFeeder } from "../designed.js";
import { gfciDevice } from "../equipment/gfci-device.js";
import { ownStructure } from "../equipment/own-structure.js";
import { print } from "../quantity.js";
import { compareSizes, printSize } from "../tables/size.js";
import { equipmentLines } from "./equipment.js";
import { type AnyRun, byRule, type LineWords, section } from "./line.js";

const at = (edition: Edition) => (number: string) => section(number, edition);
const spacesOf = (run: AnyRun): string => `${run.run.breaker.spaces.length > 1 ? "spaces" : "space"} ${run.run.breaker.spaces.join(" and ")}`;

/** What every new run has at its panel. */
export function finalLines(run: AnyRun, edition: Edition): readonly LineWords[] {
  const cite = at(edition);
  const { name, breaker } = run.run;
  const lines: LineWords[] = [
    {
      id: "breaker",
      section: cite("240.4, 210.20, 110.9"),
      look: `${name}: breaker`,
      seen: `${run.rating} A, ${breaker.poles}-pole, ${spacesOf(run)}; ${interrupts(run)}`,
      how: "read handle and label",
    },
    {
      id: "breaker-listed",
      section: cite("110.3(B)"),
      look: `${name}: breaker named on the panel's label`,
      seen: breaker.listed_for_panel === true ? "type listed for this panel" : "to be shown",
      how: "both labels",
    },
    {
      id: "torque",
      section: cite("110.14(D)"),
      look: `${name}: terminals tightened to the marked figures`,
      seen: "torque record: breaker, bars, splices, outlet, each with its figure",
      how: "record signed, tool named; a terminal tried with the tool",
    },
  ];
  lines.push(...terminalLines(run, edition));
  if (breaker.poles === 2)
    lines.push({
      id: "opposite-legs",
      section: cite("210.4(B), 240.15(B)"),
      look: `${name}: poles open together and stand on opposite legs`,
      seen: "240 V between the poles, one handle",
      how: "meter between the poles (see the test record)",
    });
  if (breaker.gfci)
    lines.push(
      {
        id: "gfci-test",
        section: cite("210.8"),
        look: `${name}: ground-fault protection trips by its button and resets, readily reached`,
        seen: "dead at the outlet after TEST; no ladder, no lock, nothing in front",
        how: "press TEST, read the outlet, reset",
      },
      {
        id: "gfci-neutral",
        section: cite("110.3(B)"),
        look: `${name}: white lead of the GFCI breaker on the neutral bar, the run's own neutral on the breaker`,
        seen: run.neutral ? "as the breaker's sheet shows" : "white lead landed though the run has no neutral",
        how: "panel front off, by a qualified person",
      },
    );
  return lines;
}

/** What the breaker interrupts against what is available. */
function interrupts({ run, fault }: AnyRun): string {
  const marked = run.breaker.interrupting_kA === undefined ? "kA to be read" : `${print(run.breaker.interrupting_kA)} kA marked`;
  const available = fault?.atStart.lineToLine ?? null;
  return `${marked}, ${available === null ? "available fault current to be asked" : `${print(available.value, 0)} A available`}`;
}

/** Where the wire is larger than the circuit needs: what terminals take. */
function terminalLines(run: AnyRun, edition: Edition): readonly LineWords[] {
  const ends = [run.segments[0], run.segments.at(-1)].flatMap((s) => (s === undefined ? [] : [s]));
  if (!ends.some(({ conductor, requiredSize }) => requiredSize !== null && compareSizes(conductor.size, requiredSize) > 0)) return [];
  return [
    {
      id: "terminal-range",
      section: byRule(terminalWireRange, edition),
      look: `${run.run.name}: terminals take a wire larger than the circuit needs`,
      seen: `${[...new Set(ends.map(({ conductor }) => printSize(conductor.size)))].join(" and ")} within the range marked on breaker and outlet`,
      how: "read the range; no strand trimmed",
    },
  ];
}

const DEVICE_PLACE = { receptacle: "the receptacle", "dead-front": "the dead-front device", disconnect: "the disconnect" } as const;

/** What a circuit has at its outlet. */
export function outletLines(designed: DesignedCircuit, edition: Edition): readonly LineWords[] {
  const { circuit, wires, neutral, volts } = designed;
  const cite = at(edition);
  const { name, serves } = circuit;
  const lines: LineWords[] = [];
  if (neutral)
    lines.push({
      id: "outlet-neutral",
      section: cite("250.142(B)"),
      look: `${name}: neutral and equipment ground not joined at the outlet`,
      seen: `${wires} wires, each on its own terminal; strap or bonding screw out`,
      how: "look with the power off",
    });
  if (volts === 120 && serves === "rv-30")
    lines.push({
      id: "one-hot-outlet",
      section: cite("210.6, 406.4"),
      look: `${name}: 120 V outlet, one hot`,
      seen: "one-pole breaker; black to the hot, white to the neutral terminal",
      how: "meter set above 300 V: about 120 V hot to neutral, never 240 V",
    });
  if (circuit.cover_plate !== undefined && circuit.cover_plate !== "none")
    lines.push({
      id: "cover",
      section: cite("406.9(B)"),
      look: `${name}: cover of the outlet`,
      seen: circuit.cover_plate === "weatherproof-in-use" ? "weatherproof with the plug in" : "weatherproof when closed",
      how: "close it over a plug",
    });
  if (serves === "receptacle-15" || serves === "receptacle-20")
    lines.push({
      id: "weather-resistant",
      section: cite("406.9(A), 406.9(B)(1)"),
      look: `${name}: receptacle in a damp or wet place is marked weather resistant`,
      seen: circuit.weather_resistant === true ? "WR on the face" : "WR on the face, where outdoors",
      how: "read the face",
    });
  const device = gfciDevice(circuit);
  if (device !== null && device !== "breaker")
    lines.push({
      id: "gfci-test",
      section: cite("210.8"),
      look: `${name}: ground-fault protection in ${DEVICE_PLACE[device]} trips by its button and resets, readily reached`,
      seen: "dead at the outlet after TEST; what it protects wired to its LOAD terminals, the panel's wires to LINE",
      how: "press TEST, read the outlet and those beyond it, reset",
    });
  const structure = ownStructure(circuit);
  if (structure !== null)
    lines.push({
      id: "building-disconnect",
      section: cite("225.31, 225.32"),
      look: `${name}: what opens the circuit at the ${structure.noun}`,
      seen: "a breaker or switch there, readily reached and marked",
      how: "reach it and turn it: dead beyond",
    });
  if (circuit.listed_rv_power_outlet)
    lines.push({
      id: "outlet-listed",
      section: cite("110.3(B)"),
      look: `${name}: assembly listed as a power outlet for vehicles`,
      seen: "label inside the door",
      how: "open it",
    });
  return [...lines, ...equipmentLines(designed, edition)];
}

/** What a feeder's far end has. */
export function feederLines({ feeder }: DesignedFeeder, edition: Edition): readonly LineWords[] {
  const cite = at(edition);
  const lines: LineWords[] = [
    {
      id: "subpanel-neutral",
      section: cite("250.24(A)(5), 250.142(B), 408.40"),
      look: `${feeder.panel.name}: neutral bar apart from the enclosure, equipment grounds on a bar of their own`,
      seen: "bonding screw or strap out and kept; four-wire feeder",
      how: "look with the power off; a photograph helps",
    },
  ];
  if (feeder.building === "detached")
    lines.push(
      {
        id: "building-disconnect",
        section: cite("225.31, 225.36"),
        look: `${feeder.panel.name}: the building's disconnect`,
        seen: feeder.panel.main === undefined ? "by the entrance of the feeder" : `main of ${print(feeder.panel.main)} A, by the entrance of the feeder`,
        how: "reach it and turn it",
      },
      {
        id: "building-electrode",
        section: cite("250.32(A), 250.53"),
        look: `${feeder.panel.name}: grounding electrode of the building`,
        seen: "electrodes the authority accepts, clamp listed for earth",
        how: "clamp left open to view",
      },
      {
        id: "electrode-sleeve",
        section: cite("250.64(E)"),
        look: `${feeder.panel.name}: metal sleeve over the electrode conductor bonded at both ends`,
        seen: "a bonding jumper at each end, or no metal sleeve",
        how: "look at both ends",
      },
    );
  return lines;
}
