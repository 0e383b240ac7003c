import { type Design, print } from "@branchwork/engine";
import { runsOf, tagsOf } from "../drawing/tags.js";
import { type Block, table, withWidths } from "./packet.js";

/** What stands beside a drawing under its stamp; a longer list is in the schedules alone. */
const MOST_ROWS = 14;

/** The tags of the one-line diagram with where each is, for a sheet with room beside its drawing; none where there are too many. */
export function tagsTable(design: Design): readonly Block[] {
  const tags = tagsOf(design);
  const rows = runsOf(design).flatMap((run) => {
    const own = tags.get(run.run.id)!;
    return run.segments.flatMap(({ segment, wet }, i) => [
      [own.conductors[i]!, `${run.run.name}: ${segment.name}`, `${segment.method}, ${segment.place}${wet ? ", wet" : ""}`, `${print(segment.length)} ft`],
      ...run.boxes.flatMap(({ box }, n) => (box.after === segment.name ? [[own.boxes[n]!, box.name, "box", `${print(box.volume)} in³`]] : [])),
    ]);
  });
  if (rows.length > MOST_ROWS) return [];
  return [withWidths(table("Tags on this drawing", ["Tag", "Where", "What", "Length or volume"], rows), ...[9, 46, 28, 17])];
}
