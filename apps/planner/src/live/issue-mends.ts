import { at, listAt, type Path, printPath, textAt } from "../job/document.js";
import { writtenRuns } from "../job/runs.js";
import type { ShownIssue } from "../work/protocol.js";
import type { Mend } from "./mends.js";

/** What one press can do about a name in the job that names nothing; null where the reader has to answer. */
export function mendForIssue(plain: unknown, issue: ShownIssue): Mend | null {
  if (issue.of !== "job") return null;
  const drawn = /^site_plan\.routes\[(\d+)\]\.(circuit|segment)$/.exec(issue.path);
  if (drawn !== null && / has the id | has no segment named /.test(issue.what)) {
    const way: Path = ["site_plan", "routes", Number(drawn[1])];
    return at(plain, way) === undefined ? null : { says: "Take this way off the site plan", edits: [{ remove: way }] };
  }
  if (!issue.what.startsWith("no segment of this route is named ")) return null;
  for (const run of writtenRuns(plain)) {
    const last = textAt(listAt(plain, [...run.path, "route"]).at(-1), ["name"]);
    for (const [i] of listAt(plain, [...run.path, "boxes"]).entries()) {
      const after = [...run.path, "boxes", i, "after"];
      if (printPath(after) === issue.path && last !== "") return { says: `Put this box at the end of ${last}`, edits: [{ at: after, put: last }] };
    }
  }
  return null;
}
