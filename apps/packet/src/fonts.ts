import { readFile } from "node:fs/promises";
import { fileURLToPath } from "node:url";
import type { Fonts } from "@branchwork/sheets";

const WEIGHTS = [400, 600, 700] as const;
/** The greek files are there for Ω alone; without them the browser takes it from another family. */
const SUBSETS = [
  { name: "latin", weights: WEIGHTS },
  { name: "greek", weights: WEIGHTS, unicodeRange: "U+0370-03FF" },
] as const;

/** The packet's faces, from the installed font package, as base64. */
export async function packetFonts(): Promise<Fonts> {
  const faces = await Promise.all(
    SUBSETS.flatMap((subset) =>
      subset.weights.map(async (weight) => {
        const path = fileURLToPath(import.meta.resolve(`@fontsource/source-sans-3/files/source-sans-3-${subset.name}-${weight}-normal.woff2`));
        const base64 = (await readFile(path)).toString("base64");
        return "unicodeRange" in subset ? { weight, base64, unicodeRange: subset.unicodeRange } : { weight, base64 };
      }),
    ),
  );
  return { family: "Source Sans 3", faces };
}
