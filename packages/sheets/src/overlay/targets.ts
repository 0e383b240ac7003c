import { BURIAL_COVER, CABLES, CHECKS, EQUIPMENT_KINDS, LOAD_METHODS, RACEWAYS } from "@branchwork/engine";
import { SHEET_TITLES } from "../compose/sheet-titles.js";

/** What an overlay may name. Left out, it is not tested. */
export interface AmendmentTargets {
  /** Rows of the cover table in inches with all their cells. */
  readonly cover?: Readonly<Record<string, readonly string[]>>;
  readonly checks?: readonly string[];
  readonly methods?: readonly string[];
  readonly loadMethods?: readonly string[];
  readonly outlets?: readonly string[];
  /** Titles of sheets; one that ends with a colon has a name after it. */
  readonly sheets?: readonly string[];
}

/** What this engine knows by name. */
export const ENGINE_TARGETS: AmendmentTargets = {
  cover: Object.fromEntries(Object.entries(BURIAL_COVER.rows).map(([row, cells]) => [row, cells.filter((cell) => cell !== null)])),
  checks: CHECKS.map((check) => check.id),
  methods: [...CABLES, ...RACEWAYS],
  loadMethods: LOAD_METHODS,
  outlets: EQUIPMENT_KINDS,
  sheets: SHEET_TITLES,
};
