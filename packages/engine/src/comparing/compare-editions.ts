import { type Basis, unamended } from "../basis/basis.js";
import { EDITIONS, type Edition } from "../basis/edition.js";
import type { Finding } from "../checks/finding.js";
import { design } from "../design.js";
import type { Design } from "../designed.js";
import type { Job } from "../job/schema.js";
import type { Worked } from "../worked.js";

export interface FindingChange {
  readonly check: string;
  readonly subject: string;
  /** null where that edition says nothing of it. */
  readonly before: Finding | null;
  readonly after: Finding | null;
  readonly kind: "appears" | "vanishes" | "verdict" | "wording";
}
export interface ValueChange {
  readonly id: string;
  readonly label: string;
  readonly before: string | null;
  readonly after: string | null;
  readonly unit: string;
}
export interface SectionChange {
  /** A check, or a worked value. */
  readonly of: "check" | "value";
  readonly id: string;
  readonly title: string;
  readonly before: readonly string[];
  readonly after: readonly string[];
}
export interface EditionComparison {
  readonly from: Edition;
  readonly to: Edition;
  readonly readyBefore: boolean;
  readonly readyAfter: boolean;
  readonly findings: readonly FindingChange[];
  readonly values: readonly ValueChange[];
  readonly sections: readonly SectionChange[];
}

/** What changes for a job when one edition takes the place of another. `basisOf` gives the adopted code of each; unamended when left out. */
export function compareEditions(given: {
  readonly job: Job;
  readonly from: Edition;
  readonly to: Edition;
  readonly basisOf?: (edition: Edition) => Basis;
}): EditionComparison {
  const { job, from, to, basisOf = unamended } = given;
  const before = design({ job, basis: basisOf(from) });
  const after = design({ job, basis: basisOf(to) });
  return {
    from,
    to,
    readyBefore: before.ready,
    readyAfter: after.ready,
    findings: findingChanges(before.findings, after.findings),
    values: valueChanges(stepsOf(before), stepsOf(after)),
    sections: sectionChanges(before, after),
  };
}

/** Each edition against the next, oldest first. */
export function compareAllEditions(given: { readonly job: Job; readonly basisOf?: (edition: Edition) => Basis }): readonly EditionComparison[] {
  return EDITIONS.slice(1).map((to, i) => compareEditions({ ...given, from: EDITIONS[i]!, to }));
}

const stepsOf = (made: Design): readonly Worked[] => [...made.service.steps, ...made.feeders.flatMap((f) => f.steps), ...made.circuits.flatMap((c) => c.steps)];

/** By a name; of several with one name, the first, second and so on are told apart. */
function named<T>(things: readonly T[], nameOf: (thing: T) => string): ReadonlyMap<string, T> {
  const seen = new Map<string, number>();
  return new Map(
    things.map((thing) => {
      const name = nameOf(thing);
      const nth = (seen.get(name) ?? 0) + 1;
      seen.set(name, nth);
      return [`${name}\n${nth}`, thing];
    }),
  );
}

function paired<T>(before: readonly T[], after: readonly T[], nameOf: (thing: T) => string) {
  const [old, now] = [named(before, nameOf), named(after, nameOf)];
  return [...new Set([...old.keys(), ...now.keys()])].map((name) => ({ before: old.get(name) ?? null, after: now.get(name) ?? null }));
}

const isMute = (finding: Finding | null) => finding === null || finding.verdict === "not-applicable";

function findingChanges(before: readonly Finding[], after: readonly Finding[]): readonly FindingChange[] {
  return paired(before, after, (f) => `${f.check}\n${f.subject}`).flatMap((pair): FindingChange[] => {
    const { check, subject } = (pair.after ?? pair.before)!;
    const of = { check, subject, ...pair };
    if (isMute(pair.before) !== isMute(pair.after)) return [{ ...of, kind: isMute(pair.before) ? "appears" : "vanishes" }];
    if (pair.before?.verdict !== pair.after?.verdict) return isMute(pair.before) ? [] : [{ ...of, kind: "verdict" }];
    return pair.before?.says === pair.after?.says ? [] : [{ ...of, kind: "wording" }];
  });
}

function valueChanges(before: readonly Worked[], after: readonly Worked[]): readonly ValueChange[] {
  return paired(before, after, (w) => w.id).flatMap(({ before: old, after: now }) => {
    if (old !== null && now !== null && old.value === now.value && old.unit === now.unit) return [];
    const { id, label, unit } = (now ?? old)!;
    return [{ id, label, unit, before: old?.value ?? null, after: now?.value ?? null }];
  });
}

const sectionsOf = (worked: Worked) => [...new Set(worked.citations.map((c) => c.section))].sort();

function sectionChanges(before: Design, after: Design): readonly SectionChange[] {
  const checks = paired(oneEach(before.findings), oneEach(after.findings), (f) => f.check).flatMap(({ before: old, after: now }): SectionChange[] => {
    const [was, is] = [old?.citation?.section, now?.citation?.section];
    if (was === is) return [];
    const { check, title } = (now ?? old)!;
    return [{ of: "check", id: check, title, before: was === undefined ? [] : [was], after: is === undefined ? [] : [is] }];
  });
  const values = paired(stepsOf(before), stepsOf(after), (w) => w.id).flatMap(({ before: old, after: now }): SectionChange[] => {
    if (old === null || now === null) return [];
    const [was, is] = [sectionsOf(old), sectionsOf(now)];
    return was.join() === is.join() ? [] : [{ of: "value", id: now.id, title: now.label, before: was, after: is }];
  });
  return [...checks, ...values];
}

const oneEach = (findings: readonly Finding[]) => findings.filter((f, i) => findings.findIndex((other) => other.check === f.check) === i);
