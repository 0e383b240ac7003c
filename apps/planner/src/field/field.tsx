import type { ComponentChildren } from "preact";
import { type Path, printPath } from "../job/document.js";
import { edit, planner } from "../planner.js";

export interface Asked {
  readonly path: Path;
  readonly label: string;
  /** Why it is asked. */
  readonly why?: string | undefined;
  /** Where the answer stands. */
  readonly find?: ComponentChildren;
  /** What stands in when nobody knows: a value that is written and marked, or null to leave the field out. */
  readonly unknown?: unknown;
  /** What leaving it out means. */
  readonly otherwise?: string | undefined;
}

/** A question: label, why, where to find the answer, what is wrong with it, and "I don't know". */
export function Field({
  path,
  label,
  why,
  find,
  unknown,
  otherwise,
  children,
  group,
}: Asked & { readonly children: ComponentChildren; readonly group?: boolean }) {
  const printed = printPath(path);
  const { issues, assumed } = planner();
  const wrong = issues.filter((issue) => issue.of === "job" && issue.path === printed);
  const standsIn = assumed.includes(printed);
  const id = `field-${printed}`;
  const dontKnow = unknown !== undefined && (
    <button
      type="button"
      class="plain"
      aria-pressed={standsIn}
      onClick={() => edit([unknown === null ? { at: path, put: undefined } : { at: path, put: unknown, assumed: true }])}
    >
      I don’t know<span class="unseen">: {label}</span>
    </button>
  );
  const below = (
    <>
      {standsIn && <p class="assumed">Assumed; the job and the packet say so.</p>}
      {otherwise && <p class="hint">{otherwise}</p>}
      {wrong.map((issue) => (
        <p class="wrong" id={`${id}-wrong`} key={issue.what}>
          <b>{issue.what.includes("is missing") ? "Not answered yet." : `${issue.what}.`}</b> {plainMend(issue.mend)}
        </p>
      ))}
      {find && (
        <details>
          <summary>Where do I find this?</summary>
          <div class="find">{find}</div>
        </details>
      )}
    </>
  );
  if (group)
    return (
      <fieldset class="field" aria-describedby={wrong.length > 0 ? `${id}-wrong` : undefined}>
        <legend id={id} tabIndex={-1}>
          {label}
        </legend>
        {why && <p class="hint">{why}</p>}
        <div class="answer">
          {children}
          {dontKnow}
        </div>
        {below}
      </fieldset>
    );
  return (
    <div class="field">
      <label for={id}>{label}</label>
      {why && (
        <p class="hint" id={`${id}-why`}>
          {why}
        </p>
      )}
      <div class="answer">
        {children}
        {dontKnow}
      </div>
      {below}
    </div>
  );
}

/** The reader's mends speak of the file; a householder sees a field. */
const plainMend = (mend: string): string =>
  mend
    .replace(/^add \w+: write /, "Write ")
    .replace(/^add \w+: /, "Give ")
    .replace(/^write /, "Write ");

export const describedBy = (path: Path): string => `field-${printPath(path)}-why field-${printPath(path)}-wrong`;
export const isWrong = (path: Path): boolean => planner().issues.some((issue) => issue.of === "job" && issue.path === printPath(path));
