import { compareEditions, type Edition } from "@branchwork/engine";
import { EXIT } from "./exit-codes.js";
import { loadDesign } from "./load-design.js";
import { withExit } from "./report.js";

/** `compare`: what changes for the job when one edition takes the place of another. Exit 1 where it is not ready under the second. */
export function compare(job: string, options: { readonly from: Edition; readonly to: Edition; readonly json?: boolean }): Promise<number> {
  return withExit(async () => {
    const { design } = await loadDesign(job, {});
    const change = compareEditions({ job: design.job, from: options.from, to: options.to });
    if (options.json) console.log(JSON.stringify({ format: "branchwork-comparison/1", ...change }, null, 2));
    else {
      const ready = (is: boolean) => (is ? "ready" : "not ready");
      console.log(`${change.from}: ${ready(change.readyBefore)}. ${change.to}: ${ready(change.readyAfter)}.`);
      for (const { kind, subject, before, after } of change.findings)
        console.log(
          `${kind}  ${subject}: ${before === null ? "nothing" : `${before.verdict}, ${before.says}`} -> ${after === null ? "nothing" : `${after.verdict}, ${after.says}`}`,
        );
      for (const { label, unit, before, after } of change.values) console.log(`value  ${label}: ${before ?? "none"} -> ${after ?? "none"} ${unit}`);
      for (const { title, before, after } of change.sections) console.log(`section  ${title}: ${before.join(", ") || "none"} -> ${after.join(", ") || "none"}`);
      if (change.findings.length + change.values.length + change.sections.length === 0) console.log("Nothing changes.");
    }
    return change.readyAfter ? EXIT.ready : EXIT.findings;
  });
}
