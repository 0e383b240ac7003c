import { type Citation, cite } from "../basis/citation.js";
import { afci } from "./afci.js";
import { airConditionerMocp } from "./air-conditioner-mocp.js";
import { aluminumTerminals } from "./aluminum-terminals.js";
import { bendRadius } from "./bend-radius.js";
import { bendingSpace } from "./bending-space.js";
import { boxComfort } from "./box-comfort.js";
import { boxVolume } from "./box-volume.js";
import { boxWet } from "./box-wet.js";
import { breakerAdjacentSpaces } from "./breaker-adjacent-spaces.js";
import { breakerCarriesLoad } from "./breaker-carries-load.js";
import { breakerListed } from "./breaker-listed.js";
import { breakerPoles } from "./breaker-poles.js";
import { breakerStandardRating } from "./breaker-standard-rating.js";
import { breakerWithinBounds } from "./breaker-within-bounds.js";
import { buildingDisconnectRating } from "./building-disconnect-rating.js";
import { burialCover } from "./burial-cover.js";
import { cableWet } from "./cable-wet.js";
import { conductorSize } from "./conductor-size.js";
import { conductorTerminals } from "./conductor-terminals.js";
import { conductorWet } from "./conductor-wet.js";
import { coverPlate } from "./cover-plate.js";
import { detachedDisconnect } from "./detached-disconnect.js";
import { detachedElectrode } from "./detached-electrode.js";
import { earthMovement } from "./earth-movement.js";
import { editionConfirmed } from "./edition-confirmed.js";
import { electrodeConductor } from "./electrode-conductor.js";
import { emtBuried } from "./emt-buried.js";
import { entPlace } from "./ent-place.js";
import { equipmentDisconnect } from "./equipment-disconnect.js";
import { evDisconnect } from "./ev-disconnect.js";
import { faultLoop } from "./fault-loop.js";
import type { Check, CheckGiven, Finding, Outcome } from "./finding.js";
import { fmcWet } from "./fmc-wet.js";
import { generatorBackfeed } from "./generator-backfeed.js";
import { generatorCapacity } from "./generator-capacity.js";
import { generatorNeutral } from "./generator-neutral.js";
import { generatorTransfer } from "./generator-transfer.js";
import { gfci } from "./gfci.js";
import { gfciTrips } from "./gfci-trips.js";
import { groundingSize } from "./grounding-size.js";
import { hardPull } from "./hard-pull.js";
import { interruptingRating } from "./interrupting-rating.js";
import { loadsCounted } from "./loads-counted.js";
import { judgedLocally, localFindings } from "./local-findings.js";
import { localLoadMethod } from "./local-load-method.js";
import { localWiringMethods } from "./local-wiring-methods.js";
import { managedLoad } from "./managed-load.js";
import { measuredRecord } from "./measured-record.js";
import { neutralIsolated } from "./neutral-isolated.js";
import { outletStructure } from "./outlet-structure.js";
import { panelBus } from "./panel-bus.js";
import { panelDirectory } from "./panel-directory.js";
import { panelSpacesFree } from "./panel-spaces-free.js";
import { parallelConductors } from "./parallel-conductors.js";
import { planBends } from "./plan-bends.js";
import { pullBoxSize } from "./pull-box-size.js";
import { pullTension } from "./pull-tension.js";
import { pvcExpansion } from "./pvc-expansion.js";
import { racewayBends } from "./raceway-bends.js";
import { racewayFill } from "./raceway-fill.js";
import { racewayJam } from "./raceway-jam.js";
import { racewayJoint } from "./raceway-joint.js";
import { racewaySeal } from "./raceway-seal.js";
import { racewaySupports } from "./raceway-supports.js";
import { rangeDryerFourWire } from "./range-dryer-four-wire.js";
import { receptacleRating } from "./receptacle-rating.js";
import { receptacleWeather } from "./receptacle-weather.js";
import { riserProtection } from "./riser-protection.js";
import { rvUse } from "./rv-use.js";
import { serviceCapacity } from "./service-capacity.js";
import { serviceConductor } from "./service-conductor.js";
import { serviceLeastRating } from "./service-least-rating.js";
import { smallConductor } from "./small-conductor.js";
import { spaBonding } from "./spa-bonding.js";
import { spaDisconnect } from "./spa-disconnect.js";
import { spaGfci } from "./spa-gfci.js";
import { spaGrounding } from "./spa-grounding.js";
import { spliceFree } from "./splice-free.js";
import { subpanelNeutral } from "./subpanel-neutral.js";
import { terminalWireRange } from "./terminal-wire-range.js";
import { torque } from "./torque.js";
import { trenchOpen } from "./trench-open.js";
import { undergroundSeparation } from "./underground-separation.js";
import { voltageDrop } from "./voltage-drop.js";
import { warningRibbon } from "./warning-ribbon.js";
import { waterHeaterDisconnect } from "./water-heater-disconnect.js";
import { welderProtection } from "./welder-protection.js";
import { workingSpace } from "./working-space.js";

/** Every check, by id. The registry, the directory and the printed list are the same set. */
export const CHECKS: readonly Check[] = [
  afci,
  airConditionerMocp,
  aluminumTerminals,
  bendRadius,
  bendingSpace,
  boxComfort,
  boxVolume,
  boxWet,
  breakerAdjacentSpaces,
  breakerCarriesLoad,
  breakerListed,
  breakerPoles,
  breakerStandardRating,
  breakerWithinBounds,
  buildingDisconnectRating,
  burialCover,
  cableWet,
  conductorSize,
  conductorTerminals,
  conductorWet,
  coverPlate,
  detachedDisconnect,
  detachedElectrode,
  earthMovement,
  editionConfirmed,
  electrodeConductor,
  emtBuried,
  entPlace,
  equipmentDisconnect,
  evDisconnect,
  faultLoop,
  fmcWet,
  generatorBackfeed,
  generatorCapacity,
  generatorNeutral,
  generatorTransfer,
  gfci,
  gfciTrips,
  groundingSize,
  hardPull,
  interruptingRating,
  localLoadMethod,
  localWiringMethods,
  loadsCounted,
  managedLoad,
  measuredRecord,
  neutralIsolated,
  outletStructure,
  panelBus,
  panelDirectory,
  panelSpacesFree,
  parallelConductors,
  planBends,
  pullBoxSize,
  pullTension,
  pvcExpansion,
  racewayBends,
  racewayFill,
  racewayJam,
  racewayJoint,
  racewaySeal,
  racewaySupports,
  rangeDryerFourWire,
  receptacleRating,
  receptacleWeather,
  riserProtection,
  rvUse,
  serviceCapacity,
  serviceConductor,
  serviceLeastRating,
  smallConductor,
  spaBonding,
  spaDisconnect,
  spaGfci,
  spaGrounding,
  spliceFree,
  subpanelNeutral,
  terminalWireRange,
  torque,
  trenchOpen,
  undergroundSeparation,
  voltageDrop,
  warningRibbon,
  waterHeaterDisconnect,
  welderProtection,
  workingSpace,
];

/** A finding written out field by field: a job of twenty circuits has more than a thousand. */
function ofCheck({ id, title }: Check, citation: Citation | null, outcome: Outcome): Finding {
  const { verdict, subject, says } = outcome;
  if (verdict === "needs-person") return { check: id, title, citation, verdict, subject, says, look: outcome.look };
  if (verdict === "fail" || verdict === "caution") return { check: id, title, citation, verdict, subject, says, mend: outcome.mend };
  return { check: id, title, citation, verdict, subject, says };
}

/** Runs every check; what the jurisdiction waived, judges otherwise or adds says so with its reason. */
export function runChecks(given: CheckGiven): Finding[] {
  const ofCode = CHECKS.flatMap((check) => {
    const citation = check.rule === null ? null : cite(check.rule, given.basis.edition);
    const { id, title } = check;
    const waived = given.basis.waivedChecks[check.id];
    if (waived)
      return [
        {
          check: id,
          title,
          citation,
          verdict: "not-applicable" as const,
          subject: "Jurisdiction",
          says: `set aside locally: ${waived.reason} (${waived.citation})`,
        },
      ];
    const changed = given.basis.changedVerdicts[id];
    return check.run(given).map((outcome) => ofCheck(check, citation, judgedLocally(outcome, changed)));
  });
  return [...ofCode, ...localFindings(given)];
}
