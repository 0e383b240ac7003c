export { composePacket, type PacketParts } from "./compose/compose-packet.js";
export type { Block, Packet, Sheet, TitleBlock } from "./compose/packet.js";
export { drawOneLine } from "./drawing/one-line.js";
export { type AmendedBasis, type AmendmentIssue, type AmendmentTargets, basisFrom } from "./overlay/apply.js";
export { type OverlayIssue, type OverlayReading, readOverlay } from "./overlay/read.js";
export { type Overlay, overlaySchema } from "./overlay/schema.js";
export { renderHtml } from "./render/html.js";
export type { Fonts } from "./render/style.js";
