/** Letters are laid out in points, 72 to the inch. Capitals of 14 pt type are taller than 1/8 in (9 pt). */
export const LETTER_SIZE = 14;
export const LINE_HEIGHT = 18;

/** A width no face we print with exceeds, in points. */
export function widthOf(text: string): number {
  let ems = 0;
  for (const letter of text) {
    if (/[ilj.,:;'|! ]/.test(letter)) ems += 0.35;
    else if (/[a-z0-9()\-/]/.test(letter) && !/[mw]/.test(letter)) ems += 0.6;
    else if (letter.codePointAt(0)! < 0x300 && !/[MWmw@%]/.test(letter)) ems += 0.72;
    else ems += 1.05;
  }
  return ems * LETTER_SIZE;
}

/** Breaks text into lines no wider than `width`; a word that is too long is cut. */
export function wrap(text: string, width: number): readonly string[] {
  const lines: string[] = [];
  let line = "";
  for (const word of text.split(/\s+/).filter(Boolean)) {
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
