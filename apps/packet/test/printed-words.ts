import type { Block } from "@branchwork/sheets";

/** Lines break anywhere and fractions are set as one glyph. */
export const bare = (text: string): string =>
  text
    .normalize("NFKC")
    .replaceAll("⁄", "/")
    .replace(/[\s\u00ad\u200b-\u200d\u2060\ufeff]/g, "");

/** The last words of everything printed in a block: the first that a cut takes. */
export function lastWords(block: Block): readonly string[] {
  switch (block.kind) {
    case "together":
      return block.blocks.flatMap(lastWords);
    case "heading":
    case "paragraph":
      return [block.text];
    case "boxed":
      return block.entries.map(({ title, lines }) => lines.at(-1) ?? title);
    case "brief":
      return block.entries.map(({ text }) => text);
    case "table":
      return block.rows.flatMap(({ cells }) => cells.filter((cell) => cell !== ""));
    case "checklist":
      return [...block.items.flatMap(({ look, show, how }) => [look, show, how].filter((text) => text !== "")), ...block.sign];
    case "calc":
      return block.lines.flatMap(({ expression, result, sources }) => [expression, result, ...sources]);
    case "blanks":
      return block.labels;
    case "sheetIndex":
      return block.entries.map(({ title }) => title);
    case "drawing":
      return [...block.svg.matchAll(/<text [^>]*>([^<]*)<\/text>/g)].map((match) => match[1]!.replace(/&(amp|lt|gt|quot|#39);/g, plain));
    default:
      return block satisfies never;
  }
}
const PLAIN: Readonly<Record<string, string>> = { amp: "&", lt: "<", gt: ">", quot: '"', "#39": "'" };
const plain = (_: string, name: string): string => PLAIN[name] ?? "";
/** The end of a text as print leaves it: the first that a cut takes. */
export const tail = (text: string): string => bare(text).slice(-20);

/** Whether the end of a text stands on the pages, whole or broken between two of them. */
export function endsOn(pages: readonly string[], text: string): boolean {
  const end = tail(text);
  const splits = Array.from({ length: Math.max(0, end.length - 7) }, (_, i) => i + 4);
  return pages.some((page, i) => page.includes(end) || splits.some((at) => page.includes(end.slice(0, at)) && (pages[i + 1] ?? "").includes(end.slice(at))));
}
