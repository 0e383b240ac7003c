import { drawOneLine } from "@branchwork/sheets";
import { digestOf } from "./digest.js";
import { loaded } from "./loaded.js";
import { withoutNames } from "./names-stand-in.js";
import type { Answers, DesignAnswer, Given, Request, TextAnswer } from "./protocol.js";

function designed(given: Given): DesignAnswer {
  const began = performance.now();
  const read = loaded(given);
  const made = read.ok ? read : withoutNames(given, read.issues);
  if (!made.ok) return { ok: false, issues: made.issues, ms: performance.now() - began };
  const digest = digestOf(made.design, drawOneLine(made.design));
  return { ok: true, digest, issues: read.ok ? [] : read.issues, ms: performance.now() - began };
}

function designJson(given: Given): TextAnswer {
  const made = loaded(given);
  return made.ok ? { ok: true, text: `${JSON.stringify({ format: "branchwork-design/1", ...made.design }, null, 2)}\n` } : made;
}

/** What the first answers do not need is fetched when it is first asked for. */
async function answer(request: Request): Promise<Answers[Request["ask"]]> {
  switch (request.ask) {
    case "design":
      return designed(request);
    case "packet":
      return (await import("./packet.js")).packet(request);
    case "design-json":
      return designJson(request);
    case "materials":
      return (await import("./materials.js")).materials(request);
    case "readings":
      return (await import("./read-outlet.js")).readOutlet(request);
    case "choose":
      return (await import("./choosing.js")).choosing(request);
    case "overlays":
      return (await import("./shipped-overlays.js")).shippedOverlays();
  }
}

addEventListener("message", ({ data }: MessageEvent<{ readonly id: number; readonly request: Request }>) => {
  answer(data.request).then(
    (value) => postMessage({ id: data.id, value }),
    (error: unknown) => postMessage({ id: data.id, error: error instanceof Error ? error.message : String(error) }),
  );
});
