import { design, jobSchema } from "@branchwork/engine";
import { describe, expect, it } from "vitest";
import { assumptionsPart } from "./compose/assumptions.js";
import { type Block, drawing } from "./compose/packet.js";
import { columnName } from "./compose/worked-lines.js";
import { composePacket, type Overlay, overlaySchema, renderHtml } from "./index.js";

const FONTS = { family: "Any", faces: [{ weight: 400, base64: "AAAA" }] };

/** An invented job; `name` stands in every free text field. */
function jobWith(name: string) {
  return {
    format: "branchwork-job/1",
    project: {
      title: name,
      owner: name,
      site: name,
      parcel: name,
      scope: name,
      intended_use: name,
      preparer: { name, role: name, phone: name, licence: name },
    },
    code: { edition: "2023", confirmed_with_authority: true },
    service: {
      rating: "200 A",
      load_method: "measured-demand",
      measured: { peak: "9000 VA", basis: "one-year", from: name },
      panel: {
        id: "panel-a",
        name,
        bus: "200 A",
        main: "200 A",
        spaces: 40,
        directory: [{ space: 1, poles: 2, rating: "30 A", serves: name }],
        circuits: [
          {
            id: "rv",
            name,
            serves: "rv-50",
            current: "50 A",
            dedicated_use_note: name,
            breaker: { poles: 2, spaces: [6, 8], gfci: true, listed_for_panel: true, interrupting_kA: 10 },
            cover_plate: "weatherproof-closed",
            route: [
              { name: `${name} 1`, place: "indoors", method: "NM-B", length: "30 ft", conductors: { size: "4" } },
              { name: `${name} 2`, place: "buried", method: "PVC-40", length: "85 ft", trade_size: "1-1/4", cover: "24 in", bends: [90, 90] },
            ],
            boxes: [
              { name, after: `${name} 1`, volume: "200 in3" },
              { name, after: `${name} 2`, volume: "90 in3", wet_location: true, device: true },
            ],
          },
        ],
      },
    },
  };
}
const designOf = (name: string) => design({ job: jobSchema.parse(jobWith(name)), assumptions: [{ path: name, says: name }] });
const overlayOf = (says: string): Overlay =>
  overlaySchema.parse({
    format: "branchwork-overlay/1",
    id: "sample-county",
    name: says,
    checked_on: "2026-01-31",
    notes: [{ says, citation: says }],
    checklist: [{ stage: "rough", section: says, look: says, show: says }],
    amendments: [{ target: "check", check: "burial-cover", off: true, reason: says, citation: says }],
    statements: [{ title: says, says, initials: true }],
    contacts: [{ name: says, phone: says, hours: says }],
  });
const htmlOf = (name: string, overlay: Overlay | null = overlayOf(name)) =>
  renderHtml({ packet: composePacket({ design: designOf(name), overlay, date: name }), fonts: FONTS });

describe("hostile text", () => {
  it.each([
    ["a script after a style end", "</style><script>alert(1)</script>", /<\/style><script|<script/i],
    ["a picture that runs", "\"'><img src=x onerror=alert(1)>", /<img/i],
    ["the end of a drawing", "</text></svg><svg onload=alert(1)>", /<svg onload|<\/text><\/svg><svg/i],
    ["CDATA and a comment", "]]><!-- <foreignObject>", /<!--|<foreignObject/i],
  ])("%s comes out escaped", (_, hostile, forbidden) => {
    const html = htmlOf(hostile);
    expect(html).not.toMatch(forbidden);
    expect(html.match(/<style>/g)).toHaveLength(1);
    expect(html).toContain("&lt;");
  });

  it("a template expression is printed and not run", () => {
    const html = htmlOf("{{packet.title}}{{{css}}}Z9");
    expect(html).toContain("{{packet.title}}{{{css}}}Z9");
    expect(html.match(/<style>/g)).toHaveLength(1);
  });

  it("the page takes no script and fetches nothing", () => {
    const html = htmlOf("Plain");
    expect(html).toContain(`content="default-src 'none'; style-src 'unsafe-inline'; font-src data:; img-src data:"`);
    expect(html).not.toMatch(/<script|<link|src="http/);
    expect(html).toContain('<html lang="en-US">');
    expect(html).toContain("<main>");
  });

  it("a font that is not base64 is refused", () => {
    const packet = composePacket({ design: designOf("Plain"), overlay: null, date: "2026-02-01" });
    expect(() => renderHtml({ packet, fonts: { family: "x", faces: [{ weight: 400, base64: '");}</style>' }] } })).toThrow(RangeError);
  });
});

describe("the set of sheets", () => {
  const packet = composePacket({ design: designOf("Plain"), overlay: overlayOf("Sample County"), date: "2026-02-01" });

  it("has an index equal to its sheets", () => {
    const index = packet.sheets[0]?.blocks.concat(packet.sheets[1]?.blocks ?? []).find((b) => b.kind === "sheetIndex");
    expect(index?.kind === "sheetIndex" && index.entries).toEqual(packet.sheets.map(({ id, title }) => ({ id, title })));
    const html = renderHtml({ packet, fonts: FONTS });
    for (const { id } of packet.sheets) {
      expect(html.split(`href="#${id}"`)).toHaveLength(2);
      expect(html.split(`id="${id}"`)).toHaveLength(2);
    }
  });

  it("numbers each sheet n of N in print", () => {
    const html = renderHtml({ packet, fonts: FONTS });
    const printed = [...html.matchAll(/sheet (\d+) of (\d+)/g)].map((m) => [m[1], m[2]]);
    expect(printed).toEqual(packet.sheets.map((_, i) => [String(i + 1), String(packet.sheets.length)]));
  });

  it("begins with the refusal, naming each failing finding and how to mend it, when a check fails", () => {
    const made = designOf("Plain");
    const refused = composePacket({
      design: {
        ...made,
        ready: false,
        findings: [{ check: "x", title: "Cover", subject: "Trench", citation: null, verdict: "fail", says: "too shallow", mend: "dig deeper" }],
      },
      overlay: null,
      date: "2026-02-01",
    });
    const first = JSON.stringify(refused.sheets[0]);
    expect(first).toContain("NOT READY TO SUBMIT");
    expect(first).toContain("too shallow");
    expect(first).toContain("dig deeper");
    const passed = composePacket({ design: { ...made, ready: true, findings: [] }, overlay: null, date: "2026-02-01" });
    expect(passed.ready).toBe(true);
    expect(JSON.stringify(passed)).not.toContain("NOT READY");
  });

  it("is not ready when an overlay is for another edition", () => {
    const made = { ...designOf("Plain"), ready: true, findings: [] };
    const other = composePacket({ design: made, overlay: { ...overlayOf("Sample County"), edition: "2020" }, date: "2026-02-01" });
    expect(other.ready).toBe(false);
    expect(other.sheets[0]?.title).toBe("Not ready to submit");
  });

  it("prints every worked value of a circuit", () => {
    const lines = packet.sheets
      .filter((s) => s.title.startsWith("Circuit calculations"))
      .flatMap((s) => s.blocks.flatMap((b) => (b.kind === "calc" ? b.lines : [])));
    const wanted = new Set(designOf("Plain").circuits[0]?.steps.map((s) => s.label));
    expect(wanted.size).toBeGreaterThan(5);
    for (const label of wanted) expect(lines.map((l) => l.label)).toContain(label);
  });

  // Table 300.5(A), general, nonmetallic raceway: 18 in (ecmweb.com/print/nec/code-qa-3).
  it("puts the planned and the least cover in the trench checklist", () => {
    const field = composePacket({ design: designOf("Plain"), overlay: overlayOf("Sample County"), date: "2026-02-01", set: "field" });
    expect(JSON.stringify(field.sheets)).toContain("24 in planned; least 18 in");
  });

  it("marks in print what is from memory", () => expect(renderHtml({ packet, fonts: FONTS })).toContain("(from memory: verify)"));

  it("marks the new circuit in the directory, on both of its spaces", () => {
    const directory = packet.sheets.find((s) => s.title.startsWith("Panel: "))?.blocks[0];
    const fresh = directory?.kind === "table" ? directory.rows.filter((r) => r.fresh).map((r) => r.cells) : [];
    expect(fresh.map((cells) => [cells[3], cells[5]])).toEqual([
      ["6", "NEW: Plain"],
      ["8", "NEW: Plain"],
    ]);
  });
});

describe("the page", () => {
  const packet = composePacket({ design: designOf("Plain"), overlay: overlayOf("Sample County"), date: "2026-02-01" });
  const html = renderHtml({ packet, fonts: FONTS });
  const sheets = html.split('<section class="sheet"').slice(1);
  const all = (blocks: readonly Block[]): Block[] => blocks.flatMap((b) => (b.kind === "together" ? all(b.blocks) : [b]));
  const sheet = (title: string) => all(packet.sheets.find((s) => s.title === title)?.blocks ?? []);

  it("carries one title block at the foot of every page, and the room for it on every sheet", () => {
    expect(html.match(/<div class="everywhere">/g)).toHaveLength(1);
    expect(html).toMatch(/\.everywhere \{ position: fixed;[^}]*bottom: 0/);
    for (const text of sheets) expect(text.match(/<tfoot><tr><td class="kept"><table class="titleblock">/g)).toHaveLength(1);
    expect(html).toContain('"page " counter(page) " of " counter(pages)');
    for (const field of ["Project", "Owner", "Site", "Parcel", "Jurisdiction", "Code edition", "Permit number", "Prepared by", "Signature", "Date", "Rev."])
      expect(html).toContain(`<b>${field}</b>`);
  });

  it("cuts what would make a head or foot too tall to repeat, and prints it whole on the cover", () => {
    expect(html).toMatch(/\.cut \{[^}]*-webkit-line-clamp: 3;[^}]*overflow: hidden/);
    for (const text of sheets) {
      expect(text).toMatch(/<thead><tr><td><div class="head"><p class="cut running"/);
      const foot = text.slice(text.indexOf("<tfoot>"), text.indexOf("</tfoot>"));
      for (const [, value] of foot.matchAll(/<\/b>(.*?)<\/td>/g)) expect(value).toMatch(/^$|^<span class="cut">/);
    }
    const owner = `${"a long name ".repeat(30)}end`;
    const made = designOf("Plain");
    const long = { ...made, job: { ...made.job, project: { ...made.job.project, owner } } };
    const cover = composePacket({ design: long, overlay: null, date: "2026-02-01" }).sheets.find((s) => s.title === "Cover");
    expect(JSON.stringify(cover)).toContain(owner);
  });

  it("has Letter paper with room for punched holes at the left, and 10 pt text", () => {
    expect(html).toMatch(/size: Letter portrait; margin: 0\.4in 0\.5in 0\.5in 0\.75in/);
    expect(html).toContain("html { font-size: 10pt;");
    for (const [, points] of html.matchAll(/font-size: ([\d.]+)pt/g)) expect(Number(points)).toBeGreaterThanOrEqual(8);
  });

  it("has one h1 a sheet, and no heading skips a level", () => {
    for (const text of sheets) {
      const levels = [...text.matchAll(/<h(\d)/g)].map((m) => Number(m[1]));
      expect(levels[0]).toBe(1);
      expect(levels.filter((l) => l === 1)).toHaveLength(1);
      levels.forEach((level, i) => {
        expect(level - (levels[i - 1] ?? 0)).toBeLessThanOrEqual(1);
      });
    }
  });

  it("says no heading twice running", () => {
    for (const text of sheets) {
      const heads = [...text.matchAll(/<h2[^>]*>(.*?)<\/h2>/g)].map((m) => m[1]).filter((h) => h !== "Box fill: Plain"); // two boxes of one name
      expect(new Set(heads).size).toBe(heads.length);
    }
  });

  it("names every table and the scope of every head, and describes every drawing", () => {
    const grids = html.match(/<table class="grid[^>]*>/g) ?? [];
    expect(grids.length).toBeGreaterThan(5);
    for (const grid of grids) expect(grid).toMatch(/aria-label="[^"]+"/);
    for (const head of html.match(/<th[ >][^>]*>/g) ?? []) expect(head).toBe('<th scope="col">');
    const drawn = html.match(/<svg [^>]*>/g) ?? [];
    expect(drawn.length).toBeGreaterThan(0);
    for (const svg of drawn) expect(svg).toMatch(/role="img"/);
    expect(html.match(/<svg [^>]*><title/g)).toHaveLength(drawn.length);
  });

  // One word too wide for its column makes the browser shrink the whole packet, 10 pt text with it.
  it("fixes every column's width, and breaks a word that is wider", () => {
    expect(html).toMatch(/table\.grid \{ width: 100%; table-layout: fixed;/);
    expect(html).toMatch(/table\.grid td \{[^}]*overflow-wrap: anywhere/);
    for (const block of packet.sheets.flatMap((s) => all(s.blocks)))
      if (block.kind === "table" && block.widths.length > 0) {
        expect(block.widths).toHaveLength(block.head.length);
        expect(block.widths.reduce((sum, w) => sum + Number(w), 0)).toBe(100);
      }
  });

  it("keeps signatures with what is signed", () => {
    const last = packet.sheets.find((s) => s.title.startsWith("Cautions"))?.blocks.at(-1);
    expect(last?.kind).toBe("together");
    expect(last?.kind === "together" && last.blocks.map((b) => b.kind)).toEqual(expect.arrayContaining(["paragraph", "blanks"]));
    const field = composePacket({ design: designOf("Plain"), overlay: overlayOf("Sample County"), date: "2026-02-01", set: "field" });
    const checklist = all(field.sheets.find((s) => s.title === "Inspection checklist")?.blocks ?? []);
    const stages = checklist.filter((b) => b.kind === "checklist");
    expect(stages.length).toBeGreaterThan(1);
    for (const block of stages) expect(block.sign.length).toBeGreaterThan(0);
    expect(checklist.some((b) => b.kind === "blanks")).toBe(false);
  });

  it("keeps a stamp clear, 3.75 in by 5.75 in, where the drawing leaves the room", () => {
    expect(html).toContain('class="stamp" style="width: 5.75in; height: 3.75in"');
    expect(drawing('<svg width="522pt" height="344pt">').stamp).toBe(true);
    expect(drawing('<svg width="522pt" height="345pt">').stamp).toBe(false);
    expect(drawing("<svg>").stamp).toBe(false);
  });

  it("gives no source of a line twice, and no assumption twice", () => {
    const lines = packet.sheets.flatMap((s) => all(s.blocks)).flatMap((b) => (b.kind === "calc" ? b.lines : []));
    expect(lines.length).toBeGreaterThan(10);
    for (const { sources } of lines) expect(new Set(sources).size).toBe(sources.length);
    const [, , part] = assumptionsPart([
      { path: "a[0].material", says: "First run: copper taken" },
      { path: "a[1].material", says: "Second run: copper taken" },
      { path: "drop.limit_percent", says: "limit of 3 % taken" },
    ]);
    expect(part?.kind === "brief" && part.entries).toEqual([
      { title: "First run; Second run", text: "copper taken" },
      { title: "The job", text: "limit of 3 % taken" },
    ]);
  });

  it("prints no id where words belong", () => {
    for (const text of sheets)
      expect(text.replace(/<[^>]*>/g, " ")).not.toMatch(/weatherproof-closed|under-dwelling-driveway|dcCopper|cu60|nonmetallicRaceway|area40/);
    expect([columnName("cu60"), columnName("f90"), columnName("area40"), columnName("nonmetallicRaceway")]).toEqual([
      "copper 60 °C",
      "90 °C",
      "40 % of the area",
      "nonmetallic raceway",
    ]);
  });

  it("asks for no open trench where nothing is buried", () => {
    const job = jobWith("Plain");
    const [circuit] = job.service.panel.circuits;
    const dry = { ...circuit, route: circuit!.route.slice(0, 1), boxes: circuit!.boxes.slice(0, 1) };
    const made = design({ job: jobSchema.parse({ ...job, service: { ...job.service, panel: { ...job.service.panel, circuits: [dry] } } }), assumptions: [] });
    const overlay = { ...overlayOf("Plain"), checklist: [{ stage: "trench" as const, section: "300.5", look: "Tape over the raceway" }] };
    const stages = (d: typeof made) =>
      composePacket({ design: d, overlay, date: "2026-02-01", set: "field" })
        .sheets.flatMap((s) => s.blocks.flatMap((b) => (b.kind === "checklist" ? [b.caption] : [])))
        .join();
    expect(stages(made)).not.toContain("Trench, open");
    expect(stages(designOf("Plain"))).toContain("Trench, open");
  });

  it("joins the places of one fault in the refusal", () => {
    const fault = { check: "x", title: "Size", citation: null, verdict: "fail", says: "too small", mend: "use 6 AWG" } as const;
    const refused = composePacket({
      design: {
        ...designOf("Plain"),
        ready: false,
        findings: [
          { ...fault, subject: "First" },
          { ...fault, subject: "Second" },
        ],
      },
      overlay: null,
      date: "2026-02-01",
    });
    const boxed = refused.sheets[0]?.blocks[0];
    const found = refused.sheets.find((s) => s.title === "Findings")?.blocks.find((b) => b.kind === "table");
    expect(found?.kind === "table" && found.rows.map((r) => r.cells.slice(0, 3))).toEqual([["FAILS", "First; Second", "too small"]]);
    expect(boxed?.kind === "boxed" && boxed.entries.map((e) => e.lines[0])).toEqual(["First; Second: too small (no section)."]);
  });

  it("names each circuit in the loads of the new circuits", () => {
    expect(sheet("Load calculation").some((b) => b.kind === "paragraph" && b.text.startsWith("New load: Plain, 12,000 VA"))).toBe(true);
  });

  it("warns at a 120 V outlet of 240 V", () => {
    const made = designOf("Plain");
    const lowered = { ...made, circuits: made.circuits.map((c) => ({ ...c, volts: 120 as const, wires: 3 as const })) };
    const words = (d: typeof made) => JSON.stringify(composePacket({ design: d, overlay: null, date: "2026-02-01", set: "field" }).sheets);
    expect(words(lowered)).toContain("About 240 V from hot to neutral");
    expect(words(made)).not.toContain("About 240 V from hot to neutral");
  });
});
