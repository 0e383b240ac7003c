/**
 * Usual draws of things used in a vehicle. An editable list: put the nameplate's figure in its place.
 * Watts are common practice, no source, or written from memory where marked; starting currents of motors are not in it.
 */
export interface Appliance {
  readonly id: string;
  readonly says: string;
  /** At 120 V. */
  readonly watts: number;
  /** Resistance heat draws less at low voltage; motors and electronics draw more. */
  readonly behaves: "resistance" | "constant-power";
  /** May run three hours or more: counted at 125 %. */
  readonly continuous: boolean;
  /** Leg of a 50 A inlet it is usually on; the vehicle's own panel decides. */
  readonly leg: 1 | 2;
  readonly always: boolean;
  readonly standing: "practice" | "memory";
}

export const APPLIANCES: readonly Appliance[] = [
  {
    id: "air-conditioner-1",
    says: "Air conditioner, front",
    watts: 1500,
    behaves: "constant-power",
    continuous: true,
    leg: 1,
    always: false,
    standing: "practice",
  },
  {
    id: "air-conditioner-2",
    says: "Air conditioner, rear",
    watts: 1500,
    behaves: "constant-power",
    continuous: true,
    leg: 2,
    always: false,
    standing: "practice",
  },
  {
    id: "water-heater",
    says: "Water heater, electric element",
    watts: 1440,
    behaves: "resistance",
    continuous: false,
    leg: 2,
    always: false,
    standing: "practice",
  },
  { id: "space-heater", says: "Portable heater, high", watts: 1500, behaves: "resistance", continuous: true, leg: 1, always: false, standing: "practice" },
  { id: "microwave", says: "Microwave oven, input", watts: 1500, behaves: "constant-power", continuous: false, leg: 2, always: false, standing: "practice" },
  { id: "hair-dryer", says: "Hair dryer, high", watts: 1500, behaves: "resistance", continuous: false, leg: 2, always: false, standing: "practice" },
  { id: "coffee-maker", says: "Coffee maker or kettle", watts: 1000, behaves: "resistance", continuous: false, leg: 1, always: false, standing: "practice" },
  {
    id: "induction-plate",
    says: "Induction plate, high",
    watts: 1800,
    behaves: "constant-power",
    continuous: false,
    leg: 1,
    always: false,
    standing: "practice",
  },
  { id: "refrigerator", says: "Refrigerator on electricity", watts: 300, behaves: "resistance", continuous: true, leg: 1, always: true, standing: "memory" },
  { id: "converter", says: "Converter and battery charger", watts: 400, behaves: "constant-power", continuous: true, leg: 2, always: true, standing: "memory" },
];
