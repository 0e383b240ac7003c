import { cite, type Rule } from "../basis/citation.js";
import { type Edition, everyEdition } from "../basis/edition.js";
import { print } from "../quantity.js";
import { readCell } from "../tables/code-table.js";
import { ELECTRODE_CONDUCTOR } from "../tables/electrode.js";
import { compareSizes, printSize, type Size } from "../tables/size.js";
import { worked } from "../worked.js";
import type { Material } from "./ampacity.js";
import { type SizedConductor, type Supply, supplyArea, supplyRow } from "./supply.js";

const LIMITS: Readonly<Record<"rod" | "concrete-encased" | "ring", Rule>> = {
  rod: { sections: everyEdition("250.66(A)"), standing: "published" },
  "concrete-encased": { sections: everyEdition("250.66(B)"), standing: "published" },
  ring: { sections: everyEdition("250.66(C)"), standing: "memory" },
};
/** What an electrode conductor ends on. Rods, pipes and plates share one limit; water pipe and structural metal have none. */
export type Electrode = "rod" | "pipe" | "plate" | "concrete-encased" | "ring" | "water-pipe" | "structural-metal";

/** Largest size an electrode asks for where the conductor is the sole connection to it. 250.66(A) to (C); a ring, the ring's own size. */
function limitOf(electrode: Electrode, material: Material, ring: Size): { size: Size; rule: Rule } | null {
  const copper = material === "copper";
  if (electrode === "rod" || electrode === "pipe" || electrode === "plate") return { size: copper ? "6" : "4", rule: LIMITS.rod };
  // Aluminum does not enter concrete or earth, 250.64(A): the limit there is of copper alone.
  if (electrode === "concrete-encased" && copper) return { size: "4", rule: LIMITS["concrete-encased"] };
  if (electrode === "ring" && copper) return { size: ring, rule: LIMITS.ring };
  return null;
}

/**
 * Grounding electrode conductor by the supply's circular mils, Table 250.66, and by what it goes on to: `electrodes` are all those
 * this portion reaches, so a conductor that passes a rod to a concrete-encased electrode serves both and takes the larger limit.
 * Never larger than the table. `ring` is the size of a ground ring's conductor (2 AWG at least).
 */
export function electrodeConductor(given: {
  readonly id: string;
  readonly supply: Supply;
  readonly material: Material;
  readonly electrodes: readonly Electrode[];
  readonly ring?: Size;
  readonly edition: Edition;
}): SizedConductor {
  const { supply, material, edition } = given;
  const { total, cell, shown } = supplyArea(supply, edition);
  const found = readCell(ELECTRODE_CONDUCTOR, supplyRow(ELECTRODE_CONDUCTOR, supply, total, edition), material, edition)!;
  const tableSize = found.value as Size;
  const limits = given.electrodes.map((electrode) => limitOf(electrode, material, given.ring ?? "2"));
  const known = limits.flatMap((limit) => limit ?? []);
  const limit = known.length > 0 && known.length === limits.length ? known.reduce((a, b) => (compareSizes(b.size, a.size) > 0 ? b : a)) : null;
  const limited = limit !== null && compareSizes(limit.size, tableSize) < 0;
  const size = limited ? limit.size : tableSize;
  return {
    size,
    worked: worked({
      id: given.id,
      label: `Grounding electrode conductor, ${material}`,
      value: size,
      unit: "AWG/kcmil",
      expression: `${shown} = ${print(total)} cmil ${supply.material}, so ${printSize(tableSize)}${limited ? `; ${given.electrodes.join(", ")}: need not exceed ${printSize(size)}` : ""}`,
      cells: [found, cell],
      citations: limited ? [cite(limit.rule, edition)!] : [],
      edition,
    }),
  };
}
