/** Receptacles and inlets by configuration, after ANSI/NEMA WD 6: volts as rated, poles and wires, and gangs taken for box fill. */
export interface ReceptacleForm {
  readonly says: string;
  readonly amperes: number;
  readonly volts: "125" | "250" | "125/250";
  readonly poles: 2 | 3;
  readonly wires: 3 | 4;
  /** One up to 2 in wide; two for the wider 30 and 50 A devices (from memory: measure the device). */
  readonly gangs: 1 | 2;
}

export const RECEPTACLES = {
  "5-15R": { says: "5-15R, 15 A 125 V", amperes: 15, volts: "125", poles: 2, wires: 3, gangs: 1 },
  "5-20R": { says: "5-20R, 20 A 125 V", amperes: 20, volts: "125", poles: 2, wires: 3, gangs: 1 },
  "TT-30R": { says: "TT-30R, 30 A 125 V", amperes: 30, volts: "125", poles: 2, wires: 3, gangs: 1 },
  "6-50R": { says: "6-50R, 50 A 250 V", amperes: 50, volts: "250", poles: 2, wires: 3, gangs: 2 },
  "14-30R": { says: "14-30R, 30 A 125/250 V", amperes: 30, volts: "125/250", poles: 3, wires: 4, gangs: 2 },
  "14-50R": { says: "14-50R, 50 A 125/250 V", amperes: 50, volts: "125/250", poles: 3, wires: 4, gangs: 2 },
} as const satisfies Record<string, ReceptacleForm>;
export type Receptacle = keyof typeof RECEPTACLES;

/** What each kind of outlet or equipment needs of its circuit. */
export interface EquipmentNeeds {
  readonly says: string;
  readonly volts: 120 | 240;
  readonly poles: 1 | 2;
  readonly hots: 1 | 2;
  readonly neutral: boolean;
  readonly continuous: boolean;
  readonly receptacleAmperes: number | null;
  readonly receptacle: Receptacle | null;
  /** Gangs the device takes for box fill; 0 for hard-wired equipment and inlets, which have a box of their own. */
  readonly gangs: number;
}

export const EQUIPMENT_KINDS = [
  "rv-50",
  "rv-30",
  "ev-supply",
  "spa",
  "range",
  "dryer",
  "water-heater",
  "heat",
  "welder",
  "air-conditioner",
  "motor",
  "generator-inlet",
  "receptacle-20",
  "receptacle-15",
  "general",
] as const;
export type EquipmentKind = (typeof EQUIPMENT_KINDS)[number];

const twoPole = { volts: 240, poles: 2, hots: 2 } as const;
const onePole = { volts: 120, poles: 1, hots: 1, neutral: true } as const;
const hardWired = { receptacleAmperes: null, receptacle: null, gangs: 0 } as const;
const plugged = (receptacle: Receptacle) => ({ receptacle, receptacleAmperes: RECEPTACLES[receptacle].amperes, gangs: RECEPTACLES[receptacle].gangs });

export const EQUIPMENT: Readonly<Record<EquipmentKind, EquipmentNeeds>> = {
  "rv-50": { says: "RV outlet 14-50R, 50 A 125/250 V", ...twoPole, neutral: true, continuous: false, ...plugged("14-50R") },
  "rv-30": { says: "RV outlet TT-30R, 30 A 125 V", ...onePole, continuous: false, ...plugged("TT-30R") },
  "ev-supply": { says: "EV supply equipment, hard-wired", ...twoPole, neutral: false, continuous: true, ...hardWired },
  spa: { says: "Hot tub or spa", ...twoPole, neutral: true, continuous: true, ...hardWired },
  range: { says: "Range outlet 14-50R, 50 A 125/250 V", ...twoPole, neutral: true, continuous: false, ...plugged("14-50R") },
  dryer: { says: "Dryer outlet 14-30R, 30 A 125/250 V", ...twoPole, neutral: true, continuous: false, ...plugged("14-30R") },
  "water-heater": { says: "Storage water heater", ...twoPole, neutral: false, continuous: true, ...hardWired },
  heat: { says: "Fixed electric space heating", ...twoPole, neutral: false, continuous: true, ...hardWired },
  welder: { says: "Welder outlet 6-50R, 50 A 250 V", ...twoPole, neutral: false, continuous: false, ...plugged("6-50R") },
  "air-conditioner": { says: "Air conditioner or heat pump", ...twoPole, neutral: false, continuous: false, ...hardWired },
  motor: { says: "Motor, 240 V", ...twoPole, neutral: false, continuous: true, ...hardWired },
  "generator-inlet": { says: "Generator inlet, 125/250 V", ...twoPole, neutral: true, continuous: false, ...hardWired },
  "receptacle-20": { says: "Receptacle 5-20R, 20 A 125 V", ...onePole, continuous: false, ...plugged("5-20R") },
  "receptacle-15": { says: "Receptacle 5-15R, 15 A 125 V", ...onePole, continuous: false, ...plugged("5-15R") },
  general: { says: "Lighting or general circuit, 120 V", ...onePole, continuous: false, ...hardWired },
};
