import type { Assumption } from "../designed.js";
import type { Circuit } from "../job/schema.js";
import { print } from "../quantity.js";
import { needsOf } from "./circuit-needs.js";
import { LEAST_DRYER_VA } from "./equipment-of.js";
import type { OutletPlace } from "./gfci-need.js";

interface Given {
  readonly asked: Circuit;
  /** What the circuit is worked at. */
  readonly amperes: number;
  readonly loadVA: string;
  readonly place: OutletPlace;
}

/** What was taken of a circuit's load and equipment where the job does not say. */
export function circuitAssumptions(given: Given): readonly Assumption[] {
  const { asked } = given;
  const says = (field: string, words: string): Assumption => ({ path: `${asked.id}.${field}`, says: `${asked.name}: ${words}` });
  return [...load(given, says), ...plate(asked, says), ...place(given, says)];
}

type Says = (field: string, words: string) => Assumption;
const OUTLET_LOADS: readonly Circuit["serves"][] = ["rv-50", "rv-30", "receptacle-20", "receptacle-15"];

function load({ asked, amperes, loadVA }: Given, says: Says): readonly Assumption[] {
  const made: Assumption[] = [];
  if (needsOf(asked).receptacle !== null && asked.current !== undefined && OUTLET_LOADS.includes(asked.serves) && amperes !== asked.current)
    made.push(says("current", `worked at the outlet's ${print(amperes)} A, not the ${print(asked.current)} A entered`));
  if (asked.load !== undefined) return [...made, says("load", `${print(asked.load)} VA on the service is the preparer's own figure`)];
  if (OUTLET_LOADS.includes(asked.serves))
    made.push(
      says(
        "load",
        `the code gives such an outlet at a house no demand factor; ${print(loadVA)} VA (volts × amperes) is taken as a fixed load (common practice, no source)`,
      ),
    );
  if (asked.serves === "general")
    made.push(says("load", `${print(loadVA)} VA (volts × amperes) is taken as a fixed load; where the floor area already counts it, write a load of your own`));
  if (asked.serves === "air-conditioner" || asked.serves === "motor")
    made.push(says("load", `${print(loadVA)} VA counts its motor at 125 %, as if it were the largest of the house`));
  return made;
}

function plate({ serves, nameplate = {}, current }: Circuit, says: Says): readonly Assumption[] {
  const made: Assumption[] = [];
  const when = (missing: unknown, field: string, words: string) => {
    if (missing === undefined) made.push(says(`nameplate.${field}`, words));
  };
  switch (serves) {
    case "dryer":
      when(nameplate.load, "load", `no nameplate given: ${print(LEAST_DRYER_VA)} VA taken, the least the code counts`);
      break;
    case "water-heater":
      when(nameplate.gallons, "gallons", "taken as a storage heater of 120 gal or less, a continuous load");
      break;
    case "spa":
      when(nameplate.neutral, "neutral", "taken as needing a neutral: see its wiring diagram");
      break;
    case "welder":
      when(nameplate.welder, "welder", "taken as a transformer or inverter welder, not a motor generator");
      break;
    case "motor":
      when(nameplate.service_factor ?? nameplate.rise_c, "service_factor", "service factor and temperature rise not given: overload at 115 %");
      break;
    case "generator-inlet":
      when(nameplate.load, "load", `generator taken to give what the inlet carries: ${print((current ?? 0) * 240)} VA`);
      break;
    default:
  }
  return made;
}

/** Kinds whose ground-fault protection does not turn on the place that was taken. */
const PLACE_DECIDES_NOTHING: readonly Circuit["serves"][] = ["rv-50", "rv-30", "generator-inlet", "spa", "air-conditioner"];

function place({ asked, place: taken }: Given, says: Says): readonly Assumption[] {
  if (asked.place !== undefined || PLACE_DECIDES_NOTHING.includes(asked.serves)) return [];
  return [says("place", `outlet taken to be in this place: ${taken}`)];
}
