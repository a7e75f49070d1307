export { ASSUMPTIONS } from './assumptions';
export { hullTypesFile, hullTypeSchema, type HullType } from './hull-types';
export { MEASURES, type MeasureKey } from './measures';
export { type OpeningMeasure } from './opening-measures';
export { plantOf, type Plant } from './plant';
export { takeOff, type Particular, type ShipGivens, type TakeOff, type TankGiven } from './take-off';
export * from './formulas';
export { USUAL_TOPSIDE, highestStaying, houseStaying, type TopsidePart } from './topside';
