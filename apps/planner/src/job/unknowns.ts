import { assumedPaths, at, edited, type Path, plainOf, textAt } from "./document.js";

const SENTENCE = / ?To be verified on site, assumed until then: .*?\.(?= |$)/;

/** Paths of a job in the words of its questions; the first that fits. */
const WORDS: readonly (readonly [RegExp, string])[] = [
  [/^service\.rating$/, "size of the service"],
  [/^service\.measured\.peak$/, "highest demand of the year"],
  [/^service\.measured\.basis$/, "how long it was measured"],
  [/^service\.measured\.from$/, "where the record is from"],
  [/^service\.measured|load_method$/, "how the load is found"],
  [/\.bus$/, "rating of the panel"],
  [/panel\.main$/, "main breaker"],
  [/panel\.spaces$/, "number of spaces"],
  [/breaker\.spaces/, "spaces for the new breaker"],
  [/floor_area$/, "floor area"],
  [/edition$/, "code edition"],
  [/\.length$/, "length"],
  [/\.volume$/, "size of the box"],
  [/\.cover$/, "earth above it"],
  [/current$/, "amperes of the equipment"],
  [/duty_percent$/, "duty cycle"],
  [/nameplate/, "what the label says"],
  [/\.load$/, "load"],
  [/panel\.circuits$/, "what will be connected"],
  [/project\.owner$/, "owner of the house"],
  [/project\.site$/, "address of the work"],
  [/project\.title$/, "title of the job"],
  [/preparer\.name$/, "who prepared it"],
  [/^site_plan\.routes\[\d+\]/, "a way on the site plan"],
  [/^site_plan\.lot/, "corners of the lot"],
  [/^site_plan/, "site plan"],
  [/^service\.managed\.setpoint$/, "setpoint of the load management"],
  [/^service\.managed\.citation$/, "what shows the load management"],
];

export const wordsOf = (path: string): string => WORDS.find(([of]) => of.test(path))?.[1] ?? path;

const stepsOf = (path: string): Path => [...path.matchAll(/[^.[\]]+/g)].map(([step]) => (/^\d+$/.test(step) ? Number(step) : step));

/** A path in words, with the name of the row it stands in: "length of Trench". */
export function tellPath(plain: unknown, path: string): string {
  const steps = stepsOf(path);
  const row = steps.findLastIndex((step) => typeof step === "number");
  const name = row < 0 || row === steps.length - 1 ? "" : textAt(plain, [...steps.slice(0, row + 1), "name"]);
  const words = wordsOf(path);
  return name === "" || words === path ? words : `${words} of ${name}`;
}

/** The value at a printed path, as text. */
export const tellValue = (plain: unknown, path: string): string => textAt(plain, stepsOf(path));

/** The text with one sentence of its scope telling what is assumed, so that the paper tells it too. */
export function withUnknowns(text: string): string {
  const plain = plainOf(text);
  const unknown = [...new Set(assumedPaths(text).map((path) => tellPath(plain, path)))];
  const path = ["project", "scope"];
  const scope = at(plain, path);
  const told = typeof scope === "string" ? scope : "";
  const own = told.replace(SENTENCE, "");
  const sentence = unknown.length === 0 ? "" : `To be verified on site, assumed until then: ${unknown.join("; ")}.`;
  const now = [own, sentence].filter((part) => part !== "").join(" ");
  if (now === told) return text;
  return edited(text, [now === "" ? { remove: path } : { at: path, put: now }]) ?? text;
}
