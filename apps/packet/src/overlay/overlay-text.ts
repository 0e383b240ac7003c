import { NOT_ASKED } from "@branchwork/sheets";
import type { OverlayAnswers } from "./overlay-questions.js";

/** An id made of a name: small letters, digits and dashes. */
export function idFrom(name: string): string {
  const id = name
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, "-")
    .replace(/^[^a-z]+|-+$/g, "")
    .slice(0, 60)
    .replace(/-+$/, "");
  return id || "jurisdiction";
}

/** What is not known yet stands as a comment, to be filled in. */
const known = (answer: string): string => (answer === NOT_ASKED ? "# " : "");

const ASKED: Readonly<Record<string, readonly (readonly [asks: string, sheet: string])[]>> = {
  "over-the-counter": [
    ["Load calculation", "Load calculation"],
    ["One-line diagram with sizes and types of conductors and raceways", "One-line diagram"],
  ],
  "small-plan-set": [
    ["Site plan to scale with meter, panel, outlet and route", "Site plan"],
    ["One-line diagram with sizes and types of conductors and raceways", "One-line diagram"],
    ["Load calculation", "Load calculation"],
    ["Panel schedule, existing and new", "Panel:"],
  ],
  "affidavit-and-schematic": [["Schematic with sizes", "One-line diagram"]],
};
const sheetsAsked = (mode: string): string => (ASKED[mode] ?? []).map(([asks, sheet]) => `    - { asks: "${asks}", sheet: "${sheet}" }`).join("\n");

/** The commented overlay file for a set of answers. Every answer is quoted as a YAML string, so it cannot become structure. */
export function overlayText(answers: OverlayAnswers, today: string): string {
  const quoted = (text: string) => JSON.stringify(text);
  const citation = quoted(answers.source);
  const may = answers.owner === "yes";
  const fees = [
    ...(Number(answers.fee) > 0 ? [`  - { id: permit, kind: flat, says: Permit, amount: ${Number(answers.fee)}, citation: ${citation} }`] : []),
    ...(Number(answers.perCircuit) > 0
      ? [`  - { id: circuits, kind: per-circuit, says: New circuits, bands: [{ amount: ${Number(answers.perCircuit)} }], citation: ${citation} }`]
      : []),
  ];
  const trench = `  - id: trench
    name: Open trench
    stage: trench
    only_trench: true
    when: Wiring laid, trench open from end to end
    lead: ${quoted(answers.lead)}
    call: ${quoted(answers.call)}
    citation: ${citation}
`;
  return `# What one jurisdiction asks. Correct what is not so, then run: branchwork overlay check
format: branchwork-overlay/1
id: ${idFrom(answers.name)}
name: ${quoted(answers.name)}
edition: ${quoted(answers.edition)}
adoption: { from: ${quoted(answers.from)}, governs: permit-application, citation: ${citation} }
checked_on: ${quoted(today)}   # the day you last compared all this with the jurisdiction's own words

intake:
  mode: ${answers.mode}
  sheet_size: ${answers.size}
  copies: 1
  sheets:                      # what the application is asked to show, in the order it is handed in
${sheetsAsked(answers.mode)}
  citation: ${citation}
who_may_work:
  - { id: owner, who: owner, may: ${may}, says: ${quoted(may ? "The owner may do the work." : "The owner may not do the work.")}, citation: ${citation} }

fees:${fees.length > 0 ? `\n${fees.join("\n")}` : " []"}

inspections:
${answers.trench === "yes" ? trench : ""}  - id: final
    name: Final
    stage: final
    when: All devices on, directory filled in
    lead: ${quoted(answers.lead)}
    call: ${quoted(answers.call)}
    citation: ${citation}
expiry:
  - { id: idle, after_days: ${Number(answers.expiry)}, from: last inspection, says: The permit ends., citation: ${citation} }

${known(answers.zoning)}zoning: { says: ${quoted(answers.zoning)}, citation: ${citation} }
${known(answers.phone)}contacts: [{ id: office, name: Permit office, phone: ${quoted(answers.phone)} }]

# What is otherwise than in the code, each with the value it replaces. Take the # away from a heading and from the lines you need.
# amendments:
#   - { id: cover, target: cover, row: general, replaces: 18, value: 24, reason: frost, citation: Ordinance 1 }
#   - { id: drop, target: drop-force, replaces: advisory, value: required, reason: long lots, citation: Ordinance 2 }
#   - { id: gfci, target: gfci-rv-outlet, replaces: required, value: relieved, reason: listed outlets, citation: Ordinance 3 }
# wiring_methods:
#   - { places: [outdoors, indoors], methods: [EMT, RMC, IMC], reason: local rule, citation: Ordinance 4 }
# statements:
#   - { id: owner, title: Statement of the owner, says: the exact words, initials: true, notary: true, perjury: true, citation: Form 1 }
`;
}
