import { carriedInPdf } from "./packet-file/carried-in-pdf.js";
import { PacketFileError } from "./packet-file/pdf-source.js";

/** What a packet's PDF was made from. */
export interface PacketSources {
  readonly job: string;
  readonly overlay: { readonly name: string; readonly text: string } | null;
}

const MANIFEST = "packet.json";
const NONE = "This PDF carries no job file. Only a packet that Branchwork printed does; a PDF saved from a browser’s Print does not.";

/** The job and the town's file inside a packet's PDF, which may come from anyone. Throws PacketFileError with one sentence for a person. */
export async function readPacketFile(bytes: Uint8Array): Promise<PacketSources> {
  try {
    const files = carriedInPdf(bytes);
    const text = async (name: string): Promise<string> => {
      const file = files.get(name);
      if (file === undefined) throw new PacketFileError(`This PDF names a file it does not carry: ${name.slice(0, 80)}.`);
      try {
        return new TextDecoder("utf-8", { fatal: true }).decode(await file());
      } catch (error) {
        if (error instanceof TypeError) throw new PacketFileError(`A file inside this PDF is not text: ${name.slice(0, 80)}.`);
        throw error;
      }
    };
    if (!files.has(MANIFEST)) throw new PacketFileError(NONE);
    const { job, overlay } = namesIn(await text(MANIFEST));
    return { job: await text(job), overlay: overlay === null ? null : { name: overlay.replace(/^overlay-/, ""), text: await text(overlay) } };
  } catch (error) {
    if (error instanceof PacketFileError) throw error;
    throw new PacketFileError("This PDF cannot be read.", { cause: error });
  }
}

function namesIn(manifest: string): { readonly job: string; readonly overlay: string | null } {
  let plain: unknown;
  try {
    plain = JSON.parse(manifest);
  } catch {
    throw new PacketFileError(NONE);
  }
  if (typeof plain !== "object" || plain === null || !("format" in plain) || !String(plain.format).startsWith("branchwork-packet/"))
    throw new PacketFileError(NONE);
  if (!("job" in plain) || typeof plain.job !== "string") throw new PacketFileError(NONE);
  return { job: plain.job, overlay: "overlay" in plain && typeof plain.overlay === "string" ? plain.overlay : null };
}
