export type {
  CapacityChange,
  CrewMode,
  DayUnit,
  Exclusion,
  Hammock,
  RelationshipKind,
  ScheduleActivity,
  ScheduleProblem,
  ScheduleRelationship,
  ScheduleResource,
  Zone,
  ZoneState,
} from './model';
export type {
  ConflictSet,
  Holding,
  ResourcePeak,
  ResourceProfile,
  ScheduledActivity,
  ScheduledHammock,
  ScheduleResult,
  ScheduleStatus,
  ZoneStatePeriod,
} from './result';
export { checkProblem } from './check/check-problem';
export { verifySchedule } from './verify/verify-schedule';
export { schedule, scheduleInSteps, type ScheduleOptions } from './schedule';
export { usualSchedules } from './usual-schedules';
export { daysWords, holdingWords, relationshipWords } from './words';
export {
  levelSchedule,
  levellingSteps,
  type LevelledSchedule,
  type LevellingOptions,
  type LevelProgress,
  type Uses,
} from './level/level-schedule';
export {
  LEVELLING_OBJECTIVES,
  sumOfSquares,
  unitsHired,
  type LevellingKind,
  type Use,
} from './level/objective';
export { leastCrew, leastCrewSteps, type LeastCrew, type LeastCrewOptions } from './level/least-crew';
export { searchCrewPlan } from './crew-plan/crew-plan';
export { CostCurve, type CurvePoint } from './crew-plan/cost-curve';
export { fasterPlans, type FasterPlan, type FasterPlansOptions } from './crew-plan/faster-plans';
export type {
  CrewPlan,
  CrewPlanOptions,
  CrewPlanResult,
  PricedPlan,
  ShiftChoice,
  TimedPlan,
} from './crew-plan/plan';
export { compareBaseline, type BaselineChange, type BaselineComparison } from './baseline';
export { trialScheduler, type TrialOptions, type TrialScheduler } from './trial-scheduler';
export { chainScheduler, type ChainScheduler, type ChainTrials } from './chains/chain-scheduler';
export type { Gate } from './chains/chain-pass';
