import type { Answers } from "./questions.js";
import { starterOf } from "./starters.js";

const quoted = (text: string): string => JSON.stringify(text);
const block = (lines: readonly string[], by: number): string => lines.map((line) => `${" ".repeat(by)}${line}\n`).join("");
const entry = (lines: readonly string[]): readonly string[] => lines.map((line, i) => `${i === 0 ? "  - " : "    "}${line}`);

/** The commented job file for a set of answers. Every answer is quoted as a YAML string, so it cannot become structure. */
export function jobText(answers: Answers): string {
  const { kind, owner, site, edition, service, area, appliances, spaces } = answers;
  return `# A job file: one electrical job at a house. Change what is not so, add what is missing, then run: branchwork check
format: branchwork-job/1
project:
  title: ${quoted(`${starterOf(kind).title} at ${site}`)}
  owner: ${quoted(owner)}
  site: ${quoted(site)}
  preparer: { name: ${quoted(owner)}, role: owner }
code:
  edition: ${quoted(edition)}
  confirmed_with_authority: false   # true once the building department has confirmed edition and amendments
service:
  rating: ${quoted(service)}
  # fault_current_kA: 10            # available at the service: ask the utility
  load_method: existing-dwelling    # or measured-demand, with a year's peak from the utility
  existing:
    floor_area: ${quoted(area)}
    # what runs on electricity, fastened in place or on a circuit of its own, at its nameplate:
    appliances:${appliances.length === 0 ? " []" : ""}
${block(
  appliances.map(({ name, load }) => `- { name: ${quoted(name)}, load: ${quoted(load)} }`),
  6,
)}    # cooling: { name: Air conditioner, load: 4 kVA }
    # heating: { name: Electric heat, load: 10 kW }
  panel:
    id: house-panel
    name: House panel
    bus: ${quoted(service)}               # the panel's label, not the main breaker
    main: ${quoted(service)}
    spaces: ${spaces}
    directory: []                   # what is there now: - { space: 1, poles: 2, rating: 30 A, serves: Dryer }
${block(kind === "subpanel" ? feeder(answers) : circuit(answers), 4)}`;
}

function circuit(answers: Answers): readonly string[] {
  const { title, serves } = starterOf(answers.kind);
  return ["circuits:", ...entry(["id: new-circuit", `name: ${title}`, ...serves, ...way(answers)])];
}

function feeder(answers: Answers): readonly string[] {
  const panel = [
    "panel:",
    "  id: new-panel",
    "  name: New panel",
    "  bus: 125 A",
    "  main: 60 A",
    "  spaces: 12",
    "  circuits:                   # each with its own breaker, route and boxes",
    ...entry([
      "id: receptacles",
      "name: Receptacles in the new building",
      "serves: receptacle-20",
      "several: true",
      "place: accessory-building",
      "breaker: { poles: 1, spaces: [1], gfci: true }",
      "route:",
      "  - { name: Along the wall, place: indoors, method: EMT, length: 20 ft, bends: [90, 90] }",
      "boxes:",
      "  - { name: Outlet box, after: Along the wall, volume: 30.3 in3, device: true }",
    ]).map((line) => `  ${line}`),
  ];
  return ["feeders:", ...entry(["id: new-feeder", "name: Feeder to the new panel", ...starterOf("subpanel").serves, ...way(answers), ...panel])];
}

/** Breaker, route and boxes of a run; sizes are left out so that they are computed. */
function way({ kind, space, indoors, buried }: Answers): readonly string[] {
  const { poles, gfci, rating, route, boxes } = starterOf(kind);
  const spaces = poles === 2 ? `${space}, ${space + 2}` : `${space}`;
  return [
    `breaker: { ${rating === undefined ? "" : `rating: ${rating}, `}poles: ${poles}, spaces: [${spaces}], gfci: ${gfci} }`,
    "route:                        # sizes are left out so that they are computed",
    ...route({ indoors: quoted(indoors), buried: quoted(buried) }).map((line) => `  ${line}`),
    "boxes:",
    ...boxes.map((line) => `  ${line}`),
  ];
}
