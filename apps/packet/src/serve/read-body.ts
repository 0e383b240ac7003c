import type { IncomingMessage } from "node:http";
import { Refusal } from "./refusal.js";

/** How much of a body is taken, and how long it may pause and last, in milliseconds. */
export interface BodyLimits {
  readonly bytes: number;
  readonly pauseMs: number;
  readonly wholeMs: number;
}

const tooLarge = (most: number) => new Refusal(413, `the body is larger than ${most} bytes`, { connection: "close" });
const tooSlow = () => new Refusal(408, "the body came too slowly", { connection: "close" });

/** A request's body as text. Throws Refusal for one too large, too slow, broken off or not UTF-8. */
export function readBody(request: IncomingMessage, { bytes: most, pauseMs, wholeMs }: BodyLimits): Promise<string> {
  const told = request.headers["content-length"];
  if (told !== undefined && Number(told) > most) return Promise.reject(tooLarge(most));
  return new Promise((resolve, reject) => {
    const parts: Buffer[] = [];
    let length = 0;
    const whole = setTimeout(() => end(tooSlow()), wholeMs);
    let pause = setTimeout(() => end(tooSlow()), pauseMs);
    function end(outcome: Refusal | string): void {
      clearTimeout(whole);
      clearTimeout(pause);
      request.removeAllListeners("data");
      if (typeof outcome === "string") resolve(outcome);
      else {
        request.pause();
        reject(outcome);
      }
    }
    request.on("data", (part: Buffer) => {
      clearTimeout(pause);
      pause = setTimeout(() => end(tooSlow()), pauseMs);
      length += part.length;
      if (length > most) end(tooLarge(most));
      else parts.push(part);
    });
    request.once("end", () => {
      try {
        end(new TextDecoder("utf-8", { fatal: true }).decode(Buffer.concat(parts)));
      } catch {
        end(new Refusal(400, "the body is not UTF-8 text"));
      }
    });
    request.once("error", () => end(new Refusal(400, "the body broke off", { connection: "close" })));
    request.once("aborted", () => end(new Refusal(400, "the body broke off", { connection: "close" })));
  });
}
