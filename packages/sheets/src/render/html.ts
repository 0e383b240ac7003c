import Handlebars from "handlebars";
import type { Packet } from "../compose/packet.js";
import { PAGE, PARTIALS } from "../templates/packet.js";
import { type Fonts, fontFaces, pageBoxes, STYLE } from "./style.js";
import { unbroken } from "./unbroken.js";
import { viewOf } from "./view.js";

/** The packet as one self-contained HTML page: no script, nothing fetched. All text is escaped. */
export function renderHtml({ packet, fonts }: { readonly packet: Packet; readonly fonts: Fonts }): string {
  const engine = Handlebars.create();
  for (const [name, source] of Object.entries(PARTIALS)) engine.registerPartial(name, source);
  engine.registerHelper("nb", (text: unknown) => new Handlebars.SafeString(unbroken(String(text))));
  const template = engine.compile(PAGE, { strict: true });
  return template({ packet: viewOf(packet), css: `${fontFaces(fonts)}\n${pageBoxes(packet.paper ?? "letter")}${STYLE}` });
}
