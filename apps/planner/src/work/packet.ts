import { composePacket, ENGINE_TARGETS, type PacketSet, renderHtml } from "@branchwork/sheets";
import { loaded } from "./loaded.js";
import { packetFonts } from "./packet-fonts.js";
import type { Given, TextAnswer } from "./protocol.js";

/** The packet as HTML, the same as the command line's. */
export async function packet(given: Given & { readonly date: string; readonly set: PacketSet }): Promise<TextAnswer> {
  const made = loaded(given);
  if (!made.ok) return made;
  const { design, overlay } = made;
  const composed = composePacket({ design, overlay, date: given.date, targets: ENGINE_TARGETS, set: given.set });
  return { ok: true, text: renderHtml({ packet: composed, fonts: await packetFonts() }) };
}
