import { explainOverlay as fieldsOf } from "@branchwork/sheets";
import { EXIT } from "../exit-codes.js";
import { withExit } from "../report.js";
import { overlayOrThrow } from "./load-overlay.js";

/** `overlay explain`: every field of the overlay with what it extends, and the file and line each came from. */
export function explainOverlay(file: string, options: { readonly json?: boolean }): Promise<number> {
  return withExit(async () => {
    const { overlay, placed, files } = await overlayOrThrow(file);
    const fields = fieldsOf(placed);
    if (options.json) console.log(JSON.stringify({ format: "branchwork-overlay-explain/1", name: overlay.name, files, fields }, null, 2));
    else for (const { path, value, file: from, line } of fields) console.log(`${path}: ${String(value)}\n    ${from}.yaml:${line}`);
    return EXIT.ready;
  });
}
