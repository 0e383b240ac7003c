import { gfciDevice } from "../equipment/gfci-device.js";
import type { Check } from "./finding.js";
import { caution, eachCircuit, notApplicable } from "./outcome.js";

export const gfciTrips: Check = {
  id: "gfci-trips",
  title: "A GFCI may trip on an RV's summed leakage",
  rule: null,
  run: eachCircuit(({ circuit }) =>
    gfciDevice(circuit) !== null && (circuit.serves === "rv-50" || circuit.serves === "rv-30")
      ? caution(
          circuit.name,
          "leakage of everything in the RV adds up against about 5 mA",
          "test with the RV unplugged first; find the appliance, never defeat the protection",
        )
      : notApplicable(circuit.name, "no GFCI feeding an RV"),
  ),
};
