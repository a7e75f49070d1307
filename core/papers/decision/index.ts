export { decisionAbout, type Decision } from './decision';
export type { AfterSinkingCost } from './after-sinking';
export type { OtherChoice } from './alternatives';
export { inAllWords } from './county-money';
export type { CountyMoney, FiscalYearAmount } from './county-money';
export type { Recommendation } from './recommendation';
export type { Trouble } from './troubles';
