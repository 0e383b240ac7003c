import { readPacketFile } from "../job/packet-file.js";

const MOST_BYTES = 2_000_000;

/** Gives the reader a file to keep. */
export const download = (name: string, text: string, type: string): void => downloadBlob(name, new Blob([text], { type: `${type};charset=utf-8` }));

export function downloadBlob(name: string, blob: Blob): void {
  const url = URL.createObjectURL(blob);
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

const MOST_PDF_BYTES = 30_000_000;

export type OpenedJob = { readonly text: string; readonly overlay: { readonly name: string; readonly text: string } | null } | { readonly refused: string };

/** The job of the file chosen in an input, be it a job file or a packet's PDF that carries one; null where none was chosen. */
export async function readChosenJob(input: HTMLInputElement): Promise<OpenedJob | null> {
  const file = input.files?.[0];
  if (file === undefined) return null;
  const pdf = /\.pdf$/i.test(file.name) || file.type === "application/pdf";
  if (!pdf) {
    const read = await readChosenFile(input);
    return read === null || "refused" in read ? read : { text: read.text, overlay: null };
  }
  input.value = "";
  if (file.size > MOST_PDF_BYTES) return { refused: `${file.name} is larger than ${MOST_PDF_BYTES / 1e6} MB: no packet is.` };
  try {
    const { job, overlay } = await readPacketFile(new Uint8Array(await file.arrayBuffer()));
    return { text: job, overlay };
  } catch (error) {
    return { refused: error instanceof Error ? error.message : String(error) };
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
