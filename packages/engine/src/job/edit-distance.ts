const MOST = 60;

/** Levenshtein distance: letters put in, taken out or changed to make one text of another. `a` is cut to 60 characters, so a hostile name costs nothing. */
export function editDistance(a: string, b: string): number {
  const from = a.slice(0, MOST);
  let row = Array.from({ length: b.length + 1 }, (_, i) => i);
  for (let i = 1; i <= from.length; i++) {
    const next = [i];
    for (let j = 1; j <= b.length; j++) next.push(Math.min(next[j - 1]! + 1, row[j]! + 1, row[j - 1]! + (from[i - 1] === b[j - 1] ? 0 : 1)));
    row = next;
  }
  return row[b.length]!;
}
