import { interruptingMargin } from "../service/interrupting.js";
import { calculation } from "./calculation.js";
import * as field from "./fields.js";
import { statedValue } from "./stated-value.js";

export const interruptingMarginCalculation = calculation({
  name: "interrupting-margin",
  title: "Interrupting rating",
  about: "Whether a device may break the fault current at its line terminals, and by what margin. 110.9.",
  fields: {
    availableAmperes: field.amperes("fault current at the line terminals"),
    ratedKA: field.factor("interrupting rating, kA", 300),
    edition: field.edition,
  },
  example: { availableAmperes: 6400, ratedKA: 10, edition: "2023" },
  run: ({ availableAmperes, ...given }) =>
    interruptingMargin({ ...given, available: statedValue(`${given.id}.available`, "Available fault current", availableAmperes, "A") }),
});
