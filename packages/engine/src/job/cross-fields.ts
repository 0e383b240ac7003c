import type { Problem } from "./problem.js";
import type { Job } from "./schema.js";

/** Fields that contradict one another so that the job cannot be understood. A bad installation is a finding, not one of these. */
export function crossFieldProblems(job: Job): readonly Problem[] {
  const problems: Problem[] = [];
  const say = (path: Problem["path"], what: string, mend: string) => problems.push({ path, atKey: false, what, mend });
  const { service } = job;
  if (service.load_method === "measured-demand" && !service.measured)
    say(["service", "load_method"], "measured-demand is chosen and the measured peak is not given", "add service.measured with peak, basis and from");
  if (service.load_method === "existing-dwelling" && !service.existing)
    say(
      ["service", "load_method"],
      "existing-dwelling is chosen and the existing loads are not given",
      "add service.existing with floor_area and the appliances",
    );
  const ids = new Set<string>();
  for (const [c, circuit] of service.panel.circuits.entries()) {
    const at = ["service", "panel", "circuits", c] as const;
    if (ids.has(circuit.id)) say([...at, "id"], `two circuits have the id "${circuit.id}"`, "give each circuit an id of its own");
    ids.add(circuit.id);
    const names = new Set<string>();
    for (const [s, segment] of circuit.route.entries()) {
      if (names.has(segment.name))
        say([...at, "route", s, "name"], `two segments of this route are named "${segment.name}"`, "give each segment a name of its own");
      names.add(segment.name);
    }
    for (const [b, box] of circuit.boxes.entries())
      if (!names.has(box.after))
        say([...at, "boxes", b, "after"], `no segment of this route is named "${box.after}"`, `write one of ${[...names].map((n) => `"${n}"`).join(", ")}`);
  }
  return problems;
}
