/** Letters are laid out in points, 72 to the inch. Capitals of 14 pt type are taller than 1/8 in (9 pt). */
export const LETTER_SIZE = 14;
export const LINE_HEIGHT = 18;

/**
 * Widths of letters in thousandths of the letter size, rounded up: of the face we print with in its heavier cut (Source Sans 3 at weight
 * 600, as a browser measures it), so that words set in either cut keep within them.
 */
const WIDTHS: readonly (readonly [letters: string, width: number])[] = [
  [" ", 205],
  ["',.:;Iijl|·’", 290],
  ["!()-[]f{}", 330],
  ["/\\rt°²³", 380],
  ["*s", 440],
  ['"?cxz–“”', 485],
  ["#$+0123456789<=>FJLY^_aegkvy~±×é÷", 525],
  ["AESTVXZ`hnouÀÉñø√", 565],
  ["BCKPRbdpq", 600],
  ["&DGß", 640],
  ["HNOQUÑ", 680],
  ["Mw", 750],
  ["W¼Ω—", 805],
  ["%@m½¾", 880],
  ["…", 970],
];
const EMS = new Map(WIDTHS.flatMap(([letters, width]) => [...letters].map((letter) => [letter, width / 1000] as const)));
/** A letter not named may be of a script as wide as it is high. */
const UNKNOWN_EM = 1.05;

/** A width the face we print with does not exceed, in points. */
export function widthOf(text: string): number {
  let ems = 0;
  for (const letter of text) ems += EMS.get(letter) ?? UNKNOWN_EM;
  return ems * LETTER_SIZE;
}

/** Where a line may break: at a space, but not between a number and its unit. */
const BREAKS = /(?<!\d)\s+|\s+(?!(?:in|ft|A|V|kA|AWG|kcmil)\b)/;

/** Breaks text into lines no wider than `width`; a word that is too long is cut. */
export function wrap(text: string, width: number): readonly string[] {
  const lines: string[] = [];
  let line = "";
  for (const word of text.split(BREAKS).filter(Boolean)) {
    const joined = line === "" ? word : `${line} ${word}`;
    if (widthOf(joined) <= width) {
      line = joined;
      continue;
    }
    if (line !== "") lines.push(line);
    line = "";
    for (const letter of word) {
      if (line !== "" && widthOf(line + letter) > width) {
        lines.push(line);
        line = "";
      }
      line += letter;
    }
  }
  return line === "" ? lines : [...lines, line];
}
