import { overlayCautions } from "@branchwork/sheets";
import { EXIT } from "../exit-codes.js";
import { withExit } from "../report.js";
import { dayOf } from "./day.js";
import { loadOverlay } from "./load-overlay.js";

export interface CheckOverlayOptions {
  readonly date?: string;
  readonly json?: boolean;
}

/** `overlay check`: every issue with file, line and how to mend it, then what is old or without a citation. */
export function checkOverlay(file: string, options: CheckOverlayOptions): Promise<number> {
  return withExit(async () => {
    const date = dayOf(options.date);
    const result = await loadOverlay(file);
    const issues = result.ok ? [] : result.issues;
    const cautions = result.ok ? overlayCautions(result.loaded.overlay, date) : [];
    if (options.json)
      console.log(
        JSON.stringify(
          { format: "branchwork-overlay-check/1", ok: result.ok, date, files: result.ok ? result.loaded.files : [file], issues, cautions },
          null,
          2,
        ),
      );
    else {
      for (const issue of issues)
        console.error(`${issue.file}:${issue.line}:${issue.column}: ${issue.path ? `${issue.path}: ` : ""}${issue.what}\n    mend: ${issue.mend}`);
      for (const caution of cautions) console.log(`caution  ${caution}`);
      if (result.ok) console.log(`${result.loaded.overlay.name}: reads, and every name in it leads somewhere.`);
    }
    return result.ok ? EXIT.ready : EXIT.badInput;
  });
}
