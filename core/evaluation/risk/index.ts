export { awardChance, type AwardChance } from './award-room';
export { riskJson } from './risk-json';
export {
  grantEnd,
  riskView,
  type FinishView,
  type GrowthComparison,
  type RegisterRow,
  type RiskView,
  type WhatIfs,
} from './risk-view';
export { prepareRisk, type PreparedEstimate, type RiskChoices } from './prepare';
export {
  contingencyOf,
  simulatedContingency,
  type PolicyContingency,
  type SimulatedContingency,
} from './policy-contingency';
export { riskFile, shippedRisk, type RiskFile } from './risk-file';
export { evaluatedWithRuns } from './evaluated-with-runs';
export { riskRun, whatIfs, type RiskProgress, type RiskRun, type RiskRunChoices } from './risk-run';
export { rangedGivens, type RangedGiven } from './ranged-givens';
