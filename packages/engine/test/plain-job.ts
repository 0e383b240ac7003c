/** What changes a plain job; each part is spread into its own. */
export interface PlainParts {
  readonly code?: object;
  readonly service?: object;
  /** Circuits, feeders, spaces: what the one panel says besides its name and bus. */
  readonly panel: object;
}

/** A job as a file has it: a plain house of 200 A, counted by its floor, with one panel of 20 spaces. */
export const plainJob = ({ code, service, panel }: PlainParts) => ({
  format: "branchwork-job/1",
  project: { title: "Plain", owner: "A. Nonesuch", site: "1 Example Way", preparer: { name: "A. Nonesuch", role: "owner" } },
  code: { edition: "2023", ...code },
  service: {
    rating: "200 A",
    load_method: "existing-dwelling",
    existing: { floor_area: "1500 ft2" },
    ...service,
    panel: { id: "p", name: "P", bus: "200 A", spaces: 20, ...panel },
  },
});

/** The service of a house whose demand was measured, in place of its floor. */
export const measured = (peak: string) => ({
  load_method: "measured-demand",
  existing: undefined,
  measured: { peak, basis: "one-year", from: "the utility" },
});
