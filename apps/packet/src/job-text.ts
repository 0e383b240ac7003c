type AnswerKey = "owner" | "site" | "serves" | "edition" | "service" | "area" | "indoors" | "buried";

interface Question {
  readonly key: AnswerKey;
  readonly asks: string;
  readonly why: string;
  readonly usual: string;
  readonly choices?: readonly string[];
}

export const QUESTIONS: readonly Question[] = [
  { key: "owner", asks: "Whose house is it?", why: "The permit is issued to this name.", usual: "Owner name" },
  { key: "site", asks: "What is the address of the work?", why: "It stands on every sheet.", usual: "Address of the work" },
  {
    key: "serves",
    asks: "What will be connected: rv-50, rv-30 or ev-supply?",
    why: "It sets volts, poles and wires.",
    usual: "rv-50",
    choices: ["rv-50", "rv-30", "ev-supply"],
  },
  {
    key: "edition",
    asks: "Which edition of the code has the town adopted: 2017, 2020, 2023 or 2026?",
    why: "Ask the building department; rules differ by edition.",
    usual: "2023",
    choices: ["2017", "2020", "2023", "2026"],
  },
  { key: "service", asks: "How large is the service?", why: "Read the number on the handle of the main breaker.", usual: "200 A" },
  { key: "area", asks: "What is the floor area of the house?", why: "General lighting load goes by area.", usual: "1800 ft2" },
  {
    key: "indoors",
    asks: "How far does the circuit run indoors, rises and drops counted?",
    why: "Length decides voltage drop and what to buy.",
    usual: "20 ft",
  },
  { key: "buried", asks: "How far does it run underground?", why: "Cover, raceway and wet-rated wire go with it.", usual: "30 ft" },
];

export type Answers = Readonly<Record<AnswerKey, string>>;

const CURRENT: Readonly<Record<string, { amperes: string; poles: number; spaces: string }>> = {
  "rv-50": { amperes: "50 A", poles: 2, spaces: "[17, 19]" },
  "rv-30": { amperes: "30 A", poles: 1, spaces: "[17]" },
  "ev-supply": { amperes: "48 A", poles: 2, spaces: "[17, 19]" },
};

/** The commented job file for a set of answers. Every answer is quoted as a YAML string, so it cannot become structure. */
export function jobText(answers: Answers): string {
  const quoted = (text: string) => JSON.stringify(text);
  const kind = CURRENT[answers.serves] ?? CURRENT["rv-50"]!;
  return `# A job file: one electrical job at a house. Change what is not so, add what is missing, then run: branchwork build
format: branchwork-job/1
project:
  title: ${quoted(`New outlet at ${answers.site}`)}
  owner: ${quoted(answers.owner)}
  site: ${quoted(answers.site)}
  preparer: { name: ${quoted(answers.owner)}, role: owner }
code:
  edition: ${quoted(answers.edition)}
  confirmed_with_authority: false   # true once the building department has confirmed edition and amendments
service:
  rating: ${quoted(answers.service)}
  load_method: existing-dwelling    # or measured-demand, with a year's peak from the utility
  existing:
    floor_area: ${quoted(answers.area)}
    appliances: []                  # fastened in place, at nameplate: - { name: Dryer, load: 5 kW }
  panel:
    id: panel-a
    name: House panel
    bus: ${quoted(answers.service)}               # the panel's label, not the main breaker
    spaces: 30
    directory: []                   # what is there now: - { space: 1, poles: 2, rating: 30 A, serves: Dryer }
    circuits:
      - id: new-circuit
        name: New outlet
        serves: ${answers.serves}
        current: ${kind.amperes}
        breaker: { poles: ${kind.poles}, spaces: ${kind.spaces}, gfci: true }
        cover_plate: weatherproof-in-use
        route:                      # sizes are left out so that they are computed
          - { name: Indoors, place: indoors, method: NM-B, length: ${quoted(answers.indoors)} }
          - { name: Underground, place: buried, method: PVC-40, length: ${quoted(answers.buried)}, cover: 18 in, bends: [90, 90] }
          - { name: Riser, place: outdoors, method: PVC-80, length: 5 ft, exposed_to_damage: true }
        boxes:
          - { name: Junction box, after: Indoors, volume: 64 in3 }
          - { name: Outlet enclosure, after: Riser, volume: 80 in3, wet_location: true, device: true }
`;
}
