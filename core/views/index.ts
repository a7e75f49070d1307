export * from './rows';
export * from './window-rows';
export { deckBreadth, planOutline, profileOutline, sectionOutline, type Point } from './hull-shape';
export { packNames, type Packed, type ToPack } from './pack-labels';
