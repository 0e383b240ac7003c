import { describe, expect, it } from "vitest";
import { CONDUCTOR_PROOFS } from "./published/conductor.js";
import { DROP_PROOFS } from "./published/drop.js";
import { EQUIPMENT_PROOFS } from "./published/equipment.js";
import { GROUNDING_PROOFS } from "./published/grounding.js";
import { LOAD_PROOFS } from "./published/load.js";
import { MEASURED_PROOFS } from "./published/measured.js";
import { RACEWAY_PROOFS } from "./published/raceway.js";
import { READING_PROOFS } from "./published/reading.js";
import { EVIDENCE, type Proof, type Row, rows, watched } from "./published/row.js";

const TOPICS = {
  "voltage drop": DROP_PROOFS,
  "conductors and overcurrent devices": CONDUCTOR_PROOFS,
  grounding: GROUNDING_PROOFS,
  "raceways, boxes and burial": RACEWAY_PROOFS,
  loads: LOAD_PROOFS,
  "measured demand": MEASURED_PROOFS,
  equipment: EQUIPMENT_PROOFS,
  "readings and neutrals": READING_PROOFS,
};
const inError = (row: Row) => row.status.startsWith("source in error");
const proofs: readonly (readonly [string, Proof])[] = Object.values(TOPICS).flatMap((topic) => Object.entries(topic));

for (const [topic, topicProofs] of Object.entries(TOPICS)) {
  describe(`published examples: ${topic}`, () => {
    for (const [id, proof] of Object.entries(topicProofs)) {
      const row = rows.find((r) => r.id === id);
      if (!row) throw new Error(`no case ${id}`);
      const differs = typeof proof === "function" ? "" : `; source in error: ${proof.differs}`;
      it(`${id} (${row.source.publisher}, ${row.source.url}; ${EVIDENCE[row.evidence]}${differs})`, () => {
        const { row: seen, unread } = watched(row);
        (typeof proof === "function" ? proof : proof.prove)(seen);
        expect(unread(), "expected figures the proof never compared").toEqual([]);
      });
    }
  });
}

describe("the published examples as a set", () => {
  it("are 98, each proved once, and nothing is proved that is not among them", () => {
    expect(rows).toHaveLength(98);
    expect(new Set(rows.map((row) => row.id)).size).toBe(98);
    expect(proofs.map(([id]) => id).sort()).toEqual(rows.map((row) => row.id).sort());
  });
  it("name a source and say what of them is printed", () => {
    for (const { id, source, evidence, expected } of rows) {
      expect(source.url, id).toMatch(/^https?:\/\/\S+$/);
      expect(source.publisher.length, id).toBeGreaterThan(1);
      expect(EVIDENCE, id).toHaveProperty(evidence);
      expect(Object.keys(expected).length, id).toBeGreaterThan(0);
    }
  });
  it("say why the engine differs from a source in error, and from no other", () => {
    expect(
      proofs
        .filter(([, proof]) => typeof proof !== "function")
        .map(([id]) => id)
        .sort(),
    ).toEqual(
      rows
        .filter(inError)
        .map((row) => row.id)
        .sort(),
    );
  });
  it("a printed answer that is corrected lies outside the tolerance of ours", () => {
    for (const { id, evidence, published = {}, expected, tolerance } of rows) {
      if (evidence !== "our_correction_of_published") continue;
      for (const key of Object.keys(published).filter((k) => k in expected)) {
        if (typeof published[key] === "number") expect(Math.abs(Number(published[key]) - expected[key]), `${id} ${key}`).toBeGreaterThan(tolerance[key] ?? 0);
        else expect(published[key], `${id} ${key}`).not.toEqual(expected[key]);
      }
    }
  });
});
