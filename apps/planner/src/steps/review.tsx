import type { PacketSet } from "@branchwork/sheets";
import { useState } from "preact/hooks";
import { TextField } from "../field/inputs.js";
import { textAt } from "../job/document.js";
import { STEP, STEPS, stepOf } from "../job/steps.js";
import { tellPath, tellValue } from "../job/unknowns.js";
import { tellIssue } from "../live/tell-issue.js";
import { download, fileName } from "../paper/files.js";
import { today } from "../paper/today.js";
import { editText, go, goToField, planner } from "../planner.js";
import { ask } from "../work/client.js";
import type { TextAnswer } from "../work/protocol.js";
import { ShoppingList } from "./shopping-list.js";

export function ReviewStep() {
  const { plain, issues, digest, stale, assumed } = planner();
  const wants = issues.filter((issue) => issue.of === "job" && stepOf(issue.path) !== STEP.review);
  const fails = digest?.findings.filter((finding) => finding.verdict === "fail").length ?? 0;
  return (
    <>
      <TextField
        path={["project", "owner"]}
        label="Owner of the house"
        why="The permit is issued to this name."
        also={(value) =>
          textAt(plain, ["project", "preparer", "name"]) === "" || textAt(plain, ["project", "preparer", "name"]) === textAt(plain, ["project", "owner"])
            ? [{ at: ["project", "preparer", "name"], put: value }]
            : []
        }
      />
      <TextField path={["project", "site"]} label="Address of the work" why="It stands on every sheet." />
      <TextField path={["project", "title"]} label="Title of the job" why="What the clerk at the counter reads first." />
      <TextField path={["project", "preparer", "name"]} label="Prepared by" why="Your name." />
      <details class="more">
        <summary>Parcel, scope, licence</summary>
        <TextField path={["project", "parcel"]} label="Parcel number" find="On the tax bill." />
        <TextField path={["project", "scope"]} label="Scope in one sentence" long />
        <TextField path={["project", "preparer", "role"]} label="Role of the preparer" />
        <TextField path={["project", "preparer", "phone"]} label="Phone" />
        <TextField path={["project", "preparer", "licence"]} label="Licence number" />
      </details>
      <section aria-labelledby="where-it-stands">
        <h3 id="where-it-stands">Where it stands</h3>
        {wants.length > 0 && (
          <>
            <p>
              <b>{wants.length === 1 ? "One answer is" : `${wants.length} answers are`} still wanted</b> before a packet can be made:
            </p>
            <ul>
              {wants.map((issue) => (
                <li key={issue.path}>
                  <button type="button" class="link" onClick={() => goToField(stepOf(issue.path), issue.path)}>
                    {STEPS[stepOf(issue.path)]}: {tellIssue(plain, issue)}
                  </button>
                </li>
              ))}
            </ul>
          </>
        )}
        {issues.length === 0 && digest !== null && !stale && (
          <p>
            {digest.ready && fails === 0
              ? "Nothing computed stands in the way. Read what calls for care and what is to be looked at on site, under Findings; then look at the packet."
              : `${fails} ${fails === 1 ? "thing does" : "things do"} not meet the code yet: see the findings.`}
          </p>
        )}
        {assumed.length > 0 && (
          <>
            <p>Assumed, to be found out before work begins. The packet says so:</p>
            <ul>
              {assumed.map((path) => (
                <li key={path}>
                  <button type="button" class="link" onClick={() => goToField(stepOf(path), path)}>
                    {capital(tellPath(plain, path))}: {tellValue(plain, path)}
                  </button>
                </li>
              ))}
            </ul>
          </>
        )}
        <p>
          <button type="button" class="main" disabled={issues.length > 0 || digest === null} onClick={() => go("paper")}>
            Look at the packet
          </button>
        </p>
      </section>
      <ShoppingList />
      <Downloads />
      <JobText />
    </>
  );
}

const capital = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);

export function Downloads({ set = "submittal" }: { readonly set?: PacketSet }) {
  const { text, overlay, plain, issues } = planner();
  const [refused, setRefused] = useState("");
  const name = fileName(textAt(plain, ["project", "title"]));
  const given = { job: text, overlay: overlay?.text ?? null };
  const fetched = async (asked: Promise<TextAnswer>, file: string, type: string) => {
    try {
      const answer = await asked;
      setRefused(answer.ok ? "" : "The job is not whole yet: answer what is still wanted.");
      if (answer.ok) download(file, answer.text, type);
    } catch (error) {
      setRefused(`It could not be made: ${error instanceof Error ? error.message : String(error)}`);
    }
  };
  const whole = issues.length === 0;
  return (
    <section aria-labelledby="downloads">
      <h3 id="downloads">Keep it</h3>
      <p class="hint">The job file holds everything; the command line and this page read the same file.</p>
      <ul class="chips">
        <li>
          <button type="button" onClick={() => download(`${name}.yaml`, text, "application/yaml")}>
            Job file
          </button>
        </li>
        <li>
          <button
            type="button"
            disabled={!whole}
            onClick={() => fetched(ask({ ask: "packet", date: today(), set, ...given }), `${name}${set === "submittal" ? "" : `-${set}`}.html`, "text/html")}
          >
            Packet (HTML)
          </button>
        </li>
        <li>
          <button type="button" disabled={!whole} onClick={() => fetched(ask({ ask: "design-json", ...given }), `${name}.json`, "application/json")}>
            Every number (JSON)
          </button>
        </li>
        <li>
          <button
            type="button"
            disabled={!whole}
            onClick={() => {
              for (const [i, svg] of (planner().digest?.oneLine ?? []).entries())
                download(i === 0 ? `${name}.svg` : `${name}-${i + 1}.svg`, svg, "image/svg+xml");
            }}
          >
            One-line drawing (SVG)
          </button>
        </li>
      </ul>
      {refused && (
        <p class="wrong" role="alert">
          {refused}
        </p>
      )}
    </section>
  );
}

function JobText() {
  const { text, issues } = planner();
  const wrong = issues.filter((issue) => issue.of === "job");
  return (
    <details class="more">
      <summary>The job file itself</summary>
      <label for="job-text">Text of the file. Comments are kept.</label>
      <textarea id="job-text" class="code" rows={20} spellcheck={false} value={text} onInput={(event) => editText(event.currentTarget.value)} />
      {wrong.map((issue) => (
        <p class="wrong" key={issue.path + issue.what}>
          <b>
            Line {issue.line}, {issue.path || "file"}:
          </b>{" "}
          {issue.what}. {issue.mend}
        </p>
      ))}
    </details>
  );
}
