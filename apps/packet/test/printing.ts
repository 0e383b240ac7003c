import { fileURLToPath } from "node:url";
import type { PriceBook } from "@branchwork/engine";
import { composePacket, type Packet, type PacketSet, type Paper, renderHtml } from "@branchwork/sheets";
import type { Browser } from "puppeteer-core";
import { afterAll, beforeAll } from "vitest";
import { packetFonts } from "../src/fonts.js";
import { type Loaded, loadDesign } from "../src/load-design.js";
import { findBrowser } from "../src/print/browser.js";
import { launchBrowser, type RunningBrowser } from "../src/print/launch.js";
import { openPrinter, type Printer } from "../src/print/printer.js";

const FIXTURES = fileURLToPath(new URL("../../../fixtures/", import.meta.url));

/** The day all packets of the tests are made on. */
export const DATE = "2026-11-25";

/** A fixture job, designed, under an overlay of the fixtures where one is named. */
export const loadFixture = (job: string, overlay?: string | null): Promise<Loaded> =>
  loadDesign(`${FIXTURES}jobs/${job}.yaml`, overlay == null ? {} : { overlay: `${FIXTURES}overlays/${overlay}.yaml` });

export const packetOf = (
  { design, overlay, targets }: Loaded,
  of: { readonly set?: PacketSet; readonly paper?: Paper; readonly prices?: PriceBook } = {},
): Packet => composePacket({ design, overlay, targets, date: DATE, ...of });

export const htmlOf = async (packet: Packet): Promise<string> => renderHtml({ packet, fonts: await packetFonts() });

/** A printer for all the tests of a file; to be called once, outside them. */
export function printing(): {
  readonly html: (html: string, title: string) => Promise<Uint8Array>;
  readonly packet: (packet: Packet) => Promise<Uint8Array>;
} {
  let printer: Printer;
  beforeAll(async () => {
    printer = await openPrinter({ warn: () => undefined, printsPerPage: 8 });
  }, 60_000);
  afterAll(() => printer?.close());
  const html = (text: string, title: string) => printer.print(text, { date: new Date(`${DATE}T00:00:00Z`), expectText: title });
  return { html, packet: async (packet) => html(await htmlOf(packet), packet.title) };
}

/** A browser for all the tests of a file; to be called once, outside them. */
export function browsing(): { readonly browser: Browser } {
  let running: RunningBrowser;
  beforeAll(async () => {
    running = await launchBrowser(await findBrowser({}), () => undefined);
  }, 60_000);
  afterAll(() => running?.close());
  return {
    get browser() {
      return running.browser;
    },
  };
}
