export type * from './upright/types';
export * from './hydraulics/orifice';
export * from './hydraulics/fill-times';
export * from './hydraulics/air';
export * from './hydraulics/opening-flow';
export * from './simulate/ship';
export { simulateFlooding } from './simulate/simulate';
