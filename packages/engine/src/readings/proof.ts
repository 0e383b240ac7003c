import type { FaultId } from "./faults.js";

const DEAD =
  "dead test: breaker off and locked, continuity of the equipment ground from the ground bar to the terminal, and none from neutral to ground with the neutral lifted";
const LOADED = "a loaded pair: read all again with a heater of about 10 A on each leg in turn";
const LOW_METER = "the same readings with a low-impedance meter or a lamp from hot to ground, and continuity when dead";
const LOOKED = "look at the panel: two-pole breaker, its two spaces on opposite legs, conductors by color";

/** What shows a fault that a set of readings in band leaves possible. */
export const PROVED_BY: Readonly<Record<FaultId, string>> = {
  sound: "nothing",
  "open-hot-1": LOW_METER,
  "open-hot-2": LOW_METER,
  "no-supply": LOW_METER,
  "open-neutral": LOW_METER,
  "open-equipment-ground": LOW_METER,
  "neutral-ground-swapped": `${LOADED}; ${DEAD}`,
  "hot-neutral-swapped": LOOKED,
  "hot-ground-swapped": LOOKED,
  "both-hots-one-leg": LOOKED,
  "240-on-125-outlet": LOOKED,
  "supply-208": LOOKED,
  "neutral-bonded-at-outlet": DEAD,
  "bootleg-ground": DEAD,
  "open-ground-bootleg": DEAD,
  "reverse-polarity-bootleg": `non-contact tester on the ground terminal and plate with the breaker on; ${DEAD}`,
  "high-resistance-neutral": LOADED,
  "high-resistance-hot": LOADED,
  "open-service-neutral": LOADED,
  "long-run-low-source": LOADED,
  "high-source": "a second reading at another time of day",
};
