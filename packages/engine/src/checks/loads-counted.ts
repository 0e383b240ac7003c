import type { Job } from "../job/schema.js";
import type { Check } from "./finding.js";
import { needsPerson, notApplicable, pass } from "./outcome.js";

const LOOK =
  "walk through the house: range, oven, dryer, water heater, dishwasher, well pump, air conditioner, heat, charger; write each down at its nameplate, or know that there is none";

/** What is left out of the list is missing in the sum: too few loads make a service look larger than it is. Common practice, no source. */
export const loadsCounted: Check = {
  id: "loads-counted",
  title: "What the house runs already is counted",
  rule: null,
  run: ({ job }) => {
    const counted = listed(job);
    if (counted === null) return [notApplicable("Service", "the load is measured, not counted")];
    if (counted === 0) return [needsPerson("Service", "no appliance, heating or cooling of the house is in the load", LOOK)];
    const large = job.service.panel.directory.filter(({ poles }) => poles === 2).length;
    return counted < large
      ? [needsPerson("Service", `two-pole breakers in the directory: ${large}; appliances, heating and cooling in the load: ${counted}`, LOOK)]
      : [pass("Service", `appliances, heating and cooling in the load: ${counted}`)];
  },
};

/** How many loads besides lighting and small appliances are in the sum; null where the sum is not made of them. */
function listed({ service }: Job): number | null {
  const { existing, dwelling, load_method } = service;
  const many = (loads: readonly { readonly count: number }[]): number => loads.reduce((sum, { count }) => sum + count, 0);
  switch (load_method) {
    case "measured-demand":
      return null;
    case "existing-dwelling":
      return existing === undefined ? 0 : many(existing.appliances) + (existing.heating === undefined ? 0 : 1) + (existing.cooling === undefined ? 0 : 1);
    case "standard":
    case "optional":
      return dwelling === undefined
        ? 0
        : many(dwelling.appliances) + many(dwelling.cooking) + many(dwelling.dryers) + many(dwelling.ev) + dwelling.climate.length;
    default:
      return load_method satisfies never;
  }
}
