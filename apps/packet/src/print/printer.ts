import { findBrowser } from "./browser.js";
import { launchBrowser, type Signals } from "./launch.js";
import { limitOf, printOn, type SealedPage, sealPage } from "./print.js";
import { withBrowser } from "./with-browser.js";

/** What a print needs besides the document: see PrintRequest. */
export interface PrintOptions {
  readonly date: Date;
  readonly expectText: string;
  readonly timeoutMs?: number;
}

/** A browser ready to print, one document after another or several at once. */
export interface Printer {
  /** @returns the PDF, checked, and identical for identical input under one browser version. Throws BrowserLostError when the browser ended or was silent too long. */
  print(html: string, options: PrintOptions): Promise<Uint8Array>;
  /** The browser's name and version: PDF bytes are comparable only under the same one. */
  readonly version: string;
  /** Whether the browser still runs. */
  readonly connected: boolean;
  /** Ends the browser in order. */
  close(): Promise<void>;
  /** Ends it at once. */
  kill(): Promise<void>;
}

/** How a printer is opened. */
export interface PrinterOptions {
  /** Names a browser program. */
  readonly browser?: string;
  /** Receives one-line messages for the person at the terminal. */
  readonly warn: (message: string) => void;
  /** A reused page is the fastest way to print; its memory grows by about 1 MB a document, so it is replaced after so many (50 unless told). */
  readonly printsPerPage?: number;
  /** "program" when the program ends in order on SIGINT and SIGTERM by itself; "browser" unless told. */
  readonly signals?: Signals;
}

/** Finds and starts the browser. */
export async function openPrinter({ browser: named, warn, printsPerPage = 50, signals }: PrinterOptions): Promise<Printer> {
  const running = await launchBrowser(await findBrowser({ named }), warn, signals);
  const { browser } = running;
  const idle: { sealed: SealedPage; prints: number; cleared: Promise<unknown> }[] = [];

  async function onPage(html: string, options: PrintOptions): Promise<Uint8Array> {
    const slot = idle.pop() ?? { sealed: await sealPage(browser), prints: 0, cleared: Promise.resolve() };
    const { page } = slot.sealed;
    let pdf: Uint8Array;
    try {
      await slot.cleared;
      pdf = await printOn(slot.sealed, { html, ...options });
    } catch (error) {
      page.close().catch(() => undefined); // the print's own error is the one to report
      throw error;
    }
    slot.prints += 1;
    if (slot.prints < printsPerPage) {
      // A new document, so that nothing of this one (a delayed refresh, a policy) can touch the next. The caller need not wait for it.
      slot.cleared = page.goto("about:blank", { timeout: 10_000 });
      slot.cleared.catch(() => undefined); // met by the next print on this page, or nobody's concern once the browser is closed
      idle.push(slot);
    } else {
      await page.close();
    }
    return pdf;
  }

  return {
    version: await browser.version(),
    get connected() {
      return browser.connected;
    },
    close: running.close,
    kill: running.kill,
    print: (html, options) => withBrowser(browser, limitOf(options), () => onPage(html, options)),
  };
}
