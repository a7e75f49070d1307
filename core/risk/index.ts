/** How sure an estimate is: ranges, drivers, events and weather, simulated through cost and schedule. */
export {
  distributionFindings,
  isCollapsed,
  lognormalFromP10P90,
  meanOf,
  modeOf,
  quantile,
  samplerOf,
  varianceOf,
  type Distribution,
  type DistributionKind,
} from './distributions';
export type {
  ChunkDates,
  ChunkScheduler,
  Mitigation,
  MoneyBatch,
  MoneyColumns,
  PlanFigures,
  PreparedRun,
  RankCorrelation,
  RegisterEvent,
  RiskDriver,
  StartGate,
  TrialScheduler,
  UncertainInput,
  WeatherModel,
  WeatherOperation,
  WorkabilitySeries,
  WorkBatch,
} from './prepared';
export { chunkCount, TRIALS_PER_CHUNK, type TrialPlan } from './latin-hypercube';
export { drain, drainOnWorkers, simulate, type Watch } from './simulate';
export { adjustedRuns, COMPARED_TRIALS, simulation, type SimulationOptions, type Waves } from './simulation';
export { trialRunner, type ChunkJob, type ChunkResult, type TrialRunner } from './trial-runner';
export { joinChunks, type Trials } from './trials';
export { AS_IT_IS, type Adjustment } from './adjustment';
export type { DrivingShare, SimulationResult, Spread } from './result';
export type { DriverRow } from './drivers';
export { intervalRanks, orderStatistic, percentile, shareUpTo, sorted, type Percentile } from './percentiles';
export { momentsOf, type Moments } from './moments';
export { isSureEnough, type StopRule } from './stop-rule';
export { jointConfidence, jointSentence } from './joint';
export { frontier, type FrontierPoint } from './frontier';
export { sCurve, type SCurvePoint } from './s-curve';
export {
  chanceOfMissing,
  equalChanceLine,
  evenlySafe,
  jointView,
  type JointView,
  type SafePoint,
} from './chances';
export { planGap, type GapPart, type PlanGap } from './plan-gap';
export { contingencyAt, type Contingency } from './contingency';
export {
  contingencyBy,
  GRANT_CONTINGENCY_NOTE,
  policyOf,
  type ContingencyPolicy,
  type PolicyChoice,
} from './contingency-policy';
export { difference, mitigationValues, type MitigationValue } from './mitigation-value';
export { surveyValues, type SurveyValue } from './survey-value';
export { coverageFindings } from './coverage';
export { DEFAULT_RANGES, distributionOf, type DefaultRange, type RangeGiven } from './ranges';
export { amongPastProjects, COST_GROWTH, type CostGrowth } from './history';
export { expectedWait, type AwaitedWindow } from './expected-wait';
export { workableDays, type WorkableDay } from './weather-days';
export { firstWindow } from './weather-window';
