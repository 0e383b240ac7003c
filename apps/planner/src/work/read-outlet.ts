import { acceptanceTest, type Band, diagnoseOutlet, entryProblems, readingWords, readReadings, type WiringShape } from "@branchwork/engine";
import { loaded } from "./loaded.js";
import type { Given, ReadingsAnswer, ShownBand } from "./protocol.js";

const NOTHING: Omit<ReadingsAnswer, "ok" | "issues"> = { idle: [], loaded: [], assumptions: [], diagnosis: null };

/** The bands of an outlet's readings and, where some are entered, what they tell. */
export function readOutlet(given: Given & { readonly circuit: string; readonly entered: string | null }): ReadingsAnswer {
  const made = loaded(given);
  if (!made.ok) return { ok: false, issues: made.issues, ...NOTHING };
  const circuit = made.design.circuits.find((each) => each.circuit.id === given.circuit);
  if (circuit === undefined)
    return { ok: false, issues: [{ of: "readings", path: "circuit", line: 0, what: "that outlet is no longer in the job", mend: "pick another" }], ...NOTHING };
  const test = acceptanceTest(made.design, circuit);
  const bands = {
    idle: test.idle.map((band) => shown(band, test.shape)),
    loaded: test.loaded.map(({ load, says, bands }) => ({
      across: load.across,
      amperes: load.amperes,
      says,
      bands: bands.map((band) => shown(band, test.shape)),
    })),
    assumptions: test.assumptions,
  };
  if (given.entered === null) return { ok: true, issues: [], ...bands, diagnosis: null };
  const read = readReadings(given.entered);
  if (!read.ok) return { ok: false, issues: read.issues.map((issue) => ({ ...issue, of: "readings" })), ...bands, diagnosis: null };
  const wrong = entryProblems(circuit, read.readings);
  if (wrong.length > 0) return { ok: false, issues: wrong.map((problem) => ({ ...problem, line: 0, of: "readings" })), ...bands, diagnosis: null };
  return { ok: true, issues: [], ...bands, diagnosis: diagnoseOutlet(made.design, circuit, read.readings) };
}

const shown = (band: Band, shape: WiringShape): ShownBand => ({
  reading: band.reading,
  words: readingWords(band.reading, shape),
  least: band.least,
  most: band.most,
  expected: band.simulated,
  basis: band.basis,
});
