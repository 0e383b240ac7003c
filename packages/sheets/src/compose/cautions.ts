import type { Boxed } from "./packet.js";

const CAUTIONS: readonly { readonly title: string; readonly lines: readonly string[] }[] = [
  { title: "The main off does not make the panel dead.", lines: ["The service conductors and the lugs ahead of the main stay energized. They can kill."] },
  {
    title: "Prove the tester, test, prove it again.",
    lines: ["Try the tester on a known live source, test every conductor, then try it on the live source once more."],
  },
  {
    title: "Panel work is for qualified persons.",
    lines: ["Where the meter or the service conductors are exposed, it is for the utility or a licensed electrician."],
  },
  {
    title: "Local code decides.",
    lines: ["The authority having jurisdiction has the last word. Compare every figure here with the adopted text, and first of all those marked from memory."],
  },
  { title: "This packet is a preparer's aid.", lines: ["It is not an approval and not an engineer's seal."] },
  { title: "Call before digging.", lines: ["Have buried utilities located and wait for the answer. In the United States the number is 811."] },
  { title: "Stop if any reading is out of band.", lines: ["Open the breaker, lock it off, find the cause, and connect nothing until the reading is right."] },
];

/** The cautions that stand in every packet. */
export function cautions(): Boxed {
  return { kind: "boxed", title: "Cautions", lead: "Electricity kills. Read before any work.", entries: CAUTIONS };
}
