import type { Design } from "@branchwork/engine";
import { svgOfDrawing } from "./marks-svg.js";
import { layOneLine, type Room } from "./one-line-layout.js";
import { supplyOf } from "./one-line-tree.js";

/** Letter, portrait, inside the margins and above the title block; in points. */
const LETTER: Room = { width: 522, height: 572 };

/** The one-line diagram of the whole tree as SVG: one string a drawing, more than one where the tree does not fit. */
export function drawOneLine(design: Design, room: Room = LETTER): readonly string[] {
  return layOneLine(supplyOf(design), room).map((drawing, index) => svgOfDrawing(drawing, `one-line-${index + 1}`));
}
