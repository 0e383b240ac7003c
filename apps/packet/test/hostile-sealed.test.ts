import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { createServer, type Server } from "node:http";
import type { AddressInfo } from "node:net";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, expect, it } from "vitest";
import { findBrowser } from "../src/print/browser.js";
import { inspectPdf } from "../src/print/inspect-pdf.js";
import { launchBrowser, type RunningBrowser } from "../src/print/launch.js";
import { printOn, sealPage } from "../src/print/print.js";

// The page below has no policy of its own: what holds is the sealing alone.
const scratch = mkdtempSync(join(tmpdir(), "branchwork-sealed-"));
const hits: string[] = [];
let server: Server;
let origin: string;
let running: RunningBrowser;

beforeAll(async () => {
  server = createServer((request, response) => {
    hits.push(request.url ?? "");
    response.setHeader("access-control-allow-origin", "*");
    response.end("reached");
  });
  server.on("connection", () => hits.push("connection"));
  await new Promise<void>((ready) => server.listen(0, "127.0.0.1", ready));
  origin = `http://127.0.0.1:${(server.address() as AddressInfo).port}`;
  running = await launchBrowser(await findBrowser({}), () => undefined);
  writeFileSync(join(scratch, "secret.txt"), "the secret of the disk");
  writeFileSync(join(scratch, "secret.svg"), '<svg xmlns="http://www.w3.org/2000/svg"><text>the secret of the disk</text></svg>');
});
afterAll(async () => {
  await running.close();
  server.close();
  rmSync(scratch, { recursive: true });
});

const page = (body: string) => `<!doctype html><html lang="en"><head><title>Sealed</title></head><body><h1>Sealed</h1>${body}</body></html>`;
const request = { date: new Date("2026-01-01T00:00:00Z"), expectText: "Sealed", timeoutMs: 20_000 };

const TRIES: readonly (readonly [string, (to: string) => string])[] = [
  ["fetch", (to) => `<script>fetch("${to}").then(() => document.body.append("ran"))</script>`],
  ["script from elsewhere", (to) => `<script src="${to}"></script>`],
  ["module", (to) => `<script type="module">import "${to}"</script>`],
  ["socket", (to) => `<script>new WebSocket("${to.replace("http", "ws")}")</script>`],
  ["event stream", (to) => `<script>new EventSource("${to}")</script>`],
  ["beacon", (to) => `<script>navigator.sendBeacon("${to}")</script>`],
  ["peer connection", (to) => `<script>new RTCPeerConnection({iceServers:[{urls:"stun:${to.slice(7)}"}]}).createDataChannel("x")</script>`],
  ["worker", (to) => `<script>new Worker(URL.createObjectURL(new Blob(["fetch('${to}')"])))</script>`],
  ["service worker", (to) => `<script>navigator.serviceWorker.register("${to}")</script>`],
  ["image", (to) => `<img src="${to}" srcset="${to} 2x">`],
  ["handler", (to) => `<img src="data:," onerror="fetch('${to}')"><svg onload="fetch('${to}')"></svg>`],
  ["style url", (to) => `<style>h1{background:url(${to});list-style:url(${to});cursor:url(${to}),auto}</style>`],
  ["style import", (to) => `<style>@import "${to}";</style>`],
  [
    "link",
    (to) => `<link rel="stylesheet" href="${to}"><link rel="preload" as="image" href="${to}"><link rel="prefetch" href="${to}"><link rel="icon" href="${to}">`,
  ],
  ["frame", (to) => `<iframe src="${to}"></iframe>`],
  ["frame with a document", (to) => `<iframe srcdoc="<img src='${to}'><script>fetch('${to}')</script>"></iframe>`],
  ["object and embed", (to) => `<object data="${to}"></object><embed src="${to}">`],
  ["sound", (to) => `<audio src="${to}" autoplay></audio><video poster="${to}" src="${to}"></video>`],
  ["drawing", (to) => `<svg><image href="${to}"/><use href="${to}#a"/><filter><feImage href="${to}"/></filter></svg>`],
  [
    "form sent by itself",
    (to) => `<form action="${to}" method="post"><input autofocus onfocus="form.submit()"></form><script>document.forms[0].submit()</script>`,
  ],
  ["move", (to) => `<script>location = "${to}"</script>`],
  ["refresh", (to) => `<meta http-equiv="refresh" content="0;url=${to}">`],
  ["base", (to) => `<base href="${to}/"><img src="a.png">`],
];

it.each(TRIES)("a page that tries the network by %s reaches nothing", async (_what, made) => {
  const sealed = await sealPage(running.browser);
  try {
    const outcome = await printOn(sealed, { html: page(made(`${origin}/x`)), ...request }).then(
      (pdf) => ({ pdf }),
      (error: unknown) => ({ error }),
    );
    // Refused because something was asked for, or printed because nothing could ask.
    if ("error" in outcome) expect(String(outcome.error)).toMatch(/asked for|left its page|Navigation|frame|detached|navigat/i);
    else expect(inspectPdf(outcome.pdf).pages).toBe(1);
    await new Promise((resolve) => setTimeout(resolve, 50));
    expect(hits).toEqual([]);
  } finally {
    await sealed.page.close().catch(() => undefined); // a page that was left may be gone
  }
});

it("no script runs, whatever form it has", async () => {
  const sealed = await sealPage(running.browser);
  const mark = "document.documentElement.setAttribute('ran','1')";
  await sealed.page.setContent(
    page(
      `<script>${mark}</script><script type="module">${mark}</script><img src="data:," onerror="${mark}"><svg onload="${mark}"><script>${mark}</script></svg><style onload="${mark}">a{}</style><details open ontoggle="${mark}">x</details><input autofocus onfocus="${mark}">`,
    ),
  );
  await new Promise((resolve) => setTimeout(resolve, 100));
  expect(await sealed.page.evaluate("document.documentElement.hasAttribute('ran')")).toBe(false);
  await sealed.page.close();
});

it("no file of the disk comes into the print", async () => {
  for (const name of ["secret.txt", "secret.svg"]) {
    const to = `file://${join(scratch, name)}`;
    const sealed = await sealPage(running.browser);
    const printed = await printOn(sealed, {
      html: page(
        `<img src="${to}"><iframe src="${to}"></iframe><object data="${to}"></object><embed src="${to}"><link rel="stylesheet" href="${to}"><svg><use href="${to}#x"/></svg>`,
      ),
      ...request,
    }).then(
      (pdf) => Buffer.from(pdf).toString("latin1"),
      (error: unknown) => String(error),
    );
    expect(printed).not.toContain("the secret of the disk");
    expect(await sealed.page.evaluate("document.body.innerText")).not.toContain("secret");
    await sealed.page.close();
  }
});

it("the server of this test can be reached at all", async () => {
  expect(await (await fetch(`${origin}/alive`)).text()).toBe("reached");
  expect(hits).toContain("/alive");
});
