import { expect, it } from "vitest";
import { LETTER_SIZE, widthOf } from "../../../packages/sheets/src/drawing/lettering.js";
import { browsing, htmlOf, loadFixture, packetOf } from "./printing.js";

const ASCII = Array.from({ length: 95 }, (_, i) => String.fromCharCode(32 + i));
const LATIN = Array.from({ length: 96 }, (_, i) => String.fromCharCode(160 + i)).filter((letter) => letter !== "\u00ad");
const MARKS = [..."Ω√×÷±°′″–—“”’…¼½¾⅛≤≥μφθπ"];

const here = browsing();

/** Widths in points as the browser sets them in the packet's face, in its heavier cut unless told. */
async function measured(words: readonly string[], weight = 600): Promise<readonly number[]> {
  const page = await here.browser.newPage();
  try {
    await page.setContent(await htmlOf(packetOf(await loadFixture("hot-tub"))), { waitUntil: "load" });
    return (await page.evaluate(
      `document.fonts.ready.then(() => ${JSON.stringify(words)}.map((word) => {
        const span = document.createElement("span");
        span.style.cssText = "position:absolute;white-space:pre;font:${weight} ${LETTER_SIZE * 10}px Packet, sans-serif;font-variant-numeric:tabular-nums";
        span.textContent = word;
        document.body.append(span);
        const { width } = span.getBoundingClientRect();
        span.remove();
        return width / 10;
      }))`,
    )) as readonly number[];
  } finally {
    await page.close();
  }
}

it("no letter is wider in print than drawings leave room for", async () => {
  for (const weight of [400, 600]) {
    const letters = [...ASCII, ...LATIN, ...MARKS];
    const widths = await measured(letters, weight);
    const tooWide = letters.flatMap((letter, i) =>
      widths[i]! > widthOf(letter) + 1e-6
        ? [`${letter}: ${((widths[i]! / LETTER_SIZE) * 1000).toFixed(0)} > ${((widthOf(letter) / LETTER_SIZE) * 1000).toFixed(0)}`]
        : [],
    );
    expect(tooWide).toEqual([]);
  }
});

it("words are given at most a fifth more than they take", async () => {
  const words = [
    "Main breaker 200 A (E)",
    "50 A, 2P, GFCI, 10 kA, space 9/11",
    "Panel in utility room",
    "3 × 6 AWG copper THWN-2",
    "finished grade: concrete drive",
  ];
  const widths = await measured(words);
  for (const [i, word] of words.entries()) expect(widthOf(word) / widths[i]!).toBeLessThan(1.2);
});
