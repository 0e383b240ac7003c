import { findBrowser } from "./browser.js";
import { launchBrowser } from "./launch.js";
import { printOn, type SealedPage, sealPage } from "./print.js";

// A reused page is the fastest way to print; its memory grows by about 1 MB a document, so it is replaced now and then.
const printsPerPage = 50;

/** A browser ready to print, one document after another or several at once. */
export interface Printer {
  /** @returns the PDF, checked, and identical for identical input under one browser version. */
  print(html: string, options: { date: Date; expectText: string; timeoutMs?: number }): Promise<Uint8Array>;
  /** The browser's name and version: PDF bytes are comparable only under the same one. */
  readonly version: string;
  close(): Promise<void>;
}

/** Finds and starts the browser. `browser` names a program; `warn` receives one-line messages for the person at the terminal. */
export async function openPrinter({ browser: named, warn }: { browser?: string; warn: (message: string) => void }): Promise<Printer> {
  const running = await launchBrowser(await findBrowser({ named }), warn);
  const { browser } = running;
  const idle: { sealed: SealedPage; prints: number; cleared: Promise<unknown> }[] = [];

  return {
    version: await browser.version(),
    close: running.close,
    async print(html, options) {
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
    },
  };
}
