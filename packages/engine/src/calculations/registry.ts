import { acVoltageDropCalculation } from "./ac-voltage-drop.js";
import { airConditionerCircuitCalculation } from "./air-conditioner-circuit.js";
import { ampacityCalculation } from "./ampacity.js";
import { anglePullCalculation } from "./angle-pull.js";
import { appliancesTogetherCalculation } from "./appliances-together.js";
import { backEntryDepthCalculation } from "./back-entry-depth.js";
import { boxVolumeCalculation } from "./box-volume.js";
import { buildingGroundingCalculation } from "./building-grounding.js";
import { burialCoverCalculation } from "./burial-cover.js";
import { cableBendRadiusCalculation } from "./cable-bend-radius.js";
import type { Calculation } from "./calculation.js";
import { conductorAdequacyCalculation } from "./conductor-adequacy.js";
import { conductorAreaCalculation } from "./conductor-area.js";
import { conductorResistanceCalculation } from "./conductor-resistance.js";
import { conductorSizeCalculation } from "./conductor-size.js";
import { conductorWeightCalculation } from "./conductor-weight.js";
import { cookingBranchLoadCalculation } from "./cooking-branch-load.js";
import { currentCarryingCountCalculation } from "./current-carrying-count.js";
import { dryerCircuitCalculation } from "./dryer-circuit.js";
import { dryerDemandCalculation } from "./dryer-demand.js";
import { dwellingServiceConductorCalculation } from "./dwelling-service-conductor.js";
import { entryDistanceCalculation } from "./entry-distance.js";
import { equipmentGroundingConductorCalculation } from "./equipment-grounding-conductor.js";
import { evLoadCalculation } from "./ev-load.js";
import { evSupplyCircuitCalculation } from "./ev-supply-circuit.js";
import { existingDwellingLoadCalculation } from "./existing-dwelling-load.js";
import { expectedReadingsCalculation } from "./expected-readings.js";
import { faultCurrentCalculation } from "./fault-current.js";
import { faultLoopCalculation } from "./fault-loop.js";
import { feederTapCalculation } from "./feeder-tap.js";
import { fixedApplianceDemandCalculation } from "./fixed-appliance-demand.js";
import { generalLightingLoadCalculation } from "./general-lighting-load.js";
import { generatorInletCircuitCalculation } from "./generator-inlet-circuit.js";
import { gfciNeedCalculation } from "./gfci-need.js";
import { groundRodsCalculation } from "./ground-rods.js";
import { groundingElectrodeConductorCalculation } from "./grounding-electrode-conductor.js";
import { hardPullCalculation } from "./hard-pull.js";
import { heatCircuitCalculation } from "./heat-circuit.js";
import { interruptingMarginCalculation } from "./interrupting-margin.js";
import { jamRatioCalculation } from "./jam-ratio.js";
import { largestMotorCalculation } from "./largest-motor.js";
import { legCurrentsCalculation } from "./leg-currents.js";
import { lightingDemandCalculation } from "./lighting-demand.js";
import { longestAcRunCalculation } from "./longest-ac-run.js";
import { longestRunCalculation } from "./longest-run.js";
import { loopImpedanceCalculation } from "./loop-impedance.js";
import { loopResistanceCalculation } from "./loop-resistance.js";
import { managedLoadCalculation } from "./managed-load.js";
import { measuredDemandCalculation } from "./measured-demand.js";
import { mixedConductorAreaCalculation } from "./mixed-conductor-area.js";
import { motorCircuitCalculation } from "./motor-circuit.js";
import { multiwireCircuitCalculation } from "./multiwire-circuit.js";
import { neutralConductorCalculation } from "./neutral-conductor.js";
import { neutralLoadCalculation } from "./neutral-load.js";
import { neutralReductionCalculation } from "./neutral-reduction.js";
import { neutralSwitchingCalculation } from "./neutral-switching.js";
import { nextBetterBoxCalculation } from "./next-better-box.js";
import { nextBetterRacewayCalculation } from "./next-better-raceway.js";
import { noncoincidentLoadCalculation } from "./noncoincident-load.js";
import { optionalClimateLoadCalculation } from "./optional-climate-load.js";
import { optionalDwellingLoadCalculation } from "./optional-dwelling-load.js";
import { outbuildingFeederLoadCalculation } from "./outbuilding-feeder-load.js";
import { outletDiagnosisCalculation } from "./outlet-diagnosis.js";
import { overcurrentRatingCalculation } from "./overcurrent-rating.js";
import { parallelAmpacityCalculation } from "./parallel-ampacity.js";
import { parallelConductorsCalculation } from "./parallel-conductors.js";
import { parallelGroundingConductorsCalculation } from "./parallel-grounding-conductors.js";
import { pullBoxMarkingCalculation } from "./pull-box-marking.js";
import { pullBoxSizeCalculation } from "./pull-box-size.js";
import { pullingTensionCalculation } from "./pulling-tension.js";
import { pullingTensionLimitCalculation } from "./pulling-tension-limit.js";
import { racewayBendRadiusCalculation } from "./raceway-bend-radius.js";
import { racewayExpansionCalculation } from "./raceway-expansion.js";
import { racewayFillCalculation } from "./raceway-fill.js";
import { racewaySizeCalculation } from "./raceway-size.js";
import { racewaySupportsCalculation } from "./raceway-supports.js";
import { racewayTemperatureSpanCalculation } from "./raceway-temperature-span.js";
import { rangeCircuitCalculation } from "./range-circuit.js";
import { rangeDemandCalculation } from "./range-demand.js";
import { receptacleCircuitCalculation } from "./receptacle-circuit.js";
import { rvParkDemandCalculation } from "./rv-park-demand.js";
import { rvSiteFeederCalculation } from "./rv-site-feeder.js";
import { sidewallPressureLimitCalculation } from "./sidewall-pressure-limit.js";
import { sourceImpedanceCalculation } from "./source-impedance.js";
import { spaCircuitCalculation } from "./spa-circuit.js";
import { standardDwellingLoadCalculation } from "./standard-dwelling-load.js";
import { straightPullCalculation } from "./straight-pull.js";
import { subpanelFeederCalculation } from "./subpanel-feeder.js";
import { supplyBondingJumperCalculation } from "./supply-bonding-jumper.js";
import { threeWireVoltageDropCalculation } from "./three-wire-voltage-drop.js";
import { trenchDepthCalculation } from "./trench-depth.js";
import { voltageDropCalculation } from "./voltage-drop.js";
import { voltageDropConductorCalculation } from "./voltage-drop-conductor.js";
import { waterHeaterCircuitCalculation } from "./water-heater-circuit.js";
import { wedgingFactorCalculation } from "./wedging-factor.js";
import { welderCircuitCalculation } from "./welder-circuit.js";
import { wireBendingSpaceCalculation } from "./wire-bending-space.js";

/** Every calculation, in order of name. */
export const CALCULATIONS: readonly Calculation[] = [
  acVoltageDropCalculation,
  airConditionerCircuitCalculation,
  ampacityCalculation,
  anglePullCalculation,
  appliancesTogetherCalculation,
  backEntryDepthCalculation,
  boxVolumeCalculation,
  buildingGroundingCalculation,
  burialCoverCalculation,
  cableBendRadiusCalculation,
  conductorAdequacyCalculation,
  conductorAreaCalculation,
  conductorResistanceCalculation,
  conductorSizeCalculation,
  conductorWeightCalculation,
  cookingBranchLoadCalculation,
  currentCarryingCountCalculation,
  dryerCircuitCalculation,
  dryerDemandCalculation,
  dwellingServiceConductorCalculation,
  entryDistanceCalculation,
  equipmentGroundingConductorCalculation,
  evLoadCalculation,
  evSupplyCircuitCalculation,
  existingDwellingLoadCalculation,
  expectedReadingsCalculation,
  faultCurrentCalculation,
  faultLoopCalculation,
  feederTapCalculation,
  fixedApplianceDemandCalculation,
  generalLightingLoadCalculation,
  generatorInletCircuitCalculation,
  gfciNeedCalculation,
  groundRodsCalculation,
  groundingElectrodeConductorCalculation,
  hardPullCalculation,
  heatCircuitCalculation,
  interruptingMarginCalculation,
  jamRatioCalculation,
  largestMotorCalculation,
  legCurrentsCalculation,
  lightingDemandCalculation,
  longestAcRunCalculation,
  longestRunCalculation,
  loopImpedanceCalculation,
  loopResistanceCalculation,
  managedLoadCalculation,
  measuredDemandCalculation,
  mixedConductorAreaCalculation,
  motorCircuitCalculation,
  multiwireCircuitCalculation,
  neutralConductorCalculation,
  neutralLoadCalculation,
  neutralReductionCalculation,
  neutralSwitchingCalculation,
  nextBetterBoxCalculation,
  nextBetterRacewayCalculation,
  noncoincidentLoadCalculation,
  optionalClimateLoadCalculation,
  optionalDwellingLoadCalculation,
  outbuildingFeederLoadCalculation,
  outletDiagnosisCalculation,
  overcurrentRatingCalculation,
  parallelAmpacityCalculation,
  parallelConductorsCalculation,
  parallelGroundingConductorsCalculation,
  pullBoxMarkingCalculation,
  pullBoxSizeCalculation,
  pullingTensionCalculation,
  pullingTensionLimitCalculation,
  racewayBendRadiusCalculation,
  racewayExpansionCalculation,
  racewayFillCalculation,
  racewaySizeCalculation,
  racewaySupportsCalculation,
  racewayTemperatureSpanCalculation,
  rangeCircuitCalculation,
  rangeDemandCalculation,
  receptacleCircuitCalculation,
  rvParkDemandCalculation,
  rvSiteFeederCalculation,
  sidewallPressureLimitCalculation,
  sourceImpedanceCalculation,
  spaCircuitCalculation,
  standardDwellingLoadCalculation,
  straightPullCalculation,
  subpanelFeederCalculation,
  supplyBondingJumperCalculation,
  threeWireVoltageDropCalculation,
  trenchDepthCalculation,
  voltageDropCalculation,
  voltageDropConductorCalculation,
  waterHeaterCircuitCalculation,
  wedgingFactorCalculation,
  welderCircuitCalculation,
  wireBendingSpaceCalculation,
];

/** The calculation of a name; null when there is none. */
export function calculationOf(name: string): Calculation | null {
  return CALCULATIONS.find((calculation) => calculation.name === name) ?? null;
}
