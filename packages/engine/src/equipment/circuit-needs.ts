import type { Circuit, Feeder } from "../job/schema.js";
import { EQUIPMENT, type EquipmentNeeds, RECEPTACLES } from "./equipment.js";
import type { OutletPlace } from "./gfci-need.js";

type Asked = Pick<Circuit, "serves" | "nameplate" | "connection" | "route">;

/** Kinds that a job may put on a receptacle or wire in; of the others the record alone decides. */
export const CONNECTION_CHOSEN: readonly Circuit["serves"][] = ["ev-supply", "welder", "range"];

/** What a circuit's outlet or equipment needs of it, with what the job says of its voltage, neutral and connection. */
export function needsOf(circuit: Asked): EquipmentNeeds {
  const base = EQUIPMENT[circuit.serves];
  const plate = circuit.nameplate ?? {};
  const receptacle = circuit.connection === undefined ? base.receptacle : circuit.connection === "hard-wired" ? null : circuit.connection;
  const form = receptacle === null ? null : RECEPTACLES[receptacle];
  const connected: EquipmentNeeds = {
    ...base,
    receptacle,
    receptacleAmperes: form?.amperes ?? null,
    gangs: form?.gangs ?? 0,
    neutral: circuit.serves === "spa" ? (plate.neutral ?? true) : base.neutral || form?.volts === "125/250",
    // 422.13 speaks of storage heaters of 120 gal or less. The load of a motor carries its 125 % already.
    continuous: circuit.serves === "water-heater" ? (plate.gallons ?? 0) <= 120 : base.continuous && circuit.serves !== "motor",
  };
  return plate.volts === 120 ? { ...connected, volts: 120, poles: 1, hots: 1, neutral: true } : connected;
}

const USUAL_PLACE: Readonly<Partial<Record<Circuit["serves"], OutletPlace>>> = {
  "rv-50": "outdoors",
  "rv-30": "outdoors",
  spa: "outdoors",
  "air-conditioner": "outdoors",
  "generator-inlet": "outdoors",
  range: "kitchen",
  dryer: "laundry",
  welder: "garage",
};

/**
 * Where the outlet is taken to be when the job does not say: an RV outlet is outdoors, though its cable may come straight through the
 * wall; what stays indoors at a panel of a detached building is in an accessory building.
 */
export function usualPlace(circuit: Asked, building: Feeder["building"] | null): OutletPlace {
  const last = circuit.route.at(-1)?.place;
  if (last === "outdoors" || last === "buried") return "outdoors";
  return USUAL_PLACE[circuit.serves] ?? (building === "detached" ? "accessory-building" : building === "pedestal" ? "outdoors" : "indoors");
}
