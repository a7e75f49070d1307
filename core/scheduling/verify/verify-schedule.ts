import type { Finding } from '../../base';
import type { ScheduleProblem } from '../model';
import type { ScheduleResult } from '../result';
import { checkDays } from './check-days';
import { checkRelationships } from './check-relationships';
import { checkResources } from './check-resources';
import { checkSums } from './check-sums';
import { checkZones } from './check-zones';
import { factsOf } from './facts';

/**
 * Checks a schedule against its problem day by day, from the raw problem alone: it shares no code with the
 * scheduler and none with the calendars. An answer without dates has nothing to check.
 * @returns one finding for every rule broken; none for a schedule that keeps them all.
 */
export function verifySchedule(problem: ScheduleProblem, result: ScheduleResult): Finding[] {
  if (result.status !== 'optimal' && result.status !== 'feasible') return [];
  const facts = factsOf(problem, result);
  return [
    ...checkDays(facts),
    ...checkRelationships(facts),
    ...checkResources(facts),
    ...checkZones(facts),
    ...checkSums(facts),
  ];
}
