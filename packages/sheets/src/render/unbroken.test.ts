import { describe, expect, it } from "vitest";
import { unbroken } from "./unbroken.js";

const plain = (markup: string): string => markup.replace(/<\/?span[^>]*>/g, "").replaceAll("\u{A0}", " ");

describe("unbroken text", () => {
  it.each([
    ["NFPA 70-2023 250.142(B)", "NFPA 70-2023 250.142(B)"],
    ["see NFPA 70-2023 Table 310.15(B)(1)(1) here", "NFPA 70-2023 Table 310.15(B)(1)(1)"],
    ["PVC-80 to the box", "PVC-80"],
    ["last compared 2026-11-02", "2026-11-02"],
  ])("%s keeps %s on one line, its words unchanged", (text, kept) => {
    const markup = unbroken(text);
    expect([...markup.matchAll(/<span class="nb">(.*?)<\/span>/g)].map((m) => m[1])).toContain(kept);
    expect(plain(markup)).toBe(text);
  });

  it.each([
    ["ground 10 AWG", "ground 10_AWG"],
    ["3 × 6 AWG copper", "3_×_6_AWG copper"],
    ["20,180 VA of load", "20,180_VA of load"],
    ["27 in³, 22.5 in³ needed", "27_in³, 22.5_in³ needed"],
    ["80 % of 50 A at 30 °C", "80_% of 50_A at 30_°C"],
    ["Table 9", "Table_9"],
    ["Chapter 9 Table 4 (one source)", "Chapter_9_Table_4 (one source)"],
    ["air taken *; load †, and box ‡", "air taken_*; load_†, and box_‡"],
    ["one source; * common practice", "one source; * common practice"],
  ])("%s has spaces that do not break, and no element", (text, kept) => {
    expect(unbroken(text)).toBe(kept.replaceAll("_", "\u{A0}"));
  });

  it("sets fractions of an inch as fractions, and neither conductor sizes nor quotients", () => {
    expect(unbroken("a 1-1/4 in raceway")).toBe('a <span class="nb">1-<span class="fr">1/4</span> in</span> raceway');
    for (const text of ["1/0 AWG", "120/240 V", "2026/16/2", "1000/2"]) expect(unbroken(text)).not.toContain('class="fr"');
  });

  it("escapes everything, also what it keeps together", () => {
    const hostile = `<b>3/4 in</b> & "NFPA 70-2023 250.142(B)" '<img src=x>' 12 V<script>`;
    const markup = unbroken(hostile);
    expect(plain(markup)).not.toMatch(/[<>"']/);
    expect(markup.match(/<[^>]*>/g)?.every((tag) => /^<(\/span|span class="(nb|fr)")>$/.test(tag))).toBe(true);
  });

  it("is quick on a long text of digits", () => {
    const started = performance.now();
    unbroken("1".repeat(20_000));
    unbroken("1-".repeat(20_000));
    expect(performance.now() - started).toBeLessThan(1_000);
  });
});
