export * from './rows';
export * from './window-rows';
export { deckBreadth, planOutline, profileOutline, sectionOutline, type Point } from './hull-shape';
export { packNames, type Packed, type ToPack } from './pack-labels';
export { ratesView } from './rates';
export { roundText, shownNumber, printed } from './number-text';
export { wholeDollars, wholeDollarTable } from './whole-dollars';
export { type Measures } from './measures';
