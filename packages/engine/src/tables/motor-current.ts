import { everyEdition } from "../basis/edition.js";
import type { CodeTable } from "./code-table.js";

export const MOTOR_CURRENT = {
  id: "motor-current",
  title: "Full-load current of single-phase alternating-current motors, A; a row is named by horsepower",
  sections: everyEdition("Table 430.248"),
  columns: ["115", "200", "208", "230"],
  rows: {
    "1/6": ["4.4", "2.5", "2.4", "2.2"],
    "1/4": ["5.8", "3.3", "3.2", "2.9"],
    "1/3": ["7.2", "4.1", "4.0", "3.6"],
    "1/2": ["9.8", "5.6", "5.4", "4.9"],
    "3/4": ["13.8", "7.9", "7.6", "6.9"],
    "1": ["16", "9.2", "8.8", "8.0"],
    "1-1/2": ["20", "11.5", "11.0", "10"],
    "2": ["24", "13.8", "13.2", "12"],
    "3": ["34", "19.6", "18.7", "17"],
    "5": ["56", "32.2", "30.8", "28"],
    "7-1/2": ["80", "46.0", "44.0", "40"],
    "10": ["100", "57.5", "55.0", "50"],
  },
  groups: [{ standing: "one-source" }],
  sources: [{ where: "https://paigewire.com/resources/430-148", confirms: "all 48 values, as Table 430-148 of the 1999 edition" }],
  notes: ["System voltages 110 to 120 and 220 to 240 V are covered. Low-speed, high-torque and multispeed motors go by their nameplate."],
} as const satisfies CodeTable;

export type Horsepower = keyof typeof MOTOR_CURRENT.rows;
export type MotorVolts = (typeof MOTOR_CURRENT.columns)[number];
