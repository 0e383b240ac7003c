import { createHash } from "node:crypto";
import type { Edition } from "@branchwork/engine";
import type { PacketSet, Paper } from "@branchwork/sheets";
import type { Format } from "../build.js";
import type { NamedText } from "../load-design.js";

/** What a packet is made under, the same for every job of a batch. */
export interface Terms {
  readonly overlay?: NamedText | undefined;
  readonly edition?: Edition | undefined;
  /** Price book for the owner's set. */
  readonly prices?: NamedText | undefined;
  readonly date: string;
  readonly formats: readonly Format[];
  readonly sets: readonly PacketSet[];
  /** As the overlay asks when left out. */
  readonly paper?: Paper | undefined;
  /** See programStamp. */
  readonly program: string;
}

/** SHA-256 of bytes, in hexadecimal. */
export const sha256 = (bytes: Uint8Array | string) => createHash("sha256").update(bytes).digest("hex");

/** SHA-256 of all a packet depends on: job, overlay, edition, date, formats, sets, paper, prices, program. */
export function packetDigest(job: Uint8Array | string, { overlay, edition, date, formats, sets, paper, prices, program }: Terms): string {
  return sha256(
    JSON.stringify([
      "branchwork-packet/1",
      sha256(job),
      overlay === undefined ? null : sha256(overlay.text),
      edition ?? null,
      date,
      formats,
      sets,
      paper ?? null,
      prices === undefined ? null : sha256(prices.text),
      program,
    ]),
  );
}
