export * from './rows';
export * from './window-rows';
export type * from './sinking-rows';
export { deckBreadth, planOutline, profileOutline, sectionOutline, type Point } from './hull-shape';
export { packNames, type Packed, type ToPack } from './pack-labels';
export { readTyped, type Typed } from './typed';
export type { Missing, StillMissing } from './still-missing';
export type { Whys } from './simulated';
export { ratesView } from './rates';
export { roundText, shownNumber, printed } from './number-text';
export { wholeDollars, wholeDollarTable } from './whole-dollars';
export { type Measures } from './measures';
export {
  WINDOW_VIEWS,
  windowRows,
  unscreenedHead,
  windowParts,
  type WindowAnswer,
  type WindowHead,
  type WindowParts,
  type WindowViewName,
} from './window';
export { settlingLine } from './bottom';
export type { BottomAmounts } from './bottom';
export type { FoundOfGrant } from './open-findings';
export { grantFindings, hasGrant } from './funding/grant-findings';
export { WhyDesk } from './why';
export { planOf, type EarlierPlan } from './schedule';
export { isOpenedName, type OpenedName, type OpenedRows } from './opened';
export type * from './materials/rows';
export type * from './benefit/rows';
export type * from './funding/rows';
export type * from './bid/rows';
export type * from './review/rows';
export type { ScenariosView } from './scenarios';
export { importView, type ImportAsk, type ImportView } from './import-view';
export type * from './risk/rows';
export type * from './compare/rows';
export type * from './decision/rows';
export { riskRows, type RiskStudy } from './risk/view';
export { compareRows, type CompareStudy } from './compare/view';
export { decisionRows } from './decision/view';
export { choiceRows, type ChoiceRows } from './choice-rows';
export type * from './crews/rows';
export { crewAnswer, LEAST_QUESTION, LEVEL_QUESTION } from './crews/levelling';
export { crewPlanRows, PLAN_QUESTION } from './crews/plans';
export { unitWords } from '../units';
