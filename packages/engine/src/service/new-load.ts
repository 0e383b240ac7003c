import type { DesignedCircuit, DesignedFeeder } from "../designed.js";
import { decimal } from "../quantity.js";

/** How a load method takes a new load. `whole`: no demand factor of its own, as an outlet or a feeder. */
export type NewLoadKind = "whole" | "fixed" | "motor" | "cooking" | "dryer" | "ev" | "heating" | "cooling";

/** What the new work puts on the service. */
export interface NewLoad {
  readonly id: string;
  readonly name: string;
  readonly va: string;
  readonly kind: NewLoadKind;
  /** Nameplates in VA, where a demand table goes by them. */
  readonly nameplates: readonly number[];
  /** In VA over both legs: twice what the heavier leg puts on the neutral. */
  readonly neutralVA: string;
  /** Part of `va` that is EV supply equipment behind a feeder. */
  readonly evVA: string;
}

/** Kinds of equipment that a load method counts by a rule of its own; all others count whole. */
const KINDS: Readonly<Record<string, NewLoadKind>> = {
  "ev-supply": "ev",
  range: "cooking",
  dryer: "dryer",
  "water-heater": "fixed",
  heat: "heating",
  "air-conditioner": "cooling",
  motor: "motor",
};

/** The new load of a circuit on the service panel. One 120 V circuit puts all of it on one leg, so that the neutral carries it whole. */
export function circuitLoad(designed: DesignedCircuit): NewLoad {
  const { circuit, load } = designed;
  const kind = KINDS[circuit.serves] ?? "whole";
  const { load: nameplate, cooking } = circuit.nameplate ?? {};
  const listed = kind === "cooking" || kind === "dryer" ? (cooking?.map((one) => one.load) ?? (nameplate === undefined ? null : [nameplate])) : null;
  return {
    id: load.id,
    name: circuit.name,
    va: load.value,
    kind,
    nameplates: listed ?? [Number(load.value)],
    neutralVA: designed.neutral
      ? decimal(load.value)
          .times(designed.volts === 240 ? 1 : 2)
          .toFixed()
      : "0",
    evVA: "0",
  };
}

/** The new load of a feeder on the service panel: the total behind it less what its panel carried already. */
export function feederNewLoad(designed: DesignedFeeder, addedVA: string, below: readonly DesignedCircuit[]): NewLoad {
  const ev = below.filter(({ circuit }) => circuit.serves === "ev-supply").reduce((sum, { load }) => sum.plus(load.value), decimal(0));
  return {
    id: designed.load.id,
    name: designed.feeder.name,
    va: addedVA,
    kind: "whole",
    nameplates: [Number(addedVA)],
    neutralVA: decimal(designed.neutralLoad.value).times(240).toFixed(),
    evVA: ev.gt(addedVA) ? addedVA : ev.toFixed(),
  };
}
