import { EDITIONS } from "@branchwork/engine";
import type { Question, Taken } from "../ask.js";
import { KINDS, type Kind, starterOf } from "./starters.js";

/** Something fastened in place, at its nameplate. */
export interface Appliance {
  readonly name: string;
  readonly load: string;
}

export interface Answers {
  readonly kind: Kind;
  readonly owner: string;
  readonly site: string;
  readonly edition: string;
  readonly service: string;
  readonly spaces: number;
  /** The first of those the breaker takes. */
  readonly space: number;
  readonly area: string;
  readonly appliances: readonly Appliance[];
  readonly indoors: string;
  readonly buried: string;
}

const asIs = (answer: string): Taken<string> => ({ ok: true, value: answer });
const oneOf =
  <T extends string>(choices: readonly T[]) =>
  (answer: string): Taken<T> =>
    (choices as readonly string[]).includes(answer)
      ? { ok: true, value: answer as T }
      : { ok: false, what: `"${answer}" is not one of ${choices.join(", ")}`, mend: "choose one of them" };
const whole =
  (most: number) =>
  (answer: string): Taken<number> =>
    /^\d{1,3}$/.test(answer) && Number(answer) >= 1 && Number(answer) <= most
      ? { ok: true, value: Number(answer) }
      : { ok: false, what: `"${answer}" is not a whole number from 1 to ${most}`, mend: "write a number alone, as 17" };

const POWER = /^(.*\S)\s+(\d{1,6}(?:\.\d{1,3})?\s*(?:W|VA|kW|kVA))$/;
function appliances(answer: string): Taken<readonly Appliance[]> {
  if (answer === "none") return { ok: true, value: [] };
  const found: Appliance[] = [];
  for (const part of answer.split(",").map((one) => one.trim())) {
    const match = POWER.exec(part);
    if (match === null) return { ok: false, what: `"${part}" is not a name and a load`, mend: 'write "Range 10 kW, Dryer 5 kW", or none' };
    found.push({ name: match[1]!, load: match[2]! });
  }
  return { ok: true, value: found };
}

const question = <K extends keyof Answers>(one: Question<Answers, K>) => one as unknown as Question<Answers>;

/** What `new` asks, in order. */
export const QUESTIONS: readonly Question<Answers>[] = [
  question({ key: "kind", asks: `What will be connected: ${KINDS.join(", ")}?`, why: "It sets volts, poles and wires.", usual: "rv-50", take: oneOf(KINDS) }),
  question({ key: "owner", asks: "Whose house is it?", why: "The permit is issued to this name.", usual: "Owner name", take: asIs }),
  question({ key: "site", asks: "What is the address of the work?", why: "It stands on every sheet.", usual: "Address of the work", take: asIs }),
  question({
    key: "edition",
    asks: `Which edition of the code has the town adopted: ${EDITIONS.join(", ")}?`,
    why: "Ask the building department; rules differ by edition.",
    usual: "2023",
    take: oneOf(EDITIONS),
  }),
  question({ key: "service", asks: "How large is the service?", why: "Read the number on the handle of the main breaker.", usual: "200 A", take: asIs }),
  question({
    key: "spaces",
    asks: "How many spaces has the panel?",
    why: "Count the places for one-pole breakers, free or not; the label on the door says it too.",
    usual: "30",
    take: whole(84),
  }),
  question({
    key: "space",
    asks: "Which space is free? For 240 V: the upper of two free ones on the same side.",
    why: "The breaker goes there; the label numbers odd spaces on one side, even on the other.",
    usual: "17",
    take: whole(84),
  }),
  question({ key: "area", asks: "What is the floor area of the house?", why: "General lighting load goes by area.", usual: "1800 ft2", take: asIs }),
  question({
    key: "appliances",
    asks: "What runs on electricity there: range, oven, dryer, water heater, dishwasher, well pump …, each with its nameplate load?",
    why: "Whatever is left out makes the service look larger than it is. Write: Range 10 kW, Dryer 5 kW.",
    usual: "none",
    take: appliances,
  }),
  question({
    key: "indoors",
    asks: "How far does the new wiring run indoors, rises and drops counted?",
    why: "Length decides voltage drop and what to buy.",
    usual: "20 ft",
    take: asIs,
  }),
  question({
    key: "buried",
    asks: "How far does it run underground?",
    why: "Cover, raceway and wet-rated wire go with it.",
    usual: "30 ft",
    take: asIs,
    applies: ({ kind }) => kind !== undefined && starterOf(kind).buried,
  }),
];
