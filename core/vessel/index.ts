export { hullTypesFile, hullTypeSchema, type HullType } from './hull-types';
export { MEASURES, type MeasureKey } from './measures';
