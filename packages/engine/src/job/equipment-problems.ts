import { CONNECTION_CHOSEN, needsOf } from "../equipment/circuit-needs.js";
import type { EquipmentKind } from "../equipment/equipment.js";
import { NAMEPLATE_FIELDS, type Nameplate, type NameplateField } from "./nameplate.js";
import type { Circuit } from "./schema.js";

export interface FieldProblem {
  readonly path: readonly (string | number)[];
  readonly what: string;
  readonly mend: string;
}

const CURRENT: Missing = {
  lacks: (circuit) => circuit.current === undefined,
  path: ["serves"],
  what: "its current is not given",
  mend: "add current, the rated current on the nameplate, for example 40 A",
};
const LOAD: Missing = {
  lacks: ({ nameplate }) => nameplate?.load === undefined,
  path: ["serves"],
  what: "its load is not given",
  mend: "add nameplate with load, for example nameplate: { load: 4.5 kW }",
};

interface Missing {
  readonly lacks: (circuit: Circuit) => boolean;
  readonly path: FieldProblem["path"];
  readonly what: string;
  readonly mend: string;
}

/** What a kind cannot be worked without. */
const NEEDED: Readonly<Record<EquipmentKind, readonly Missing[]>> = {
  "rv-50": [],
  "rv-30": [],
  "receptacle-20": [],
  "receptacle-15": [],
  general: [CURRENT],
  "ev-supply": [CURRENT],
  spa: [CURRENT],
  range: [
    {
      ...LOAD,
      lacks: ({ nameplate }) => nameplate?.load === undefined && nameplate?.cooking === undefined,
      mend: "add nameplate with load, for example nameplate: { load: 12 kW }",
    },
    {
      lacks: ({ nameplate }) => !oneCircuit(nameplate?.cooking),
      path: ["nameplate", "cooking"],
      what: "these cooking appliances do not belong on one circuit",
      mend: "name one appliance, or one cooktop with one or two ovens; give any other a circuit of its own",
    },
  ],
  dryer: [],
  "water-heater": [LOAD],
  heat: [LOAD],
  welder: [
    {
      lacks: ({ current, nameplate }) => current === undefined && nameplate?.maximum === undefined,
      path: ["serves"],
      what: "its rated primary current is not given",
      mend: "add current (rated primary current) or nameplate with maximum (I1max)",
    },
    {
      lacks: ({ nameplate }) => nameplate?.duty_percent === undefined && nameplate?.effective === undefined,
      path: ["serves"],
      what: "neither its duty cycle nor its effective current is given",
      mend: "add nameplate with duty_percent, for example nameplate: { duty_percent: 40 }, or effective (I1eff)",
    },
  ],
  "air-conditioner": [
    {
      lacks: ({ nameplate }) => nameplate?.minimum_ampacity === undefined && nameplate?.compressor === undefined,
      path: ["serves"],
      what: "its minimum circuit ampacity is not given",
      mend: "add nameplate with minimum_ampacity and largest_overcurrent as marked, or compressor and others where the plate has no such figures",
    },
    {
      lacks: ({ nameplate }) => nameplate?.minimum_ampacity !== undefined && nameplate.largest_overcurrent === undefined,
      path: ["nameplate"],
      what: "its maximum overcurrent device is not given",
      mend: "add largest_overcurrent as marked, beside minimum_ampacity",
    },
  ],
  motor: [
    {
      lacks: ({ nameplate }) => nameplate?.horsepower === undefined,
      path: ["serves"],
      what: "its horsepower is not given",
      mend: 'add nameplate with horsepower, for example nameplate: { horsepower: "5" }',
    },
    { ...CURRENT, mend: "add current, the full-load current on the nameplate: it sets the overload protection" },
  ],
  "generator-inlet": [
    {
      lacks: ({ current }) => ![20, 30, 50].includes(current ?? 0),
      path: ["serves"],
      what: "the rating of its inlet is not 20, 30 or 50 A",
      mend: "write current: 20 A, 30 A or 50 A, as the inlet is marked",
    },
    {
      lacks: ({ nameplate }) => nameplate?.neutral_bonded === undefined,
      path: ["serves"],
      what: "it is not said whether the generator's neutral is bonded to its frame",
      mend: "add nameplate with neutral_bonded: true or false, by the generator's manual",
    },
    {
      lacks: ({ nameplate }) => nameplate?.transfer === undefined,
      path: ["serves"],
      what: "it is not said what puts the house on the generator",
      mend: "add nameplate with transfer: interlock, manual-switch, manual-switch-with-neutral, automatic or automatic-with-neutral",
    },
  ],
};

function oneCircuit(cooking: Nameplate["cooking"]): boolean {
  if (cooking === undefined || cooking.length === 1) return true;
  return cooking.filter(({ is }) => is === "cooktop").length === 1 && cooking.every(({ is }) => is !== "range");
}

/** What a circuit lacks of its equipment, and what it says of it that belongs to another kind. */
export function equipmentProblems(circuit: Circuit): readonly FieldProblem[] {
  const { serves, nameplate = {} } = circuit;
  const missing = NEEDED[serves].filter(({ lacks }) => lacks(circuit)).map(({ path, what, mend }) => ({ path, what, mend }));
  const given = (Object.keys(nameplate) as NameplateField[]).filter((field) => nameplate[field] !== undefined);
  const fields = NAMEPLATE_FIELDS[serves];
  const strange = given
    .filter((field) => !fields.includes(field))
    .map((field) => ({
      path: ["nameplate", field],
      what: `${field} does not belong to the nameplate of ${serves}`,
      mend: fields.length > 0 ? `use ${fields.join(", ")}, or take it out` : "take the nameplate out: the outlet's own rating decides",
    }));
  const connection =
    circuit.connection === undefined || CONNECTION_CHOSEN.includes(serves)
      ? []
      : [{ path: ["connection"], what: `the connection of ${serves} is not a choice`, mend: `take it out; only ${CONNECTION_CHOSEN.join(", ")} have one` }];
  const several =
    circuit.several === undefined || serves === "receptacle-15" || serves === "receptacle-20"
      ? []
      : [
          {
            path: ["several"],
            what: `several receptacles do not belong to ${serves}`,
            mend: "take it out; it tells of receptacle-15 and receptacle-20 circuits",
          },
        ];
  const slotless =
    circuit.gfci_device === "receptacle" && serves !== "general" && needsOf(circuit).receptacle === null
      ? [{ path: ["gfci_device"], what: `${serves} is wired in: there is no receptacle to hold the protection`, mend: "write dead-front or disconnect" }]
      : [];
  return [...missing, ...strange, ...connection, ...several, ...slotless, ...voltageProblems(circuit)];
}

/** A dwelling's 120 V circuits carry what their voltage allows; a receptacle must have the voltage of what plugs into it. */
function voltageProblems({ nameplate, connection, serves }: Circuit): readonly FieldProblem[] {
  if (nameplate?.volts === 120 && (nameplate.load ?? 0) > MOST_AT_120)
    return [{ path: ["nameplate", "volts"], what: "a load so large is not made for 120 V", mend: "write volts: 240, or the load of one unit" }];
  return connection === "TT-30R" || connection === "5-15R" || connection === "5-20R"
    ? [
        {
          path: ["connection"],
          what: `a ${connection} gives 120 V and ${serves} is worked at 240 V`,
          mend: "name a 250 V or 125/250 V receptacle, or hard-wired",
        },
      ]
    : [];
}
const MOST_AT_120 = 20000;
