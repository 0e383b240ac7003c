/** Lengths as answered, quoted for YAML. */
interface Lengths {
  readonly indoors: string;
  readonly buried: string;
}

/** What a first job file of a kind begins with: lines of YAML, to be changed by the person. */
interface Starter {
  readonly title: string;
  /** Two for 240 V. */
  readonly poles: 1 | 2;
  readonly gfci: boolean;
  /** Given where a load to come decides it; else computed. */
  readonly rating?: string;
  /** Whether a stretch underground is on the way. */
  readonly buried: boolean;
  /** What is served, and what its nameplate says. */
  readonly serves: readonly string[];
  readonly route: (lengths: Lengths) => readonly string[];
  readonly boxes: readonly string[];
}

const cable = ({ indoors }: Lengths) => `- { name: Indoors, place: indoors, method: NM-B, length: ${indoors} }`;
const tubing = ({ indoors }: Lengths) => `- { name: Indoors, place: indoors, method: EMT, length: ${indoors}, bends: [90, 90] }`;
const trench = ({ buried }: Lengths) => `- { name: Underground, place: buried, method: PVC-40, length: ${buried}, cover: 18 in, bends: [90, 90] }`;
const riser = "- { name: Outside wall, place: outdoors, method: PVC-80, length: 5 ft, bends: [90], exposed_to_damage: true }";
const riserFromGround = `${riser} # earth_movement: expansion-fitting or flexible-connection says what gives when the ground moves`;
const joint = "- { name: Junction box, after: Indoors, volume: 64 in3 }";
const outdoorOutlet = [joint, "- { name: Outlet enclosure, after: Outside wall, volume: 80 in3, wet_location: true, device: true }"];
const indoorOutlet = ["- { name: Outlet box, after: Indoors, volume: 42 in3, device: true }"];

const POST = "# stands_on: post             # where it has a post of its own, or other-building: then say disconnect_there: true or false";

/** The jobs that can be begun by questions. Ratings and nameplates are usual ones (common practice, no source), to be changed to what stands on the equipment. */
export const STARTERS = {
  "rv-50": {
    title: "50 A outlet for an RV",
    poles: 2,
    gfci: true,
    buried: true,
    serves: ["serves: rv-50", "current: 50 A", "cover_plate: weatherproof-in-use", POST],
    route: (lengths) => [cable(lengths), trench(lengths), riserFromGround],
    boxes: outdoorOutlet,
  },
  "rv-30": {
    title: "30 A outlet for an RV",
    poles: 1,
    gfci: true,
    buried: true,
    serves: ["serves: rv-30", "current: 30 A", "cover_plate: weatherproof-in-use", POST],
    route: (lengths) => [cable(lengths), trench(lengths), riserFromGround],
    boxes: outdoorOutlet,
  },
  "ev-supply": {
    title: "Supply equipment for an EV",
    poles: 2,
    gfci: false,
    buried: true,
    serves: [
      "serves: ev-supply",
      "current: 48 A                 # on its nameplate, or as it is set",
      "connection: hard-wired        # on a receptacle the breaker must be a GFCI one",
    ],
    route: (lengths) => [cable(lengths), trench(lengths), riserFromGround],
    boxes: [joint, "- { name: Supply equipment, after: Outside wall, volume: 80 in3, wet_location: true }"],
  },
  "hot-tub": {
    title: "Hot tub",
    poles: 2,
    gfci: true,
    buried: false,
    serves: [
      "serves: spa",
      "current: 40 A                 # all on its nameplate",
      "nameplate: { largest_overcurrent: 50 A, neutral: true, self_contained: true, disconnect_distance: 8 ft }",
      "disconnect: in-sight",
    ],
    route: (lengths) => [tubing(lengths), riser, "- { name: Disconnect to tub, place: outdoors, method: LFNC-B, length: 8 ft, bends: [90] }"],
    boxes: [joint, "- { name: Disconnect, after: Outside wall, volume: 180 in3, wet_location: true }"],
  },
  range: {
    title: "Range outlet",
    poles: 2,
    gfci: true,
    buried: false,
    serves: ["serves: range", "nameplate: { load: 11 kW, frame_wires: 4 }", "place: kitchen"],
    route: (lengths) => [cable(lengths)],
    boxes: indoorOutlet,
  },
  dryer: {
    title: "Dryer outlet",
    poles: 2,
    gfci: true,
    buried: false,
    serves: ["serves: dryer", "nameplate: { load: 5 kW, frame_wires: 4 }", "place: laundry"],
    route: (lengths) => [cable(lengths)],
    boxes: indoorOutlet,
  },
  welder: {
    title: "Welder outlet",
    poles: 2,
    gfci: true,
    buried: false,
    serves: [
      "serves: welder",
      "current: 38 A                 # all on its nameplate",
      "nameplate: { welder: nonmotor, duty_percent: 40, maximum: 38 A }",
      "place: garage",
    ],
    route: (lengths) => [tubing(lengths)],
    boxes: indoorOutlet,
  },
  "generator-inlet": {
    title: "Inlet for a portable generator",
    poles: 2,
    gfci: false,
    buried: false,
    serves: [
      "serves: generator-inlet",
      "current: 30 A                 # by the generator's outlet and manual",
      "nameplate: { load: 6 kW, neutral_bonded: false, transfer: interlock, transfer_listed: true, breaker_held: true }",
      "disconnect: plug",
    ],
    route: (lengths) => [cable(lengths), riser],
    boxes: [joint, "- { name: Inlet box, after: Outside wall, volume: 80 in3, wet_location: true }"],
  },
  subpanel: {
    title: "Panel in a garage or shed",
    poles: 2,
    gfci: false,
    rating: "60 A",
    buried: true,
    serves: ["building: detached            # same, where it stands in the house itself", "disconnect: true", "electrode: true"],
    route: (lengths) => [tubing(lengths), trench(lengths), riserFromGround],
    boxes: ["- { name: Pull box, after: Indoors, volume: 220 in3 }"],
  },
} as const satisfies Readonly<Record<string, Starter>>;

export type Kind = keyof typeof STARTERS;
export const KINDS = Object.keys(STARTERS) as readonly Kind[];
export const starterOf = (kind: Kind): Starter => STARTERS[kind];
