import { everyEdition } from "../basis/edition.js";
import type { Check } from "./finding.js";
import { eachCircuit, fail, needsPerson, notApplicable, pass } from "./outcome.js";

export const generatorTransfer: Check = {
  id: "generator-transfer",
  title: "Generator and utility can never be connected together",
  rule: { sections: everyEdition("702.5"), standing: "one-source" },
  run: eachCircuit(({ circuit, equipment: { generator } }) => {
    if (generator === null) return notApplicable(circuit.name, "no generator inlet");
    const { transfer, transfer_listed } = circuit.nameplate ?? {};
    const means = transfer === "interlock" ? "the interlock is listed for this very panel" : "the transfer equipment is listed";
    if (transfer_listed === undefined)
      return needsPerson(circuit.name, `not said whether ${means}`, "a backfeed kills line workers: show the listing to the inspector");
    return transfer_listed
      ? pass(circuit.name, `${means}, as entered`)
      : fail(circuit.name, `it is not so that ${means}: a backfeed kills line workers`, `use ${generator.transfer.says.split(",").slice(0, 2).join(",")}`);
  }),
};
