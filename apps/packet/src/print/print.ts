import type { Browser, Page } from "puppeteer-core";
import { fixVariable } from "./determinism.js";
import { EnvironmentError } from "./environment-error.js";
import { inspectPdf } from "./inspect-pdf.js";
import { PrintError } from "./print-error.js";

/** One document to print. */
export interface PrintRequest {
  /** Whole document; everything it needs is inside it (styles, data: fonts, SVG). */
  readonly html: string;
  /** Written into the PDF's two date fields (UTC, whole seconds). */
  readonly date: Date;
  /** A text that must stand in the document when it is printed. */
  readonly expectText: string;
  /** For the whole print, in milliseconds; 60 000 unless told. */
  readonly timeoutMs?: number;
}

/** A page that loads nothing: scripts off, offline, every request refused and noted. */
export interface SealedPage {
  readonly page: Page;
  /** Addresses the current document asked for. */
  readonly asked: string[];
}

/** Opens a sealed page. */
export async function sealPage(browser: Browser): Promise<SealedPage> {
  const page = await browser.newPage();
  const asked: string[] = [];
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
  return { page, asked };
}

/** Prints on a page of its own and closes it. See {@link printOn}. */
export async function printPdf(browser: Browser, request: PrintRequest): Promise<Uint8Array> {
  const sealed = await sealPage(browser);
  try {
    return await printOn(sealed, request);
  } finally {
    await sealed.page.close();
  }
}

/**
 * Prints one document: tagged, with outline, page sizes from its own CSS, and checks the result before handing it over.
 * Throws PrintError when the document left its page, asked for anything, or lacks the expected text; EnvironmentError when the
 * browser took too long or wrote a PDF without an embedded font.
 */
export async function printOn(sealed: SealedPage, request: PrintRequest): Promise<Uint8Array> {
  const limit = request.timeoutMs ?? 60_000;
  let timer: NodeJS.Timeout | undefined;
  const late = new Promise<never>((_resolve, reject) => {
    timer = setTimeout(() => reject(new EnvironmentError(`the browser did not finish printing within ${limit} ms`)), limit);
  });
  try {
    return await Promise.race([printAndCheck(sealed, request, limit), late]);
  } finally {
    clearTimeout(timer);
  }
}

async function printAndCheck({ page, asked }: SealedPage, request: PrintRequest, limit: number): Promise<Uint8Array> {
  asked.length = 0;
  await page.setContent(request.html, { waitUntil: "load", timeout: limit });
  const seen = (await page.evaluate(look(squeeze(request.expectText)))) as Look;
  assertStayed(page, seen.address, asked);
  if (seen.failedFonts.length > 0) throw new PrintError(`fonts of the document did not load: ${seen.failedFonts.join(", ")}`);
  if (request.expectText.trim() === "") throw new PrintError("no text was named that must stand in the document");
  if (!seen.hasText) throw new PrintError(`the document lacks the text "${request.expectText}"`);

  const raw = await page.pdf({ tagged: true, outline: true, preferCSSPageSize: true, printBackground: true, waitForFonts: true, timeout: limit });
  assertStayed(page, (await page.evaluate("location.href")) as string, asked);
  const facts = inspectPdf(raw);
  if (facts.pages === 0) throw new PrintError("the browser wrote a PDF without pages");
  if (facts.embeddedFonts === 0) {
    throw new EnvironmentError("the browser printed no text: it found no font at all", {
      hint: "install a font package (on Debian: apt install fontconfig fonts-dejavu-core) or use the bundled browser",
    });
  }
  return fixVariable(raw, request.date);
}

interface Look {
  readonly address: string;
  readonly hasText: boolean;
  readonly failedFonts: readonly string[];
}

// A string, not a function: it runs in the browser, whose globals this program's compiler does not know.
const look = (expected: string) => `document.fonts.ready.then(() => ({
  address: location.href,
  hasText: (document.body ? document.body.textContent : "").replace(/\\s+/g, " ").includes(${JSON.stringify(expected)}),
  failedFonts: [...document.fonts].filter((face) => face.status === "error").map((face) => face.family + " " + face.weight),
}))`;

function assertStayed(page: Page, address: string, asked: readonly string[]): void {
  if (asked.length > 0) throw new PrintError(`the document asked for ${asked[0]}; a packet must hold everything it shows`);
  if (address !== "about:blank" || page.url() !== "about:blank") throw new PrintError(`the document left its page for ${address}`);
}

function squeeze(text: string): string {
  return text.replace(/\s+/g, " ").trim();
}
