import type { Problem } from "./problem.js";
import type { Job, Run } from "./schema.js";
import { panelsOf } from "./tree.js";

type Path = readonly (string | number)[];

/** Fields that contradict one another so that the job cannot be understood. A bad installation is a finding, not one of these. */
export function crossFieldProblems(job: Job): readonly Problem[] {
  const problems: Problem[] = [];
  const say = (path: Path, what: string, mend: string) => problems.push({ path: [...path], atKey: false, what, mend });
  const { service } = job;
  if (service.load_method === "measured-demand" && !service.measured)
    say(["service", "load_method"], "measured-demand is chosen and the measured peak is not given", "add service.measured with peak, basis and from");
  if (service.load_method === "existing-dwelling" && !service.existing)
    say(
      ["service", "load_method"],
      "existing-dwelling is chosen and the existing loads are not given",
      "add service.existing with floor_area and the appliances",
    );
  const panels = panelsOf(job);
  if (panels.every(({ panel }) => panel.circuits.length + panel.feeders.length === 0))
    say(["service", "panel", "circuits"], "the job has no circuit and no feeder", "add one under circuits or feeders: it is the work this job describes");
  const ids = new Set<string>();
  const claim = (path: Path, id: string, what: string) => {
    if (ids.has(id)) say([...path, "id"], `two parts of the tree have the id "${id}"`, `give each ${what} an id of its own`);
    ids.add(id);
  };
  for (const { panel, path } of panels) {
    claim(path, panel.id, "panel");
    for (const [i, feeder] of panel.feeders.entries()) {
      const at = [...path, "feeders", i];
      claim(at, feeder.id, "feeder");
      for (const problem of routeProblems(feeder)) say([...at, ...problem.path], problem.what, problem.mend);
    }
    for (const [i, circuit] of panel.circuits.entries()) {
      const at = [...path, "circuits", i];
      claim(at, circuit.id, "circuit");
      for (const problem of routeProblems(circuit)) say([...at, ...problem.path], problem.what, problem.mend);
    }
  }
  return problems;
}

function routeProblems(run: Run): readonly { readonly path: Path; readonly what: string; readonly mend: string }[] {
  const names = new Set<string>();
  const twice = run.route.flatMap((segment, s) => {
    const again = names.has(segment.name);
    names.add(segment.name);
    return again
      ? [{ path: ["route", s, "name"], what: `two segments of this route are named "${segment.name}"`, mend: "give each segment a name of its own" }]
      : [];
  });
  const lost = run.boxes.flatMap((box, b) =>
    names.has(box.after)
      ? []
      : [
          {
            path: ["boxes", b, "after"],
            what: `no segment of this route is named "${box.after}"`,
            mend: `write one of ${[...names].map((n) => `"${n}"`).join(", ")}`,
          },
        ],
  );
  return [...twice, ...lost];
}
