import type { Boxed } from "./packet.js";

interface Caution {
  readonly title: string;
  readonly lines: readonly string[];
  /** Said again where the readings are taken. */
  readonly atReadings: boolean;
}

const CAUTIONS: readonly Caution[] = [
  {
    title: "The main off does not make the panel dead.",
    lines: ["The service conductors and the lugs ahead of the main stay energized. They can kill."],
    atReadings: true,
  },
  {
    title: "Prove the tester, test, prove it again.",
    lines: ["Try the tester on a known live source, test every conductor, then try it on the live source once more."],
    atReadings: true,
  },
  {
    title: "Panel work is for qualified persons.",
    lines: ["Where the meter or the service conductors are exposed, it is for the utility or a licensed electrician."],
    atReadings: true,
  },
  {
    title: "Local code decides.",
    lines: ["The authority having jurisdiction has the last word. Compare every figure here with the adopted text, and first of all those marked from memory."],
    atReadings: false,
  },
  { title: "This packet is a preparer's aid.", lines: ["It is not an approval and not an engineer's seal."], atReadings: false },
  {
    title: "Call before digging.",
    lines: ["Have buried utilities located and wait for the answer. In the United States the number is 811."],
    atReadings: false,
  },
  {
    title: "Stop if any reading is out of band.",
    lines: ["Open the breaker, lock it off, find the cause, and connect nothing until the reading is right."],
    atReadings: true,
  },
];

/** The cautions that stand in every packet. */
export function cautions(): Boxed {
  return {
    kind: "boxed",
    title: "Cautions",
    lead: "Electricity kills. Read before any work.",
    entries: CAUTIONS.map(({ title, lines }) => ({ title, lines })),
  };
}

/** Those of them that belong to taking readings. */
export function cautionsAtReadings(): Boxed {
  return {
    kind: "boxed",
    title: "Before the first reading",
    lead: "Electricity kills. These readings are taken on live parts, by a qualified person.",
    entries: CAUTIONS.filter((c) => c.atReadings).map(({ title, lines }) => ({ title, lines })),
  };
}
