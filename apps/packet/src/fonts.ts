import { readFile } from "node:fs/promises";
import { fileURLToPath } from "node:url";
import type { Fonts } from "@branchwork/sheets";

const WEIGHTS = [400, 600, 700] as const;

/** The packet's faces, from the installed font package, as base64. */
export async function packetFonts(): Promise<Fonts> {
  const faces = await Promise.all(
    WEIGHTS.map(async (weight) => {
      const path = fileURLToPath(import.meta.resolve(`@fontsource/source-sans-3/files/source-sans-3-latin-${weight}-normal.woff2`));
      return { weight, base64: (await readFile(path)).toString("base64") };
    }),
  );
  return { family: "Source Sans 3", faces };
}
