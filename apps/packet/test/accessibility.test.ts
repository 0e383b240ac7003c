import { readdir } from "node:fs/promises";
import { createRequire } from "node:module";
import { basename } from "node:path";
import { PACKET_SETS, type PacketSet, type Paper } from "@branchwork/sheets";
import type { AxeResults } from "axe-core";
import type { Page } from "puppeteer-core";
import { beforeAll, describe, expect, it } from "vitest";
import { inspectPdf } from "../src/print/inspect-pdf.js";
import { browsing, htmlOf, loadFixture, packetOf, printing } from "./printing.js";

const { source } = createRequire(import.meta.url)("axe-core") as { readonly source: string };
const names = (await readdir(new URL("../../../fixtures/jobs/", import.meta.url)))
  .filter((name) => name.endsWith(".yaml"))
  .map((name) => basename(name, ".yaml"))
  .sort();
const CASES: readonly { readonly name: string; readonly set: PacketSet }[] = [
  ...names.map((name) => ({ name, set: "submittal" as const })),
  ...PACKET_SETS.filter((set) => set !== "submittal").map((set) => ({ name: "garage-subpanel", set })),
];

const packetAs = async (name: string, set: PacketSet, paper: Paper = "letter") => packetOf(await loadFixture(name), { set, paper });

const here = browsing();
const printer = printing();
let page: Page;
beforeAll(async () => {
  page = await here.browser.newPage();
});

/** Faults axe finds in a document, each with the places it is at. */
async function faults(html: string): Promise<readonly string[]> {
  await page.setContent(html, { waitUntil: "load" });
  await page.evaluate(source);
  const { violations } = (await page.evaluate("axe.run(document, { resultTypes: ['violations'] })")) as AxeResults;
  return violations.map(({ id, help, nodes }) => `${id}: ${help}: ${nodes.slice(0, 3).map(({ html }) => html.slice(0, 120))}`);
}

describe("a packet's page", () => {
  it.each(CASES)("$name, $set set, has no fault axe can find", async ({ name, set }) => {
    expect(await faults(await htmlOf(await packetAs(name, set)))).toEqual([]);
  });

  it("would be found faulty without its language, its alt text or its order of headings", async () => {
    const html = await htmlOf(await packetAs("hot-tub", "submittal"));
    const found = await faults(
      html
        .replace(' lang="en-US"', "")
        .replace("<h2", "<h5")
        .replace(/aria-labelledby="one-line-1-t one-line-1-d"/, "")
        .replace(/<title id="one-line-1-t">[^<]*<\/title><desc[^>]*>[^<]*<\/desc>/, ""),
    );
    expect(found.map((fault) => fault.split(":")[0])).toEqual(expect.arrayContaining(["html-has-lang", "heading-order", "svg-img-alt"]));
  });

  it("tells each drawing in words that name what it shows", async () => {
    const html = await htmlOf(await packetAs("rv-50-carport", "submittal"));
    const told = [...html.matchAll(/<svg [^>]*aria-labelledby="(\S+) (\S+)"[^>]*>/g)].map(([, title, words]) => ({
      title: new RegExp(`<title id="${title}">([^<]+)</title>`).exec(html)?.[1] ?? "",
      words: new RegExp(`<desc id="${words}">([^<]+)</desc>`).exec(html)?.[1] ?? "",
    }));
    expect(told.length).toBe(html.match(/<svg /g)?.length);
    for (const { title, words } of told) {
      expect(title).not.toBe("");
      expect(words.length).toBeGreaterThan(title.length + 20);
    }
    expect(told.map(({ words }) => words).join(" ")).toMatch(/J1.*RV outlet at carport/);
  });
});

describe("links", () => {
  it.each(["garage-subpanel", "rv-50-carport"])(
    "%s: lead from the index to each sheet, and from repeated numbers to the line that works them",
    async (name) => {
      const html = await htmlOf(await packetAs(name, "submittal"));
      const sheets = [...html.matchAll(/<section class="sheet[^"]*" id="([^"]+)"/g)].map((m) => m[1]);
      const index = [...html.matchAll(/<li><b>[^<]*<\/b> <a href="#([^"]+)"/g)].map((m) => m[1]);
      expect(index).toEqual(sheets);
      const plain = (markup: string) => markup.replace(/<[^>]*>/g, "");
      const links = [...html.matchAll(/<a class="worked" href="#([^"]+)">(.*?)<\/a>/g)].map((m) => ({ to: m[1]!, says: plain(m[2]!) }));
      expect(links.length).toBeGreaterThan(10);
      for (const { to, says } of links) {
        const line = new RegExp(`<tr id="${to}">(.*?)</tr>`).exec(html)?.[1] ?? "";
        const result = plain(/<td class="result">= (.*?)<\/td>/.exec(line)?.[1] ?? "no such line");
        expect({ to, says }).toEqual({ to, says: expect.stringContaining(result) });
      }
      expect(new Set([...html.matchAll(/ id="([^"]+)"/g)].map((m) => m[1])).size).toBe(html.match(/ id="/g)?.length);
    },
  );
});

describe("the outline of the print", () => {
  it("names each sheet once, however many pages it takes, and leads to its first page", async () => {
    for (const paper of ["letter", "tabloid"] as const) {
      const html = await htmlOf(await packetAs("garage-subpanel", "submittal", paper));
      const titles = [...html.matchAll(/<h1 [^>]*>([^<]*)<\/h1>/g)].map((m) => m[1]);
      const { outline, links, pages } = inspectPdf(await printer.html(html, "Workshop"));
      const top = outline.filter(({ level }) => level === 1);
      expect(top.map(({ title }) => title.trim())).toEqual(titles);
      const at = top.map(({ page }) => page ?? 0);
      expect(at[0]).toBe(1);
      expect(at).toEqual([...new Set(at)].sort((a, b) => a - b));
      expect(pages).toBeGreaterThan(titles.length);
      expect(links.filter(({ page }) => page === 1).map(({ toPage }) => toPage)).toEqual(expect.arrayContaining(at));
    }
  });
});
