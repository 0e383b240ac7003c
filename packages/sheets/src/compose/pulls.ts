import type { DesignedRun } from "@branchwork/engine";
import { type Block, table, together, withWidths } from "./packet.js";
import { calcLines, valueWithUnit } from "./worked-lines.js";

type Pull = DesignedRun["pulls"][number];
type LightPull = Pull & { readonly tension: NonNullable<Pull["tension"]> };

/** Pulls of a run: those that strain or may wedge worked line by line, the light ones in a table, for no section governs them. */
export function pullBlocks({ pulls }: DesignedRun, of: (what: string) => string): readonly Block[] {
  const light = pulls.filter(isLight);
  const worked = pulls.filter((pull) => !isLight(pull) && pull.steps.length > 0);
  return [
    ...(light.length === 0 ? [] : [lightPulls(of("Pulls that strain little (advice, no rule of the code; worked in the design carried in this file)"), light)]),
    ...worked.map((pull) => calcLines(`Pull: ${pull.names.join(", ")}`, pull.steps)),
  ];
}

const isLight = (pull: Pull): pull is LightPull => pull.tension?.light === true && (pull.jam === null || pull.jam.jam === "none");

function lightPulls(caption: string, pulls: readonly LightPull[]): Block {
  const rows = pulls.map(({ names, tension: { end, limit, sidewall, sidewallLimit, pulledFrom } }) => [
    names.join(", "),
    `the ${pulledFrom}`,
    `${valueWithUnit(end)} of ${valueWithUnit(limit)}`,
    sidewall === null ? "no bend" : `${valueWithUnit(sidewall)} of ${valueWithUnit(sidewallLimit)}`,
  ]);
  return together(withWidths(table(caption, ["Pull", "Pulled out at", "Tension, of its limit", "Sidewall pressure, of its limit"], rows), 40, 14, 20, 26));
}
