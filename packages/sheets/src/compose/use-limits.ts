import { type Design, type OutletUse, outletUse, print } from "@branchwork/engine";
import { type Block, type Draft, paragraph, table, withWidths } from "./packet.js";
import { SHEETS } from "./sheet-titles.js";
import { valueWithUnit } from "./worked-lines.js";

/** Told once above the table. */
const STANDINGS = { practice: " *", memory: " †" } as const;

/** What may run together at each outlet for a vehicle, for its owner; null where the job has none. */
export function useLimitsSheet(design: Design): Draft | null {
  const uses = design.circuits.flatMap((circuit) => outletUse(design, circuit) ?? []);
  const [first] = uses;
  if (first === undefined) return null;
  return {
    title: SHEETS.useLimits,
    blocks: [
      paragraph(
        "Nameplates decide: put their figures in place of those below. What runs three hours or more is counted at 125 %. Motors draw several times their figure at the start, so a breaker may trip within these limits. A breaker that trips says stop, not try again.",
      ),
      withWidths(
        table(
          "Usual draws taken, by the side of a 50 A vehicle (* common practice, no source; † from memory: verify)",
          ["Appliance", "At 120 V", "Leg", "Kind"],
          first.appliances.map((a) => [
            `${a.says}${a.always ? " (counted as always on)" : ""}${STANDINGS[a.standing]}`,
            `${print(a.watts)} W`,
            String(a.leg),
            `${a.behaves === "resistance" ? "heat" : "motor or electronic"}${a.continuous ? ", three hours or more" : ""}`,
          ]),
        ),
        ...[50, 10, 6, 34],
      ),
      ...uses.flatMap(outletPart),
    ],
  };
}

function outletPart({ circuit, volts, hookups }: OutletUse): Block[] {
  return [
    paragraph(`${circuit.circuit.name}. Volts taken: ${valueWithUnit(volts)} on each leg (${volts.expression}, the circuit fully loaded).`),
    ...hookups.map(({ says, always, sets }): Block => {
      const two = always.legs.length === 2;
      const head = two ? ["Together, besides what is always on", "Leg 1", "Leg 2"] : ["Together, besides what is always on", "Sum"];
      const rows = sets.map(({ appliances, legs }) => [
        appliances.length === 0 ? "nothing more" : appliances.map((a) => a.says).join(" + "),
        ...legs.map((leg) => `${valueWithUnit(leg.demand)} of ${leg.limit} A`),
      ]);
      const none = ["not even what is always on", ...always.legs.map((leg) => `${valueWithUnit(leg.demand)} of ${leg.limit} A`)];
      return withWidths(table(says, head, rows.length === 0 ? [none] : rows), ...(two ? [64, 18, 18] : [78, 22]));
    }),
  ];
}
