import { design, jobSchema } from "@branchwork/engine";
import { describe, expect, it } from "vitest";
import { readingsAt } from "./compose/readings.js";
import { chainOf } from "./drawing/graph.js";
import { LETTER_SIZE } from "./drawing/lettering.js";
import { PAGE, scenesOf } from "./drawing/scene.js";
import { composePacket, drawOneLine, type Overlay, overlaySchema, renderHtml } from "./index.js";

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
    notes: [{ sheet: says, says, citation: says }],
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
    expect(html.match(/@page/g)).toHaveLength(1);
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
    const index = packet.sheets.flatMap((s) => s.blocks).find((b) => b.kind === "table" && b.caption === "Sheet index");
    expect(index?.kind === "table" && index.rows.map((r) => r.cells)).toEqual(packet.sheets.map((s) => [s.id, s.title]));
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
  it("puts the planned and the least cover in the trench checklist", () => expect(JSON.stringify(packet.sheets)).toContain("24 in planned; least 18 in"));

  it("marks in print what is from memory", () => expect(renderHtml({ packet, fonts: FONTS })).toContain("(from memory: verify)"));

  it("marks the new circuit in the directory, on both of its spaces", () => {
    const directory = packet.sheets.find((s) => s.title === "Panel directory")?.blocks[0];
    const fresh = directory?.kind === "table" ? directory.rows.filter((r) => r.fresh).map((r) => r.cells) : [];
    expect(fresh.map((cells) => [cells[3], cells[5]])).toEqual([
      ["6", "NEW: Plain"],
      ["8", "NEW: Plain"],
    ]);
  });
});

// ANSI C84.1 Range A, service voltage 120/240: 114–126 and 228–252 V.
describe("acceptance readings", () => {
  it("takes six at a four-wire 120/240 V outlet and three at a 120 V one", () => {
    expect(readingsAt({ volts: 240, wires: 4 }).map((r) => r[1])).toEqual([
      "228–252 V",
      "114–126 V",
      "114–126 V",
      "114–126 V",
      "114–126 V",
      "under 1 V with nothing connected",
    ]);
    expect(readingsAt({ volts: 120, wires: 3 })).toHaveLength(3);
  });
});

describe("one-line diagram", () => {
  it.each(["Plain", "W".repeat(390), "a long name of a place ".repeat(16).trim()])("keeps words apart, on the page, whatever their length", (name) => {
    const made = designOf(name.slice(0, 390));
    for (const circuit of made.circuits) {
      for (const scene of scenesOf("x", chainOf(made, circuit))) {
        scene.placed.forEach((p, i) => {
          const following = scene.placed[i + 1];
          if (following) expect(p.bottom).toBeLessThan(following.top);
        });
        expect(scene.placed.at(-1)!.bottom).toBeLessThanOrEqual(scene.legendTop);
        expect(scene.legendTop).toBeLessThan(PAGE.height);
      }
    }
  });

  it("has a title, a role, a legend, and letters of 1/8 in", () => {
    const [svg = ""] = drawOneLine(designOf("Plain"));
    expect(svg).toMatch(/role="img"/);
    expect(svg).toMatch(/<title id="one-line-1">One-line diagram/);
    expect(svg).toContain("IEEE 315 / ANSI Y32.2");
    // 1/8 in is 9 pt; capitals are at least 0.65 of the type size.
    expect(LETTER_SIZE * 0.65).toBeGreaterThanOrEqual(9);
  });
});
