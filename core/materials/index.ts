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
