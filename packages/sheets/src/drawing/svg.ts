const ESCAPES: Record<string, string> = { "&": "&amp;", "<": "&lt;", ">": "&gt;", '"': "&quot;", "'": "&#39;", "`": "&#96;", "{": "&#123;", "}": "&#125;" };

/** Text made safe for markup; control characters, which XML forbids, are dropped. */
export function escapeText(text: string): string {
  // biome-ignore lint/suspicious/noControlCharactersInRegex: XML forbids these
  return text.replace(/[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]/g, "").replace(/[&<>"'`{}]/g, (c) => ESCAPES[c] ?? "");
}
