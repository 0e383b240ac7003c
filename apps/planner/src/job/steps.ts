/** The questions in their order. */
export const STEPS = ["What", "Panel", "House", "Route", "Site plan", "Town", "Review"] as const;
export const STEP = { what: 0, panel: 1, house: 2, route: 3, site: 4, town: 5, review: 6 } as const;

/** The step of the planner that holds the field of a path. */
export function stepOf(path: string): number {
  if (/^project\.(intended_use)/.test(path)) return STEP.what;
  if (/^project|^format/.test(path)) return STEP.review;
  if (/^code/.test(path)) return STEP.town;
  if (/^site_plan/.test(path)) return STEP.site;
  if (/^service\.(existing|dwelling|measured|managed|load_method)/.test(path)) return STEP.house;
  if (/(route|boxes)(\[|$)/.test(path)) return STEP.route;
  if (/\.breaker|\.directory|\.spaces|\.bus|\.main|working_space|terminal_temperature|^service\.(rating|fault|conductors|electrode)/.test(path))
    return STEP.panel;
  if (/circuits|feeders/.test(path)) return STEP.what;
  return STEP.review;
}
