import { constants } from "node:fs";
import { open } from "node:fs/promises";

/** A path does not lead to a file that can be read; the message is for a person. */
export class UnreadableError extends Error {
  override readonly name = "UnreadableError";
}

/**
 * A file's bytes, `most + 1` of them at most, so that one too large shows. A folder, pipe or device is refused: reading it could
 * last for ever or give nothing. Throws UnreadableError.
 */
export async function readBounded(path: string, most: number): Promise<Uint8Array> {
  try {
    // Without O_NONBLOCK the opening of a pipe that nobody writes to never ends.
    const file = await open(path, constants.O_RDONLY | (constants.O_NONBLOCK ?? 0));
    try {
      const stat = await file.stat();
      if (stat.isDirectory()) throw new UnreadableError("a folder, not a file");
      if (!stat.isFile()) throw new UnreadableError("a pipe or a device, not a file");
      const bytes = Buffer.alloc(Math.min(stat.size, most + 1));
      let length = 0;
      for (let read = -1; read !== 0 && length < bytes.length; length += read)
        ({ bytesRead: read } = await file.read(bytes, length, bytes.length - length, length));
      return bytes.subarray(0, length);
    } finally {
      await file.close();
    }
  } catch (error) {
    if (error instanceof UnreadableError) throw error;
    const code = (error as NodeJS.ErrnoException).code;
    if (code === undefined) throw new UnreadableError(`cannot be read (${error instanceof Error ? error.message : String(error)})`);
    throw new UnreadableError(code === "ENOENT" ? "there is no such file" : code === "ELOOP" ? "the links lead in a circle" : `cannot be read (${code})`);
  }
}
