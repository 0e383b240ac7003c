import { tellPath } from "../job/unknowns.js";
import type { ShownIssue } from "../work/protocol.js";

/** An issue in the words of its question: a householder never reads the name of a field of the file. */
export function tellIssue(plain: unknown, issue: ShownIssue): string {
  if (issue.of === "overlay") return `line ${issue.line}: ${issue.what}`;
  const words = tellPath(plain, issue.path);
  if (words === issue.path) return issue.what;
  if (/ is missing$|breaker\.spaces$/.test(`${issue.what}`) || /too small or too short$/.test(issue.what)) return words;
  return `${words}: ${issue.what.replace(/^\w+: /, "")}`;
}
