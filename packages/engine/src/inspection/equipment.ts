import type { Edition } from "../basis/edition.js";
import { afci } from "../checks/afci.js";
import { airConditionerMocp } from "../checks/air-conditioner-mocp.js";
import type { Check } from "../checks/finding.js";
import { generatorBackfeed } from "../checks/generator-backfeed.js";
import { generatorCapacity } from "../checks/generator-capacity.js";
import { generatorNeutral } from "../checks/generator-neutral.js";
import { rangeDryerFourWire } from "../checks/range-dryer-four-wire.js";
import { receptacleRating } from "../checks/receptacle-rating.js";
import { spaDisconnect } from "../checks/spa-disconnect.js";
import { spaGrounding } from "../checks/spa-grounding.js";
import { waterHeaterDisconnect } from "../checks/water-heater-disconnect.js";
import { welderProtection } from "../checks/welder-protection.js";
import type { DesignedCircuit } from "../designed.js";
import type { EquipmentKind } from "../equipment/equipment.js";
import { print } from "../quantity.js";
import { printSize } from "../tables/size.js";
import { byRule, type LineWords, section } from "./line.js";

/** What an inspector looks at in the equipment of a circuit, or in the receptacle made for it. */
export function equipmentLines(designed: DesignedCircuit, edition: Edition): readonly LineWords[] {
  return [...anyEquipment(designed, edition), ...(KINDS[designed.equipment.kind]?.(designed, edition) ?? [])];
}

/** Sections on the disconnect of each kind, from memory; a spa and EV supply equipment have lines of their own. */
const DISCONNECT: Partial<Record<EquipmentKind, string>> = {
  range: "422.31, 422.33",
  dryer: "422.31, 422.33",
  heat: "424.19",
  motor: "430.102",
  "air-conditioner": "440.14",
  welder: "630.13",
};
const MEANS = {
  "in-sight": "in sight of it",
  "lockable-breaker": "breaker that locks open, its lock staying on",
  plug: "cord and plug, reached",
  none: "none named",
};

function anyEquipment({ circuit, rating, equipment }: DesignedCircuit, edition: Edition): readonly LineWords[] {
  const { name } = circuit;
  const { kind, receptacle, disconnect } = equipment;
  const lines: LineWords[] = [];
  if (receptacle !== null)
    lines.push({
      id: "receptacle-face",
      section: byRule(receptacleRating, edition),
      look: `${name}: receptacle of the form drawn`,
      seen: `${receptacle.says}, on ${rating} A`,
      how: "read the face",
    });
  if (circuit.afci === true)
    lines.push({
      id: "afci-test",
      section: byRule(afci, edition),
      look: `${name}: arc-fault breaker trips by its button`,
      seen: "arc-fault or dual-function on its label",
      how: "press TEST, read the outlet, reset",
    });
  const asked = kind === "water-heater" ? byRule(waterHeaterDisconnect, edition) : DISCONNECT[kind] === undefined ? null : section(DISCONNECT[kind], edition);
  if (asked !== null && disconnect.required !== "no")
    lines.push({
      id: "equipment-disconnect",
      section: asked,
      look: `${name}: its disconnecting means`,
      seen: circuit.disconnect === undefined ? disconnect.says : MEANS[circuit.disconnect],
      how: "stand at the equipment, reach it, open it",
    });
  return lines;
}

type Lines = (designed: DesignedCircuit, edition: Edition) => readonly LineWords[];

const nameplateLine = (check: Check, words: (designed: DesignedCircuit) => Pick<LineWords, "look" | "seen">): Lines => {
  return (designed, edition) => [
    { id: "nameplate-breaker", section: byRule(check, edition), ...words(designed), how: "nameplate and breaker handle side by side" },
  ];
};

const fourWires: Lines = ({ circuit }, edition) => [
  {
    id: "four-wire-cord",
    section: byRule(rangeDryerFourWire, edition),
    look: `${circuit.name}: four wires to the appliance, its frame off the neutral`,
    seen: "four-prong cord; strap from neutral to frame taken out",
    how: "cover of the terminal block off, power off",
  },
];

const KINDS: Partial<Record<EquipmentKind, Lines>> = {
  range: fourWires,
  dryer: fourWires,
  "air-conditioner": nameplateLine(airConditionerMocp, ({ circuit, rating, equipment: { overcurrent } }) => ({
    look: `${circuit.name}: breaker against the largest the nameplate names`,
    seen: `${rating} A${overcurrent.most === null ? "" : `; ${overcurrent.most.rating} A at most`}`,
  })),
  welder: nameplateLine(welderProtection, ({ circuit, rating }) => ({
    look: `${circuit.name}: breaker and wire sized by a welder's duty cycle, and marked so`,
    seen: `${rating} A; outlet and directory say that they serve this welder alone`,
  })),
  "ev-supply": ({ circuit }, edition) => [
    {
      id: "ev-connection",
      section: section("625.43, 625.44", edition),
      look: `${circuit.name}: connected and disconnected as drawn`,
      seen: `${circuit.connection === undefined || circuit.connection === "hard-wired" ? "hard-wired" : `${circuit.connection}, listed for vehicle charging where the 2026 edition is in force`}; disconnect where the edition asks one`,
      how: "label of the equipment, marking on the receptacle",
    },
  ],
  spa: ({ circuit, segments }, edition) => [
    {
      id: "spa-disconnect",
      section: byRule(spaDisconnect, edition),
      look: `${circuit.name}: disconnect in sight of the water and at least 5 ft from it`,
      seen: "5 ft or more, or a barrier; readily reached",
      how: "tape from the inside wall of the water",
    },
    {
      id: "spa-bonding",
      section: section("680.26, 680.42(B)", edition),
      look: `${circuit.name}: metal parts and the ground round it bonded together, or the exemption shown`,
      seen: "8 AWG solid copper, or a listed self-contained unit with its rim 28 in up and its papers",
      how: "follow the bare conductor before it is covered",
    },
    {
      id: "spa-grounding",
      section: byRule(spaGrounding, edition),
      look: `${circuit.name}: equipment ground insulated and of copper all the way outside the house`,
      seen: `${[...new Set(segments.map(({ grounding }) => printSize(grounding.size)))].join(" and ")}; 12 AWG or larger, green`,
      how: "look in the disconnect",
    },
  ],
  "generator-inlet": ({ circuit, rating, equipment: { generator } }, edition) => [
    {
      id: "generator-transfer",
      section: section("702.5", edition),
      look: `${circuit.name}: generator and utility can never be on together`,
      seen: "transfer switch or interlock listed for this panel; inlet blades dead while the house is on the utility",
      how: "try both handles",
    },
    {
      id: "generator-signs",
      section: section("702.7(A), 702.7(C)", edition),
      look: `${circuit.name}: signs at the service and at the inlet`,
      seen: "place and type of the source; at the inlet, bonded or floating neutral",
      how: "read them",
    },
    {
      id: "generator-neutral",
      section: byRule(generatorNeutral, edition),
      look: `${circuit.name}: the neutral has one bond while the generator runs`,
      seen:
        generator?.neutralSwitching.needed === "switched"
          ? "bonded at the generator, and switched by the transfer equipment"
          : "floating at the generator, and never switched",
      how: "the generator's manual and label; transfer equipment open",
    },
    {
      id: "generator-capacity",
      section: byRule(generatorCapacity, edition),
      look: `${circuit.name}: what the generator gives against what is put on it`,
      seen: `${circuit.nameplate?.load === undefined ? "" : `${print(circuit.nameplate.load)} W, `}inlet and breaker ${rating} A; ${circuit.nameplate?.transfer?.startsWith("automatic") ? "the whole load put over, or shed" : "put over by hand"}`,
      how: "nameplate of the generator beside the load sheet",
    },
    ...(circuit.nameplate?.transfer === "interlock"
      ? [
          {
            id: "backfed-breaker",
            section: byRule(generatorBackfeed, edition),
            look: `${circuit.name}: the breaker fed from its load side is held down`,
            seen: "retaining kit listed for this panel, screwed in",
            how: "panel front off, by a qualified person",
          },
        ]
      : []),
  ],
};
