import { everyEdition, type PerEdition } from "../basis/edition.js";
import type { DesignedCircuit, DesignedFeeder } from "../designed.js";
import type { Circuit } from "../job/schema.js";

/** Where the device that protects an outlet's people against ground faults sits. `dead-front`: a device of outlet form with no slots. */
export type GfciDevice = "breaker" | "receptacle" | "dead-front" | "disconnect";

const WORDS: Readonly<Record<GfciDevice, string>> = {
  breaker: "the breaker is a GFCI",
  receptacle: "the receptacle is a GFCI, as entered",
  "dead-front": "a dead-front GFCI ahead of the outlet, as entered",
  disconnect: "a GFCI breaker in the disconnect at the outlet, as entered",
};

/** The device of the circuit's own; null where it has none. One in the breaker protects all of the circuit and is named before another. */
export function gfciDevice(circuit: Pick<Circuit, "breaker" | "gfci_device" | "nameplate">): GfciDevice | null {
  if (circuit.breaker.gfci) return "breaker";
  if (circuit.gfci_device !== "none") return circuit.gfci_device;
  return circuit.nameplate?.gfci_in_disconnect ? "disconnect" : null;
}

/** 215.9: a feeder's ground-fault protection stands for that of the branch circuits behind it. From memory. */
const FEEDER_RULE: PerEdition<string> = everyEdition("215.9");

/** In words; `unusual` where a device is named that is commonly made for 120 V and 15 or 20 A alone (common practice, no source). */
export interface GfciProtection {
  readonly says: string;
  readonly unusual: boolean;
}

/**
 * What protects a circuit's outlet, its own device or the GFCI breaker of a feeder above it; null where nothing does.
 */
export function gfciProtection(
  designed: Pick<DesignedCircuit, "circuit" | "panel" | "volts" | "rating">,
  feeders: readonly DesignedFeeder[],
  edition: keyof typeof FEEDER_RULE,
): GfciProtection | null {
  const device = gfciDevice(designed.circuit);
  if (device !== null) {
    const small = designed.volts === 120 && Number(designed.rating) <= 20;
    return { says: WORDS[device], unusual: (device === "receptacle" || device === "dead-front") && !small };
  }
  const protecting = above(designed.panel, feeders).find(({ feeder }) => feeder.breaker.gfci);
  return protecting === undefined
    ? null
    : { says: `the breaker of ${protecting.feeder.name} is a GFCI (${FEEDER_RULE[edition]}, from memory)`, unusual: false };
}

function above(panel: string, feeders: readonly DesignedFeeder[]): readonly DesignedFeeder[] {
  const found = feeders.find(({ feeder }) => feeder.panel.id === panel);
  return found === undefined ? [] : [found, ...above(found.panel, feeders)];
}
