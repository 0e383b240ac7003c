import { readFileSync } from "node:fs";
import { design, type Job, materialsList, orderOfWork, readJob, readPriceBook } from "@branchwork/engine";
import { describe, expect, it } from "vitest";
import type { Block } from "./compose/packet.js";
import { SHEET_TITLES } from "./compose/sheet-titles.js";
import { basisFrom, composePacket, flattenOverlay, type Overlay, PACKET_SETS, type PacketSet, renderHtml } from "./index.js";

const fixture = (path: string) => readFileSync(new URL(`../../../fixtures/${path}`, import.meta.url), "utf8");
function jobOf(name: string): Job {
  const read = readJob(fixture(`jobs/${name}.yaml`));
  if (!read.ok) throw new Error(JSON.stringify(read.issues));
  return read.job;
}
const NAMES = ["base", "base-2017", "base-2020", "base-2023", "quillback-county", "otter-fell", "saltmarsh-point"];
const texts = Object.fromEntries(NAMES.map((name) => [name, fixture(`overlays/${name}.yaml`)]));
function overlayOf(name: string): Overlay {
  const result = flattenOverlay(name, texts);
  if (!result.ok) throw new Error(JSON.stringify(result.issues));
  return result.overlay;
}
function packetOf(set: PacketSet, overlay: Overlay | null = null, job = "rv-50-carport") {
  const edition = overlay?.edition ?? "2023";
  return composePacket({ design: design({ job: jobOf(job), basis: basisFrom(overlay, edition) }), overlay, date: "2026-11-25", set });
}
const titles = (packet: ReturnType<typeof packetOf>) => packet.sheets.map(({ title }) => title);
const all = (blocks: readonly Block[]): readonly Block[] => blocks.flatMap((b) => (b.kind === "together" ? all(b.blocks) : [b]));
const blocksOf = (packet: ReturnType<typeof packetOf>, title: string) => all(packet.sheets.find((s) => s.title === title)?.blocks ?? []);

describe("three sets", () => {
  it.each(PACKET_SETS)("%s: own numbers, own index, cautions, and no title outside the list", (set) => {
    const packet = packetOf(set, overlayOf("saltmarsh-point"));
    const letter = { submittal: "P", field: "F", owner: "O" }[set];
    expect(packet.sheets.map(({ id }) => id)).toEqual(packet.sheets.map((_, i) => `${letter}-${i + 1}`));
    expect(new Set(packet.sheets.map(({ of }) => of))).toEqual(new Set([String(packet.sheets.length)]));
    const index = packet.sheets.flatMap(({ blocks }) => blocks).find((b) => b.kind === "sheetIndex");
    expect(index?.kind === "sheetIndex" && index.entries.map(({ title }) => title)).toEqual(titles(packet));
    expect(JSON.stringify(packet)).toContain("The main off does not make the panel dead.");
    for (const title of titles(packet)) expect(SHEET_TITLES.some((known) => title.startsWith(known))).toBe(true);
  });

  it("no sheet stands in two sets but the cover, and none is lost between them", () => {
    const found = PACKET_SETS.flatMap((set) => titles(packetOf(set)).filter((title) => title !== "Cover"));
    expect(new Set(found).size).toBe(found.length);
    expect(found).toEqual(expect.arrayContaining(["Schedules", "Inspection card", "Labels", "Materials", "Order of work", "What may run together"]));
  });

  it("each begins with the refusal while a check fails", () => {
    for (const set of PACKET_SETS) expect(titles(packetOf(set, null, "bad-everything"))[0]).toBe("Not ready to submit");
  });

  it("the owner's list has every row of the engine's, its cost where prices are given, and every step in order", () => {
    const made = design({ job: jobOf("rv-50-carport") });
    const reading = readPriceBook(fixture("prices/demo.yaml"));
    if (!reading.ok) throw new Error("no prices");
    const rowsOf = (packet: ReturnType<typeof packetOf>, title: string, caption: RegExp) =>
      blocksOf(packet, title).flatMap((b) => (b.kind === "table" && caption.test(b.caption) ? b.rows.map(({ cells }) => cells) : []));
    const of = { design: made, overlay: null, date: "2026-11-25", set: "owner" } as const;
    const { rows } = materialsList({ design: made });
    expect(rowsOf(composePacket(of), "Materials", /^To buy/)).toHaveLength(rows.length);
    const priced = rowsOf(composePacket({ ...of, prices: reading.book }), "Materials", /^To buy; cost in USD/);
    expect(priced).toHaveLength(rows.length + 1);
    for (const cells of priced) for (const cost of cells.slice(2, 5)) expect(cost).toMatch(/^(\d+\.\d\d|no price)$/);
    const work = rowsOf(composePacket(of), "Order of work", /^Steps/);
    expect(work.map((cells) => [cells[1], cells[2] === "HOLD"])).toEqual(orderOfWork(made).map(({ says, hold }) => [says, hold]));
  });
});

describe("the intake decides what is handed in", () => {
  it("over the counter: what is asked in its order, then schedules; the rest told as available, and in whose set", () => {
    const packet = packetOf("submittal", overlayOf("quillback-county"));
    expect(titles(packet)).toEqual(["Cover", "Cautions, assumptions and statements", "Load calculation", "One-line diagram", "Schedules"]);
    const said = blocksOf(packet, "Cover").find((b) => b.kind === "paragraph" && b.text.startsWith("Not asked for here"));
    expect(said?.kind === "paragraph" && said.text).toMatch(
      /in the field set Site plan.*Circuit calculations.*Panel: .*Findings; in the owner's set Jurisdiction notes.*Fees and inspections/,
    );
    for (const title of ["Site plan", "Circuit calculations", "Findings"])
      expect(titles(packetOf("field", overlayOf("quillback-county"))).join("; ")).toContain(title);
    expect(titles(packetOf("owner", overlayOf("quillback-county")))).toEqual(expect.arrayContaining(["Jurisdiction notes", "Fees and inspections"]));
  });
  it("an affidavit and a schematic: with the card", () =>
    expect(titles(packetOf("submittal", overlayOf("otter-fell")))).toEqual([
      "Cover",
      "Cautions, assumptions and statements",
      "One-line diagram",
      "Inspection card",
    ]));
  it("a sheet asked for by name is taken whatever the mode", () => {
    const overlay = overlayOf("quillback-county");
    const asks = { id: "plan", asks: "A plan", sheet: "Site plan" };
    const asking = { ...overlay, intake: { ...overlay.intake!, sheets: [...overlay.intake!.sheets, asks] } };
    expect(titles(packetOf("submittal", asking))).toContain("Site plan");
  });
  it("small plan set and no overlay: everything, nothing left out", () => {
    for (const overlay of [null, overlayOf("saltmarsh-point")]) {
      expect(titles(packetOf("submittal", overlay))).toEqual(expect.arrayContaining(["Site plan", "Schedules", "Findings"]));
      expect(JSON.stringify(packetOf("submittal", overlay))).not.toContain("available on request");
    }
  });
  describe("its list", () => {
    const of = (change: object): Overlay => ({ ...overlayOf("saltmarsh-point"), intake: { ...overlayOf("saltmarsh-point").intake!, ...change } });
    const asks = (...sheets: string[]) => sheets.map((sheet) => ({ asks: "x", sheet }));
    it("puts the sheets it names first, in its order, once each", () =>
      expect(titles(packetOf("submittal", of({ sheets: asks("Schedules", "One-line", "Schedules", "Site plan") }))).slice(2, 6)).toEqual([
        "Schedules",
        "One-line diagram",
        "Site plan",
        "Trench and raceway sections",
      ]));
    it("is the submittal alone where nothing else is wanted; no sheet is lost by it", () => {
      const overlay = of({ nothing_else: true, sheets: [...asks("Panel:", "Load calculation"), { asks: "Cut sheets" }] });
      expect(titles(packetOf("submittal", overlay))).toEqual(["Cover", "Cautions, assumptions and statements", "Panel: House panel", "Load calculation"]);
      const every = (overlay: Overlay | null) => new Set(PACKET_SETS.flatMap((set) => titles(packetOf(set, overlay))));
      expect(every(overlay)).toEqual(every(of({})));
    });
    it("that names no sheet where nothing else is wanted is an issue", () => {
      const [issue] = basisFrom(of({ nothing_else: true, sheets: [{ asks: "Cut sheets" }] }), "2023").issues;
      expect(issue?.path).toBe("intake.nothing_else");
    });
  });
  describe("its stamp area", () => {
    const of = (stamp: object | undefined): Overlay => {
      const overlay = overlayOf("saltmarsh-point");
      return {
        ...overlay,
        intake: { ...overlay.intake!, stamp_area: stamp === undefined ? undefined : { width_in: 4, height_in: 2.5, where: "top right", ...stamp } },
      };
    };
    const kept = (stamp: object | undefined, paper: "letter" | "tabloid" = "letter") => {
      const overlay = of(stamp);
      const edition = overlay.edition ?? "2023";
      const packet = composePacket({ design: design({ job: jobOf("rv-50-carport"), basis: basisFrom(overlay, edition) }), overlay, date: "2026-11-25", paper });
      return {
        packet,
        html: renderHtml({ packet, fonts: { family: "x", faces: [] } }),
        on: packet.sheets.flatMap(({ title, stamp }) => (stamp ? [title] : [])),
      };
    };
    const STAMP = /<div class="stamp" style="width: ([\d.]+)in; height: ([\d.]+)in">/g;
    it("is left blank in its size on site plan and one-line, and on no other sheet", () => {
      const { html, on } = kept({});
      expect(on).toEqual(["Site plan", "One-line diagram"]);
      expect([...html.matchAll(STAMP)].map(([, w, h]) => [w, h])).toEqual(Array(2).fill(["4", "2.5"]));
    });
    it("is on the sheets it names", () => expect(kept({ sheets: ["Cover", "Load"] }).on).toEqual(["Cover", "Load calculation"]));
    it("is in what is handed in alone", () => {
      const [field] = packetOf("field", of({ sheets: ["Cover"] })).sheets;
      expect([field?.title, field?.stamp]).toEqual(["Cover", null]);
    });
    it("stands beside the drawing on large paper", () => expect([...kept({}, "tabloid").html.matchAll(STAMP)]).toHaveLength(2));
    it("above a drawing that leaves the room for it, else after it: the site plan keeps its scale", () => {
      const at = (title: string) => kept({}).packet.sheets.find((sheet) => sheet.title === title)!;
      const heightOf = (title: string) => {
        const [block] = at(title).blocks;
        return block?.kind === "drawing" ? Number(/height="([\d.]+)pt"/.exec(block.svg)![1]) : Number.NaN;
      };
      const scaleOf = (packet: ReturnType<typeof packetOf>) => /Scale 1 in = \d+ ft/.exec(JSON.stringify(blocksOf(packet, "Site plan")))?.[0];
      // 572 pt of room, less 2.5 in, and 42 pt that the page has to spare.
      const under = 572 - 2.5 * 72 + 42;
      for (const title of ["Site plan", "One-line diagram"]) expect(at(title).stamp?.at).toBe(heightOf(title) <= under ? "first" : "last");
      expect(at("One-line diagram").stamp?.at).toBe("first");
      expect(scaleOf(kept({ height_in: 4 }).packet)).toBe(scaleOf(packetOf("submittal")));
      expect(scaleOf(packetOf("submittal"))).toBeDefined();
    });
    it("larger than a page holds is not kept, and the jurisdiction's sheet says so", () => {
      const { on, html, packet } = kept({ width_in: 9 });
      expect([on, html.match(STAMP)]).toEqual([[], null]);
      expect(JSON.stringify(packet)).toContain("NOT kept: larger than a page of this set holds");
    });
    it("on a sheet there is none of is an issue", () =>
      expect(basisFrom(of({ sheets: ["One line diagram"] }), "2023").issues[0]?.path).toBe("intake.stamp_area.sheets.0"));
  });
  it.each([
    ["intake.sheets.0.sheet", "Load calcualtion"],
    ["notes.0.sheet", "One line diagram"],
  ])("a misspelt sheet at %s is an issue that names the sheets", (path, sheet) => {
    const overlay = overlayOf("saltmarsh-point");
    const wrong = path.startsWith("intake")
      ? { ...overlay, intake: { ...overlay.intake!, sheets: [{ asks: "x", sheet }] } }
      : { ...overlay, notes: [{ says: "x", citation: "x", sheet }] };
    const [issue] = basisFrom(wrong, "2023").issues;
    expect(issue?.path).toBe(path);
    expect(issue?.what).toContain(sheet);
    expect(issue?.mend).toContain("Load calculation");
    expect(basisFrom(overlay, "2023").issues).toEqual([]);
  });
});

describe("what the design knows is in print", () => {
  const packet = packetOf("submittal", overlayOf("saltmarsh-point"));
  const made = design({ job: jobOf("rv-50-carport"), basis: basisFrom(overlayOf("saltmarsh-point"), "2023") });
  it("fault current and ground-fault loop under a heading of their own, each line once", () => {
    const calcs = packet.sheets.flatMap(({ blocks }) => all(blocks)).flatMap((b) => (b.kind === "calc" ? [b] : []));
    const fault = calcs.filter(({ caption }) => caption === "Fault current and ground-fault loop");
    expect(fault).toHaveLength(1);
    const labels = new Set(made.circuits[0]!.fault!.steps.map(({ label }) => label));
    expect(labels.size).toBeGreaterThan(5);
    for (const label of labels) expect(fault[0]!.lines.map((line) => line.label)).toContain(label);
    const others = calcs.filter(({ caption }) => caption === "Circuit").flatMap(({ lines }) => lines.map(({ label }) => label));
    for (const label of labels) expect(others).not.toContain(label);
  });
  it("fault current and interrupting rating on the one-line", () => {
    const svg = blocksOf(packet, "One-line diagram").flatMap((b) => (b.kind === "drawing" ? [b.svg] : []))[0]!;
    expect(svg).toContain("bus 150 A, fault current 8.2 kA");
    expect(svg).toMatch(/50 A, 2P, GFCI, 10 kA, space/);
  });
  it("receptacle, disconnect, supports and bend radius in the schedules", () => {
    const text = JSON.stringify(blocksOf(packet, "Schedules"));
    for (const words of ["14-50R", "disconnect", "Supports and bends", "Fastened from each end, within"]) expect(text).toContain(words);
  });
});
