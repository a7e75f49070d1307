export { decidingYear, presenceOf, type Presence, type ShipYears } from './presence';
export {
  FAMILIES,
  cautionsFile,
  cautionSchema,
  materialsFile,
  materialSchema,
  tripPointsFile,
  tripPointSchema,
  type Caution,
  type FamilyKey,
  type Material,
  type TripPoint,
} from './schema';
export { limitOf, tripPoint, trips, uncheckedTripPoints } from './trips';
export {
  asbestosDuty,
  asbestosNoticeBy,
  isAsbestos,
  type AsbestosAmounts,
  type AsbestosDuty,
} from './asbestos';
export {
  PCB_ROUTES,
  isPcbBulkProduct,
  pcbNoticeBy,
  pcbRouteDuty,
  type PcbRoute,
  type PcbRouteDuty,
} from './pcb';
export { LEACH_METALS, asksForLeachTest, failsLeachTest, totalThatAsks, type LeachMetal } from './leach';
export { tbtPresumption, type TbtPresumption } from './antifouling';
export { clearanceOver, type ClearanceResult, type ReefWater } from './clearance';
export {
  readResult,
  resultFinding,
  verdictOf,
  type LaboratoryCell,
  type ReadResult,
  type Verdict,
} from './laboratory';
export {
  asksForPcbEquipment,
  surveyedPresence,
  type IntakeWidening,
  type SampleResult,
  type SurveyedPresence,
} from './survey';
export { sampledClasses, type SampledClass, type WasteClass } from './waste-class';
export { intakeFile, wasteClassesFile } from './schema';
