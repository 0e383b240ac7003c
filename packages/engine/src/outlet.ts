import type { Circuit } from "./job/schema.js";

/** What each kind of outlet or equipment needs of its circuit. Configurations 14-50R and TT-30R after ANSI/NEMA WD 6. */
export interface OutletNeeds {
  readonly says: string;
  readonly volts: 120 | 240;
  readonly poles: 1 | 2;
  readonly hots: 1 | 2;
  readonly neutral: boolean;
  readonly continuous: boolean;
  readonly receptacleAmperes: number | null;
  /** Gangs the device takes for box fill; a 14-50R is wider than 2 in (from memory). */
  readonly gangs: number;
}

export const OUTLETS: Readonly<Record<Circuit["serves"], OutletNeeds>> = {
  "rv-50": { says: "RV outlet 14-50R, 50 A 125/250 V", volts: 240, poles: 2, hots: 2, neutral: true, continuous: false, receptacleAmperes: 50, gangs: 2 },
  "rv-30": { says: "RV outlet TT-30R, 30 A 125 V", volts: 120, poles: 1, hots: 1, neutral: true, continuous: false, receptacleAmperes: 30, gangs: 1 },
  "ev-supply": { says: "EV supply equipment, hard-wired", volts: 240, poles: 2, hots: 2, neutral: false, continuous: true, receptacleAmperes: null, gangs: 0 },
};
