import { type Design, design, jobSchema } from "@branchwork/engine";

/** The design of a plain house of 200 A with these circuits on its one panel; `panel` changes what the panel says. */
export const designWith = (circuits: readonly object[], panel: object = {}): Design =>
  design({
    job: jobSchema.parse({
      format: "branchwork-job/1",
      project: { title: "Plain", owner: "A. Nonesuch", site: "1 Example Way", preparer: { name: "A. Nonesuch", role: "owner" } },
      code: { edition: "2023", confirmed_with_authority: true },
      service: {
        rating: "200 A",
        load_method: "measured-demand",
        measured: { peak: "9000 VA", basis: "one-year", from: "the utility" },
        panel: { id: "a", name: "Panel", bus: "200 A", main: "200 A", spaces: 30, circuits, ...panel },
      },
    }),
  });
