import * as z from "zod";
import { supportCount, supportSpacing } from "../sizing/supports.js";
import { calculation } from "./calculation.js";
import * as field from "./fields.js";

export const racewaySupportsCalculation = calculation({
  name: "raceway-supports",
  title: "Supports of a raceway or cable",
  about: "How near to an end and how far apart it is fastened, and the least number of supports on a straight run.",
  fields: {
    method: z.enum(["EMT", "IMC", "RMC", "PVC-40", "PVC-80", "FMC", "LFMC", "LFNC-A", "LFNC-B", "ENT", "NM-B", "UF-B", "MC"]).describe("raceway or cable"),
    tradeSize: field.anyTradeSize.optional(),
    threadedStraight: field.yesNo("RMC or IMC, straight and horizontal, threaded couplings").optional(),
    feet: field.feet("straight run that ends at a box or fitting on both sides"),
    edition: field.edition,
  },
  example: { method: "PVC-40", tradeSize: "1", feet: 40, edition: "2023" },
  none: "The tables do not list the trade size, or none was given for a method that goes by it.",
  run: ({ id, feet, ...given }) => {
    const spacing = supportSpacing({ ...given, id: `${id}.spacing` });
    return spacing && { ...spacing, count: supportCount({ id, spacing, feet }) };
  },
});
