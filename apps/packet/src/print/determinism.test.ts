import { describe, expect, it } from "vitest";
import { fixVariable } from "./determinism.js";

const bytes = (text: string) => new Uint8Array(Buffer.from(text, "latin1"));
const text = (pdf: Uint8Array) => Buffer.from(pdf).toString("latin1");
const date = new Date("2026-03-04T05:06:07.890Z");
const dates = "/CreationDate (D:20991231235959+00'00')\n/ModDate (D:20991231235959+00'00')";

describe("fixVariable", () => {
  it("writes the date given, in UTC, into both fields", () => {
    expect(text(fixVariable(bytes(dates), date))).toBe("/CreationDate (D:20260304050607+00'00')\n/ModDate (D:20260304050607+00'00')");
  });

  it("renumbers structure ids by rank, the same id the same way, in every key that carries them", () => {
    const tree =
      "/ID (node00000907)>> /Headers [(node00000041) (node00000907)] /Limits [(node00000041) (node00000907)]\n/Names [(node00000041) 3 0 R (node00000907) 4 0 R]";
    expect(text(fixVariable(bytes(`${dates} ${tree}`), date))).toContain(
      "/ID (node00000002)>> /Headers [(node00000001) (node00000002)] /Limits [(node00000001) (node00000002)]\n/Names [(node00000001) 3 0 R (node00000002) 4 0 R]",
    );
  });

  it.each(["Title", "Alt", "ActualText", "Lang"])("leaves a /%s that reads like an id alone", (key) => {
    const fixed = text(fixVariable(bytes(`/${key} (node00000907) ${dates} /ID (node00000907)`), date));
    expect(fixed).toContain(`/${key} (node00000907) `);
    expect(fixed).toContain("/ID (node00000001)");
  });

  it("leaves the inside of streams alone", () => {
    const stream = "<</Length 27>> stream\n/ID (node00000907) /ModDate (D:20991231235959+00'00')\nendstream";
    expect(text(fixVariable(bytes(`${stream} ${dates} /ID (node00000041)`), date))).toContain(stream);
  });

  it("leaves text that only looks like an id or a date alone: strings in a PDF carry escaped brackets", () => {
    const title = "/Title (see \\(node00000907\\) and /CreationDate \\(D:20991231235959+00'00'\\))";
    expect(text(fixVariable(bytes(`${title} ${dates}`), date))).toContain(title);
  });

  it.each([
    ["none", ""],
    ["one", "/CreationDate (D:20991231235959+00'00')"],
    ["three", `${dates} /ModDate (D:20991231235959+00'00')`],
  ])("refuses a PDF with %s of the date fields", (_how, source) => {
    expect(() => fixVariable(bytes(source), date)).toThrow(/expected 2 date fields/);
  });

  it("refuses a date that is none", () => {
    expect(() => fixVariable(bytes(dates), new Date("never"))).toThrow(RangeError);
  });
});
