import type { Design } from "@branchwork/engine";
import { chainOf } from "./graph.js";
import { scenesOf } from "./scene.js";
import { svgOf } from "./svg.js";

/** One-line diagrams as SVG, one string a Letter page: at least one for each circuit, more where the chain is long. */
export function drawOneLine(design: Design): readonly string[] {
  const scenes = design.circuits.flatMap((c) => scenesOf(`One-line diagram from the utility to ${c.circuit.name}`, chainOf(design, c)));
  return scenes.map((scene, index) => svgOf(scene, `one-line-${index + 1}`));
}
