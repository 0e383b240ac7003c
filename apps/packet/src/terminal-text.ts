// Marks that turn the direction of writing or end a line, apart from the controls.
const TURNING = "\\u061c\\u200e\\u200f\\u2028-\\u202e\\u2066-\\u2069";

/** Text fit for a terminal: line ends and tabs stay, what a terminal obeys and what turns the direction of writing is shown as □. */
export function forTerminal(text: string): string {
  return text.replace(new RegExp(`(?![\\n\\t])\\p{Cc}|[${TURNING}]`, "gu"), "□");
}

/** The same on one line, as a file's name must be. */
export const oneLine = (text: string): string => forTerminal(text).replace(/[\n\t]/g, "□");

/** A value as JSON in which the same characters are written as escapes: it reads back as it was. */
export function jsonLine(value: unknown, indent?: number): string {
  return JSON.stringify(value, null, indent).replace(
    new RegExp(`[\\u007f-\\u009f${TURNING}]`, "gu"),
    (c) => `\\u${c.charCodeAt(0).toString(16).padStart(4, "0")}`,
  );
}
