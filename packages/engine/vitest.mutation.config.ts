// @ts-nocheck
import { defineConfig } from "vitest/config";
import base from "./vitest.config.js";

/** The tests a mutant is tried against: those of the rules. Random jobs, simulation, documents and hostile text would take hours and judge other things. */
const RULES = [
  "burial-cover",
  "calculations-cited",
  "checks",
  "electrode-conductor",
  "equipment",
  "existing-dwelling",
  "equipment-circuits",
  "fault",
  "fault-lines",
  "house-load",
  "impedance",
  "load-edges",
  "load-lines",
  "loads",
  "local-checks",
  "multiwire",
  "new-load",
  "parallel-neutral",
  "published*",
  "pull-groups",
  "pull-box",
  "raceway",
  "raceway-wiring",
  "reduced-neutral",
  "service-conductor",
  "service-design",
  "segment-lines",
  "sizing",
  "sizing-edges",
  "small-lines",
  "tables",
  "tap",
  "tree",
  "written-lines",
];

export default defineConfig({ ...base, test: { ...base.test, include: RULES.map((name) => `test/${name}.test.ts`) } });
