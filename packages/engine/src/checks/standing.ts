import type { DesignedFeeder, DesignedRun } from "../designed.js";
import type { Outcome } from "./finding.js";
import { needsPerson } from "./outcome.js";

/** Whether a run stands already: its sizes are to be read, not chosen. */
export const standsAlready = (run: DesignedRun): boolean => "feeder" in run && (run as DesignedFeeder).feeder.existing;

/** A size of a feeder that stands already and that nobody read: the least that serves was taken, which proves nothing of what is there. */
export const notRead = (subject: string, what: string, field: string): Outcome =>
  needsPerson(subject, `it stands already and its size is not given; ${what} taken, the least that serves`, `read it where it stands and write ${field}`);
