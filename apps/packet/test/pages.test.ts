import { readFile } from "node:fs/promises";
import { fileURLToPath } from "node:url";
import { type Block, PAPERS, type Packet, type PacketSet, type Paper } from "@branchwork/sheets";
import { describe, expect, it } from "vitest";
import { designText, type Loaded } from "../src/load-design.js";
import { inspectPdf } from "../src/print/inspect-pdf.js";
import { openPdf } from "../src/print/pdf-file.js";
import { printedText } from "../src/print/pdf-text.js";
import { plainOf } from "./hostile-text.js";
import { printedPlaces } from "./printed-places.js";
import { bare, lastWords, tail } from "./printed-words.js";
import { htmlOf, loadFixture, packetOf, printing } from "./printing.js";

const fixtures = fileURLToPath(new URL("../../../fixtures/", import.meta.url));
/** A print with this much on it; far over what it takes, far under what a page that runs away takes. */
const MOST_MS = 45_000;
/** Head, title block and foot alone come to about so many words: a page with no more is blank. */
const FURNITURE_WORDS = 60;

// biome-ignore lint/suspicious/noExplicitAny: a job as plain data, bent out of shape on purpose
type Plain = any;

async function bent(job: string, bend: (plain: Plain) => void): Promise<Loaded> {
  const plain = plainOf(await readFile(`${fixtures}jobs/${job}.yaml`, "utf8")) as Plain;
  bend(plain);
  return designText({ job: { file: "bent.yaml", text: JSON.stringify(plain) } });
}
const words = (count: number, word = "long"): string => `${Array.from({ length: count }, (_, i) => `${word}${i + 1}`).join(" ")}`;
const circuitOf = (plain: Plain) => plain.service.panel.circuits[0];

/** As many of a circuit, each in two spaces of its own from `first` on. */
function repeated(plain: Plain, count: number, first: number): void {
  const one = circuitOf(plain);
  plain.service.panel.circuits = Array.from({ length: count }, (_, i) => {
    const upper = first + 4 * Math.floor(i / 2) + (i % 2);
    return { ...one, id: `circuit-${i + 1}`, name: `Outlet number ${i + 1}`, breaker: { ...one.breaker, spaces: [upper, upper + 2] } };
  });
}

const FAULTS: readonly { readonly name: string; readonly make: () => Promise<Loaded> }[] = [
  {
    name: "very long names",
    make: () =>
      bent("rv-50-carport", (plain) => {
        plain.project.owner = `${words(16)} lastowner`;
        plain.service.panel.name = `${words(16, "panel")} lastpanel`;
        circuitOf(plain).name = `${words(16, "outlet")} lastoutlet`;
        for (const part of circuitOf(plain).boxes) part.name = `${part.name} ${words(12, "box")}`;
      }),
  },
  {
    name: "words of 200 letters",
    make: () =>
      bent("rv-50-carport", (plain) => {
        plain.project.title = `${"w".repeat(199)}x`;
        plain.project.scope = `${"s".repeat(199)}t`;
        plain.project.intended_use = `${"W".repeat(199)}v`;
        plain.service.panel.name = `${"P".repeat(199)}q`;
        circuitOf(plain).name = `${"M".repeat(199)}n`;
        plain.site_plan.scale_note = `${"n".repeat(199)}o`;
      }),
  },
  {
    name: "30 circuits",
    make: () =>
      bent("hot-tub", (plain) => {
        plain.service.panel.spaces = 80;
        plain.service.panel.directory = [];
        repeated(plain, 30, 1);
      }),
  },
  {
    name: "20 segments",
    make: () =>
      bent("rv-50-carport", (plain) => {
        const c = circuitOf(plain);
        c.route = Array.from({ length: 20 }, (_, i) => ({ ...c.route[1], name: `Stretch ${i + 1}`, bends: [] }));
        c.boxes = [{ ...c.boxes[0], after: "Stretch 1" }];
        plain.site_plan.routes = [];
      }),
  },
  {
    name: "many boxes",
    make: () =>
      bent("rv-50-carport", (plain) => {
        const c = circuitOf(plain);
        c.boxes = Array.from({ length: 20 }, (_, i) => ({ ...c.boxes[0], name: `Pull point ${i + 1}` }));
      }),
  },
  {
    name: "an empty directory",
    make: () =>
      bent("rv-50-carport", (plain) => {
        plain.service.panel.directory = [];
      }),
  },
  {
    name: "a panel of 84 spaces",
    make: () =>
      bent("rv-50-carport", (plain) => {
        plain.service.panel.spaces = 84;
        plain.service.panel.directory = Array.from({ length: 70 }, (_, i) => ({ space: i + 15, rating: "20 A", serves: `Load in space ${i + 15}` }));
        circuitOf(plain).breaker.spaces = [1, 3];
      }),
  },
  {
    name: "a huge note of the overlay",
    make: async () => {
      const loaded = await loadFixture("rv-50-carport", "saltmarsh-point");
      const { overlay } = loaded;
      if (overlay === null) throw new Error("no overlay");
      const notes = [{ id: "huge", concerns: "all", says: `${words(1_500, "note")} lastnote`, citation: "Saltmarsh Point handout" }];
      return { ...loaded, overlay: { ...overlay, notes: notes as unknown as typeof overlay.notes } };
    },
  },
];

const press = printing();

interface Printed {
  readonly packet: Packet;
  readonly pages: readonly string[];
  readonly pdf: Uint8Array;
  readonly ms: number;
}
async function printed(loaded: Loaded, paper: Paper = "letter"): Promise<Printed> {
  const packet = packetOf(loaded, { paper });
  const html = await htmlOf(packet);
  const began = performance.now();
  const pdf = await press.html(html, packet.title);
  const ms = performance.now() - began;
  return { packet, pages: printedText(openPdf(pdf)), pdf, ms };
}

const draws = (block: Block): boolean => (block.kind === "together" ? block.blocks.some(draws) : block.kind === "drawing");

/** Everything wrong with a print, each in words. */
function faultsOf({ packet, pages }: Printed): readonly string[] {
  const sheetAt = pages.map((page) => packet.sheets.findIndex(({ number, of }) => bare(page).includes(bare(`${packet.set}, sheet ${number} of ${of}`))));
  const found: string[] = [];
  for (const [i, page] of pages.entries()) {
    if (!bare(page).includes(bare(`page ${i + 1} of ${pages.length}`))) found.push(`page ${i + 1} does not say so`);
    const sheet = packet.sheets[sheetAt[i]!];
    if (sheet === undefined) {
      found.push(`page ${i + 1} belongs to no sheet`);
      continue;
    }
    // A long title is cut in the running head; its beginning stays.
    if (!bare(page).includes(bare(`${sheet.id} ${sheet.title}`).slice(0, 20))) found.push(`page ${i + 1} lacks its head`);
    if (!bare(page).includes("Permitnumber") || !bare(page).includes("Preparedby")) found.push(`page ${i + 1} lacks its title block`);
    if (!sheet.blocks.some(draws) && page.split(/\s+/).filter(Boolean).length <= FURNITURE_WORDS) found.push(`page ${i + 1} is blank`);
  }
  if (sheetAt.some((at, i) => i > 0 && at < sheetAt[i - 1]!)) found.push("the sheets are out of order");
  for (const [n, { id, title, blocks }] of packet.sheets.entries()) {
    const own = bare(pages.filter((_, i) => sheetAt[i] === n).join(""));
    if (own === "") found.push(`sheet ${id} of the index is not there`);
    const index = bare(pages.slice(0, sheetAt.lastIndexOf(packet.sheets.findIndex((sheet) => sheet.title === "Cover")) + 1).join(""));
    if (!index.includes(bare(`${id} ${title}`))) found.push(`the index lacks ${id}`);
    for (const text of blocks.flatMap(lastWords)) if (!own.includes(tail(text))) found.push(`${id} lost "…${text.slice(-40)}"`);
  }
  return found;
}

describe.each(FAULTS)("$name", ({ make }) => {
  it("prints whole: nothing lost, no page blank, the pages as the index lists them, and soon", async () => {
    const print = await printed(await make());
    expect(faultsOf(print)).toEqual([]);
    expect(print.ms).toBeLessThan(MOST_MS);
  });
});

it("a lost line, a lost page and a blank page would be found", async () => {
  const print = await printed(await loadFixture("hot-tub"));
  const of = (pages: readonly string[]) => faultsOf({ ...print, pages });
  const { pages } = print;
  expect(of(pages)).toEqual([]);
  expect(of(pages.map((page, i) => (i === 0 ? page.replace(/Scope of work[^.]*\./s, "") : page)))).toEqual([expect.stringMatching(/^P-1 lost/)]);
  expect(of(pages.filter((_, i) => i !== 3)).join()).toMatch(/lost/);
  const last = pages.at(-1)!.split("\n");
  const blank = `Submittal set, sheet ${print.packet.sheets.length} of ${print.packet.sheets.length} Permit number Prepared by`;
  expect(last.length).toBeGreaterThan(3);
  expect(of([...pages, blank]).join()).toMatch(/is blank/);
});

/** A page as points: ISO 216 for A4 (210 × 297 mm) and A3 (297 × 420 mm), ANSI/ASME Y14.1 for A (8.5 × 11 in) and B (11 × 17 in). */
const SIZES: Readonly<Record<Paper, { readonly text: readonly [number, number]; readonly drawings: readonly [number, number] }>> = {
  letter: { text: [612, 792], drawings: [612, 792] },
  tabloid: { text: [612, 792], drawings: [1224, 792] },
  a4: { text: [595.28, 841.89], drawings: [595.28, 841.89] },
  a3: { text: [595.28, 841.89], drawings: [1190.55, 841.89] },
};
const DRAWN = /^(Site plan|One-line diagram|Trench and raceway sections|Panel:)/;

describe.each(PAPERS)("on %s", (paper) => {
  it.each(["rv-50-carport", "garage-subpanel"])("%s prints whole, each sheet on its size of page", async (job) => {
    const print = await printed(await loadFixture(job), paper);
    expect(faultsOf(print)).toEqual([]);
    const { sizes } = inspectPdf(print.pdf);
    for (const [i, page] of print.pages.entries()) {
      const sheet = print.packet.sheets.find(({ number, of }) => bare(page).includes(bare(`${print.packet.set}, sheet ${number} of ${of}`)))!;
      const [width, height] = DRAWN.test(sheet.title) ? SIZES[paper].drawings : SIZES[paper].text;
      expect(Math.abs(sizes[i]![0] - width)).toBeLessThan(1);
      expect(Math.abs(sizes[i]![1] - height)).toBeLessThan(1);
    }
  });
});

it("large paper has the stamp area on the sheets of the site plan and the one-line diagram, beside the drawing", async () => {
  const { packet, pages } = await printed(await loadFixture("rv-50-carport"), "tabloid");
  const stamped = pages.filter((page) => bare(page).includes(bare("Kept clear for the jurisdiction's stamp")));
  expect(stamped).toHaveLength(2);
  expect(packet.sheets.filter(({ layout }) => layout === "plate").map(({ title }) => title)).toEqual(["Site plan", "One-line diagram"]);
});

/** Fewer than this of a page's height, from its head to its title block, and it holds a remnant. */
const LEAST_FILLED = 0.14;
/** In points, from the edges of the page: what the head takes, and the margin with the title block. */
const HEAD = 56;
const FOOT = 122;

/** The pages that go on with a sheet and hold next to nothing of it: how far down the page their lowest words reach. */
async function remnantsOf(packet: Packet, css = ""): Promise<readonly string[]> {
  const pdf = openPdf(await press.html((await htmlOf(packet)).replace("</style>", `${css}</style>`), packet.title));
  const words = printedText(pdf);
  const sheetAt = words.map((page) => packet.sheets.findIndex(({ number, of }) => bare(page).includes(bare(`${packet.set}, sheet ${number} of ${of}`))));
  return printedPlaces(pdf).flatMap(({ height, lines }, i) => {
    const within = lines.filter(({ bottom, top }) => bottom > FOOT && top < height - HEAD);
    const filled = (height - HEAD - Math.min(height - HEAD, ...within.map(({ bottom }) => bottom))) / (height - HEAD - FOOT);
    return sheetAt[i] === sheetAt[i - 1] && filled < LEAST_FILLED ? [`page ${i + 1}: ${Math.round(filled * 100)} % filled`] : [];
  });
}

describe("no page holds a remnant", () => {
  const CASES: readonly (readonly [job: string, overlay: string | null, set: PacketSet, paper: Paper, was: string])[] = [
    ["rv-pedestal", "saltmarsh-point", "submittal", "letter", "7 % signatures, 1 % the stamp area alone, 13 % two rows"],
    ["rv-pedestal", "saltmarsh-point", "submittal", "tabloid", "7 % signatures, 13 % two rows"],
    ["garage-subpanel", "saltmarsh-point", "submittal", "letter", "7 % signatures, 1 % the stamp area alone"],
    ["hot-tub", "otter-fell", "submittal", "letter", "7 % signatures"],
    ["hot-tub", "ironbridge-mills", "submittal", "letter", "7 % signatures, 7 % entries of a list"],
    ["ev-48-attic", "ironbridge-mills", "submittal", "letter", "7 % signatures"],
    ["ev-48-attic", "saltmarsh-point", "submittal", "tabloid", "2 % one entry of a list"],
    ["workshop-welder", "saltmarsh-point", "submittal", "letter", "1 % the stamp area alone, 10 % entries of a list"],
    ["bad-everything", "saltmarsh-point", "submittal", "a4", "4 % the end of the refusal"],
    ["bad-everything", "saltmarsh-point", "field", "letter", "11 % the end of the refusal"],
    ["rv-30-small-service", null, "owner", "letter", "12 % a table's last rows"],
    ["generator-inlet", "tamarack-hollow", "field", "letter", "13 % two rows of the checklist"],
  ];
  it.each(CASES)("%s, %s, %s set on %s (once: %s)", async (job, overlay, set, paper) => {
    expect(await remnantsOf(packetOf(await loadFixture(job, overlay), { set, paper }))).toEqual([]);
  });

  it("one would be found", async () => {
    const packet = packetOf(await loadFixture("hot-tub", "otter-fell"));
    const loose =
      ".flow *, .blanks { break-before: auto !important; break-after: auto !important; break-inside: auto !important; orphans: 1 !important; widows: 1 !important; }";
    expect(await remnantsOf(packet, `${loose} .flow > .together:last-child { break-before: page !important; }`)).toEqual([
      expect.stringMatching(/^page 3: \d+ % filled$/),
    ]);
  });
});
