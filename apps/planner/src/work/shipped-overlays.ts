import { flattenOverlay, readOverlay } from "@branchwork/sheets";
import type { ShippedOverlay } from "./protocol.js";

const FILES = import.meta.glob<string>("../../../../fixtures/overlays/*.yaml", { query: "?raw", import: "default", eager: true });

/** The overlays that come with the project, each standing alone: what one extends is written out as the command line does it. */
export function shippedOverlays(): readonly ShippedOverlay[] {
  const texts = Object.fromEntries(Object.entries(FILES).map(([path, text]) => [path.replace(/^.*\/|\.yaml$/g, ""), text]));
  return Object.entries(texts).flatMap(([id, text]): readonly ShippedOverlay[] => {
    const reading = readOverlay(text);
    if (!reading.ok) throw new Error(`the overlay ${id} that comes with the planner cannot be read: ${reading.issues[0]?.what}`);
    if (reading.overlay.extends === undefined) return [{ id, name: reading.overlay.name, edition: reading.overlay.edition ?? null, text }];
    const whole = flattenOverlay(id, texts);
    if (!whole.ok) throw new Error(`the overlay ${id} that comes with the planner cannot be read: ${whole.issues[0]?.what}`);
    const { changes: _changes, extends: _extends, ...rest } = whole.overlay;
    return [{ id, name: rest.name, edition: rest.edition ?? null, text: `${JSON.stringify(rest, null, 2)}\n` }];
  });
}
