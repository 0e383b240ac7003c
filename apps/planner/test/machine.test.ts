import { readFile } from "node:fs/promises";
import { fileURLToPath } from "node:url";
import { afterAll, beforeAll, expect, test } from "vitest";
import { readPacket } from "../../packet/src/carried/read-packet.js";
import { inspectPdf } from "../../packet/src/print/inspect-pdf.js";
import { openPrinterPool, type PrinterPool } from "../../packet/src/print/printer-pool.js";
import { openPacketServer, type PacketServer } from "../../packet/src/serve/packet-server.js";
import { staticFiles } from "../../packet/src/serve/static-files.js";
import { Driven, startBrowser } from "./driven.js";
import { jobFile } from "./planner.js";
import { served } from "./served.js";

const JOB = jobFile("rv-50-carport");
const told: string[] = [];
let running: Awaited<ReturnType<typeof startBrowser>>;
let pool: PrinterPool;
let server: PacketServer;

beforeAll(async () => {
  running = await startBrowser();
  // What the browser's start says (of root, say) is of the machine, not of the server.
  pool = await openPrinterPool({ warn: () => undefined, printsPerPage: 8, signals: "program" });
  const files = await staticFiles(fileURLToPath(new URL("../dist", import.meta.url)));
  // A thread takes no TypeScript: the packet maker's own program has to be built.
  const maker = new URL("../../packet/dist/serve/packet-worker.js", import.meta.url);
  server = await openPacketServer({ port: 0, files, maker, print: pool.print, warn: (message) => told.push(message) });
});
afterAll(async () => {
  await running?.close();
  await server?.close();
  await pool?.close();
});

test("served by the packet maker: works under its policy, prints a PDF, and opens that PDF again", async () => {
  const reader = await Driven.open(running.browser, `http://127.0.0.1:${server.port}/`);
  await reader.openFile(JOB);
  await reader.settled();
  await reader.press("Packet");
  expect((await reader.paperText()).length).toBeGreaterThan(5000);
  const pdf = await reader.downloaded("PDF by this machine");
  expect(pdf.text.startsWith("%PDF-")).toBe(true);
  // Each set is the one chosen: the inspector's and the owner's carry what the clerk's does not.
  const sets: [string, string][] = [
    ["The inspector on site", "field"],
    ["Me, to keep", "owner"],
  ];
  for (const [says, set] of sets) {
    await reader.answer("Who is it for?", says);
    const file = await reader.downloaded("PDF by this machine");
    expect(file.name).toContain(`-${set}.pdf`);
    expect(file.text.startsWith("%PDF-")).toBe(true);
    expect((await readPacket(file.path)).manifest.set).toBe(set);
  }
  await reader.press("Jobs");
  await reader.press("New job");
  await reader.openFile(pdf.path);
  await reader.settled();
  await reader.press("7");
  expect(await reader.page.$eval("#job-text", (area) => (area as HTMLTextAreaElement).value)).toBe(await readFile(JOB, "utf8"));
  expect([...reader.errors, ...told]).toEqual([]);
  await reader.close();
});

test("served by another server: no PDF button; the three sets differ; a choice is found and taken by one press", async () => {
  const site = await served();
  const reader = await Driven.open(running.browser, site.url);
  await reader.openFile(JOB);
  await reader.settled();
  await reader.page.$eval("details.choices", (part) => {
    (part as HTMLDetailsElement).open = true;
  });
  await reader.press("Look for the cheapest");
  await reader.page.waitForFunction(() => document.querySelector(".choices table") !== null, { timeout: 60_000 });
  await reader.page.click(".choices table button");
  await reader.page.waitForFunction(() => document.querySelector(".choices table") === null);
  await reader.settled();
  expect(await reader.text()).toContain("The answers have changed since: look again.");
  await reader.press("Packet");
  const submittal = await reader.paperText();
  expect(await reader.text()).not.toContain("PDF by this machine");
  await reader.answer("Who is it for?", "Me, to keep");
  await reader.page.waitForFunction(
    (before) => {
      const now = document.querySelector("iframe")?.contentDocument?.body?.textContent ?? "";
      return now.length > 5000 && now !== before;
    },
    { timeout: 30_000 },
    submittal,
  );
  expect(await reader.paperText()).toContain("Owner's set");
  expect(reader.errors).toEqual([]);
  await reader.close();
  await site.close();
});

test("what Print prints is the preview page for page, however small it is shown, and the same as the file", async () => {
  const site = await served();
  const reader = await Driven.open(running.browser, site.url, { width: 360, height: 740 });
  await reader.openFile(JOB);
  await reader.settled();
  await reader.press("Packet");
  await reader.paperText();
  const file = await reader.downloaded("Packet (HTML)");
  const shown = await reader.page.$eval("iframe", (frame) => {
    const { documentElement, doctype, compatMode } = (frame as HTMLIFrameElement).contentDocument!;
    return doctype?.name === "html" && compatMode === "CSS1Compat" ? `<!doctype html>${documentElement.outerHTML}` : "";
  });
  expect(shown).toContain("zoom: 0."); // it is shown small
  const sheets = await reader.page.$eval("iframe", (frame) => (frame as HTMLIFrameElement).contentDocument!.querySelectorAll("section.sheet").length);
  const printed = async (html: string, tagged: boolean) => {
    const page = await running.browser.newPage();
    await page.setContent(html, { waitUntil: "load" });
    await page.evaluate(() => document.fonts.ready.then(() => undefined));
    const pdf = await page.pdf({ preferCSSPageSize: true, printBackground: true, tagged, outline: tagged });
    await page.close();
    return Buffer.from(pdf);
  };
  // The moment of printing is no part of the paper.
  const undated = (pdf: Buffer) => pdf.toString("latin1").replace(/\/(CreationDate|ModDate) \([^)]*\)/g, "");
  const facts = inspectPdf(await printed(shown, true));
  expect(facts.pages).toBeGreaterThanOrEqual(sheets);
  expect(facts.outline.filter(({ level }) => level === 1).length).toBe(sheets);
  expect(new Set(facts.sizes.map(String))).toEqual(new Set(["612,792"])); // US Letter: 8.5 × 11 in of 72 points
  // Untagged, for the tags number the elements, of which the preview has one more: its style for the screen.
  const [preview, whole] = [undated(await printed(shown, false)), undated(await printed(file.text, false))];
  expect(preview.length).toBeGreaterThan(100_000);
  expect(preview === whole).toBe(true);
  // The browser's own key prints the packet too.
  const pressed = await reader.page.evaluate(() => {
    const within = document.querySelector("iframe")!.contentWindow!;
    let prints = 0;
    within.print = () => {
      prints += 1;
    };
    const event = new KeyboardEvent("keydown", { key: "p", ctrlKey: true, cancelable: true, bubbles: true });
    document.body.dispatchEvent(event);
    return { prints, prevented: event.defaultPrevented };
  });
  expect(pressed).toEqual({ prints: 1, prevented: true });
  await reader.close();
  await site.close();
});
