import type { DesignedCircuit } from "../designed.js";
import { gfciProtection } from "../equipment/gfci-device.js";
import { gfciNeed } from "../equipment/gfci-need.js";
import type { Check } from "./finding.js";
import { eachCircuit, fail, needsPerson, notApplicable, protectedBy } from "./outcome.js";

export const gfci: Check = {
  id: "gfci",
  title: "Ground-fault protection where the edition asks it",
  rule: { sections: { "2017": "210.8(A)", "2020": "210.8(A), (F)", "2023": "210.8(A), (D), (F)", "2026": "210.8(A), (D), (F)" }, standing: "published" },
  run: eachCircuit((designed, { basis, design }) => {
    const { circuit, equipment } = designed;
    if (equipment.kind === "spa") return notApplicable(circuit.name, "a spa: judged by the check of its own article");
    const { required, says } = equipment.gfci;
    const protection = gfciProtection(designed, design.feeders, basis.edition);
    if (protection !== null && required !== "no") return protectedBy(circuit.name, protection);
    const relief = basis.gfciRelief;
    if (required !== "no" && relief !== null && circuit.listed_rv_power_outlet && (circuit.serves === "rv-50" || circuit.serves === "rv-30"))
      return needsPerson(
        circuit.name,
        `no GFCI, and none asked here of a labelled RV outlet: ${relief.reason} (${relief.citation})`,
        "see the label of a listed recreational vehicle power outlet on the assembly itself",
      );
    if (required === "yes")
      return fail(
        circuit.name,
        `${equipment.place === "outdoors" ? "outdoors at a dwelling " : ""}the ${basis.edition} edition asks GFCI of this outlet: ${says}`,
        "use a GFCI breaker of the panel's family, or name the device that protects it (gfci_device); an amendment of the jurisdiction may say otherwise",
      );
    if (required === "ask") return needsPerson(circuit.name, `no GFCI, and whether one is asked turns on the place: ${says}`, "see where it stands and decide");
    return protection === null && garageWouldAsk(designed, basis.edition)
      ? needsPerson(
          circuit.name,
          `no GFCI; none is asked in this place, but in a garage or an accessory building the ${basis.edition} edition asks one`,
          "write the circuit's place: garage, accessory-building or indoors",
        )
      : notApplicable(circuit.name, `the ${basis.edition} edition does not ask it of this outlet`);
  }),
};

/** A route that ends indoors does not tell a garage from a living room: where that decides, somebody has to say. */
function garageWouldAsk({ equipment, rating }: DesignedCircuit, edition: Parameters<typeof gfciNeed>[0]["edition"]): boolean {
  if (!equipment.placeAssumed || equipment.place !== "indoors") return false;
  const receptacle = equipment.receptacle !== null;
  return gfciNeed({ place: "garage", receptacle, rating: Number(rating), volts: equipment.volts, edition }).required === "yes";
}
