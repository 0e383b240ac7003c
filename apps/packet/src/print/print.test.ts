import { mkdtemp, rm, writeFile } from "node:fs/promises";
import { createServer, type Server } from "node:http";
import type { AddressInfo } from "node:net";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
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
