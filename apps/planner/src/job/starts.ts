/** The bare job: what is not answered yet is left out, so that the reader asks for it. */
export const EMPTY_JOB = `# A job file of Branchwork: one electrical job at a house. Made in the planner; the command line reads the same file.
format: branchwork-job/1
project:
  preparer: { role: Owner }
code: { edition: "2023" }
service:
  load_method: existing-dwelling
  existing:
    appliances: []
  panel:
    id: house
    name: House panel
    directory: []
    circuits: []
`;

/** Something that may be connected, with the circuit it begins with. What only the house can tell is left out. */
export interface Thing {
  readonly key: string;
  readonly says: string;
  readonly tells: string;
  readonly title: string;
  readonly feeder?: boolean;
  /** Of what it begins with, the fields that only its label can tell. */
  readonly assumed?: readonly (readonly string[])[];
  readonly poles: 1 | 2;
  readonly make: (spaces: readonly number[]) => Readonly<Record<string, unknown>>;
}

type Segment = Readonly<Record<string, unknown>>;
const indoors: Segment = { name: "Indoors from the panel", place: "indoors", method: "NM-B" };
const outdoorWall: Segment = { name: "Outside wall", place: "outdoors", method: "PVC-80", bends: [90], exposed_to_damage: true };
const innerBox = { name: "Box where the cable ends", after: indoors.name, volume: "64 in3" };

function outdoor(of: {
  id: string;
  name: string;
  serves: string;
  rating: string;
  poles: 1 | 2;
  box: string;
  rv?: boolean;
  more?: Readonly<Record<string, unknown>>;
}) {
  return (spaces: readonly number[]) => ({
    id: of.id,
    name: of.name,
    serves: of.serves,
    ...of.more,
    breaker: { rating: of.rating, poles: of.poles, spaces: [...spaces], gfci: true },
    ...(of.rv ? { cover_plate: "weatherproof-in-use" } : {}),
    route: [{ ...indoors }, { ...outdoorWall }],
    boxes: [{ ...innerBox }, ...(of.rv ? [{ name: "Outlet enclosure", after: outdoorWall.name, volume: of.box, wet_location: true, device: true }] : [])],
  });
}

function inside(of: { id: string; name: string; serves: string; poles: 1 | 2; rating?: string; gfci?: boolean; more?: Readonly<Record<string, unknown>> }) {
  return (spaces: readonly number[]) => ({
    id: of.id,
    name: of.name,
    serves: of.serves,
    ...of.more,
    breaker: { ...(of.rating ? { rating: of.rating } : {}), poles: of.poles, spaces: [...spaces], gfci: of.gfci ?? false },
    route: [{ ...indoors }],
  });
}

export const THINGS: readonly Thing[] = [
  {
    key: "rv-50",
    says: "Motor home or large trailer, 50 A",
    tells: "The plug has four blades. The outlet is a 14-50R.",
    title: "50 A RV outlet",
    poles: 2,
    make: outdoor({ id: "rv-outlet", name: "RV outlet", serves: "rv-50", rating: "50 A", poles: 2, box: "100 in3", rv: true }),
  },
  {
    key: "rv-30",
    says: "Trailer or van, 30 A",
    tells: "The plug has three blades, two of them slanted. It is 120 V, never 240 V. The outlet is a TT-30R.",
    title: "30 A RV outlet",
    poles: 1,
    make: outdoor({ id: "rv-outlet", name: "RV outlet", serves: "rv-30", rating: "30 A", poles: 1, box: "42 in3", rv: true }),
  },
  {
    key: "ev-supply",
    says: "Electric car charger",
    tells: "Wired in, 240 V. Its label gives the amperes it draws.",
    title: "EV supply equipment",
    assumed: [["current"]],
    poles: 2,
    make: inside({ id: "ev-supply", name: "EV supply", serves: "ev-supply", poles: 2, more: { current: "32 A" } }),
  },
  {
    key: "spa",
    says: "Hot tub or spa",
    tells: "240 V, wired in, with a disconnect in sight of the water.",
    title: "Hot tub circuit",
    assumed: [["current"]],
    poles: 2,
    make: outdoor({ id: "hot-tub", name: "Hot tub", serves: "spa", rating: "50 A", poles: 2, box: "42 in3", more: { current: "40 A" } }),
  },
  {
    key: "range",
    says: "Kitchen range",
    tells: "Four-wire outlet, 50 A.",
    title: "Range circuit",
    assumed: [["nameplate", "load"]],
    poles: 2,
    make: inside({ id: "range", name: "Range outlet", serves: "range", poles: 2, rating: "50 A", gfci: true, more: { nameplate: { load: "12 kW" } } }),
  },
  {
    key: "dryer",
    says: "Clothes dryer",
    tells: "Four-wire outlet, 30 A.",
    title: "Dryer circuit",
    poles: 2,
    make: inside({ id: "dryer", name: "Dryer outlet", serves: "dryer", poles: 2, rating: "30 A", gfci: true }),
  },
  {
    key: "welder",
    says: "Welder",
    tells: "240 V outlet, 6-50R. The nameplate gives its current and its duty cycle.",
    title: "Welder outlet",
    assumed: [["current"], ["nameplate", "duty_percent"]],
    poles: 2,
    make: inside({ id: "welder", name: "Welder outlet", serves: "welder", poles: 2, gfci: true, more: { current: "40 A", nameplate: { duty_percent: 40 } } }),
  },
  {
    key: "water-heater",
    says: "Water heater",
    tells: "Electric, with a tank, wired in.",
    title: "Water heater circuit",
    assumed: [["nameplate", "load"]],
    poles: 2,
    make: inside({ id: "water-heater", name: "Water heater", serves: "water-heater", poles: 2, more: { nameplate: { load: "4.5 kW" } } }),
  },
  {
    key: "generator-inlet",
    says: "Inlet for a portable generator",
    tells: "Feeds the house when the utility is out. Needs an interlock or a transfer switch.",
    title: "Generator inlet",
    assumed: [["current"]],
    poles: 2,
    make: outdoor({
      id: "generator-inlet",
      name: "Generator inlet",
      serves: "generator-inlet",
      rating: "30 A",
      poles: 2,
      box: "42 in3",
      more: { current: "30 A", nameplate: { neutral_bonded: false, transfer: "interlock", transfer_listed: true } },
    }),
  },
  {
    key: "receptacle-20",
    says: "Ordinary outlets, 20 A",
    tells: "120 V, for tools or the garden.",
    title: "20 A outlets",
    poles: 1,
    make: inside({ id: "outlets", name: "20 A outlets", serves: "receptacle-20", poles: 1, rating: "20 A", gfci: true }),
  },
  {
    key: "subpanel",
    says: "Panel in a garage or shed",
    tells: "A feeder from the house to a smaller panel with circuits of its own.",
    title: "Panel in the garage",
    feeder: true,
    poles: 2,
    make: (spaces) => ({
      id: "garage-feeder",
      name: "Feeder to garage",
      breaker: { rating: "60 A", poles: 2, spaces: [...spaces], gfci: false },
      building: "detached",
      route: [
        { name: "Inside the house", place: "indoors", method: "EMT", bends: [90, 90] },
        { name: "Trench", place: "buried", method: "PVC-40", bends: [90, 90], cover: "18 in" },
        { name: "Riser at garage", place: "outdoors", method: "PVC-80", bends: [90], exposed_to_damage: true },
      ],
      boxes: [{ name: "Pull box at the house wall", after: "Inside the house", volume: "220 in3" }],
      panel: { id: "garage", name: "Garage panel", bus: "125 A", main: "60 A", spaces: 12, circuits: [] },
    }),
  },
];
