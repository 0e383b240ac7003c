import { cite } from "../basis/citation.js";
import { boxComfort } from "./box-comfort.js";
import { boxVolume } from "./box-volume.js";
import { boxWet } from "./box-wet.js";
import { breakerAdjacentSpaces } from "./breaker-adjacent-spaces.js";
import { breakerCarriesLoad } from "./breaker-carries-load.js";
import { breakerListed } from "./breaker-listed.js";
import { breakerPoles } from "./breaker-poles.js";
import { breakerStandardRating } from "./breaker-standard-rating.js";
import { buildingDisconnectRating } from "./building-disconnect-rating.js";
import { burialCover } from "./burial-cover.js";
import { cableWet } from "./cable-wet.js";
import { conductorSize } from "./conductor-size.js";
import { conductorTerminals } from "./conductor-terminals.js";
import { conductorWet } from "./conductor-wet.js";
import { coverPlate } from "./cover-plate.js";
import { detachedDisconnect } from "./detached-disconnect.js";
import { detachedElectrode } from "./detached-electrode.js";
import { editionConfirmed } from "./edition-confirmed.js";
import { emtBuried } from "./emt-buried.js";
import { evDisconnect } from "./ev-disconnect.js";
import type { Check, CheckGiven, Finding } from "./finding.js";
import { fmcWet } from "./fmc-wet.js";
import { gfci } from "./gfci.js";
import { gfciTrips } from "./gfci-trips.js";
import { groundingSize } from "./grounding-size.js";
import { interruptingRating } from "./interrupting-rating.js";
import { measuredRecord } from "./measured-record.js";
import { neutralIsolated } from "./neutral-isolated.js";
import { panelBus } from "./panel-bus.js";
import { panelDirectory } from "./panel-directory.js";
import { panelSpacesFree } from "./panel-spaces-free.js";
import { pvcExpansion } from "./pvc-expansion.js";
import { racewayBends } from "./raceway-bends.js";
import { racewayFill } from "./raceway-fill.js";
import { receptacleRating } from "./receptacle-rating.js";
import { riserProtection } from "./riser-protection.js";
import { rvUse } from "./rv-use.js";
import { serviceCapacity } from "./service-capacity.js";
import { smallConductor } from "./small-conductor.js";
import { spliceFree } from "./splice-free.js";
import { subpanelNeutral } from "./subpanel-neutral.js";
import { torque } from "./torque.js";
import { trenchOpen } from "./trench-open.js";
import { voltageDrop } from "./voltage-drop.js";
import { workingSpace } from "./working-space.js";

/** Every check, by id. The registry, the directory and the printed list are the same set. */
export const CHECKS: readonly Check[] = [
  boxComfort,
  boxVolume,
  boxWet,
  breakerAdjacentSpaces,
  breakerCarriesLoad,
  breakerListed,
  breakerPoles,
  breakerStandardRating,
  buildingDisconnectRating,
  burialCover,
  cableWet,
  conductorSize,
  conductorTerminals,
  conductorWet,
  coverPlate,
  detachedDisconnect,
  detachedElectrode,
  editionConfirmed,
  emtBuried,
  evDisconnect,
  fmcWet,
  gfci,
  gfciTrips,
  groundingSize,
  interruptingRating,
  measuredRecord,
  neutralIsolated,
  panelBus,
  panelDirectory,
  panelSpacesFree,
  pvcExpansion,
  racewayBends,
  racewayFill,
  receptacleRating,
  riserProtection,
  rvUse,
  serviceCapacity,
  smallConductor,
  spliceFree,
  subpanelNeutral,
  torque,
  trenchOpen,
  voltageDrop,
  workingSpace,
];

/** Runs every check; one that the jurisdiction waived says so with its reason. */
export function runChecks(given: CheckGiven): Finding[] {
  return CHECKS.flatMap((check) => {
    const citation = check.rule === null ? null : cite(check.rule, given.basis.edition);
    const of = { check: check.id, title: check.title, citation };
    const waived = given.basis.waivedChecks[check.id];
    if (waived)
      return [{ ...of, verdict: "not-applicable" as const, subject: "Jurisdiction", says: `set aside locally: ${waived.reason} (${waived.citation})` }];
    return check.run(given).map((outcome) => ({ ...of, ...outcome }));
  });
}
