import { createInterface } from "node:readline/promises";
import {
  acceptanceTest,
  type Design,
  type DesignedCircuit,
  type Diagnosis,
  diagnoseOutlet,
  type EnteredFile,
  entryProblems,
  READINGS,
  readingWords,
  readReadings,
  wiringShape,
} from "@branchwork/engine";
import { EXIT } from "./exit-codes.js";
import { InputError, type LoadOptions, loadDesign, readText } from "./load-design.js";
import { withExit } from "./report.js";

export interface ReadingsOptions extends LoadOptions {
  readonly circuit?: string;
  readonly file?: string;
  readonly idle?: string;
  readonly loaded?: string;
  readonly amperes?: string;
  readonly across?: string;
  readonly meter?: string;
  readonly json?: boolean;
}
export interface Asked {
  readonly input: NodeJS.ReadableStream & { readonly isTTY?: boolean };
  readonly output: NodeJS.WritableStream;
}

const CAUTIONS = [
  "Electricity kills. Readings on live parts are for a qualified person.",
  "Prove the tester on a known live source, test, prove it again. Set it above 300 V.",
  "The main off does not make the panel dead: the lugs ahead of it stay live.",
  "Stop if any reading is out of band: breaker off and locked, plug nothing in, find the cause.",
];

/** `readings`: judges meter readings taken at an outlet of the job. 0 pass; 1 faults, or a reading is still wanted; 2 bad input. */
export function readings(job: string, options: ReadingsOptions, asked: Asked): Promise<number> {
  return withExit(async () => {
    const { design } = await loadDesign(job, options);
    const source = options.file ?? "the readings";
    const { entered, circuit } = await gather(design, options, asked);
    const wrong = entryProblems(circuit, entered);
    if (wrong.length > 0) throw new InputError(source, wrong);
    const diagnosis = diagnoseOutlet(design, circuit, entered);
    if (options.json) console.log(JSON.stringify({ format: "branchwork-diagnosis/1", circuit: circuit.circuit.id, ...diagnosis }, null, 2));
    else console.log(printed(circuit, diagnosis, acceptanceTest(design, circuit).assumptions));
    return diagnosis.verdict === "pass" ? EXIT.ready : EXIT.findings;
  });
}

async function gather(design: Design, options: ReadingsOptions, asked: Asked): Promise<{ readonly entered: EnteredFile; readonly circuit: DesignedCircuit }> {
  if (options.file !== undefined) {
    const text = await readText(options.file);
    const read = readReadings(text);
    if (!read.ok) throw new InputError(options.file, read.issues);
    const named = read.readings.circuit;
    if (named !== undefined && options.circuit !== undefined && named !== options.circuit)
      throw new InputError(options.file, [
        { path: "circuit", what: `the file is for "${named}", --circuit names "${options.circuit}"`, mend: "name the same circuit in both" },
      ]);
    return { entered: read.readings, circuit: circuitOf(design, options.circuit ?? named) };
  }
  const circuit = circuitOf(design, options.circuit);
  if (options.idle !== undefined) return { entered: fromOptions(options), circuit };
  if (asked.input.isTTY !== true)
    throw new InputError("readings", [
      { path: "", what: "no readings were given", mend: "give --file readings.yaml, or --idle L1-N=122.4,…, or run it on a terminal" },
    ]);
  return { entered: await askedFor(circuit, asked), circuit };
}

function circuitOf(design: Design, id: string | undefined): DesignedCircuit {
  const fed = design.circuits.filter(({ circuit }) => circuit.serves !== "generator-inlet");
  const found = id === undefined ? (fed.length === 1 ? fed[0] : undefined) : fed.find(({ circuit }) => circuit.id === id);
  if (found !== undefined) return found;
  const inlet = id !== undefined && design.circuits.some(({ circuit }) => circuit.id === id);
  const ids = fed.map(({ circuit }) => circuit.id).join(", ");
  const what =
    id === undefined
      ? `the job has ${fed.length} outlets`
      : inlet
        ? `"${id}" is an inlet: with the house on the utility its blades must read 0 V`
        : `the job has no circuit "${id}"`;
  throw new InputError("--circuit", [{ path: "", what, mend: ids === "" ? "there is no outlet to read" : `name one of ${ids}` }]);
}

/** The command line's lists, read as the file would be so that one schema judges both. */
function fromOptions(options: ReadingsOptions): EnteredFile {
  const list = (name: string, text: string): string =>
    text
      .split(",")
      .map((pair) => {
        const [reading = "", volts = "", ...more] = pair.split("=").map((part) => part.trim());
        if (!/^[A-Z0-9-]+$/.test(reading) || !/^[\d.]+( ?V)?$/.test(volts) || more.length > 0)
          throw new InputError(name, [{ path: "", what: `"${pair}" is not a reading`, mend: "write them as L1-N=122.4,L1-G=122.5" }]);
        return `"${reading}": "${volts}"`;
      })
      .join(", ");
  const quoted = (text: string): string => JSON.stringify(text);
  const { loaded, amperes, across } = options;
  if ((loaded ?? amperes ?? across) !== undefined && (loaded === undefined || amperes === undefined || across === undefined))
    throw new InputError("--loaded", [{ path: "", what: "loaded readings need their load", mend: "give --loaded, --amperes and --across together" }]);
  const text = [
    "format: branchwork-readings/1",
    ...(options.meter === undefined ? [] : [`meter: ${quoted(options.meter)}`]),
    `idle: { ${list("--idle", options.idle ?? "")} }`,
    ...(loaded === undefined ? [] : [`loaded: { across: ${quoted(across!)}, amperes: ${quoted(amperes!)}, readings: { ${list("--loaded", loaded)} } }`]),
  ].join("\n");
  const read = readReadings(text);
  // A line of a text that nobody wrote tells nothing.
  if (!read.ok)
    throw new InputError(
      "the command line",
      read.issues.map(({ path, what, mend }) => ({ path, what, mend })),
    );
  return read.readings;
}

async function askedFor(circuit: DesignedCircuit, { input, output }: Asked): Promise<EnteredFile> {
  const shape = wiringShape(circuit);
  const lines = createInterface({ input, output });
  try {
    output.write(`${CAUTIONS.join("\n")}\n\n${circuit.circuit.name}: breaker on, nothing connected. An empty answer leaves a reading out.\n`);
    const ask = async (question: string): Promise<string> => (await lines.question(question)).trim();
    const set = async (): Promise<string> => {
      const found: string[] = [];
      for (const name of READINGS[shape]) {
        const volts = await ask(`  ${readingWords(name, shape)}, V: `);
        if (volts !== "") found.push(`${name}=${volts}`);
      }
      return found.join(",");
    };
    const idle = await set();
    if (idle === "") throw new InputError("the answers", [{ path: "", what: "no reading was entered", mend: "take the readings, then run it again" }]);
    const amperes = await ask("Now with a test load on: its amperes (empty for none): ");
    if (amperes === "") return fromOptions({ idle });
    const across = shape === "two-hot" ? "L1-L2" : shape === "one-hot" ? "L1-N" : (await ask("  across L1-N, L2-N or L1-L2: ")) || "L1-N";
    return fromOptions({ idle, amperes, across, loaded: await set() });
  } finally {
    lines.close();
  }
}

function printed({ circuit }: DesignedCircuit, diagnosis: Diagnosis, assumptions: readonly string[]): string {
  const head = { pass: "PASS", "need-more": "NOT A PASS YET", faults: "FAULT" }[diagnosis.verdict];
  const out = [...CAUTIONS, "", `${head}  ${circuit.name}: ${diagnosis.says}`];
  if (diagnosis.verdict === "pass")
    for (const { says, provedBy } of diagnosis.notProved) out.push(`  not proved absent: ${says}\n      prove it by: ${provedBy}`);
  if (diagnosis.verdict === "need-more") out.push(`  read next: ${diagnosis.decides}; not read: ${diagnosis.missing.join(", ")}`);
  if (diagnosis.verdict === "faults") {
    for (const { says, basis } of diagnosis.outOfBand) out.push(`  out of band: ${says} [${basis}]`);
    for (const [i, { says, variant, fits, toDo, stop }] of diagnosis.ranked.entries())
      out.push(`  ${i + 1}. ${says}${variant === "" ? "" : ` (${variant})`}${fits ? "" : "; fits poorly"}\n      STOP: ${stop}\n      do: ${toDo}`);
    if (diagnosis.decides !== null) out.push(`  read next, it tells these apart: ${diagnosis.decides}`);
  }
  out.push("", `Assumed: ${assumptions.join("; ")}.`, "Judged by simulation and common practice; it does not replace the inspection.");
  return out.join("\n");
}
