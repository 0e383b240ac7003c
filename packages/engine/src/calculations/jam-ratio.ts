import { jamRatio } from "../sizing/jam-ratio.js";
import { calculation } from "./calculation.js";
import * as field from "./fields.js";

export const jamRatioCalculation = calculation({
  name: "jam-ratio",
  title: "Jam ratio of conductors in a raceway",
  about: "Whether like conductors can wedge side by side: bore over conductor diameter, straight and in a bend. Chapter 9 note; advice, not a limit.",
  fields: { raceway: field.raceway, tradeSize: field.anyTradeSize, conductor: field.wound, edition: field.edition },
  example: { raceway: "EMT", tradeSize: "1-1/4", conductor: { size: "2", insulation: "THWN-2", count: 3 }, edition: "2023" },
  none: "The tables as entered lack the raceway or the conductor.",
  run: jamRatio,
});
