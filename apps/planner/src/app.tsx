import { useEffect, useLayoutEffect, useRef } from "preact/hooks";
import { STEPS, stepOf } from "./job/steps.js";
import { JobsPage } from "./jobs-page.js";
import { later } from "./later.js";
import { Live } from "./live/live.js";
import { PaperPage } from "./paper/paper-page.js";
import { canEditNow, go, type Page, planner, redo, undo, usePlanner } from "./planner.js";
import { HouseStep } from "./steps/house.js";
import { PanelStep } from "./steps/panel.js";
import { ReviewStep } from "./steps/review.js";
import { RouteStep } from "./steps/route.js";
import { TownStep } from "./steps/town.js";
import { WhatStep } from "./steps/what.js";

const HEADS = [
  "What will be connected?",
  "The house’s service and panel",
  "What the house already runs",
  "The way the wire goes",
  "The site from above",
  "The town and its code",
  "Check it and take it along",
] as const;
const SiteStep = later(() => import("./site/site-step.js").then((part) => part.SiteStep));
const ReadingsPage = later(() => import("./readings/readings-page.js").then((part) => part.ReadingsPage));
const BODIES = [WhatStep, PanelStep, HouseStep, RouteStep, SiteStep, TownStep, ReviewStep] as const;

export function App() {
  const { page } = usePlanner();
  useEffect(() => {
    const keys = (event: KeyboardEvent) => {
      const typing = event.target instanceof HTMLInputElement || event.target instanceof HTMLTextAreaElement;
      if (typing || !(event.ctrlKey || event.metaKey) || event.key.toLowerCase() !== "z") return;
      event.preventDefault();
      (event.shiftKey ? redo : undo)();
    };
    addEventListener("keydown", keys);
    return () => removeEventListener("keydown", keys);
  }, []);
  return (
    <>
      <a class="skip" href="#main">
        To the questions
      </a>
      <Top />
      <Cautions />
      <Notice />
      {page === "plan" && <Plan />}
      {page === "paper" && <PaperPage />}
      {page === "readings" && <ReadingsPage />}
      {page === "jobs" && <JobsPage />}
    </>
  );
}

function Top() {
  const { page, canUndo, canRedo, kept } = planner();
  const link = (to: Page, says: string) => (
    <button type="button" class="tab" aria-current={page === to ? "page" : undefined} onClick={() => go(to)}>
      {says}
    </button>
  );
  return (
    <header class="top">
      <h1>Branchwork planner</h1>
      <nav aria-label="Pages">
        {link("plan", "Plan")}
        {link("paper", "Packet")}
        {link("readings", "Readings")}
        {link("jobs", "Jobs")}
      </nav>
      <div class="history">
        <button type="button" disabled={!canUndo} onClick={undo}>
          Undo
        </button>
        <button type="button" disabled={!canRedo} onClick={redo}>
          Redo
        </button>
        <span class="hint" role="status">
          {kept === "kept" ? "Kept in this browser" : kept === "keeping" ? "Keeping…" : "Not kept: download the job file"}
        </span>
      </div>
    </header>
  );
}

/** What a press took along, with the way back. */
function Notice() {
  const { notice } = planner();
  return (
    <div role="status" class="notice">
      {notice !== "" && (
        <p>
          {notice}{" "}
          <button type="button" onClick={undo}>
            Undo it
          </button>
        </p>
      )}
    </div>
  );
}

function Cautions() {
  return (
    <>
      <section class="cautions" aria-label="Cautions">
        <p>
          <b>The main off does not make the panel dead:</b> the service conductors and lugs ahead of it stay live. Panel work is for qualified persons. Local
          code and the authority having jurisdiction decide; this is a preparer’s aid, <b>not an approval</b>.
        </p>
      </section>
      <p class="cautions short" aria-hidden="true">
        <b>Main off leaves live parts.</b> Not an approval.
      </p>
    </>
  );
}

function Plan() {
  const { step, issues } = planner();
  const Body = BODIES[step]!;
  const head = useRef<HTMLHeadingElement>(null);
  const first = useRef(true);
  // At once, not after the next picture: the focus must not be taken from a reader who has gone on already.
  useLayoutEffect(() => {
    if (first.current) first.current = false;
    else if (document.activeElement === null || document.activeElement.closest(".steps, .onward") !== null) head.current?.focus();
  }, [step]);
  const wanted = (of: number) => issues.filter((issue) => issue.of === "job" && stepOf(issue.path) === of).length;
  return (
    <div class="plan">
      <nav class="steps" aria-label="Steps">
        <ol>
          {STEPS.map((name, i) => (
            <li key={name}>
              <button type="button" aria-current={i === step ? "step" : undefined} onClick={() => go("plan", i)}>
                <span class="number">{i + 1}</span> {name}
                {wanted(i) > 0 && <span class="count"> ({wanted(i)} wanted)</span>}
              </button>
            </li>
          ))}
        </ol>
      </nav>
      <main id="main">
        <h2 ref={head} tabIndex={-1}>
          {HEADS[step]}
        </h2>
        {canEditNow() ? <Body /> : <Broken />}
        <p class="onward">
          {step > 0 && (
            <button type="button" onClick={() => go("plan", step - 1)}>
              Back: {STEPS[step - 1]}
            </button>
          )}
          {step < STEPS.length - 1 && (
            <button type="button" class="main" onClick={() => go("plan", step + 1)}>
              Next: {STEPS[step + 1]}
            </button>
          )}
          <a class="to-live" href="#live">
            What your answers come to
          </a>
        </p>
      </main>
      <Live />
    </div>
  );
}

function Broken() {
  const { step } = planner();
  return (
    <>
      <p class="wrong">The file cannot be read as it stands, so its fields cannot be shown. Mend its text, or undo.</p>
      {step === STEPS.length - 1 ? (
        <ReviewStep />
      ) : (
        <button type="button" onClick={() => go("plan", STEPS.length - 1)}>
          To the text of the file
        </button>
      )}
    </>
  );
}
