import { type Browser, ProtocolError, TimeoutError } from "puppeteer-core";
import { BrowserLostError } from "./browser-lost.js";

/** Does `work` with the browser within `limitMs`. Throws BrowserLostError when the time is over, or the browser or its page has ended meanwhile; else what `work` throws. */
export async function withBrowser<T>(browser: Browser, limitMs: number, work: () => Promise<T>): Promise<T> {
  let timer: NodeJS.Timeout | undefined;
  const silent = () => new BrowserLostError("silent", `the browser did not finish printing within ${limitMs} ms`);
  const late = new Promise<never>((_resolve, reject) => {
    timer = setTimeout(() => reject(silent()), limitMs);
  });
  try {
    return await Promise.race([work(), late]);
  } catch (error) {
    if (!browser.connected) throw new BrowserLostError("ended", "the browser ended while it was printing", error);
    if (error instanceof TimeoutError) throw silent();
    // A page that crashes shows itself by an unanswered command first, by its own event after.
    if (error instanceof ProtocolError) throw new BrowserLostError("ended", `the browser's page failed while printing: ${error.message}`, error);
    throw error;
  } finally {
    clearTimeout(timer);
  }
}
