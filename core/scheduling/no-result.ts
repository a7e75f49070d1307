import type { Finding } from '../base';
import type { ConflictSet, ScheduleResult, ScheduleStatus } from './result';

/** The answer when there is no schedule: why, and no dates. */
export function noResult(
  status: Extract<ScheduleStatus, 'infeasible' | 'not-found' | 'invalid'>,
  schedules: number,
  findings: readonly Finding[],
  infeasible?: readonly ConflictSet[],
): ScheduleResult {
  return {
    status,
    schedules,
    activities: [],
    hammocks: [],
    resourcePeaks: {},
    profiles: {},
    zoneStates: [],
    peakCrew: 0,
    criticalChain: [],
    ...(infeasible ? { infeasible } : {}),
    findings,
  };
}

/** The findings that tell of conflicts. */
export function conflictFindings(conflicts: readonly ConflictSet[]): Finding[] {
  return conflicts.map(conflict => ({
    code: 'schedule/infeasible',
    weight: 'blocks',
    place: conflict.activities[0] === undefined ? '/activities' : `/activities/${conflict.activities[0]}`,
    message: conflict.sentence,
    meaning: 'No schedule keeps all of these together, so there are no dates.',
    remedy: 'Give way in one of them: a date, a duration, a crew, a window or a relationship.',
  }));
}
