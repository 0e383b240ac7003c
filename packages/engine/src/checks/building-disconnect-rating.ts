import { everyEdition } from "../basis/edition.js";
import type { Check } from "./finding.js";
import { fail, notApplicable, pass } from "./outcome.js";

/** 225.39: one circuit 15 A, two circuits 30 A, more 60 A; a one-family dwelling is fed by a service here. */
const leastFor = (circuits: number) => (circuits <= 1 ? 15 : circuits === 2 ? 30 : 60);

export const buildingDisconnectRating: Check = {
  id: "building-disconnect-rating",
  title: "The disconnect of a detached building has its least rating",
  rule: { sections: everyEdition("225.39"), standing: "published" },
  run: ({ design }) =>
    design.feeders.map(({ feeder, rating }) => {
      if (feeder.building !== "detached") return notApplicable(feeder.panel.name, "not a detached building");
      const has = feeder.panel.main ?? feeder.panel.bus;
      const least = leastFor(feeder.panel.circuits.length + feeder.panel.feeders.length + feeder.panel.directory.length);
      return has < least
        ? fail(feeder.panel.name, `${has} A, at least ${least} A for its circuits`, `use a ${least} A main or disconnect; the feeder may stay at ${rating} A`)
        : pass(feeder.panel.name, `${has} A, at least ${least} A`);
    }),
};
