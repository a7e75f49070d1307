/** Scenarios side by side: what each costs and takes, what separates them to the cent, and which to choose. */
export { averagedSteps, type Changed } from './averaged-steps';
export { differenceBridge, type Bridge, type BridgeStep } from './bridge';
export { compareScenarios, comparisonJson, decisionOf, pairedRisks, type Comparison } from './comparison';
export { CRITERION_TITLES, USUAL_WEIGHTS, criterionTitle, criterionValue, type Reading } from './criteria';
export {
  decisionTable,
  scoreIn,
  type DecisionTable,
  type ScoredScenario,
  type WeightRange,
} from './decision-table';
export {
  comparedWords,
  dominanceWords,
  listed,
  notComparedWords,
  turnedByWorseWords,
} from './decision-words';
export { differenceTable, type ComparedValue, type DifferenceRow } from './difference-table';
export { GROUPS, GROUP_TITLES, type GroupKey } from './groups';
export { factsOf, pairedRisk, riskFacts, type PairedRisk, type RiskFacts } from './risk-facts';
export { riskStep, type RiskStep } from './risk-step';
export { isPermittable, summaryOf } from './totals';
