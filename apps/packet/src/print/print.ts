import type { Browser, Page } from "puppeteer-core";
import { BrowserLostError } from "./browser-lost.js";
import { checkPrinted } from "./check-printed.js";
import { fixVariable } from "./determinism.js";
import { PrintError } from "./print-error.js";
import { withBrowser } from "./with-browser.js";

/** One document to print. */
export interface PrintRequest {
  /** Whole document; everything it needs is inside it (styles, data: fonts, SVG). */
  readonly html: string;
  /** Written into the PDF's two date fields (UTC, whole seconds). */
  readonly date: Date;
  /** A text that must be drawn on the pages (white space and case aside). */
  readonly expectText: string;
  /** For the whole print, in milliseconds; 60 000 unless told. */
  readonly timeoutMs?: number;
}

/** A page that loads nothing: scripts off, offline, every request refused and noted. */
export interface SealedPage {
  readonly page: Page;
  /** Addresses the current document asked for. */
  readonly asked: string[];
  /** Rejects when the page's process crashes; else never settles. */
  readonly crashed: Promise<never>;
}

/** Opens a sealed page. */
export async function sealPage(browser: Browser): Promise<SealedPage> {
  const page = await browser.newPage();
  const asked: string[] = [];
  const crashed = new Promise<never>((_resolve, reject) => {
    page.once("error", (error) => reject(new BrowserLostError("ended", "the browser's page crashed while printing", error)));
  });
  crashed.catch(() => undefined); // of interest only while a document is printed on it
  page.on("request", (request) => {
    const address = request.url();
    if (address.startsWith("data:") || address === "about:blank") {
      request.continue().catch(() => undefined); // fails only when the page is already gone
      return;
    }
    asked.push(address);
    request.abort("blockedbyclient").catch(() => undefined); // as above; the note above is what counts
  });
  await page.setJavaScriptEnabled(false);
  await page.setRequestInterception(true);
  await page.setOfflineMode(true);
  return { page, asked, crashed };
}

/** Prints on a page of its own and closes it, all within the request's time limit. See {@link printOn}. */
export function printPdf(browser: Browser, request: PrintRequest): Promise<Uint8Array> {
  return withBrowser(browser, limitOf(request), async () => {
    const sealed = await sealPage(browser);
    try {
      return await printOn(sealed, request);
    } finally {
      sealed.page.close().catch(() => undefined); // the browser is gone: so is the page
    }
  });
}

/** The time a request may take, in milliseconds. */
export function limitOf({ timeoutMs = 60_000 }: { readonly timeoutMs?: number }): number {
  return timeoutMs;
}

/**
 * Prints one document: tagged, with outline, page sizes from its own CSS, and checks the result before handing it over.
 * Throws PrintError when the document left its page, asked for anything, or the PDF is not as it must be (see checkPrinted);
 * EnvironmentError when the browser has no font, BrowserLostError when the page crashed. To be called inside withBrowser.
 */
export function printOn(sealed: SealedPage, request: PrintRequest): Promise<Uint8Array> {
  return Promise.race([printAndCheck(sealed, request, limitOf(request)), sealed.crashed]);
}

async function printAndCheck({ page, asked }: SealedPage, request: PrintRequest, limit: number): Promise<Uint8Array> {
  asked.length = 0;
  await page.setContent(paperOnly(request.html), { waitUntil: "load", timeout: limit });
  const seen = (await page.evaluate(look)) as Look;
  assertStayed(page, seen.address, [...asked, ...seen.embedded]);
  if (seen.failedFonts.length > 0) throw new PrintError(`fonts of the document did not load: ${seen.failedFonts.join(", ")}`);
  if (seen.astray.length > 0) throw new PrintError(`a link of the document leads nowhere: "${seen.astray[0]}"`);
  if (seen.language.trim() === "") throw new PrintError("the document does not name its language"); // the browser would put its own
  if (request.expectText.trim() === "") throw new PrintError("no text was named that must stand in the document");

  const raw = await page.pdf({ tagged: true, outline: true, preferCSSPageSize: true, printBackground: true, waitForFonts: true, timeout: limit });
  assertStayed(page, (await page.evaluate("location.href")) as string, asked);
  checkPrinted(raw, request.expectText);
  return fixVariable(raw, request.date);
}

/** The document, not shown on the screen: what is printed alone need not be laid out for it too, a fifth of the time. */
const paperOnly = (html: string): string => html.replace(/<head\b[^>]*>/i, (head) => `${head}<style>@media screen { body { display: none } }</style>`);

interface Look {
  readonly address: string;
  readonly language: string;
  readonly failedFonts: readonly string[];
  /** Addresses of what would be asked for only when it is laid out. */
  readonly embedded: readonly string[];
  /** References inside the document that no element answers: the browser drops such a link without a word. */
  readonly astray: readonly string[];
}

// A string, not a function: it runs in the browser, whose globals this program's compiler does not know.
// Fonts of what is not shown are not asked for, and a print does not wait for them.
const look = `Promise.allSettled([...document.fonts].map((face) => face.load())).then(() => {
  const plain = (place) => { try { return decodeURIComponent(place); } catch { return place; } };
  const found = (place) => place !== "" && [place, plain(place)].some((id) => document.getElementById(id) || document.getElementsByName(id).length > 0);
  return {
    address: location.href,
    language: document.documentElement.lang,
    failedFonts: [...document.fonts].filter((face) => face.status === "error").map((face) => face.family + " " + face.weight),
    embedded: [...document.querySelectorAll("object, embed")].map((part) => part.data || part.src || part.localName),
    astray: [...document.querySelectorAll("a[href]")].map((link) => link.getAttribute("href")).filter((to) => /^(#|$)/.test(to) && !found(to.slice(1))),
  };
})`;

function assertStayed(page: Page, address: string, asked: readonly string[]): void {
  if (asked.length > 0) throw new PrintError(`the document asked for ${asked[0]}; a packet must hold everything it shows`);
  if (address !== "about:blank" || page.url() !== "about:blank") throw new PrintError(`the document left its page for ${address}`);
}
