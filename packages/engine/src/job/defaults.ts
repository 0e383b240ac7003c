import { isCable } from "../tables/cable.js";

interface Assumed {
  readonly path: readonly (string | number)[];
  readonly says: string;
}

const yesNo = (yes: string, no: string) => (value: unknown) => (value === true ? yes : no);

/** What each default of the schema means, by the field's name, after the name of what it belongs to. */
const SAYS: Readonly<Record<string, (value: unknown) => string>> = {
  insulation: (v) => `conductors with ${v} insulation taken`,
  material: (v) => `${v} conductors taken`,
  bends: () => "no bends counted",
  area_in2: (v) => `conductors of other circuits taken to fill ${v} in²`,
  over: (v) => `ground above taken as "${v}"`,
  exposed_to_damage: yesNo("taken as exposed to damage", "taken as not exposed to damage"),
  wet_location: yesNo("taken as marked for wet locations", "taken as not marked for wet locations"),
  device: yesNo("taken to hold the receptacle", "taken to hold no receptacle"),
  clamps: yesNo("taken to have clamps inside", "taken to have no clamps inside"),
  listed_rv_power_outlet: yesNo("taken as a listed RV power outlet", "not taken as a listed RV power outlet"),
  terminals_75C: yesNo("terminals taken as marked 75 °C", "terminals not taken as marked 75 °C, so 60 °C governs to 100 A"),
  boxes: () => "no boxes counted",
  terminal_temperature: (v) => `panel terminals taken as ${v} °C`,
  directory: () => "every space of the panel taken as free",
  small_appliance_circuits: (v) => `${v} small-appliance circuits taken`,
  laundry_circuits: (v) => `${v} laundry circuit taken`,
  appliances: () => "no fixed appliances counted",
  heating_or_cooling_added: yesNo("heating or cooling taken as added", "no heating or cooling taken as added"),
  confirmed_with_authority: yesNo("edition taken as confirmed with the authority", "edition not yet confirmed with the authority having jurisdiction"),
  circuits: () => "no new circuit leaves it",
  gfci_device: () => "no ground-fault protection taken outside its breaker",
  existing: yesNo("stands already", "taken as new"),
  demand: (v) => (v === "sum" ? "every load behind it counted whole" : "its outlets counted as one RV site"),
  method: (v) => `voltage drop by the ${v} method`,
  limit_percent: (v) => `voltage drop limit of ${v} % taken`,
  total_percent: (v) => `voltage drop limit of ${v} % from the service taken`,
  required: yesNo("the voltage drop limits taken as a rule", "the voltage drop limits taken as advice, not a rule"),
  motor: yesNo("taken as a motor", "taken as no motor"),
  neutral: yesNo("taken as connected to the neutral", "taken as not connected to the neutral"),
  cooking: () => "no cooking appliances counted",
  dryers: () => "no clothes dryers counted",
  ev: () => "no EV supply equipment there already counted",
  climate: () => "no heating or cooling counted",
  interlocked: yesNo("heat pump and its electric heat taken as interlocked", "heat pump and its electric heat taken to run together"),
  controls: (v) => `${v} separately controlled unit of heating taken`,
  sets: (v) => (v === 1 ? "one conductor on each leg" : `${v} conductors in parallel on each leg`),
  raceway: (v) => `impedance in ${v} raceway taken`,
};

/** One of a thing named once is what its reader expects: said of every row, it would hide the assumptions that matter. */
const PLAIN = ["count", "poles"];

/** Defaults that decide nothing where they stand: open-conductor fields of a cable, ground over what is not buried. */
function idle(group: Readonly<Record<string, unknown>>, key: string): boolean {
  const cable = typeof group.method === "string" && isCable(group.method);
  return (
    PLAIN.includes(key) ||
    (key === "gfci_device" && (isGroup(group.breaker) ? group.breaker.gfci === true : false)) ||
    (key === "feeders" && isEmpty(group[key])) ||
    (key === "circuits" && isEmpty(group[key]) && !isEmpty(group.feeders)) ||
    (cable && (key === "conductors" || key === "bends")) ||
    (key === "interlocked" && group.kind !== "heat-pump") ||
    (key === "controls" && group.kind !== "space-heating") ||
    (typeof group.place === "string" && group.place !== "buried" && key === "over")
  );
}

/** Every default the schema filled that decides something: what stands in `filled` and not in `given`. */
export function assumedDefaults(given: unknown, filled: unknown): readonly Assumed[] {
  return walk(given, filled, [], "");
}

function walk(given: unknown, filled: unknown, path: Assumed["path"], owner: string): readonly Assumed[] {
  if (Array.isArray(filled)) return filled.flatMap((item, i) => walk(Array.isArray(given) ? given[i] : undefined, item, [...path, i], owner));
  if (!isGroup(filled)) return [];
  const name = typeof filled.name === "string" ? filled.name : typeof filled.serves === "string" ? filled.serves : owner;
  return Object.entries(filled).flatMap(([key, value]): readonly Assumed[] => {
    if (idle(filled, key)) return [];
    const at = [...path, key];
    const written = isGroup(given) && Object.hasOwn(given, key) && given[key] !== undefined ? given[key] : undefined;
    if (written === undefined && !isGroup(value)) {
      const says = SAYS[key]?.(value) ?? `${key} taken as ${String(value)}`;
      return [{ path: at, says: name ? `${name}: ${says}` : says }];
    }
    return walk(written, value, at, name);
  });
}

const isEmpty = (value: unknown) => Array.isArray(value) && value.length === 0;

const isGroup = (value: unknown): value is Readonly<Record<string, unknown>> => typeof value === "object" && value !== null && !Array.isArray(value);
