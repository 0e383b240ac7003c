import * as z from "zod";
import { Decimal } from "../quantity.js";

/** Factors to the engine's unit, exact by definition of the foot, the inch and the metric system. */
const TO_ENGINE = {
  length: {
    unit: "ft",
    factors: { ft: "1", feet: "1", foot: "1", "'": "1", in: ["1", "12"], m: ["1", "0.3048"], cm: ["0.01", "0.3048"], mm: ["0.001", "0.3048"] },
  },
  depth: { unit: "in", factors: { in: "1", inch: "1", inches: "1", '"': "1", ft: "12", cm: ["1", "2.54"], mm: ["0.1", "2.54"], m: ["100", "2.54"] } },
  volume: { unit: "in3", factors: { in3: "1", "in³": "1", cm3: ["1", "16.387064"] } },
  area: { unit: "ft2", factors: { ft2: "1", "ft²": "1", m2: ["1", "0.09290304"], "m²": ["1", "0.09290304"] } },
  current: { unit: "A", factors: { A: "1", kA: "1000" } },
  power: { unit: "VA", factors: { VA: "1", kVA: "1000", W: "1", kW: "1000" } },
} as const;
export type Dimension = keyof typeof TO_ENGINE;

const MOST_CHARACTERS = 40;
const NUMERAL = /^(-?)(?:(\d+)-)?(\d+)\/(\d+)$|^(-?\d+(?:,\d{3})*(?:\.\d+)?)$/;

function numeral(text: string): Decimal | null {
  const match = NUMERAL.exec(text);
  if (!match) return null;
  if (match[5] !== undefined) return new Decimal(match[5].replaceAll(",", ""));
  if (match[4] === undefined || Number(match[4]) === 0) return null;
  const value = new Decimal(match[3]!).div(match[4]).plus(match[2] ?? 0);
  return match[1] ? value.neg() : value;
}

/** A quantity as people write it ("85 ft", "26 m", "1-1/4 in", "12 kVA"), brought to the engine's unit as a number. */
export function written(dimension: Dimension, limits: { min?: number; max: number }) {
  const { unit, factors } = TO_ENGINE[dimension];
  const known: Record<string, string | readonly [string, string]> = factors;
  return z.string({ error: `write a number and a unit, for example "${EXAMPLES[dimension]}"` }).transform((text, context) => {
    const fail = (message: string) => {
      context.addIssue({ code: "custom", message });
      return z.NEVER;
    };
    if (text.length > MOST_CHARACTERS)
      return fail(`"${text.slice(0, MOST_CHARACTERS)}…" is too long for a number and a unit; write for example "${EXAMPLES[dimension]}"`);
    const [, number = "", name = ""] = /^\s*([-\d.,/]+)\s*(\S.*?)?\s*$/.exec(text) ?? [];
    const value = numeral(number);
    const factor = Object.hasOwn(known, name) ? known[name] : undefined;
    if (value === null) return fail(`"${text}" is not a number and a unit; write for example "${EXAMPLES[dimension]}"`);
    if (factor === undefined)
      return fail(
        name
          ? `unit "${name}" is not known here; use one of ${Object.keys(known).join(", ")}`
          : `"${text}" has no unit; write for example "${EXAMPLES[dimension]}"`,
      );
    const result = typeof factor === "string" ? value.times(factor) : value.times(factor[0]).div(factor[1]);
    const min = limits.min ?? 0;
    if (result.lt(min) || result.gt(limits.max)) return fail(`"${text}" is outside ${min} to ${limits.max} ${unit}`);
    return result.toDecimalPlaces(6).toNumber() + 0; // -0 becomes 0
  });
}

const EXAMPLES: Record<Dimension, string> = { length: "85 ft", depth: "18 in", volume: "42 in3", area: "1450 ft2", current: "50 A", power: "12 kVA" };

/** An air temperature ("104 °F", "40 °C"), brought to °C. */
export const writtenTemperature = z.string({ error: 'write a number and °F or °C, for example "104 °F"' }).transform((text, context) => {
  const match = /^\s*(-?\d+(?:\.\d+)?)\s*°?\s*([FC])\s*$/.exec(text.length > MOST_CHARACTERS ? "" : text);
  const celsius = match ? (match[2] === "C" ? new Decimal(match[1]!) : new Decimal(match[1]!).minus(32).times(5).div(9)) : null;
  if (celsius === null || celsius.lt(-60) || celsius.gt(85)) {
    context.addIssue({ code: "custom", message: `"${text.slice(0, MOST_CHARACTERS)}" is not a temperature from -60 °C to 85 °C; write for example "104 °F"` });
    return z.NEVER;
  }
  return celsius.toDecimalPlaces(4).toNumber() + 0; // -0 becomes 0
});
