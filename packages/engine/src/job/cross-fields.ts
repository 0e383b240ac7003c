import { isCable } from "../tables/cable.js";
import { equipmentProblems } from "./equipment-problems.js";
import type { Problem } from "./problem.js";
import type { Job, Run } from "./schema.js";
import { panelsOf, runsOf } from "./tree.js";

type Path = readonly (string | number)[];

/** Fields that contradict one another so that the job cannot be understood. A bad installation is a finding, not one of these. */
export function crossFieldProblems(job: Job): readonly Problem[] {
  const problems: Problem[] = [];
  const say = (path: Path, what: string, mend: string) => problems.push({ path: [...path], atKey: false, what, mend });
  const { service } = job;
  if (service.load_method === "measured-demand" && !service.measured)
    say(["service", "load_method"], "measured-demand is chosen and the measured peak is not given", "add service.measured with peak, basis and from");
  if (service.load_method === "existing-dwelling" && !service.existing && !service.dwelling)
    say(
      ["service", "load_method"],
      "existing-dwelling is chosen and the existing loads are not given",
      "add service.existing with floor_area and the appliances",
    );
  if ((service.load_method === "standard" || service.load_method === "optional") && !service.dwelling)
    say(
      ["service", "load_method"],
      `${service.load_method} is chosen and the dwelling is not given`,
      "add service.dwelling with floor_area and the loads by kind",
    );
  const sources = [service.fault_current_kA, service.fault?.utility, service.fault?.transformer].filter((source) => source !== undefined);
  if (sources.length > 1)
    say(["service", "fault"], "more than one source of fault current is given", "keep the utility's figure or its transformer, one of them");
  const { least_kA, loop_ohms, utility } = service.fault ?? {};
  if (least_kA !== undefined && loop_ohms !== undefined)
    say(["service", "fault"], "the least fault current is given twice, by the utility and by the meter", "keep least_kA or loop_ohms, one of them");
  const most = utility === undefined ? service.fault_current_kA : Math.max(utility.kA, utility.line_to_neutral_kA ?? utility.kA);
  if (least_kA !== undefined && most !== undefined && least_kA > most)
    say(["service", "fault", "least_kA"], `the least fault current, ${least_kA} kA, is more than the greatest, ${most} kA`, "read both again");
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
      for (const problem of [...routeProblems(feeder), ...neutralProblems(feeder, false)]) say([...at, ...problem.path], problem.what, problem.mend);
    }
    for (const [i, circuit] of panel.circuits.entries()) {
      const at = [...path, "circuits", i];
      claim(at, circuit.id, "circuit");
      for (const problem of [...routeProblems(circuit), ...neutralProblems(circuit, true), ...equipmentProblems(circuit)])
        say([...at, ...problem.path], problem.what, problem.mend);
    }
  }
  for (const [r, route] of (job.site_plan?.routes ?? []).entries()) {
    const at = ["site_plan", "routes", r];
    const run = panels.flatMap(({ panel }) => runsOf(panel)).find((one) => one.id === route.circuit);
    if (run === undefined) say([...at, "circuit"], `no circuit or feeder has the id "${route.circuit}"`, "write the id of one under circuits or feeders");
    else if (!run.route.some((segment) => segment.name === route.segment))
      say([...at, "segment"], `"${run.name}" has no segment named "${route.segment}"`, `write one of ${run.route.map((s) => `"${s.name}"`).join(", ")}`);
  }
  return problems;
}

/** A neutral of its own size belongs to a feeder's single conductors: a branch circuit's is as its hots, a cable's as it is made. */
function neutralProblems(run: Run, circuit: boolean): ReturnType<typeof routeProblems> {
  return run.route.flatMap(({ conductors, method, sets = 1 }, s) => {
    if (conductors.neutral === undefined) return [];
    const what = circuit ? "the neutral of a branch circuit is taken as its hots" : isCable(method) ? "the neutral of a cable is as it is made" : null;
    const path = ["route", s, "conductors", "neutral"];
    if (what !== null) return [{ path, what, mend: "take it out" }];
    return sets > 1 ? [{ path, what: "a neutral of its own size among sets in parallel is not worked here", mend: "take it out, or give one set" }] : [];
  });
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
