import type { Design } from "@branchwork/engine";
import { svgOfDrawing } from "./marks-svg.js";
import { layOneLine, type Room } from "./one-line-layout.js";
import { supplyOf } from "./one-line-tree.js";

/** Letter, portrait, inside the margins and above the title block; in points. */
const LETTER: Room = { width: 522, height: 572 };

/** How much larger than its least lettering a drawing on a large sheet may be, the largest first. */
const SCALES = [1.5, 1.4, 1.3, 1.2, 1.1];

/**
 * The one-line diagram of the whole tree as SVG: one string a drawing, more than one where the tree does not fit. Where the room is
 * wider than a small sheet's, it is drawn as large as it goes without taking more drawings.
 */
export function drawOneLine(design: Design, room: Room = LETTER): readonly string[] {
  const supply = supplyOf(design);
  const laid = (scale: number) => ({ scale, drawings: layOneLine(supply, { width: room.width / scale, height: room.height / scale }) });
  let { scale, drawings } = laid(1);
  for (const larger of SCALES.filter((one) => room.width / one >= LETTER.width)) {
    const made = laid(larger);
    if (made.drawings.length !== drawings.length) continue;
    ({ scale, drawings } = made);
    break;
  }
  return drawings.map((drawing, index) => svgOfDrawing(drawing, `one-line-${index + 1}`, scale));
}
