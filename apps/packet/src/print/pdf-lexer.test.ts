import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { PdfLexer } from "./pdf-lexer.js";

const read = (source: string): unknown[] => {
  const lexer = new PdfLexer(Buffer.from(source, "latin1"), 0, () => undefined);
  const items: unknown[] = [];
  for (let item = lexer.next(); item !== undefined; item = lexer.next()) items.push(item);
  return items;
};
const word = (text: string) => ({ kind: "word", word: text });

describe("numerals", () => {
  // ISO 32000-1, 7.3.3: a sign or none, digits, at most one point anywhere among them.
  it.each([
    ["0", 0],
    ["+17", 17],
    ["-98", -98],
    ["34.5", 34.5],
    ["-3.62", -3.62],
    ["4.", 4],
    ["-.002", -0.002],
  ])("%s", (text, value) => {
    expect(read(`${text} `)).toEqual([value]);
    expect(read(`${text}/`).at(0)).toBe(value);
    expect(read(text)).toEqual([value]);
  });

  it.each(["1.2.3", "-", "+", ".", "1-2", "--1", "4a", "1e5", "0x10"])("%s is no numeral", (text) => {
    expect(read(text)).toEqual([word(text)]);
  });

  it("are the doubles nearest to what is written, however long", () => {
    const digits = fc.array(fc.integer({ min: 0, max: 9 }), { maxLength: 22 }).map((all) => all.join(""));
    fc.assert(
      fc.property(fc.constantFrom("", "+", "-"), digits, fc.boolean(), digits, (sign, whole, point, part) => {
        const text = `${sign}${whole}${point ? `.${part}` : ""}`;
        fc.pre(/\d/.test(text));
        expect(read(` ${text} x`)).toEqual([Number(text), word("x")]);
      }),
      { numRuns: 2000 },
    );
  });
});
