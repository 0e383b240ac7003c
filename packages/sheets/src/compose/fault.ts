import { type DesignedRun, print, type RunFault } from "@branchwork/engine";
import { greatestFault } from "../drawing/fault-at-panel.js";
import { type Block, paragraph } from "./packet.js";
import { calcLines, valueWithUnit } from "./worked-lines.js";

const TRIPS: Readonly<Record<NonNullable<RunFault["loop"]>["result"], string>> = {
  "at-once": "the breaker opens at once",
  "may-delay": "whether the breaker opens at once turns on its own curve: ask its maker",
  delayed: "the breaker does not open at once: shorten the loop or enlarge its conductors",
};

/** Fault current at both ends of a run and its ground-fault loop, worked; empty where no source is given. */
export function faultBlocks({ fault, run }: DesignedRun, of: (what: string) => string): readonly Block[] {
  if (fault === null) return [];
  const ends = [
    ["at the panel it leaves", greatestFault(fault.atStart)],
    ["at its end", greatestFault(fault.atEnd)],
  ].flatMap(([where, value]) => (value === null ? [] : [`${value} ${where}`]));
  const { loop } = fault;
  const loopWords =
    loop === null
      ? ""
      : ` A fault to ground at the end draws ${valueWithUnit(loop.amperes)}, ${print(loop.multiple.value, 1)} times the breaker's rating: ${TRIPS[loop.result]}.`;
  return [calcLines(of("Fault current and ground-fault loop"), fault.steps), paragraph(`${run.name}, greatest fault current: ${ends.join(", ")}.${loopWords}`)];
}
