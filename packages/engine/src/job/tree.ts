import type { Circuit, Feeder, Job, Panel, Run } from "./schema.js";

/** A panel of the job and how it is reached: its place in the file and the feeders from the service down to it. */
export interface PlacedPanel {
  readonly panel: Panel;
  readonly path: readonly (string | number)[];
  /** The feeder that ends at this panel; null for the service panel. */
  readonly feeder: Feeder | null;
  readonly fedFrom: Panel | null;
}

/** Every panel of the tree, each before those it feeds. */
export function panelsOf(job: Job): readonly PlacedPanel[] {
  const below = (placed: PlacedPanel): readonly PlacedPanel[] => [
    placed,
    ...placed.panel.feeders.flatMap((feeder, i) =>
      below({ panel: feeder.panel, path: [...placed.path, "feeders", i, "panel"], feeder, fedFrom: placed.panel }),
    ),
  ];
  return below({ panel: job.service.panel, path: ["service", "panel"], feeder: null, fedFrom: null });
}

/** Where a panel stands: as its feeder says, or the one above where it is in the same building; null in the house itself. */
export function buildingOf(job: Job, panel: string): Exclude<Feeder["building"], "same"> | null {
  const placed = panelsOf(job).find((one) => one.panel.id === panel);
  if (placed === undefined || placed.feeder === null || placed.fedFrom === null) return null;
  const { building } = placed.feeder;
  return building === "same" ? buildingOf(job, placed.fedFrom.id) : building;
}

/** Circuits and feeders that leave a panel, feeders first: they share its spaces. */
export function runsOf(panel: Panel): readonly Run[] {
  return [...panel.feeders, ...panel.circuits];
}

/** Every circuit of the tree with the panel it leaves. */
export function circuitsOf(job: Job): readonly { readonly circuit: Circuit; readonly placed: PlacedPanel }[] {
  return panelsOf(job).flatMap((placed) => placed.panel.circuits.map((circuit) => ({ circuit, placed })));
}
