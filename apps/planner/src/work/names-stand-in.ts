import { edited } from "../job/document.js";
import { type Loaded, loaded } from "./loaded.js";
import type { Given, ShownIssue } from "./protocol.js";

const NAMES: Readonly<Record<string, readonly string[]>> = {
  "project.owner": ["project", "owner"],
  "project.site": ["project", "site"],
  "project.title": ["project", "title"],
  "project.preparer.name": ["project", "preparer", "name"],
};

/** The job designed with stand-ins where only names are wanted: no number hangs on them. For the screen alone; a packet is not made so. */
export function withoutNames(given: Given, issues: readonly ShownIssue[]): Loaded {
  const wanted = issues.map((issue) => (issue.of === "job" ? NAMES[issue.path] : undefined));
  if (wanted.some((path) => path === undefined)) return { ok: false, issues };
  const job = edited(
    given.job,
    wanted.map((path) => ({ at: path!, put: "Not given yet" })),
  );
  return job === null ? { ok: false, issues } : loaded({ ...given, job });
}
