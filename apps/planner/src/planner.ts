import { useLayoutEffect, useState } from "preact/hooks";
import { assumedPaths, at, type Edit, edited, plainOf, textAt } from "./job/document.js";
import { forgetJob, type SavedJob, savedJobs, saveJob } from "./job/saved-jobs.js";
import { EMPTY_JOB } from "./job/starts.js";
import { withUnknowns } from "./job/unknowns.js";
import { ask } from "./work/client.js";
import type { Digest } from "./work/digest.js";
import type { ShippedOverlay, ShownIssue } from "./work/protocol.js";

export type Page = "plan" | "paper" | "readings" | "jobs";
export interface ChosenOverlay {
  readonly name: string;
  readonly text: string;
}

export interface Planner {
  readonly jobId: string;
  readonly text: string;
  readonly plain: unknown;
  /** Printed paths of the values that only stand in. */
  readonly assumed: readonly string[];
  readonly overlay: ChosenOverlay | null;
  readonly page: Page;
  readonly step: number;
  /** Printed path of the field the reader was sent to, until another. */
  readonly aim: { readonly path: string } | null;
  /** What a press did beside what it says. */
  readonly notice: string;
  /** The last design that could be made; of an earlier state of the job while `stale`. */
  readonly digest: Digest | null;
  readonly stale: boolean;
  readonly issues: readonly ShownIssue[];
  readonly failure: string | null;
  readonly ms: number | null;
  readonly shipped: readonly ShippedOverlay[];
  readonly jobs: readonly SavedJob[];
  readonly kept: "kept" | "keeping" | "not kept";
  readonly canUndo: boolean;
  readonly canRedo: boolean;
}

interface Snapshot {
  readonly text: string;
  readonly overlay: ChosenOverlay | null;
}

const freshId = (): string => crypto.randomUUID();
const past: Snapshot[] = [];
const future: Snapshot[] = [];
const watchers = new Set<() => void>();
let lastEdit = { key: "", time: 0 };
let state: Planner = {
  jobId: freshId(),
  text: EMPTY_JOB,
  plain: plainOf(EMPTY_JOB),
  assumed: [],
  overlay: null,
  page: "plan",
  step: 0,
  aim: null,
  notice: "",
  digest: null,
  stale: false,
  issues: [],
  failure: null,
  ms: null,
  shipped: [],
  jobs: [],
  kept: "kept",
  canUndo: false,
  canRedo: false,
};

export const planner = (): Planner => state;

function set(change: Partial<Planner>): void {
  state = { ...state, ...change, canUndo: past.length > 0, canRedo: future.length > 0 };
  for (const watcher of watchers) watcher();
}

/** The planner's state; the component is drawn again when it changes. */
export function usePlanner(): Planner {
  const [, again] = useState({});
  const drawn = state;
  useLayoutEffect(() => {
    const watcher = () => again({});
    watchers.add(watcher);
    if (drawn !== state) watcher(); // it changed between drawing and watching
    return () => {
      watchers.delete(watcher);
    };
  }, []);
  return state;
}

// ---- the job's text

const MOST_KEPT = 200;

function change(next: Snapshot, key = ""): void {
  const now = Date.now();
  // Letters typed into one field without a pause are one step back.
  if (key === "" || key !== lastEdit.key || now - lastEdit.time > 1500) {
    past.push({ text: state.text, overlay: state.overlay });
    if (past.length > MOST_KEPT) past.shift();
  }
  lastEdit = { key, time: now };
  future.length = 0;
  settle(next);
}

function settle({ text, overlay }: Snapshot): void {
  set({ text, overlay, plain: plainOf(text), assumed: assumedPaths(text), stale: true, kept: "keeping", notice: "" });
  recompute();
  keepSoon();
}

/** Makes edits to the job. `key` names the field, so that its letters are undone together; `notice` tells what was taken along. */
export function edit(edits: readonly Edit[], key = "", notice = ""): void {
  const text = edited(state.text, edits);
  if (text === null) return; // the file is not YAML: the field that edits it as text says so
  change({ text: withUnknowns(text), overlay: state.overlay }, key);
  if (notice !== "") set({ notice });
}

export const editText = (text: string): void => change({ text, overlay: state.overlay }, "text");
export const chooseOverlay = (overlay: ChosenOverlay | null, key = ""): void => change({ text: state.text, overlay }, key);

function step(from: Snapshot[], to: Snapshot[]): void {
  const snapshot = from.pop();
  if (snapshot === undefined) return;
  to.push({ text: state.text, overlay: state.overlay });
  lastEdit = { key: "", time: 0 };
  settle(snapshot);
}
export const undo = (): void => step(past, future);
export const redo = (): void => step(future, past);

/** Opens a job in place of the one at hand, which stays kept. */
export function openJob(job: { readonly id?: string; readonly text: string; readonly overlay: ChosenOverlay | null }): void {
  past.length = 0;
  future.length = 0;
  set({ jobId: job.id ?? freshId(), digest: null, issues: [], page: "plan", step: 0, aim: null });
  settle({ text: job.text, overlay: job.overlay });
}
export const newJob = (): void => openJob({ text: EMPTY_JOB, overlay: null });

// ---- the way about

export function go(page: Page, step = state.step): void {
  set({ page, step, aim: null });
}

/** Shows the step and puts the cursor in the field of a path. */
export function goToField(step: number, path: string): void {
  set({ page: "plan", step, aim: { path } });
  focusAim();
}

/** Puts the cursor in the field the reader was sent to, once what holds it is drawn, and before another key can be pressed. */
export function focusAim(): void {
  queueMicrotask(() => {
    const field = state.aim === null ? null : document.getElementById(`field-${state.aim.path}`);
    for (let part = field?.closest("details"); part; part = part.parentElement?.closest("details")) part.open = true;
    if (!field) return;
    field.focus();
    state = { ...state, aim: null }; // nothing is drawn of it, and it is reached
  });
}

// ---- computing: the newest text alone, at most one at a time

let computing = false;
let wanted = false;

function recompute(): void {
  if (wanted) return;
  wanted = true;
  requestAnimationFrame(() => {
    if (!computing) void compute();
  });
}

async function compute(): Promise<void> {
  computing = true;
  while (wanted) {
    wanted = false;
    const given = { job: state.text, overlay: state.overlay?.text ?? null };
    try {
      const answer = await ask({ ask: "design", ...given });
      const current = given.job === state.text && given.overlay === (state.overlay?.text ?? null);
      if (answer.ok) set({ digest: answer.digest, stale: !current, issues: answer.issues, failure: null, ms: answer.ms });
      else set({ issues: answer.issues, stale: true, failure: null, ms: answer.ms });
    } catch (error) {
      set({ failure: error instanceof Error ? error.message : String(error), stale: true });
    }
  }
  computing = false;
}

// ---- keeping

let timer: ReturnType<typeof setTimeout> | undefined;

function keepSoon(): void {
  clearTimeout(timer);
  timer = setTimeout(() => void keep(), 300);
}

async function keep(): Promise<void> {
  const { jobId, text, overlay } = state;
  if (text === EMPTY_JOB) return set({ kept: "kept" });
  const title = textAt(plainOf(text), ["project", "title"]) || "Untitled job";
  try {
    await saveJob({ id: jobId, title, text, overlay, saved: new Date().toISOString() });
    set({ jobs: await savedJobs(), kept: state.text === text ? "kept" : state.kept });
  } catch {
    set({ kept: "not kept" }); // private windows have no store; the page says so
  }
}

export async function forget(id: string): Promise<void> {
  await forgetJob(id);
  set({ jobs: await savedJobs() });
}

/** Begins: what is kept here, what overlays there are, and the last job again. */
export async function begin(): Promise<void> {
  try {
    const jobs = await savedJobs();
    set({ jobs });
    const last = jobs[0];
    if (last !== undefined) openJob(last);
  } catch {
    set({ kept: "not kept" });
  }
  recompute();
  try {
    set({ shipped: await ask({ ask: "overlays" }) });
  } catch (error) {
    set({ failure: error instanceof Error ? error.message : String(error) });
  }
}

export const valueAt = (path: readonly (string | number)[]): unknown => at(state.plain, path);

/** Whether the job's text can be edited by field: a broken file is mended as text. */
export const canEditNow = (): boolean => state.plain !== null;
