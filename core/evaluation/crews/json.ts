import type { JsonObject } from '../json';
import type { LevelledPlan, NoPlan } from './levelling';
import type { CrewPlanAnswer } from './plan-answer';
import type { CrewPlanPoint } from './plan-point';

/** The crews before and after as the command line prints them. */
export function levelledJson(plan: LevelledPlan | NoPlan): JsonObject {
  if ('earliest' in plan) return { isPossible: false, earliest: plan.earliest };
  const { schedule, kind: _kind, ...rest } = plan;
  return {
    isPossible: true,
    ...rest,
    start: schedule.start,
    finish: schedule.finish,
    workDays: schedule.workDays,
    activities: schedule.activities.map(({ id, title, start, finish, crewSize }) => ({
      id,
      title,
      start,
      finish,
      crew: crewSize,
    })),
  };
}

/** The crew plans as the command line prints them: the curve, the earliest finish first. */
export function crewPlanJson(answer: CrewPlanAnswer): JsonObject {
  const { curve, best, present, earliest, frontier, ...rest } = answer;
  const point = (one: CrewPlanPoint) => ({
    ...one,
    isBest: one.id === best?.id,
    onFrontier: frontier.includes(one.id),
  });
  return {
    ...rest,
    curve: curve.map(point),
    ...(best === undefined ? {} : { best: point(best) }),
    ...(present === undefined ? {} : { present: point(present) }),
    ...(earliest === undefined ? {} : { earliest: point(earliest) }),
  };
}
