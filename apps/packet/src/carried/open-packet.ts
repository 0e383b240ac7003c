import { EXIT } from "../exit-codes.js";
import { writeWhole } from "../print/atomic-write.js";
import { withExit } from "../report.js";
import { readPacket } from "./read-packet.js";

/** `open`: the job file (and overlay) a packet was made from, given back. */
export function openPacket(file: string, options: { readonly out: string; readonly force?: boolean }): Promise<number> {
  return withExit(async () => {
    const packet = await readPacket(file);
    const { manifest } = packet;
    const files = [
      { name: manifest.job, bytes: packet.job },
      ...(packet.overlay === null || manifest.overlay === undefined ? [] : [{ name: manifest.overlay, bytes: packet.overlay }]),
      ...(packet.prices === null || manifest.prices === undefined ? [] : [{ name: manifest.prices, bytes: packet.prices }]),
    ];
    for (const path of await writeWhole(options.out, files, { force: options.force })) console.log(path);
    return EXIT.ready;
  });
}
