import { materialsCsv, materialsList, priceMaterials, readPriceBook } from "@branchwork/engine";
import { composePacket, drawOneLine, ENGINE_TARGETS, type PacketSet, renderHtml } from "@branchwork/sheets";
import { choosing } from "./choosing.js";
import { digestOf } from "./digest.js";
import { loaded } from "./loaded.js";
import { withoutNames } from "./names-stand-in.js";
import { packetFonts } from "./packet-fonts.js";
import type { Answers, DesignAnswer, Given, MaterialsAnswer, Request, TextAnswer } from "./protocol.js";
import { readOutlet } from "./read-outlet.js";
import { shippedOverlays } from "./shipped-overlays.js";

function designed(given: Given): DesignAnswer {
  const began = performance.now();
  const read = loaded(given);
  const made = read.ok ? read : withoutNames(given, read.issues);
  if (!made.ok) return { ok: false, issues: made.issues, ms: performance.now() - began };
  const digest = digestOf(made.design, drawOneLine(made.design));
  return { ok: true, digest, issues: read.ok ? [] : read.issues, ms: performance.now() - began };
}

async function packet(given: Given & { readonly date: string; readonly set: PacketSet }): Promise<TextAnswer> {
  const made = loaded(given);
  if (!made.ok) return made;
  const { design, overlay } = made;
  const composed = composePacket({ design, overlay, date: given.date, targets: ENGINE_TARGETS, set: given.set });
  return { ok: true, text: renderHtml({ packet: composed, fonts: await packetFonts() }) };
}

function text(given: Given, of: (made: Extract<ReturnType<typeof loaded>, { ok: true }>) => string): TextAnswer {
  const made = loaded(given);
  return made.ok ? { ok: true, text: of(made) } : made;
}

function materials(given: Given & { readonly prices: string | null }): MaterialsAnswer {
  const made = loaded(given);
  if (!made.ok) return made;
  const { rows } = materialsList({ design: made.design });
  if (given.prices === null) return { ok: true, csv: materialsCsv(rows), cost: null };
  const read = readPriceBook(given.prices);
  if (!read.ok) return { ok: false, issues: read.issues.map((issue) => ({ ...issue, of: "prices" })) };
  const priced = priceMaterials({ rows, book: read.book });
  const { currency, date, source, total, unpriced } = priced;
  return { ok: true, csv: materialsCsv(priced.rows), cost: { currency, date, source, ...total, unpriced } };
}

async function answer(request: Request): Promise<Answers[Request["ask"]]> {
  switch (request.ask) {
    case "design":
      return designed(request);
    case "packet":
      return packet(request);
    case "design-json":
      return text(request, ({ design }) => `${JSON.stringify({ format: "branchwork-design/1", ...design }, null, 2)}\n`);
    case "materials":
      return materials(request);
    case "readings":
      return readOutlet(request);
    case "choose":
      return choosing(request);
    case "overlays":
      return shippedOverlays();
  }
}

addEventListener("message", ({ data }: MessageEvent<{ readonly id: number; readonly request: Request }>) => {
  answer(data.request).then(
    (value) => postMessage({ id: data.id, value }),
    (error: unknown) => postMessage({ id: data.id, error: error instanceof Error ? error.message : String(error) }),
  );
});
