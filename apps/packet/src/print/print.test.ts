import { mkdtemp, rm, writeFile } from "node:fs/promises";
import { createServer, type Server } from "node:http";
import type { AddressInfo } from "node:net";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { packetFonts } from "../fonts.js";
import { findBrowser } from "./browser.js";
import { EnvironmentError } from "./environment-error.js";
import { inspectPdf } from "./inspect-pdf.js";
import { launchBrowser } from "./launch.js";
import { printPdf } from "./print.js";
import { PrintError } from "./print-error.js";
import { openPrinter, type Printer } from "./printer.js";

const date = new Date("2026-03-04T05:06:07Z");
const html = (body: string, head = "") =>
  `<!doctype html><html lang="en"><head><meta charset="utf-8"><title>Sheet</title><style>@page{size:Letter}</style>${head}</head><body><main>${body}</main></body></html>`;
const good = html('<h1>Packet E-101</h1><p>½ in EMT, 30 A</p><p style="break-before:page">Second sheet</p><table><tr><th>Circuit</th><td>1</td></tr></table>');
/** Keeps a failing test's report short: a PDF that should not have been is named by its size. */
const outcome = (pdf: Promise<Uint8Array>) => pdf.then((bytes) => `printed ${bytes.length} bytes`);
const request = { date, expectText: "Packet E-101" };

let printer: Printer;
let server: Server;
let hits: string[];
let origin: string;

beforeAll(async () => {
  hits = [];
  server = createServer((incoming, reply) => {
    hits.push(incoming.url ?? "");
    reply.end("reached");
  });
  server.on("upgrade", (incoming, socket) => {
    hits.push(incoming.url ?? "");
    socket.destroy();
  });
  await new Promise<void>((ready) => server.listen(0, "127.0.0.1", ready));
  origin = `http://127.0.0.1:${(server.address() as AddressInfo).port}`;
  printer = await openPrinter({ warn: () => undefined });
});
afterAll(async () => {
  await printer.close();
  server.close();
});

describe("print", () => {
  it("writes tagged pages with embedded fonts, dated as told", async () => {
    const pdf = await printer.print(good, request);
    expect(inspectPdf(pdf)).toMatchObject({ pages: 2, tagged: true });
    expect(inspectPdf(pdf).embeddedFonts).toBeGreaterThan(0);
    expect(Buffer.from(pdf).toString("latin1")).toContain("/CreationDate (D:20260304050607+00'00')");
  });

  it("gives the same bytes for the same document: page reused, pages side by side, another browser", async () => {
    const first = await printer.print(good, request);
    await printer.print(html(`<h1>Another</h1>${"<p>line</p>".repeat(200)}`), { date, expectText: "Another" });
    const [second, third] = await Promise.all([printer.print(good, request), printer.print(good, request)]);
    const other = await openPrinter({ warn: () => undefined });
    const fourth = await other.print(good, request).finally(() => other.close());
    for (const again of [second, third, fourth]) expect(Buffer.compare(Buffer.from(first), Buffer.from(again))).toBe(0);
    const changed = await printer.print(good.replace("30 A", "40 A"), request);
    expect(Buffer.compare(Buffer.from(first), Buffer.from(changed))).not.toBe(0);
  });

  it("refuses a document without the expected text, or with no expected text named", async () => {
    await expect(outcome(printer.print(html("<p>something else</p>"), request))).rejects.toThrow(PrintError);
    await expect(outcome(printer.print(good, { date, expectText: " " }))).rejects.toThrow(PrintError);
  });

  it.each([
    ["hidden in print", "@media print{h1{display:none}}"],
    ["hidden always", "h1{display:none}"],
    ["made invisible", "@media print{h1{visibility:hidden}}"],
    ["skipped by the layout", "h1{content-visibility:hidden}"],
    ["without size", "h1{font-size:0}"],
    ["without colour", "h1{color:transparent}"],
    ["off the page", "h1{position:absolute;left:-2000px}"],
  ])("refuses a document whose expected text is %s", async (_how, css) => {
    await expect(outcome(printer.print(good.replace("</head>", `<style>${css}</style></head>`), request))).rejects.toThrow(PrintError);
  });

  it("finds the expected text as printed: wrapped, ligatured, upper-cased, in SVG, half transparent, turned", async () => {
    const title = "Office fit-out \u2013 affluent caf\u00e9, \u00bd in \u00d7 4 \u03a9";
    for (const [css, text] of [
      ["h1{width:3em}", title],
      ["h1{text-transform:uppercase}", title],
      ["h1{opacity:.5}", title],
      ["h1{transform:rotate(2deg)}", title],
      ["h1{overflow-wrap:anywhere;width:1em}", title],
    ] as const)
      expect(inspectPdf(await printer.print(html(`<style>${css}</style><h1>${text}</h1>`), { date, expectText: title })).pages, css).toBeGreaterThan(0);
    const drawn = html(`<svg viewBox="0 0 400 40"><text x="10" y="20">${title}</text></svg>`);
    expect(inspectPdf(await printer.print(drawn, { date, expectText: title })).pages).toBe(1);
  });

  it("reads glyphs that stand for a character in another form: small capitals, table figures, fractions, superscripts, ligatures", async () => {
    const { faces } = await packetFonts();
    const face = faces.find(({ weight, unicodeRange }) => weight === 400 && unicodeRange === undefined);
    const forms =
      "font-family:F;font-variant:small-caps tabular-nums lining-nums slashed-zero diagonal-fractions ordinal discretionary-ligatures historical-ligatures";
    const styled = html(
      `<style>@font-face{font-family:F;src:url(data:font/woff2;base64,${face?.base64})}h1,p{${forms}}p{font-variant-position:super}</style><h1>Fifth office 100 A, 1/2 in 0123456789 ct st</h1><p>Circuit 2 1st 30 A first act</p>`,
    );
    for (const expectText of ["Fifth office 100 A, 1/2 in 0123456789 ct st", "Circuit 2 1st 30 A first act"]) {
      expect(inspectPdf(await printer.print(styled, { date, expectText })).pages).toBe(1);
    }
  });

  it("refuses a document with a character no font can draw: it would print as an empty box", async () => {
    const boxed = printer.print(good.replace("30 A", "30 A\u{1F9FF}\uE123"), request);
    await expect(outcome(boxed)).rejects.toThrow(/no font/);
    await expect(outcome(boxed)).rejects.toThrow(PrintError);
  });

  it("prints the characters that are meant to show nothing", async () => {
    expect(inspectPdf(await printer.print(good.replace("30 A", "30\u00a0A\u00ad\u200b\u2060\u200d\t\ufeff"), request)).pages).toBe(2);
  });

  it("keeps a title that reads like one of the browser's structure ids", async () => {
    const pdf = await printer.print(good.replace("<title>Sheet", "<title>node00000907"), request);
    expect(Buffer.from(pdf).toString("latin1")).toContain("/Title (node00000907)");
  });

  it("prints each named page in its own size, portrait, landscape and tabloid in one PDF", async () => {
    const head = "<style>@page wide{size:Letter landscape;margin:.5in}@page tabloid{size:17in 11in;margin:0}.w{page:wide}.t{page:tabloid}</style>";
    const mixed = html('<h1>Packet E-101</h1><section class="w">plan</section><section class="t">one-line</section><section>notes</section>', head);
    // A letter sheet is 8.5 in × 11 in, a tabloid (ANSI B) 11 in × 17 in; a point is 1/72 in.
    expect(inspectPdf(await printer.print(mixed, request)).sizes).toEqual([
      [8.5 * 72, 11 * 72],
      [11 * 72, 8.5 * 72],
      [17 * 72, 11 * 72],
      [8.5 * 72, 11 * 72],
    ]);
  });

  it("takes title, language and outline from the document and tells the viewer to show the title", async () => {
    const headed = html('<h1>Packet E-101</h1><h2>Load</h2><h3>½ in “EMT”</h3><h2 style="break-before:page">Plan</h2>')
      .replace("<title>Sheet", "<title>Wiring – (sheet)")
      .replace('lang="en"', 'lang="en-US"');
    expect(inspectPdf(await printer.print(headed, request))).toMatchObject({
      title: "Wiring – (sheet)",
      language: "en-US",
      showsTitle: true,
      tagged: true,
      outline: [
        { level: 1, title: "Packet E-101", page: 1 },
        { level: 2, title: "Load", page: 1 },
        { level: 3, title: "½ in “EMT”", page: 1 },
        { level: 2, title: "Plan", page: 2 },
      ],
    });
  });

  it.each([
    ["title", good.replace("Sheet", ""), /no title/],
    ["language", good.replace(' lang="en"', ""), /language/],
  ])("refuses a document without a %s", async (_what, lacking, message) => {
    const printed = outcome(printer.print(lacking, request));
    await expect(printed).rejects.toThrow(PrintError);
    await expect(printed).rejects.toThrow(message);
  });

  it("keeps links inside the document as links to its pages", async () => {
    const links = '<a href="#plan">plan</a> <a href="#E-101.a">sheet</a> <a href="#two%20words">words</a> <a href="https://example.test/x">out</a>';
    const linked = html(`<h1 id="top">Packet E-101</h1><p>${links}</p><section id="plan" style="break-before:page">plan</section>
      <section id="E-101.a" style="break-before:page">sheet <b id="two words">words</b> <a href="#top">back</a></section>`);
    expect(inspectPdf(await printer.print(linked, request)).links).toMatchObject([
      { page: 1, toPage: 2, place: "plan" },
      { page: 1, toPage: 3, place: "E-101.a" },
      { page: 1, toPage: 3, place: "two%20words" },
      { page: 1, address: "https://example.test/x" },
      { page: 3, toPage: 1, place: "top" },
    ]);
  });

  it.each(["#absent", "#", ""])("refuses a document with a link to nowhere: %j", async (href) => {
    await expect(outcome(printer.print(html(`<h1>Packet E-101</h1><a href="${href}">there</a>`), request))).rejects.toThrow(/link/);
  });

  it("runs no script of the document", async () => {
    const scripted = html('<h1>Packet E-101</h1><script>document.querySelector("h1").textContent="changed"</script>');
    expect(inspectPdf(await printer.print(scripted, request)).pages).toBe(1);
  });

  it.each([
    ["image", (to: string) => `<img src="${to}">`],
    ["style sheet", (to: string) => `<link rel="stylesheet" href="${to}">`],
    ["import and background", (to: string) => `<style>@import url(${to}); main{background:url(${to})}</style>`],
    ["font", (to: string) => `<style>@font-face{font-family:F;src:url(${to})} h1{font-family:F}</style>`],
    ["frame", (to: string) => `<iframe src="${to}"></iframe>`],
    ["object", (to: string) => `<object data="${to}"></object>`],
    ["svg image", (to: string) => `<svg><image href="${to}"/></svg>`],
    ["refresh", (to: string) => `<meta http-equiv="refresh" content="0;url=${to}">`],
    ["video", (to: string) => `<video src="${to}" autoplay></video>`],
  ])("refuses a document that asks the network for a %s, and nothing gets out", async (what, hostile) => {
    await expect(
      outcome(printer.print(html(`<h1>Packet E-101</h1>${hostile(`${origin}/${what.replaceAll(" ", "-")}`)}`), { ...request, timeoutMs: 20_000 })),
    ).rejects.toThrow(PrintError);
    expect(hits).toEqual([]);
  });

  it("lets neither script, prefetch nor socket out", async () => {
    const silent = `<link rel="dns-prefetch" href="${origin}/dns"><link rel="preconnect" href="${origin}"><script>fetch("${origin}/fetch");navigator.sendBeacon("${origin}/b");new WebSocket("${origin.replace("http", "ws")}/ws")</script>`;
    await printer.print(html(`<h1>Packet E-101</h1>${silent}`), request);
    expect(hits).toEqual([]);
  });

  it("the loopback server of this test can be reached at all", async () => {
    expect(await (await fetch(`${origin}/alive`)).text()).toBe("reached");
    expect(hits).toEqual(["/alive"]);
    hits.length = 0;
  });

  it("cannot read a local file: a frame of one prints as a frame of none", async () => {
    const framed = (file: string) => printer.print(html(`<h1>Packet E-101</h1><iframe src="file://${file}"></iframe>`), request);
    const [there, absent] = [await framed("/etc/passwd"), await framed("/etc/absent")];
    expect(Buffer.compare(Buffer.from(there), Buffer.from(absent))).toBe(0);
  });

  it("still prints after all that", async () => {
    expect(inspectPdf(await printer.print(good, request)).pages).toBe(2);
  });

  it("gives up when its time is over", async () => {
    await expect(outcome(printer.print(good, { ...request, timeoutMs: 1 }))).rejects.toThrow(EnvironmentError);
  });

  it("notices a browser that finds no font", async () => {
    const chosen = await findBrowser({});
    const empty = await mkdtemp(join(tmpdir(), "branchwork-no-fonts-"));
    await writeFile(join(empty, "fonts.conf"), `<?xml version="1.0"?><fontconfig><dir>${empty}</dir></fontconfig>`);
    const running = await launchBrowser({ ...chosen, env: { ...chosen.env, FONTCONFIG_PATH: empty } }, () => undefined);
    try {
      await expect(outcome(printPdf(running.browser, { html: good, ...request }))).rejects.toThrow(/no font/);
    } finally {
      await running.close();
      await rm(empty, { recursive: true });
    }
  });

  it.runIf(process.getuid?.() === 0)("warns once, in one line, that root means no sandbox", async () => {
    const warnings: string[] = [];
    await (await openPrinter({ warn: (message) => warnings.push(message) })).close();
    expect(warnings).toHaveLength(1);
    expect(warnings[0]).not.toContain("\n");
  });

  it("says what a browser that dies at once had to say", async () => {
    const dir = await mkdtemp(join(tmpdir(), "branchwork-dead-"));
    const dead = join(dir, "dead");
    await writeFile(dead, "#!/bin/sh\necho 'FATAL: No usable sandbox!' >&2\nexit 1\n", { mode: 0o755 });
    try {
      const opened = openPrinter({ browser: dead, warn: () => undefined });
      await expect(opened).rejects.toMatchObject({
        name: "EnvironmentError",
        message: expect.stringContaining("No usable sandbox"),
        hint: expect.stringContaining("user namespaces"),
      });
    } finally {
      await rm(dir, { recursive: true });
    }
  });

  it("names the browser and its version", () => {
    expect(printer.version).toMatch(/Chrome\/\d+\./);
  });
});
