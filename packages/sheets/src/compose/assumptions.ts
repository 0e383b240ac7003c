import { type Citation, type Design, printCitation } from "@branchwork/engine";
import { type Block, heading, paragraph } from "./packet.js";

const PRACTICE = printCitation({ document: "", section: "", edition: null, standing: "practice" } satisfies Citation);

/** More than these are set in two columns, so that the signatures stay on their page. */
const MOST_LINES = 8;

/** What was assumed, the same thing assumed at several places said once. */
export function assumptionsPart(assumptions: Design["assumptions"]): Block[] {
  if (assumptions.length === 0) return [paragraph("Nothing was assumed: every value was given.")];
  const said = new Map<string, Set<string>>();
  for (const { says } of assumptions) {
    const colon = says.indexOf(": ");
    const text = (colon < 0 ? says : says.slice(colon + 2)).replace(` ${PRACTICE}`, " *");
    const places = said.get(text) ?? new Set();
    places.add(colon < 0 ? "The job" : says.slice(0, colon));
    said.set(text, places);
  }
  const entries = byPlace(said);
  const starred = [...said.keys()].some((text) => text.endsWith(" *"));
  return [
    heading("Assumptions"),
    paragraph(`Correct any that is wrong in the job file and make the packet again.${starred ? ` * ${PRACTICE.replace(/[()]/g, "")}.` : ""}`),
    {
      kind: "brief",
      runOn: entries.length > MOST_LINES,
      entries: entries.map(({ title, text }) => ({ title, text: entries.length > MOST_LINES ? `${text}.` : text })),
    },
  ];
}

/** What was assumed at the same places, in one entry. */
function byPlace(said: ReadonlyMap<string, ReadonlySet<string>>): readonly { readonly title: string; readonly text: string }[] {
  const found = new Map<string, string[]>();
  for (const [text, places] of said) {
    const title = [...places].join("; ");
    found.set(title, [...(found.get(title) ?? []), text]);
  }
  return [...found].map(([title, texts]) => ({ title: `${title.charAt(0).toUpperCase()}${title.slice(1)}`, text: texts.join("; ") }));
}
