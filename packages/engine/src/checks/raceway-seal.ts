import { everyEdition } from "../basis/edition.js";
import type { DesignedFeeder, DesignedRun } from "../designed.js";
import { isCable } from "../tables/cable.js";
import type { Check, Outcome } from "./finding.js";
import { foundOnRuns, needsPerson } from "./outcome.js";

export const racewaySeal: Check = {
  id: "raceway-seal",
  title: "Raceways are sealed where they enter a building",
  rule: { sections: everyEdition("300.5(G), 300.7(A)"), standing: "memory" },
  run: foundOnRuns(
    (run) => [...entriesOf(run), ...(run.kind === "feeder" ? entryAtPanel(run) : [])],
    "no raceway goes from the weather or the ground into a building",
  ),
};

/** Where a route goes between outside and inside and one side of it is a raceway; it begins inside, where its panel stands, unless its first stretch is outside. */
function entriesOf(run: DesignedRun): readonly Outcome[] {
  return run.segments.flatMap(({ segment }, i): Outcome[] => {
    const before = run.segments[i - 1]?.segment;
    if (before === undefined || outside(before.place) === outside(segment.place)) return [];
    if (isCable(before.method) && isCable(segment.method)) return [];
    const ground = before.place === "buried" || segment.place === "buried";
    return [entry(`${run.run.name}: ${before.name}, ${segment.name}`, ground)];
  });
}

/** A feeder that ends outside all the same enters the building its panel stands in. */
function entryAtPanel({ feeder, segments }: DesignedFeeder): readonly Outcome[] {
  const last = segments.at(-1)?.segment;
  if (feeder.building === "pedestal" || last === undefined || !outside(last.place) || isCable(last.method)) return [];
  return [entry(`${feeder.name}: ${last.name}, ${feeder.panel.name}`, last.place === "buried")];
}

const entry = (subject: string, ground: boolean): Outcome =>
  needsPerson(
    subject,
    `a raceway goes from ${ground ? "the ground" : "the weather"} into the building`,
    "sealed at the wall against moisture and against warm air meeting cold, with a compound listed for the insulation; the hole caulked",
  );

const outside = (place: string) => place === "outdoors" || place === "buried";
