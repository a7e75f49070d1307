export { riskJson } from './risk-json';
export { prepareRisk, type PreparedEstimate, type RiskChoices } from './prepare';
export { riskFile, shippedRisk, type RiskFile } from './risk-file';
export { rangedGivens, type RangedGiven } from './ranged-givens';
