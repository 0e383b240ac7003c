import { everyEdition } from "../basis/edition.js";
import type { Check } from "./finding.js";
import { eachCircuit, fail, needsPerson, notApplicable, pass } from "./outcome.js";

export const receptacleWeather: Check = {
  id: "receptacle-weather",
  title: "A 15 or 20 A receptacle outdoors is weather-resistant",
  rule: { sections: everyEdition("406.9(A), (B)(1)"), standing: "memory" },
  run: eachCircuit(({ circuit, equipment: { receptacle, place } }) => {
    if (receptacle === null || receptacle.amperes > 20) return notApplicable(circuit.name, "no 15 or 20 A receptacle");
    if (place !== "outdoors") return notApplicable(circuit.name, "not outdoors");
    if (circuit.weather_resistant === undefined)
      return needsPerson(circuit.name, "not said whether the receptacle is weather-resistant", "look for WR on the face of the receptacle");
    return circuit.weather_resistant
      ? pass(circuit.name, "weather-resistant, as entered")
      : fail(circuit.name, "an ordinary receptacle outdoors", "use one marked WR");
  }),
};
