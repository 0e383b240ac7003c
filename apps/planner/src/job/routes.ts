/** Ways a circuit usually goes. Lengths are left out: they are the first thing to measure. */
export interface RouteStart {
  readonly key: string;
  readonly says: string;
  readonly tells: string;
  readonly route: readonly Readonly<Record<string, unknown>>[];
  readonly boxes: readonly Readonly<Record<string, unknown>>[];
}

const inCable = { name: "Indoors from the panel", place: "indoors", method: "NM-B" };
const down = { name: "Down the outside wall", place: "outdoors", method: "PVC-80", bends: [90, 90], exposed_to_damage: true };
const trench = { name: "Trench", place: "buried", method: "PVC-40", cover: "18 in" };
const riser = { name: "Riser at the outlet", place: "outdoors", method: "PVC-80", bends: [90], exposed_to_damage: true };
const wall = { name: "Outside wall", place: "outdoors", method: "PVC-80", bends: [90], exposed_to_damage: true };
const junction = { name: "Box where the cable ends", after: inCable.name, volume: "64 in3" };
const enclosure = (after: string) => ({ name: "Outlet enclosure", after, volume: "100 in3", wet_location: true, device: true });
const insideBox = (after: string) => ({ name: "Outlet box", after, volume: "42 in3", device: true });

export const ROUTES: readonly RouteStart[] = [
  {
    key: "wall",
    says: "Through the wall",
    tells: "Cable inside the house, then a short raceway on the outside wall to the outlet.",
    route: [inCable, wall],
    boxes: [junction, enclosure(wall.name)],
  },
  {
    key: "yard",
    says: "Under the yard",
    tells: "Cable inside, down the wall, a trench, and up a post.",
    route: [inCable, down, trench, riser],
    boxes: [junction, enclosure(riser.name)],
  },
  {
    key: "inside",
    says: "Inside all the way",
    tells: "One cable from the panel to the outlet, no weather.",
    route: [inCable],
    boxes: [insideBox(inCable.name)],
  },
  {
    key: "attic",
    says: "Over the attic",
    tells: "Up, across the hot attic in cable, and down.",
    route: [
      inCable,
      { name: "Across the attic", place: "attic", method: "NM-B", ambient: "130 °F" },
      { name: "Down inside the wall", place: "indoors", method: "NM-B" },
    ],
    boxes: [insideBox("Down inside the wall")],
  },
];

export const PLACES = [
  { value: "indoors", says: "Inside, dry" },
  { value: "attic", says: "Attic, hot" },
  { value: "outdoors", says: "Outside" },
  { value: "buried", says: "In the ground" },
] as const;

export const METHODS = [
  { value: "NM-B", says: "NM-B cable (indoor house cable)" },
  { value: "UF-B", says: "UF-B cable (may be buried)" },
  { value: "PVC-40", says: "PVC conduit, Schedule 40" },
  { value: "PVC-80", says: "PVC conduit, Schedule 80 (thick wall)" },
  { value: "EMT", says: "EMT (thin steel tube)" },
  { value: "RMC", says: "RMC (rigid steel)" },
  { value: "IMC", says: "IMC (intermediate steel)" },
  { value: "ENT", says: "ENT (flexible plastic tube, inside)" },
  { value: "LFNC-B", says: "LFNC-B (liquidtight plastic)" },
  { value: "LFMC", says: "LFMC (liquidtight metal)" },
  { value: "FMC", says: "FMC (flexible metal, dry)" },
] as const;

/** What gives where a stretch comes up out of the ground. */
export const EARTH_MOVEMENTS = [
  { value: "expansion-fitting", says: "An expansion fitting in the riser" },
  { value: "flexible-connection", says: "A flexible piece at the box" },
  { value: "slack-loop", says: "An S of slack in the buried cable" },
  { value: "ground-still", says: "Nothing: the department takes the ground as still" },
  { value: "nothing", says: "Nothing yet" },
] as const;

export const GROUND_OVER = [
  { value: "general", says: "Lawn or garden" },
  { value: "under-dwelling-driveway", says: "The driveway of this house" },
  { value: "under-street", says: "A street or public way" },
  { value: "under-concrete-2in", says: "At least 2 in of concrete" },
  { value: "under-slab-4in", says: "An outdoor slab, 4 in thick" },
  { value: "under-building", says: "A building" },
] as const;
