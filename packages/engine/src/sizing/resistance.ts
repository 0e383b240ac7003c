import { citeOther } from "../basis/citation.js";
import type { Edition } from "../basis/edition.js";
import { type Decimal, decimal, type Numeric, print } from "../quantity.js";
import { readCell } from "../tables/code-table.js";
import { CONDUCTOR } from "../tables/conductor.js";
import { printSize, type Size } from "../tables/size.js";
import { type Worked, worked } from "../worked.js";
import type { Material } from "./ampacity.js";

/** Temperature coefficient of resistance at 75 °C, per °C. Note to Chapter 9 Table 8. */
export const TEMPERATURE_COEFFICIENT: Readonly<Record<Material, string>> = { copper: "0.00323", aluminum: "0.00330" };
/** The temperature at which Tables 8 and 9 print their resistances, °C. */
export const TABLE_CELSIUS = 75;
export const TEMPERATURE_CITE = citeOther("NFPA 70", "Chapter 9 Table 8 note: R2 = R1 [1 + α (T2 − 75)]", "memory");

/** Tables print ohms of 1000 ft. */
export const THOUSANDTH = decimal("0.001");
/** What each of like conductors carries or loses of the whole, where they share the current. */
export const shared = (whole: Decimal, parallel: number): Decimal => (parallel === 1 ? whole : whole.div(parallel));

const AT_TABLE = decimal(1);

/** What a 75 °C resistance is multiplied by at another conductor temperature. */
export function temperatureFactor(material: Material, celsius: Numeric): Decimal {
  if (celsius === TABLE_CELSIUS) return AT_TABLE;
  const factor = decimal(celsius).minus(TABLE_CELSIUS).times(TEMPERATURE_COEFFICIENT[material]).plus(1);
  if (factor.lte(0)) throw new RangeError(`no conductor is at ${print(celsius)} °C`);
  return factor;
}

/** The factor as it stands in a printed expression, with its times sign; nothing at 75 °C. */
export function printTemperatureFactor(material: Material, celsius: Numeric): string {
  if (decimal(celsius).eq(TABLE_CELSIUS)) return "";
  return ` × (1 + ${TEMPERATURE_COEFFICIENT[material]} × (${print(celsius)} − ${TABLE_CELSIUS}))`;
}

/**
 * Direct-current resistance of one way of a run, in ohms, at a conductor temperature (°C): Table 8 × [1 + α (T2 − 75)] × length
 * (ft) ÷ the conductors in parallel. `solid` reads the solid row of 8 AWG and smaller. Null where Table 8 has no such conductor.
 */
export function dcResistance(given: {
  readonly id: string;
  readonly label: string;
  readonly size: Size;
  readonly material: Material;
  readonly celsius: Numeric;
  readonly feet: Numeric;
  readonly parallel?: number;
  readonly solid?: boolean;
  readonly coated?: boolean;
  readonly edition: Edition;
}): Worked | null {
  const { size, material, celsius, feet, parallel = 1, edition } = given;
  const column = material === "aluminum" ? "dcAluminum" : given.coated ? "dcCopperCoated" : "dcCopper";
  const cell = readCell(CONDUCTOR, given.solid ? `${size} solid` : size, column, edition);
  if (cell === null) return null;
  const value = shared(decimal(cell.value).times(temperatureFactor(material, celsius)).times(THOUSANDTH).times(feet), parallel);
  return worked({
    id: given.id,
    label: `${given.label} (${printSize(size)} ${material})`,
    value: value.toSignificantDigits(16).toFixed(),
    unit: "ohm",
    expression: `${cell.value} Ω / 1000 ft${printTemperatureFactor(material, celsius)} × ${print(feet, 3)} ft${parallel > 1 ? ` / ${parallel}` : ""}`,
    cells: [cell],
    citations: decimal(celsius).eq(TABLE_CELSIUS) ? [] : [TEMPERATURE_CITE],
    edition,
  });
}
