import { readdirSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { jobSchema, materialsCsv, materialsList, readJob } from "@branchwork/engine";
import { composePacket, flattenOverlay, overlaySchema, readOverlay, renderHtml, revisePacket } from "@branchwork/sheets";
import type { Browser, Page } from "puppeteer-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { printSummary } from "../src/batch/summary.js";
import { packetFonts } from "../src/fonts.js";
import { designText, InputError } from "../src/load-design.js";
import { findBrowser } from "../src/print/browser.js";
import { inspectPdf } from "../src/print/inspect-pdf.js";
import { launchBrowser, type RunningBrowser } from "../src/print/launch.js";
import { sealPage } from "../src/print/print.js";
import { openPrinter } from "../src/print/printer.js";
import { freeFields, HOSTILE, plainOf, poisoned, writtenSchema } from "./hostile-text.js";

const root = fileURLToPath(new URL("../../../fixtures/", import.meta.url));
const date = "2026-11-25";
const FONTS = { family: "Any", faces: [{ weight: 400, base64: "AAAA" }] };
const JOB = writtenSchema(jobSchema);
const OVERLAY = writtenSchema(overlaySchema);

const trees = readdirSync(`${root}jobs`).map((name) => ({ name, tree: plainOf(readFileSync(`${root}jobs/${name}`, "utf8")) as object }));
/** Every part of a job that holds free text and that no demonstration job has. */
const more = trees.map(({ name, tree }) => {
  const copy = structuredClone(tree) as Record<string, never> & { service: Record<string, unknown> };
  copy.service.managed ??= { setpoint: "40 A", citation: "listing" };
  copy.service.measured ??= { peak: "9000 VA", basis: "one-year", from: "utility" };
  copy.service.existing ??= { floor_area: "1800 ft2" };
  const existing = copy.service.existing as Record<string, unknown>;
  existing.heating ??= { name: "heat", load: "5 kW" };
  existing.cooling ??= { name: "cool", load: "5 kW" };
  existing.appliances = [{ name: "range", load: "8 kW" }];
  delete copy.service.fault_current_kA;
  copy.service.fault = { transformer: { kva: 25, percent_z: 2, conductors: [{ name: "drop", size: "4/0", length: "50 ft" }] } };
  const named = { name: "one", load: "5 kW" };
  copy.service.dwelling = {
    floor_area: "1800 ft2",
    appliances: [named],
    cooking: [named],
    dryers: [named],
    ev: [named],
    climate: [{ ...named, kind: "cooling" }],
  };
  return { name, tree: copy as object };
});
const texts = Object.fromEntries(readdirSync(`${root}overlays`).map((name) => [name.replace(".yaml", ""), readFileSync(`${root}overlays/${name}`, "utf8")]));
const overlays = Object.keys(texts).map((name) => {
  const flattened = flattenOverlay(name, texts);
  if (!flattened.ok) throw new Error(`${name} is not an overlay`);
  const { changes: _changes, extends: _extends, ...rest } = flattened.overlay;
  return { name, tree: JSON.parse(JSON.stringify(rest)) as object };
});

/** JSON is YAML. */
const yaml = (tree: unknown) => JSON.stringify(tree, null, 1);

let running: RunningBrowser;
let page: Page;
beforeAll(async () => {
  running = await launchBrowser(await findBrowser({}), () => undefined);
  ({ page } = await sealPage(running.browser as Browser));
});
afterAll(() => running.close());

interface Shape {
  readonly signs: readonly string[];
  readonly links: readonly string[];
  readonly styles: readonly string[];
  readonly text: string;
  readonly broken: boolean;
}

/** What the printing browser's own parser makes of a text: kinds of element with the names of their attributes, and the text. */
async function shapeOf(source: string, as: "text/html" | "image/svg+xml" = "text/html"): Promise<Shape> {
  const look = `((source, as) => {
    const doc = new DOMParser().parseFromString(source, as);
    const all = [...doc.querySelectorAll("*")];
    return {
      signs: [...new Set(all.map((e) => e.namespaceURI + " " + e.localName + " " + e.getAttributeNames().sort().join(" ")))].sort(),
      links: [...new Set(all.flatMap((e) => ["href", "src", "xlink:href", "action", "data"].flatMap((a) => e.getAttribute(a) ?? [])))],
      styles: [...new Set(all.flatMap((e) => e.localName === "style" ? e.textContent : e.getAttribute("style") ?? []))].sort(),
      text: (doc.body ?? doc.documentElement).textContent,
      broken: doc.querySelector("parsererror") !== null,
    };
  })(${JSON.stringify(source)}, ${JSON.stringify(as)})`;
  return (await page.evaluate(look)) as Shape;
}

function designed(jobTree: object, overlayTree: object | null) {
  return designText({
    job: { file: "job.yaml", text: yaml(jobTree) },
    overlay: overlayTree === null ? undefined : { file: "overlay.yaml", text: yaml(overlayTree) },
  });
}

/** The packet, with a revision that carries the text too, as a page and as its drawings. */
function laidOut(jobTree: object, overlayTree: object | null, text: string) {
  const { design, overlay, targets } = designed(jobTree, overlayTree);
  const plain = composePacket({ design, overlay, date, targets });
  const changes = [{ kind: "input" as const, id: text, says: text, was: text, now: text }];
  const packet = revisePacket({ packet: plain, was: { ...plain, sheets: plain.sheets.slice(1) }, revision: { number: text, date, says: text }, changes });
  return {
    title: packet.title,
    html: renderHtml({ packet, fonts: FONTS }),
    drawings: packet.sheets.flatMap((sheet) => sheet.blocks).flatMap((block) => (block.kind === "drawing" ? [block.svg] : [])),
  };
}

describe("every field of free text is tried", () => {
  it("of a job: one that is new in the schema must be in some demonstration job or in the parts added here", () => {
    const seen = new Set<string>();
    for (const { tree } of more) expect(readJob(yaml(poisoned(tree, JOB, (n) => `text ${n}`, seen)))).toMatchObject({ ok: true });
    const deep = (path: string) =>
      path.replace(/^service\.panel(\.feeders\[\]\.panel)+/, "service.panel").replace(/^service\.panel\.feeders\[\]\.panel/, "service.panel");
    const known = new Set([...seen].map(deep));
    expect(freeFields(JOB).length).toBeGreaterThan(25);
    expect(freeFields(JOB).filter((path) => !known.has(deep(path)))).toEqual([]);
  });
  it("of an overlay", () => {
    const seen = new Set<string>();
    for (const { tree } of overlays) poisoned(tree, OVERLAY, (n) => `text ${n}`, seen);
    expect(freeFields(OVERLAY).length).toBeGreaterThan(40);
    // A change is worked into what it changes before anything is laid out; a wiring method and a sheet's title are names that must be known.
    expect(
      freeFields(OVERLAY).filter(
        (path) => !seen.has(path) && !/^changes|methods\[\]$|\.sheet$|^intake\.stamp_area\.sheets\[\]$|^notes\[\]\.section$/.test(path),
      ),
    ).toEqual([]);
  });
});

/** Our own marks, there or not by how long the words are: the box kept for a stamp, and the ground cleared behind lettering turned along a line. */
const STAMP_STYLE = /^width: [\d.]+in; height: [\d.]+in$/;
const STAMP = "http://www.w3.org/1999/xhtml div class style";
const TURNED_MASK = "http://www.w3.org/2000/svg rect fill height stroke transform width x y";

describe("hostile text in every field of a job comes out as text", () => {
  it.each(HOSTILE)("%s", async (payload) => {
    for (const name of ["rv-50-carport.yaml", "garage-subpanel.yaml"]) {
      const tree = more.find((one) => one.name === name)!.tree;
      const harmless = laidOut(poisoned(tree, JOB, (n) => `${"plain ".repeat(5)}${n}`, new Set()) as object, null, "plain");
      const hostile = laidOut(poisoned(tree, JOB, (n) => `${payload} ${n}`, new Set()) as object, null, payload);
      const [expected, found] = [await shapeOf(harmless.html), await shapeOf(hostile.html)];
      expect(found.signs.filter((sign) => !expected.signs.includes(sign) && sign !== TURNED_MASK && sign !== STAMP)).toEqual([]);
      // Long words may take the one-line a sheet more.
      const toLines = ({ links }: Shape) => links.filter((link) => !/^#P-\d+$/.test(link));
      expect(toLines(found)).toEqual(toLines(expected));
      // To sheets and to calculation lines, by ids made of what the schema lets an id be.
      expect(found.links.filter((link) => !/^#[\w.-]+$/.test(link))).toEqual([]);
      const written = ({ styles }: Shape) => styles.filter((style) => !STAMP_STYLE.test(style));
      expect(written(found)).toEqual(written(expected));
      expect(found.text).toContain(`${payload} 0`);
      for (const svg of hostile.drawings) {
        const shape = await shapeOf(svg, "image/svg+xml");
        expect(shape.broken).toBe(false);
        expect(shape.signs.every((sign) => /svg (svg|title|desc|g|circle|polygon|polyline|rect|text|path|line|tspan) /.test(`${sign} `))).toBe(true);
        expect(shape.signs.join()).not.toMatch(/\bon[a-z]+\b|href|style/);
      }
    }
  });
});

describe("hostile text in every field of an overlay comes out as text, or is refused with its place", () => {
  const job = trees.find(({ name }) => name === "rv-50-carport.yaml")!.tree;
  it.each(HOSTILE)("%s", async (payload) => {
    for (const name of ["tamarack-hollow", "quillback-county"]) {
      const tree = overlays.find((one) => one.name === name)!.tree;
      const made = (text: (n: number) => string) => keepNames(poisoned(tree, OVERLAY, text, new Set()), tree) as object;
      const harmless = laidOut(
        job,
        made((n) => `${"plain ".repeat(5)}${n}`),
        "plain",
      );
      const hostile = laidOut(
        job,
        made((n) => `${payload} ${n}`),
        payload,
      );
      const [expected, found] = [await shapeOf(harmless.html), await shapeOf(hostile.html)];
      expect(found.signs.filter((sign) => !expected.signs.includes(sign))).toEqual([]);
      expect(found.links).toEqual(expected.links);
      expect(found.styles).toEqual(expected.styles);
      expect(found.text).toContain(payload);
    }
  });
});

/** The names of wiring methods and sheets as they were: they must be known ones. */
function keepNames(made: unknown, original: unknown): unknown {
  if (Array.isArray(made)) return made.map((item, i) => keepNames(item, (original as unknown[])[i]));
  if (typeof made !== "object" || made === null) return made;
  return Object.fromEntries(
    Object.entries(made).map(([key, value]) => {
      const old = (original as Record<string, unknown> | undefined)?.[key];
      return [key, old !== undefined && ["methods", "sheet", "section"].includes(key) ? old : keepNames(value, old)];
    }),
  );
}

describe("the other forms", () => {
  const tree = more.find(({ name }) => name === "rv-50-carport.yaml")!.tree;
  it.each(HOSTILE)("CSV, JSON and the batch report: %s", async (payload) => {
    const { design } = designed(poisoned(tree, JOB, (n) => `${payload} ${n}`, new Set()) as object, null);
    for (const field of cells(materialsCsv(materialsList({ design }).rows))) if (!/^-?\d+(\.\d+)?$/.test(field)) expect(field).not.toMatch(/^[=+\-@\t\r]/);
    expect(JSON.parse(JSON.stringify(design)).job.project.owner).toMatch(new RegExp(`^${payload.replace(/[.*+?^${}()|[\]\\]/g, "\\$&")} \\d+$`));
    const row = {
      format: "branchwork-batch-row/1",
      digest: null,
      outcome: "failed",
      files: [{ name: payload, bytes: 1, sha256: "0" }],
      says: [payload],
      folder: `packets/${payload}`,
      job: payload,
    };
    const found = await shapeOf(printSummary([row as never], { date: payload, left: 0 }));
    const plain = await shapeOf(
      printSummary([{ ...row, job: "a", says: ["a"], folder: "a", files: [{ name: "a", bytes: 1, sha256: "0" }] } as never], { date, left: 0 }),
    );
    expect(found.signs).toEqual(plain.signs);
    expect(found.links.every((link) => link.startsWith("./"))).toBe(true);
    expect(found.styles).toEqual(plain.styles);
  });

  it("PDF: the text is drawn, nothing in it acts", async () => {
    const printer = await openPrinter({ warn: () => undefined });
    const fonts = await packetFonts();
    try {
      for (const payload of HOSTILE.filter((text) => !/[^\u0020-\u00ff]/.test(text)).slice(0, 12)) {
        const { design, overlay, targets } = designed(poisoned(tree, JOB, (n) => `${payload} ${n}`, new Set()) as object, null);
        const packet = composePacket({ design, overlay, date, targets });
        const pdf = await printer.print(renderHtml({ packet, fonts }), { date: new Date(`${date}T00:00:00Z`), expectText: packet.title });
        expect(inspectPdf(pdf).links.every((link) => "toPage" in link)).toBe(true);
        expect(Buffer.from(pdf).toString("latin1")).not.toMatch(/\/(JavaScript|JS|Launch|OpenAction|AA|SubmitForm|GoToR|URI|RichMedia|XFA)\b/);
      }
    } finally {
      await printer.close();
    }
  }, 180_000);

  it.each(["🧿", "\u{13080}"])("PDF: a character that no font here draws stops the print in words: %s", async (text) => {
    const printer = await openPrinter({ warn: () => undefined });
    const { design, overlay, targets } = designed(poisoned(tree, JOB, (n) => `${text} ${n}`, new Set()) as object, null);
    const packet = composePacket({ design, overlay, date, targets });
    const printed = printer.print(renderHtml({ packet, fonts: await packetFonts() }), { date: new Date(`${date}T00:00:00Z`), expectText: packet.title });
    await expect(printed.finally(() => printer.close())).rejects.toThrow(/no font/);
  });

  it("messages about a hostile file hold no control character", () => {
    for (const text of ["\u001b[2J", "a\u0007b", "\u202eabc"]) {
      const bad = yaml(poisoned(tree, JOB, () => text, new Set()));
      expect(() => designText({ job: { file: "job.yaml", text: bad } })).toThrow(InputError);
      try {
        designText({ job: { file: "job.yaml", text: bad } });
      } catch (error) {
        // biome-ignore lint/suspicious/noControlCharactersInRegex: these are what is looked for
        expect((error as Error).message).not.toMatch(/[\u0000-\u0009\u000b-\u001f\u007f-\u009f\u202a-\u202e]/);
      }
    }
  });
  it("an overlay's reader takes the same care", () => expect(readOverlay('format: branchwork-overlay/1\nname: "a\\u202eb"\n')).toMatchObject({ ok: false }));
});

/** The fields of a CSV by RFC 4180. */
function cells(csv: string): readonly string[] {
  return [...csv.matchAll(/(?:^|,|\r\n)(?:"((?:[^"]|"")*)"|([^",\r\n]*))/g)].map(([, quoted, plain]) => quoted?.replaceAll('""', '"') ?? plain ?? "");
}
