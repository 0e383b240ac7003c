const MOST_BYTES = 2_000_000;

/** Gives the reader a file to keep. */
export function download(name: string, text: string, type: string): void {
  const url = URL.createObjectURL(new Blob([text], { type: `${type};charset=utf-8` }));
  const link = document.createElement("a");
  link.href = url;
  link.download = name;
  document.body.append(link);
  link.click();
  link.remove();
  setTimeout(() => URL.revokeObjectURL(url), 10_000);
}

export type ReadFile = { readonly name: string; readonly text: string } | { readonly refused: string };

/** The text of the file chosen in an input; null where none was. */
export async function readChosenFile(input: HTMLInputElement): Promise<ReadFile | null> {
  const file = input.files?.[0];
  if (file === undefined) return null;
  input.value = ""; // so that the same file may be chosen again
  if (file.size > MOST_BYTES) return { refused: `${file.name} is larger than ${MOST_BYTES} bytes: a job or town file is a few kilobytes.` };
  try {
    return { name: file.name, text: new TextDecoder("utf-8", { fatal: true }).decode(await file.arrayBuffer()) };
  } catch {
    return { refused: `${file.name} is not text (UTF-8). Choose a .yaml job or town file.` };
  }
}

/** A file name made of a title. */
export const fileName = (title: string): string =>
  title
    .normalize("NFKD")
    .replace(/[^A-Za-z0-9]+/g, "-")
    .replace(/^-+|-+$/g, "")
    .toLowerCase()
    .slice(0, 60) || "job";
