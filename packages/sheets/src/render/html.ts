import Handlebars from "handlebars";
import type { Packet } from "../compose/packet.js";
import { PAGE, PARTIALS } from "../templates/packet.js";
import { type Fonts, fontFaces, pageBoxes, STYLE } from "./style.js";
import { unbroken } from "./unbroken.js";
import { viewOf } from "./view.js";

const engine = Handlebars.create();
for (const [name, source] of Object.entries(PARTIALS)) engine.registerPartial(name, source);
engine.registerHelper("nb", (text: unknown) => new Handlebars.SafeString(unbroken(String(text))));
// Compiled at its first use, then kept: compiling takes longer than a fill.
const page = engine.compile(PAGE, { strict: true });

/** The packet as one self-contained HTML page: no script, nothing fetched. All text is escaped. */
export function renderHtml({ packet, fonts }: { readonly packet: Packet; readonly fonts: Fonts }): string {
  return page({ packet: viewOf(packet), css: `${fontFaces(fonts)}\n${pageBoxes(packet.paper ?? "letter")}${STYLE}` });
}
