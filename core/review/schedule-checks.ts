import { inHundred } from '../units';
import { limitOf } from './data';
import { breakOfCriticalChain, looseEnds } from './logic';
import type { ReviewActivity, ReviewRelationship, ReviewSchedule } from './input';
import {
  cannotTell,
  judge,
  met,
  notMet,
  type Assessment,
  type CheckContext,
  type Checks,
  type Fault,
} from './standing';
import { brokenRelationships, brokenStages } from './trace';

/** Checks of the schedule. @source GAO-16-89G, ten practices in our own words. */
export const SCHEDULE_CHECKS: Checks<
  | 'activities'
  | 'sequence'
  | 'resources'
  | 'durations'
  | 'traceable'
  | 'critical-path'
  | 'float'
  | 'schedule-risk'
  | 'progress'
  | 'baseline'
> = {
  activities: withSchedule((schedule, { input }) => {
    const covered = new Set(schedule.activities.flatMap(activity => activity.lineIds));
    const open = input.lines.filter(line => !covered.has(line.id));
    return judge(
      open.map(line => ({ id: line.id, evidence: `no activity covers ${line.title}` })),
      input.lines.length,
      'every line is covered by an activity',
    );
  }),
  sequence: withSchedule(schedule => {
    const fixed = schedule.activities.filter(one => one.fixedDate !== undefined && isBlank(one.reason));
    const faults: Fault[] = [
      ...looseEnds(schedule),
      ...schedule.relationships.flatMap(lagFault),
      ...fixed.map(one => ({ id: one.id, evidence: `${one.title} has a fixed date and no reason for it` })),
    ];
    return judge(faults, schedule.activities.length, 'every activity hangs on others at both ends');
  }),
  resources: overActivities(
    activity => activity.hours > 0 && isBlank(activity.crew),
    activity => `${activity.title} has ${activity.hours} hours and no crew`,
    'every activity with hours has a crew',
  ),
  durations: withSchedule((schedule, { data }) => {
    const longest = limitOf(data, 'longest-activity');
    return overThese(
      schedule,
      one => one.kind === 'activity' && one.workDays > longest && isBlank(one.reason),
      one => `${one.title} takes ${one.workDays} work days`,
      `no activity is longer than ${longest} work days without a reason`,
    );
  }),
  traceable: withSchedule(schedule =>
    judge(
      [...brokenRelationships(schedule), ...brokenStages(schedule)],
      schedule.relationships.length + schedule.stageDates.length,
      'the dates follow from the relationships and add up to the stages',
    ),
  ),
  'critical-path': withSchedule(schedule => {
    const broken = breakOfCriticalChain(schedule);
    return broken === undefined
      ? met('one unbroken chain leads from the start to the finish')
      : { ...notMet(broken.evidence), ids: [broken.id] };
  }),
  float: withSchedule((schedule, { data }) => {
    const largest = limitOf(data, 'largest-float');
    return overThese(
      schedule,
      one =>
        one.totalFloat < 0 || (one.totalFloat > largest && one.kind !== 'hammock' && isBlank(one.reason)),
      one => `${one.title} has ${one.totalFloat} work days of total float`,
      `total float is between 0 and ${largest} work days`,
    );
  }),
  'schedule-risk': withSchedule((_schedule, { input }) =>
    input.chanceOfFinish === undefined
      ? notMet('the schedule was not simulated')
      : met(`the planned finish is held in ${inHundred(input.chanceOfFinish)} of 100 runs`),
  ),
  progress: withSchedule((schedule, { input }) => {
    const { statusDate } = input;
    if (statusDate === undefined) return cannotTell('no status date is given');
    return overThese(
      schedule,
      one =>
        (one.finish < statusDate && one.actualFinish === undefined) ||
        (one.start < statusDate && one.actualStart === undefined),
      one => `${one.title} lies before the status date ${statusDate} and has no actual date`,
      `all work before ${statusDate} has its actual dates`,
    );
  }),
  baseline: withSchedule(schedule =>
    schedule.baseline
      ? met(`the plan of ${schedule.baseline.keptOn} is kept, finish ${schedule.baseline.finish}`)
      : notMet('no approved plan is kept'),
  ),
};

function withSchedule(check: (schedule: ReviewSchedule, context: CheckContext) => Assessment) {
  return (context: CheckContext): Assessment => {
    const { schedule } = context.input;
    return schedule && schedule.activities.length > 0
      ? check(schedule, context)
      : cannotTell('there is no schedule');
  };
}

function overActivities(
  breaks: (activity: ReviewActivity) => boolean,
  says: (activity: ReviewActivity) => string,
  ground: string,
) {
  return withSchedule(schedule => overThese(schedule, breaks, says, ground));
}

function overThese(
  { activities }: ReviewSchedule,
  breaks: (activity: ReviewActivity) => boolean,
  says: (activity: ReviewActivity) => string,
  ground: string,
): Assessment {
  const faults = activities.filter(breaks).map(one => ({ id: one.id, evidence: says(one) }));
  return judge(faults, activities.length, ground);
}

function lagFault(relationship: ReviewRelationship): Fault[] {
  const name = `${relationship.from} to ${relationship.to}`;
  if (relationship.lag < 0)
    return [{ id: relationship.to, evidence: `${name} has a lead of ${-relationship.lag} work days` }];
  if (relationship.lag > 0 && isBlank(relationship.reason))
    return [
      { id: relationship.to, evidence: `${name} has a lag of ${relationship.lag} work days and no reason` },
    ];
  return [];
}

function isBlank(text: string | undefined): boolean {
  return text === undefined || text.trim() === '';
}
