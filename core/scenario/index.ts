/** Scenarios side by side: what each costs and takes, and what separates them, to the cent. */
export { averagedSteps, type Changed } from './averaged-steps';
export { differenceBridge, type Bridge, type BridgeStep } from './bridge';
export { compareScenarios, comparisonJson, type Comparison } from './comparison';
export { GROUPS, GROUP_TITLES, type GroupKey } from './groups';
