import type { Fonts } from "@branchwork/sheets";
import greek400 from "@fontsource/source-sans-3/files/source-sans-3-greek-400-normal.woff2?url";
import greek600 from "@fontsource/source-sans-3/files/source-sans-3-greek-600-normal.woff2?url";
import greek700 from "@fontsource/source-sans-3/files/source-sans-3-greek-700-normal.woff2?url";
import latin400 from "@fontsource/source-sans-3/files/source-sans-3-latin-400-normal.woff2?url";
import latin600 from "@fontsource/source-sans-3/files/source-sans-3-latin-600-normal.woff2?url";
import latin700 from "@fontsource/source-sans-3/files/source-sans-3-latin-700-normal.woff2?url";

const FILES = [
  { weight: 400, url: latin400 },
  { weight: 600, url: latin600 },
  { weight: 700, url: latin700 },
  // For Ω alone; without them the browser takes it from another family.
  { weight: 400, url: greek400, unicodeRange: "U+0370-03FF" },
  { weight: 600, url: greek600, unicodeRange: "U+0370-03FF" },
  { weight: 700, url: greek700, unicodeRange: "U+0370-03FF" },
] as const;

let fetched: Promise<Fonts> | null = null;

/** The packet's faces as the command line embeds them; fetched once, when a packet is first wanted. */
export function packetFonts(): Promise<Fonts> {
  fetched ??= fetchAll().catch((error: unknown) => {
    fetched = null;
    throw error;
  });
  return fetched;
}

async function fetchAll(): Promise<Fonts> {
  const faces = await Promise.all(
    FILES.map(async ({ url, ...face }) => {
      const answer = await fetch(url);
      if (!answer.ok) throw new Error(`the packet's lettering could not be fetched (${answer.status})`);
      return { ...face, base64: base64(new Uint8Array(await answer.arrayBuffer())) };
    }),
  );
  return { family: "Source Sans 3", faces };
}

function base64(bytes: Uint8Array): string {
  let text = "";
  for (let i = 0; i < bytes.length; i += 0x8000) text += String.fromCharCode(...bytes.subarray(i, i + 0x8000));
  return btoa(text);
}
