export type * from './upright/types';
export * from './hydraulics/orifice';
export * from './hydraulics/fill-times';
export * from './hydraulics/air';
export * from './hydraulics/opening-flow';
export * from './simulate/ship';
export { simulateFlooding } from './simulate/simulate';
export { sizedOpenings } from './upright/sized-openings';
export { uprightScreen } from './upright/upright-screen';
export { UPRIGHT_DEFAULTS } from './upright/defaults';
export { CANNOT_SEE, CAUTION, endOfSinking } from './upright/words';
export { STANDARD_AREA } from './upright/sizing';
export {
  CROSS_FLOODING_LIMITS,
  sizeCrossFlooding,
  withCuts,
  type CrossFloodingLimits,
} from './upright/cross-flooding';
export { intermediateFactor } from './upright/yardsticks';
export { applyEffect } from './upright/apply-effect';
export { compareChoices } from './upright/choices';
