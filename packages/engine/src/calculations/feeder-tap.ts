import { feederTap } from "../sizing/tap.js";
import { calculation } from "./calculation.js";
import * as field from "./fields.js";

export const feederTapCalculation = calculation({
  name: "feeder-tap",
  title: "Feeder tap",
  about: "Tests a tap at a house by the 10 ft and 25 ft rules. Outdoor taps of any length are not covered. 240.21(B).",
  fields: {
    feederDevice: field.amperes("overcurrent device of the feeder"),
    feet: field.feet("length of the tap"),
    load: field.amperes("load of the tap"),
    tapAmpacity: field.amperes("ampacity of the tap conductors"),
    endRating: field.amperes("device or equipment in which the tap ends"),
    endsInOneDevice: field.yesNo("whether it ends in a single overcurrent device"),
    leavesEnclosure: field.yesNo("whether it leaves the enclosure it starts in"),
    inRaceway: field.yesNo("whether it is in a raceway or otherwise protected"),
    edition: field.edition,
  },
  example: {
    feederDevice: 200,
    feet: 9,
    load: 48,
    tapAmpacity: 65,
    endRating: 60,
    endsInOneDevice: true,
    leavesEnclosure: true,
    inRaceway: true,
    edition: "2023",
  },
  run: feederTap,
});
