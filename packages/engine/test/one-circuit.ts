import { design } from "../src/design.js";
import type { DesignedCircuit } from "../src/designed.js";
import { measured, plainJob } from "./plain-job.js";
import { readWritten } from "./read-written.js";

/** Ten feet of EMT indoors, where the way decides nothing. */
export const way = [{ name: "way", place: "indoors", method: "EMT", length: "10 ft" }];

/** A circuit as written, two-pole in spaces 1 and 3 unless told. */
export const written = (fields: object) => ({ id: "c", name: "C", breaker: { poles: 2, spaces: [1, 3], gfci: true }, route: way, ...fields });

/** The design of one circuit on a plain house of measured demand. */
export const oneCircuit = (fields: object): DesignedCircuit =>
  design({ job: readWritten(plainJob({ service: measured("8 kW"), panel: { circuits: [written(fields)] } })) }).circuits[0]!;
