import { upperFirst } from '../base';
import { dayOf, isoOf, type DayNumber } from '../calendar';
import { daysWords, type ScheduleActivity, type ScheduledActivity } from '../scheduling';
import { grantEnd, sinkingDay, type Evaluation } from '../evaluation';
import type { ItemRelationship } from '../work';
import type { EstimateContext } from './context';
import { groupBy, indexBy } from './index-of';
import { people } from './people';
import { chartSpan, dateWords, timeAxis } from './schedule-axis';
import { shades } from './schedule-shades';
import { activityTable, calendarTable, closureTable } from './schedule-tables';
import type { Sentence } from './rows';
import type { ScheduleBar, ScheduleLane, ScheduleMark, ScheduleView } from './window-rows';
import { holdingSaid, sunkWords } from './dates-said';

const PARTS: Readonly<Record<string, ScheduleLane['part']>> = {
  tanks: 'tanks',
  machinery: 'machinery',
  house: 'house',
  holds: 'hull',
  'weather-deck': 'house',
  'hull-outside': 'hull',
  'whole-ship': 'whole',
};

/** The dates of a plan that the present one is compared with, by activity. */
export type EarlierPlan = ReadonlyMap<string, { readonly start: string; readonly finish: string }>;
const NO_PLAN: EarlierPlan = new Map();

/** The dates of the activities of an estimate, to compare a later plan with. */
export function planOf({ estimate }: Evaluation): EarlierPlan {
  return new Map(
    (estimate?.schedule.activities ?? []).map(({ id, start, finish }) => [id, { start, finish }]),
  );
}

/** The schedule in time, by place; undefined when there is none. */
export function scheduleView(
  context: EstimateContext,
  earlier: EarlierPlan = NO_PLAN,
): ScheduleView | undefined {
  const { start, finish, workDays, activities } = context.parts.schedule;
  if (start === undefined || finish === undefined || workDays === undefined) return undefined;
  const lanes = lanesOf(context, earlier);
  const marks = marksOf(context, finish);
  const span = chartSpan(dayOf(start), Math.max(dayOf(finish), ...marks.map(mark => mark.at)));
  return {
    sentence: sentence(context, finish, workDays),
    ...span,
    ...timeAxis(span.from, span.to),
    lanes,
    shades: shades(context, span, lanes),
    marks,
    ...people(context),
    table: activityTable(context),
    calendar: calendarTable(context),
    closures: closureTable(context),
    words: `The work in time from ${dateWords(start)} to ${dateWords(finish)}, ${activities.length} activities in ${lanes.length} places. The table beside it tells the same.`,
  };
}

function sentence({ parts, evaluation }: EstimateContext, lastDay: string, workDays: number): Sentence {
  const { activities } = parts.schedule;
  const sunk = sinkingDay(evaluation);
  const last = activities.find(one => one.id === parts.schedule.criticalChain.at(-1));
  const { deadline } = evaluation.project.calendars;
  const holding = activities.filter(one => one.critical).length;
  return [
    ...sunkWords(sunk),
    sunk === undefined ? 'All is done by ' : ' All is done by ',
    { text: dateWords(lastDay), why: 'schedule:finish' },
    last === undefined ? '' : `, when ${last.title} ends`,
    deadline === undefined
      ? `; ${holding === 1 ? '1 activity holds' : `${holding} activities hold`} it.`
      : `, ${besideLastDate(dayOf(deadline) - dayOf(lastDay))}.`,
    ' There is work on ',
    { text: String(workDays), why: 'schedule:work-days' },
    ' days.',
  ];
}

/** How long before or after the last date so many calendar days to spare are. */
function besideLastDate(spare: number): string {
  return `${daysWords(Math.abs(spare), 'day')} ${spare < 0 ? 'after' : 'before'} the last date`;
}

function lanesOf(context: EstimateContext, earlier: EarlierPlan): readonly ScheduleLane[] {
  const { parts, evaluation } = context;
  const places = new Map(parts.items.map(item => [item.id, item.place]));
  return evaluation.library.places.flatMap((place): ScheduleLane[] => {
    const bars = parts.schedule.activities.filter(
      activity => places.get(activity.id) === place.id && activity.workDays > 0,
    );
    if (bars.length === 0) return [];
    const part = PARTS[place.id] ?? (place.kind === 'ship' ? 'whole' : place.kind);
    return [
      {
        id: place.id,
        title: place.title,
        part,
        bars: bars.map(activity => ({
          ...bar(context, activity),
          ...earlierOf(earlier, activity),
        })),
      },
    ];
  });
}

/** Where an activity stood in the earlier plan, when it stood elsewhere. */
function earlierOf(earlier: EarlierPlan, activity: ScheduledActivity): Pick<ScheduleBar, 'earlier'> {
  const before = earlier.get(activity.id);
  if (before === undefined || (before.start === activity.start && before.finish === activity.finish))
    return {};
  return { earlier: { from: dayOf(before.start), to: dayOf(before.finish) + 1 } };
}

const scheduledById = indexBy((activity: ScheduledActivity) => activity.id);
const problemById = indexBy((activity: ScheduleActivity) => activity.id);
const relationshipsTo = groupBy((relationship: ItemRelationship) => relationship.to);

/** The day an activity’s relationships alone would let it start, when something else holds it. */
function couldStart({ parts }: EstimateContext, activity: ScheduledActivity): DayNumber {
  const scheduled = scheduledById(parts.schedule.activities);
  const before = relationshipsTo(parts.relationships).get(activity.id) ?? [];
  const ready = before.flatMap(({ kind, from }) => {
    const finish = kind === 'FS' ? scheduled.get(from)?.finish : undefined;
    return finish === undefined ? [] : [dayOf(finish) + 1];
  });
  const start = dayOf(activity.start);
  return ready.length === 0 ? start : Math.min(start, Math.max(...ready));
}

function heldBy(activity: ScheduledActivity): string | undefined {
  const first = activity.heldBy[0];
  if (first === undefined) return undefined;
  if ('activities' in first) return first.activities[0];
  if ('activity' in first) return first.activity;
  return first.kind === 'relationship' ? first.from : undefined;
}

function bar(context: EstimateContext, activity: ScheduledActivity): ScheduleBar {
  const { parts } = context;
  const first = activity.heldBy[0];
  const held = first === undefined ? 'nothing holds it' : holdingSaid(parts.problem, first);
  const ready = couldStart(context, activity);
  const start = dayOf(activity.start);
  const isWaiting = problemById(parts.problem.activities).get(activity.id)?.waiting === true;
  const holder = heldBy(activity);
  const float = activity.critical
    ? 'It holds the finish.'
    : `It may slip ${daysWords(activity.totalFloat, 'work-day')}.`;
  return {
    id: activity.id,
    title: activity.title,
    from: start,
    to: dayOf(activity.finish) + 1,
    kind: isWaiting ? 'waiting' : activity.critical ? 'held' : 'float',
    holds: `${upperFirst(held)}.`,
    ...(holder === undefined ? {} : { heldBy: holder }),
    couldStart: ready,
    couldStartWords:
      ready < start ? `Could start ${shortDate(ready)}.` : `Starts ${dateWords(activity.start)}.`,
    words: `${activity.title}: ${dateWords(activity.start)} to ${dateWords(activity.finish)}, ${daysWords(activity.workDays, 'work-day')}. ${upperFirst(held)}. ${float}`,
    why: `activity:${activity.id}`,
  };
}

function shortDate(day: DayNumber): string {
  return dateWords(isoOf(day)).replace(/ \d{4}$/, '');
}

/** A grant that ends later after the work than so many days would only make the chart narrow. */
const SHOWN_BEYOND = 200;

function marksOf({ evaluation: { project } }: EstimateContext, finish: string): readonly ScheduleMark[] {
  const marks: ScheduleMark[] = [
    { at: dayOf(finish) + 1, title: 'Finish', date: dateWords(finish), kind: 'finish' },
  ];
  const deadline = project.calendars.deadline;
  if (deadline !== undefined)
    marks.push({
      at: dayOf(deadline) + 1,
      title: 'Last date',
      date: dateWords(deadline),
      kind: 'last-date',
    });
  const end = grantEnd({ project });
  if (end !== undefined && end !== deadline && dayOf(end) - dayOf(finish) < SHOWN_BEYOND)
    marks.push({ at: dayOf(end) + 1, title: 'Grant ends', date: dateWords(end), kind: 'grant-end' });
  if (project.statusDate !== undefined)
    marks.push({
      at: dayOf(project.statusDate),
      title: 'Status',
      date: dateWords(project.statusDate),
      kind: 'status',
    });
  return marks;
}
