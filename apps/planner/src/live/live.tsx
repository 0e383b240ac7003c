import { useEffect, useMemo, useState } from "preact/hooks";
import { STEP, STEPS, stepOf } from "../job/steps.js";
import { edit, goToField, planner } from "../planner.js";
import type { Digest, ShownFinding } from "../work/digest.js";
import type { ShownIssue } from "../work/protocol.js";
import { Choices } from "./choices.js";
import { LoadBar, RunFigures } from "./figures.js";
import { mendForIssue } from "./issue-mends.js";
import { mendFor } from "./mends.js";
import { tellIssue } from "./tell-issue.js";

const VERDICT = { fail: "Does not meet the code", caution: "Careful", "needs-person": "Look on site" } as const;
type Shown = keyof typeof VERDICT;

/** What the answers come to, beside the questions. */
export function Live() {
  const { digest, stale, issues, failure, ms } = planner();
  return (
    <aside class="live" id="live" aria-label="What your answers come to">
      <p class="state" role="status">
        {state(stale, issues, digest !== null)}
      </p>
      {failure && (
        <p class="wrong" role="alert">
          <b>The computation broke.</b> This is a fault of the program, not of your answers: {failure}. What is shown below is of before.
        </p>
      )}
      {issues.length > 0 && <Wanted />}
      {digest !== null && (
        <div class={stale ? "of-before" : ""}>
          <Findings digest={digest} />
          <LoadBar load={digest.load} />
          {digest.runs.map((run) => (
            <RunFigures run={run} key={run.id} />
          ))}
          <Choices digest={digest} />
          <OneLine svgs={digest.oneLine} />
          <Assumed digest={digest} />
          {ms !== null && <p class="hint">Computed on this machine in {ms < 1 ? "under 1" : Math.round(ms)} ms.</p>}
        </div>
      )}
    </aside>
  );
}

function state(stale: boolean, issues: readonly ShownIssue[], any: boolean): string {
  if (issues.length > 0 && any && !stale) return "The numbers are up to date. The packet still wants names.";
  if (issues.length > 0)
    return any ? "An answer is missing or not understood: the numbers below are of before." : "Numbers appear as soon as the answers below are given.";
  if (!any) return "Findings, numbers and the drawing appear here once you have picked what will be connected.";
  return stale ? "Computing…" : "Up to date.";
}

function Wanted() {
  const { issues, plain } = planner();
  const inOrder = [...issues].sort((a, b) => stepOf(a.path) - stepOf(b.path));
  return (
    <section aria-labelledby="wanted">
      <h3 id="wanted">Still wanted ({issues.length})</h3>
      <ul class="wanted">
        {inOrder.map((issue) => (
          <li key={issue.path + issue.what}>
            <IssueMend issue={issue} />
            <button type="button" class="link" onClick={() => goToField(issue.of === "overlay" ? STEP.town : stepOf(issue.path), issue.path)}>
              {issue.of === "overlay" ? "Town’s file" : STEPS[stepOf(issue.path)]}: {tellIssue(plain, issue)}
            </button>
          </li>
        ))}
      </ul>
    </section>
  );
}

function IssueMend({ issue }: { readonly issue: ShownIssue }) {
  const mend = mendForIssue(planner().plain, issue);
  return mend === null ? null : (
    <button type="button" class="aside" onClick={() => edit(mend.edits)}>
      {mend.says}
    </button>
  );
}

function Findings({ digest }: { readonly digest: Digest }) {
  const of = (verdict: Shown) => digest.findings.filter((finding) => finding.verdict === verdict);
  const passed = digest.findings.filter((finding) => finding.verdict === "pass").length;
  return (
    <section aria-labelledby="findings">
      <h3 id="findings">Findings</h3>
      <p>
        {of("fail").length} not met, {of("caution").length} careful, {of("needs-person").length} to look at, {passed} met.
      </p>
      {(["fail", "caution", "needs-person"] as const).map((verdict) =>
        of(verdict).length === 0 ? null : (
          <details key={verdict} open={verdict === "fail"} class={`findings ${verdict}`}>
            <summary>
              {VERDICT[verdict]} ({of(verdict).length})
            </summary>
            {of(verdict).map((finding) => (
              <OneFinding finding={finding} digest={digest} key={finding.check + finding.subject} />
            ))}
          </details>
        ),
      )}
    </section>
  );
}

function OneFinding({ finding, digest }: { readonly finding: ShownFinding; readonly digest: Digest }) {
  const { plain, stale } = planner();
  const mend = mendFor(finding, digest, plain);
  return (
    <article class="finding">
      <h4>{finding.title}</h4>
      <p>
        <b>{finding.subject}:</b> {finding.says}.
      </p>
      {finding.mend && (
        <p>
          {finding.verdict === "needs-person" ? "Look: " : "Mend: "}
          {finding.mend}.
        </p>
      )}
      {finding.cites && <p class="hint">{finding.cites}</p>}
      {mend && (
        <button type="button" disabled={stale} onClick={() => edit(mend.edits)}>
          {mend.says}
        </button>
      )}
    </article>
  );
}

function Assumed({ digest }: { readonly digest: Digest }) {
  if (digest.assumptions.length === 0) return null;
  return (
    <details class="more">
      <summary>Assumed because nothing was said ({digest.assumptions.length})</summary>
      <ul>
        {digest.assumptions.map((assumption) => (
          <li key={assumption.path + assumption.says}>{assumption.says}</li>
        ))}
      </ul>
    </details>
  );
}

/** The drawing as a picture: what a picture holds cannot act on the page. */
function OneLine({ svgs }: { readonly svgs: readonly string[] }) {
  const key = svgs.join("\n");
  const [urls, setUrls] = useState<readonly string[]>([]);
  const blobs = useMemo(() => svgs.map((svg) => new Blob([svg], { type: "image/svg+xml" })), [key]);
  useEffect(() => {
    const made = blobs.map((blob) => URL.createObjectURL(blob));
    setUrls(made);
    return () => {
      for (const url of made) URL.revokeObjectURL(url);
    };
  }, [blobs]);
  return (
    <details class="more" open>
      <summary>One-line drawing</summary>
      {urls.map((url, i) => (
        <img
          src={url}
          key={url}
          alt={`One-line drawing ${i + 1} of ${urls.length}: service, panel, breaker, route and outlet. The same is told in words on the packet’s sheets.`}
          class="paper"
        />
      ))}
    </details>
  );
}
