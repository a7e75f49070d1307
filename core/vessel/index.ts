export { plantOf, type Plant } from './plant';
export { hullTypesFile, hullTypeSchema, type HullType } from './hull-types';
export { MEASURES, type MeasureKey } from './measures';
