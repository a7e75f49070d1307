export { crewPlanJson, levelledJson } from './json';
export { levelledPlan, type LevelledPlan, type LevellingAsk, type Moved, type NoPlan } from './levelling';
export { type CrewPlanAnswer } from './plan-answer';
export { type CrewPlanPoint } from './plan-point';
export { crewPlanStudy, type CrewPlanAsk, type CrewPlanProgress } from './plan-study';
export { type CrewsUsed, type CrewUse } from './use';
