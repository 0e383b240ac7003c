import type { Design } from "@branchwork/engine";
import { svgOfDrawing } from "./marks-svg.js";
import { layOneLine } from "./one-line-layout.js";
import { supplyOf } from "./one-line-tree.js";

/** Letter, portrait, inside the margins and above the title block; in points. */
const ROOM = { width: 522, height: 572 } as const;

/** The one-line diagram of the whole tree as SVG: one string a drawing, more than one where the tree does not fit. */
export function drawOneLine(design: Design): readonly string[] {
  return layOneLine(supplyOf(design), ROOM).map((drawing, index) => svgOfDrawing(drawing, `one-line-${index + 1}`));
}
