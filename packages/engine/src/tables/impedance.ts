import type { CodeTable } from "./code-table.js";
import { isMetal } from "./raceway-kind.js";

/** Raceway material, as Table 9 divides it. Nonmetallic cable and nonmetallic raceway read the PVC columns. */
export const CONDUIT_MATERIALS = ["PVC", "aluminum", "steel"] as const;
export type ConduitMaterial = (typeof CONDUIT_MATERIALS)[number];

export const AC_IMPEDANCE = {
  id: "ac-impedance",
  title: "Alternating-current resistance, reactance and effective impedance at 0.85 power factor; ohm to neutral per 1000 ft, 75 °C, 60 Hz",
  sections: { "2017": "Chapter 9 Table 9", "2020": "Chapter 9 Table 9", "2023": "Chapter 9 Table 9", "2026": "Chapter 9 Table 9" },
  columns: ["xPvcAl", "xSteel", "rCuPvc", "rCuAl", "rCuSteel", "rAlPvc", "rAlAl", "rAlSteel", "zCuPvc", "zCuAl", "zCuSteel", "zAlPvc", "zAlAl", "zAlSteel"],
  rows: {
    "14": ["0.058", "0.073", "3.1", "3.1", "3.1", null, null, null, "2.7", "2.7", "2.7", null, null, null],
    "12": ["0.054", "0.068", "2", "2", "2", "3.2", "3.2", "3.2", "1.7", "1.7", "1.7", "2.8", "2.8", "2.8"],
    "10": ["0.05", "0.063", "1.2", "1.2", "1.2", "2", "2", "2", "1.1", "1.1", "1.1", "1.8", "1.8", "1.8"],
    "8": ["0.052", "0.065", "0.78", "0.78", "0.78", "1.3", "1.3", "1.3", "0.69", "0.69", "0.7", "1.1", "1.1", "1.1"],
    "6": ["0.051", "0.064", "0.49", "0.49", "0.49", "0.81", "0.81", "0.81", "0.44", "0.45", "0.45", "0.71", "0.72", "0.72"],
    "4": ["0.048", "0.06", "0.31", "0.31", "0.31", "0.51", "0.51", "0.51", "0.29", "0.29", "0.3", "0.46", "0.46", "0.46"],
    "3": ["0.047", "0.059", "0.25", "0.25", "0.25", "0.4", "0.41", "0.4", "0.23", "0.24", "0.24", "0.37", "0.37", "0.37"],
    "2": ["0.045", "0.057", "0.19", "0.2", "0.2", "0.32", "0.32", "0.32", "0.19", "0.19", "0.2", "0.3", "0.3", "0.3"],
    "1": ["0.046", "0.057", "0.15", "0.16", "0.16", "0.25", "0.26", "0.25", "0.16", "0.16", "0.16", "0.24", "0.24", "0.25"],
    "1/0": ["0.044", "0.055", "0.12", "0.13", "0.12", "0.2", "0.21", "0.2", "0.13", "0.13", "0.13", "0.19", "0.2", "0.2"],
    "2/0": ["0.043", "0.054", "0.1", "0.1", "0.1", "0.16", "0.16", "0.16", "0.11", "0.11", "0.11", "0.16", "0.16", "0.16"],
    "3/0": ["0.042", "0.052", "0.077", "0.082", "0.079", "0.13", "0.13", "0.13", "0.088", "0.092", "0.094", "0.13", "0.13", "0.14"],
    "4/0": ["0.041", "0.051", "0.062", "0.067", "0.063", "0.1", "0.11", "0.1", "0.074", "0.078", "0.08", "0.11", "0.11", "0.11"],
    "250": ["0.041", "0.052", "0.052", "0.057", "0.054", "0.085", "0.09", "0.086", "0.066", "0.07", "0.073", "0.094", "0.098", "0.1"],
    "300": ["0.041", "0.051", "0.044", "0.049", "0.045", "0.071", "0.076", "0.072", "0.059", "0.063", "0.065", "0.082", "0.086", "0.088"],
    "350": ["0.04", "0.05", "0.038", "0.043", "0.039", "0.061", "0.066", "0.063", "0.053", "0.058", "0.06", "0.073", "0.077", "0.08"],
    "400": ["0.04", "0.049", "0.033", "0.038", "0.035", "0.054", "0.059", "0.055", "0.049", "0.053", "0.056", "0.066", "0.071", "0.073"],
    "500": ["0.039", "0.048", "0.027", "0.032", "0.029", "0.043", "0.048", "0.045", "0.043", "0.048", "0.05", "0.057", "0.061", "0.064"],
    "600": ["0.039", "0.048", "0.023", "0.028", "0.025", "0.036", "0.041", "0.038", "0.04", "0.044", "0.047", "0.051", "0.055", "0.058"],
    "750": ["0.038", "0.048", "0.019", "0.024", "0.021", "0.029", "0.034", "0.031", "0.036", "0.04", "0.043", "0.045", "0.049", "0.052"],
    "1000": ["0.037", "0.046", "0.015", "0.019", "0.018", "0.023", "0.027", "0.025", "0.032", "0.036", "0.04", "0.039", "0.042", "0.046"],
  },
  groups: [
    { columns: ["xPvcAl", "xSteel", "rCuPvc", "rCuAl", "rCuSteel", "rAlPvc", "rAlAl", "rAlSteel"], standing: "published" },
    {
      rows: ["2/0", "3/0", "4/0", "250", "300", "350", "400", "500", "600", "750", "1000"],
      columns: ["zCuPvc", "zCuAl", "zCuSteel", "zAlPvc", "zAlAl", "zAlSteel"],
      standing: "memory",
    },
    { columns: ["zCuPvc", "zCuAl", "zCuSteel", "zAlPvc", "zAlAl", "zAlSteel"], standing: "one-source" },
  ],
  sources: [
    {
      where: "https://studylib.net/doc/18564968/ac-resistance-and-reactance",
      confirms: "reactance and resistance, all sizes; part of the effective impedance",
    },
    { where: "https://brunsengineering.com/nec-table-9/", confirms: "reactance and resistance 14 AWG to 350 kcmil" },
    { where: "https://www.scribd.com/document/231379163/PEC-AC-Resistance-Reactance-Table", confirms: "reactance in steel" },
    { where: "https://rt.http3.lol/ (scribd 481338126 Table9-1)", confirms: "all columns 14 AWG to 1/0 AWG with their ohm-per-kilometre pairs" },
    { where: "formula: Ze = R × 0.85 + X × 0.527", confirms: "all effective impedances within the rounding of R and Z" },
  ],
  notes: [
    "To neutral, for one conductor: a two-wire circuit doubles it.",
    "Effective impedance holds at 0.85 power factor alone; elsewhere Ze = R cos θ + X sin θ.",
  ],
} as const satisfies CodeTable;

const METAL = { copper: "Cu", aluminum: "Al" } as const;
const RACEWAY = { PVC: "Pvc", aluminum: "Al", steel: "Steel" } as const;

/** The columns of one metal in one raceway material: reactance, resistance, effective impedance at 0.85. */
export function impedanceColumns(metal: "copper" | "aluminum", conduit: ConduitMaterial) {
  return {
    x: conduit === "steel" ? "xSteel" : "xPvcAl",
    r: `r${METAL[metal]}${RACEWAY[conduit]}`,
    z: `z${METAL[metal]}${RACEWAY[conduit]}`,
  } as const;
}

/** Raceway material of a wiring method: metal raceways are steel unless said to be aluminum; all others read PVC. */
export function conduitMaterial(method: string): ConduitMaterial {
  return isMetal(method) ? "steel" : "PVC";
}
