import * as z from "zod";
import { nextBetterBox } from "../sizing/next-better.js";
import { calculation } from "./calculation.js";
import * as field from "./fields.js";

export const nextBetterBoxCalculation = calculation({
  name: "next-better-box",
  title: "Next better box",
  about: "The least standard metal box with a quarter more than the volume needed. Common practice, not a rule.",
  fields: {
    neededIn3: field.cubicInches("volume needed"),
    kinds: field.list(z.enum(["round", "square", "device", "masonry", "FS", "FD"]), "kinds to choose among, all when left out").optional(),
    edition: field.edition,
  },
  example: { neededIn3: 18, kinds: ["square"], edition: "2023" },
  run: nextBetterBox,
});
