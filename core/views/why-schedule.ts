import { BASES, withId } from '../base';
import { isoOf } from '../calendar';
import { daysWords, type ScheduledActivity } from '../scheduling';
import { stageTitle } from '../estimate';
import { STAGES } from '../work';
import { ABSENT, type EstimateContext } from './context';
import { shownNumber } from './number-text';
import type { Shown, WhyRow, WhyRows } from './rows';
import { dateWords } from './schedule-axis';
import { timedHours, timedHoursName } from './timed';
import { largestFirst, sumOf } from './why-sums';
import { holdingSaid } from './dates-said';

function frame(
  id: string,
  title: string,
  text: string,
  words: string,
  rows: readonly WhyRow[],
  unit = '',
): WhyRows {
  return { id, title, path: 'Schedule', value: { text, unit }, words, rows, usedBy: [], bases: BASES };
}

function row(text: string, words: string, why?: string, operator = ''): WhyRow {
  return { depth: 0, operator, value: { text, ...(why === undefined ? {} : { why }) }, words };
}

/** When an activity is, why it is not earlier, and what its length comes from. */
function activityWhy(context: EstimateContext, id: string): WhyRows | undefined {
  const { parts } = context;
  const activity = parts.schedule.activities.find(one => one.id === id);
  if (activity === undefined) return undefined;
  const holds = activity.heldBy.map(holding =>
    row('', holdingSaid(parts.problem, holding), holderOf(activity, holding)),
  );
  const rows = [
    row(String(activity.workDays), 'work days from start to finish', `worked/${id}/days`, '='),
    ...(activity.crewSize > 0
      ? [row(String(activity.crewSize), 'people at work', `worked/${id}/crews`)]
      : []),
    row(String(activity.totalFloat), 'work days it may slip before the finish moves'),
    ...holds,
  ];
  const kept = rows.map(one =>
    one.value.why !== undefined && !isKnown(context, one.value.why)
      ? { ...one, value: { text: one.value.text } }
      : one,
  );
  const words = activity.critical
    ? 'It holds the finish: it has no float.'
    : 'It does not hold the finish: it has float.';
  const found = frame(
    `activity:${id}`,
    activity.title,
    `${dateWords(activity.start)} to ${dateWords(activity.finish)}`,
    words,
    kept,
  );
  return {
    ...found,
    home: 'schedule',
    usedBy: parts.relationships
      .filter(one => one.from === id)
      .slice(0, 6)
      .map(one => ({
        why: `activity:${one.to}`,
        title: withId(parts.items, one.to).title,
        view: 'Schedule',
      })),
  };
}

function holderOf(
  activity: ScheduledActivity,
  holding: ScheduledActivity['heldBy'][number],
): string | undefined {
  if ('activities' in holding)
    return holding.activities[0] === undefined ? undefined : `activity:${holding.activities[0]}`;
  if ('activity' in holding) return `activity:${holding.activity}`;
  return holding.kind === 'relationship' && holding.from !== activity.id
    ? `activity:${holding.from}`
    : undefined;
}

function isKnown({ parts }: EstimateContext, why: string): boolean {
  return why.startsWith('activity:') || parts.work.result.has(why) || parts.money?.result.has(why) === true;
}

/** The finish and the work days: the chain that holds them, last first. */
function finishWhy(context: EstimateContext, key: string): WhyRows | undefined {
  const { schedule } = context.parts;
  const { finish, workDays } = schedule;
  if (finish === undefined || workDays === undefined) return undefined;
  const chain = schedule.criticalChain
    .toReversed()
    .slice(0, 40)
    .map(id => {
      const activity = withId(schedule.activities, id);
      const spare = activity.critical ? '' : `, may slip ${daysWords(activity.totalFloat, 'work-day')}`;
      return row(dateWords(activity.finish), `${activity.title}${spare}`, `activity:${id}`);
    });
  const bound =
    schedule.lowerBoundDays === undefined || schedule.calendarDays === undefined
      ? ''
      : ` No plan of this work takes fewer than ${schedule.lowerBoundDays} calendar days; this one takes ${schedule.calendarDays}.`;
  return key === 'finish'
    ? frame(
        'schedule:finish',
        'Finish',
        dateWords(finish),
        `The last day of the chain of activities that leads to it, last first. What may slip ends before something else, such as a window, lets the next begin.${bound}`,
        chain,
      )
    : frame(
        'schedule:work-days',
        'Work days',
        String(workDays),
        `Days from start to finish on which at least one activity works: not those on which all wait or rest. Float is counted by the calendar of its activity and may be more.${bound}`,
        chain,
        'work days',
      );
}

function peopleWhy(context: EstimateContext, rest: string): WhyRows | undefined {
  const date = isoOf(Number(rest));
  const here = context.parts.schedule.activities.filter(
    one => one.crewSize > 0 && one.start <= date && one.finish >= date,
  );
  const count = here.reduce((sum, one) => sum + one.crewSize, 0);
  const rows = here.map((one, at) =>
    row(String(one.crewSize), one.title, `activity:${one.id}`, at === 0 ? '=' : '+'),
  );
  return frame(
    `people:${rest}`,
    `People at work on ${dateWords(date)}`,
    String(count),
    'The sum of the crews of the activities at work that day.',
    rows.length === 0 ? [row('0', 'no activity with a crew is at work that day')] : rows,
    'people',
  );
}

function hoursWhy(context: EstimateContext, rest: string): WhyRows {
  const items = context.parts.items.filter(item => rest === 'all' || item.stage === rest);
  const hours = items
    .map(item => ({ item, value: timedHours(context, item) }))
    .filter(one => one.value !== 0)
    .toSorted((a, b) => largestFirst(a.value, b.value));
  const sum = sumOf(hours.map(one => one.value));
  const rows = hours.map(({ item, value }, place): WhyRow => ({
    depth: 0,
    operator: place === 0 ? '=' : '+',
    value: { ...hoursText(value), why: timedHoursName(context, item) },
    words: item.title,
  }));
  const stage = STAGES.find(one => one === rest);
  return {
    ...frame(
      `hours:${rest}`,
      stage === undefined ? 'Hours of all work' : `Hours, ${stageTitle(stage)}`,
      '',
      'The sum of the paid hours of the work items.',
      rows,
    ),
    value: sum === undefined ? ABSENT : { ...hoursText(sum), unit: 'h' },
    path: 'Work, hours',
  };
}

function hoursText(hours: number | undefined): Shown {
  return hours === undefined ? ABSENT : { text: shownNumber(hours.toFixed(3), 1) };
}

/** The derivation of a figure of the schedule or of the hours; undefined when it is neither. */
export function scheduleWhy(context: EstimateContext, id: string): WhyRows | undefined {
  const colon = id.indexOf(':');
  const [kind, rest] = [id.slice(0, colon), id.slice(colon + 1)];
  if (kind === 'activity') return activityWhy(context, rest);
  if (kind === 'schedule') return finishWhy(context, rest);
  if (kind === 'people') return peopleWhy(context, rest);
  return kind === 'hours' ? hoursWhy(context, rest) : undefined;
}
