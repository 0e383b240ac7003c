import { NOT_ASKED } from "@branchwork/sheets";
import type { Question, Taken } from "../ask.js";

export interface OverlayAnswers {
  readonly name: string;
  readonly source: string;
  readonly edition: string;
  readonly from: string;
  readonly mode: string;
  readonly size: string;
  readonly owner: string;
  readonly fee: string;
  readonly perCircuit: string;
  readonly trench: string;
  readonly lead: string;
  readonly call: string;
  readonly phone: string;
  readonly expiry: string;
  readonly zoning: string;
}

const words = (answer: string): Taken<string> => ({ ok: true, value: answer });
const oneOf =
  (...choices: readonly string[]) =>
  (answer: string): Taken<string> =>
    choices.includes(answer)
      ? { ok: true, value: answer }
      : { ok: false, what: `"${answer}" is not one of ${choices.join(", ")}`, mend: "write one of them as it stands" };
const number = (answer: string): Taken<string> =>
  /^\d{1,5}(\.\d{1,2})?$/.test(answer)
    ? { ok: true, value: answer }
    : { ok: false, what: `"${answer}" is not a plain number`, mend: "write it as 45 or 45.50" };
const day = (answer: string): Taken<string> =>
  /^\d{4}-\d{2}-\d{2}$/.test(answer) && new Date(`${answer}T00:00:00Z`).toJSON()?.slice(0, 10) === answer
    ? { ok: true, value: answer }
    : { ok: false, what: `"${answer}" is not a day`, mend: "write it as 2026-01-31" };

/** What `overlay new` asks, in order. */
export const OVERLAY_QUESTIONS: readonly Question<OverlayAnswers>[] = [
  { key: "name", asks: "Which town or county issues the permit?", why: "It stands on every sheet.", usual: "Name of the jurisdiction", take: words },
  {
    key: "source",
    asks: "Where does it say so: ordinance, handout, web page or person?",
    why: "Every figure names its source.",
    usual: NOT_ASKED,
    take: words,
  },
  {
    key: "edition",
    asks: "Which edition of the electrical code has it adopted: 2017, 2020, 2023 or 2026?",
    why: "Rules differ by edition; ask, do not guess from the state.",
    usual: "2023",
    take: oneOf("2017", "2020", "2023", "2026"),
  },
  { key: "from", asks: "From which day, as 2024-01-01?", why: "A packet made before that day carries a caution.", usual: "2024-01-01", take: day },
  {
    key: "mode",
    asks: "How does it take an application: over-the-counter, small-plan-set or affidavit-and-schematic?",
    why: "Decides which sheets are handed in. over-the-counter: no plans are looked at; small-plan-set: plans are reviewed before the permit; affidavit-and-schematic: a sworn statement and a one-line.",
    usual: "small-plan-set",
    take: oneOf("over-the-counter", "small-plan-set", "affidavit-and-schematic"),
  },
  {
    key: "size",
    asks: "Which paper: letter, tabloid, arch-d, a4 or a3?",
    why: "One size for the whole set.",
    usual: "letter",
    take: oneOf("letter", "tabloid", "arch-d", "a4", "a3"),
  },
  { key: "owner", asks: "May the owner do the work: yes or no?", why: "It varies more than any technical rule.", usual: "yes", take: oneOf("yes", "no") },
  { key: "fee", asks: "What is the flat permit fee, in dollars?", why: "0 when there is none.", usual: "0", take: number },
  { key: "perCircuit", asks: "What is the fee for each circuit, in dollars?", why: "0 when there is none.", usual: "0", take: number },
  {
    key: "trench",
    asks: "Is an open trench inspected before it is covered: yes or no?",
    why: "Nearly every agency asks it.",
    usual: "yes",
    take: oneOf("yes", "no"),
  },
  { key: "lead", asks: "How long before is an inspection asked for?", why: "It stands on the inspection sheet.", usual: "1 working day", take: words },
  { key: "call", asks: "How is it asked for: telephone, portal?", why: "It stands on the inspection sheet.", usual: "telephone the office", take: words },
  { key: "phone", asks: "What is the office's telephone number?", why: "It stands on the inspection sheet.", usual: NOT_ASKED, take: words },
  { key: "expiry", asks: "After how many days without an inspection does a permit end?", why: "180 is common.", usual: "180", take: number },
  {
    key: "zoning",
    asks: "What does zoning say of a vehicle connected at a house?",
    why: "It can bar the job whatever the wiring.",
    usual: NOT_ASKED,
    take: words,
  },
];
