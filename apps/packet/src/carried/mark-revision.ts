import type { Change, PriceBook } from "@branchwork/engine";
import { composePacket, type Packet, type PacketSet, type Paper, type Revision, revisePacket } from "@branchwork/sheets";
import type { Loaded } from "../load-design.js";

/** A set of the job as it is now with what is otherwise than before marked by the last of the revisions. */
export function markRevision(given: {
  readonly packet: Packet;
  readonly before: Loaded;
  /** From `before` to what the packet is of. */
  readonly changes: readonly Change[];
  /** Oldest first, one at least. */
  readonly revisions: readonly Revision[];
  readonly set: PacketSet;
  readonly paper: Paper;
  readonly date: string;
  readonly prices?: PriceBook | undefined;
}): Packet {
  const { packet, before, changes, revisions, set, paper, date, prices } = given;
  const revision = revisions.at(-1);
  if (revision === undefined) throw new RangeError("a revised packet without a revision");
  const { design, overlay, targets } = before;
  const was = composePacket({ design, overlay, date, targets, set, paper, ...(prices === undefined ? {} : { prices }) });
  return revisePacket({ packet, was, revision, earlier: revisions.slice(0, -1), changes });
}
