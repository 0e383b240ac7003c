import { EXIT } from "./exit-codes.js";
import { type LoadOptions, loadDesign } from "./load-design.js";
import { printFinding, withExit } from "./report.js";

/** `check`: findings on standard output, all of them as JSON or those that ask something as text. */
export function check(job: string, options: LoadOptions & { readonly json?: boolean }): Promise<number> {
  return withExit(async () => {
    const { design } = await loadDesign(job, options);
    if (options.json)
      console.log(JSON.stringify({ format: "branchwork-findings/1", ready: design.ready, edition: design.edition, findings: design.findings }, null, 2));
    else {
      for (const finding of design.findings.filter((f) => f.verdict !== "pass" && f.verdict !== "not-applicable")) console.log(printFinding(finding));
      const fails = design.findings.filter((f) => f.verdict === "fail").length;
      console.log(
        design.ready
          ? "\nReady: no check fails. What is marked look needs a person on site."
          : `\nNot ready: ${fails} finding${fails === 1 ? "" : "s"} fail${fails === 1 ? "s" : ""}.`,
      );
    }
    return design.ready ? EXIT.ready : EXIT.findings;
  });
}
