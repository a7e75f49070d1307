import { dayOf } from '../../calendar';
import type { Evaluation, LevelledPlan, NoPlan } from '../../evaluation';
import { aligned, NOT_APPLYING, words } from '../cells';
import { dollars } from '../number-text';
import { peopleAtWork, peopleTicks } from '../people';
import type { Column, Row, TableRows, WhyRow } from '../rows';
import { chartSpan, dateWords, timeAxis } from '../schedule-axis';
import { Derivations, step, type Origin } from '../simulated';
import type { CrewAnswer, CrewPicture } from './rows';

export const LEVEL_QUESTION = 'Can the crews be evened out without a later finish?';
export const LEAST_QUESTION = 'How few crews keep the finish?';

/** A question about the crews with its answer: before and after, what it saves, and what that rests on. */
export function crewAnswer(
  evaluation: Evaluation,
  question: string,
  plan: LevelledPlan | NoPlan | undefined,
): CrewAnswer {
  if (plan === undefined)
    return { question, answer: ['There is no schedule with prices to plan crews for.'] };
  if ('earliest' in plan)
    return { question, answer: [`No: the earliest finish is ${dateWords(plan.earliest)}.`] };
  const told = new Derivations(`crews-${plan.kind}`);
  return {
    question,
    answer: told.sentence('answer', answerOf(plan), HERE, savedWords(plan), moneySteps(plan)),
    picture: pictureOf(evaluation, plan),
    crews: told.table(crewTable(plan), crewOrigin(plan)),
    moved: told.table(movedTable(plan), MOVED_ORIGIN),
    basis: plan.basis,
    whys: told.whys,
  };
}

const HERE = { path: 'Schedule, crews', home: 'schedule' };
const savedWords = ({ basis }: LevelledPlan) =>
  `Hiring and releasing before less after: ${basis} The total of the estimate is worked out with both schedules.`;

function moneySteps({ before, after, totalBefore, totalAfter }: LevelledPlan): readonly WhyRow[] {
  // Only the estimate as it stands has sheets to open: that of the schedule that was found is worked out beside it.
  const totals = [
    { total: totalBefore, said: 'total of the estimate before', why: 'sums/total' },
    { total: totalAfter, said: 'total of the estimate after' },
  ];
  return [
    step({ text: dollarsOf(before.cost) }, `hiring and releasing before: ${before.hired} crews hired`, '='),
    step({ text: dollarsOf(after.cost) }, `hiring and releasing after: ${after.hired} crews hired`, '−'),
    ...totals.flatMap(({ total, said, ...opens }) =>
      total === undefined ? [] : [step({ text: dollarsOf(total), ...opens }, said)],
    ),
  ];
}

const CREW_WORDS: Readonly<Record<string, string>> = {
  peak: 'The most crews of this kind that are at work on one day of the schedule as it stands.',
  peakAfter: 'The most crews of this kind that are at work on one day of the schedule that was found.',
  hired:
    'Counted each time more crews are at work than on the work day before, in the schedule as it stands.',
  hiredAfter:
    'Counted each time more crews are at work than on the work day before, in the schedule that was found.',
};

/** What the crews rest on: the dates before and after, which keep every limit of people and places. */
function crewOrigin({ kind, by, moved, before, after }: LevelledPlan): Origin {
  return {
    ...HERE,
    words: ({ key }) => CREW_WORDS[key],
    steps: ({ key }) => {
      const isAfter = key.endsWith('After');
      const { hired } = isAfter ? after : before;
      return [
        ...(isAfter ? [step({ text: String(moved.length) }, 'activities start on another day')] : []),
        ...(isAfter && kind === 'least-crew' && by !== undefined
          ? [step({ text: dateWords(by) }, 'the last day that was asked for')]
          : []),
        step({ text: String(hired) }, 'crews of all kinds hired'),
      ];
    },
  };
}

const MOVED_ORIGIN: Origin = {
  ...HERE,
  words: () => 'The start after less the start before, in calendar days; earlier is below zero.',
  steps: (_, row) => [
    step(row.cells['to'] ?? NOT_APPLYING, 'start after', '='),
    step({ ...(row.cells['from'] ?? NOT_APPLYING), why: `activity:${row.id}` }, 'start before', '−'),
  ],
};

function answerOf(plan: LevelledPlan): string {
  const { before, after, saved, peopleBefore, peopleAfter, moved, schedule } = plan;
  if (moved.length === 0) return 'No better arrangement was found: the crews stay as they are.';
  const money = saved >= 0 ? `saves ${dollarsOf(saved)}` : `costs ${dollarsOf(-saved)} more`;
  const estimate =
    plan.totalBefore === undefined || plan.totalAfter === undefined
      ? ''
      : ` ${totalWords(plan.totalAfter - plan.totalBefore)}`;
  return `${before.hired} crews hired become ${after.hired}, at most ${peopleBefore} people at once become ${peopleAfter}, and the finish is ${dateWords(schedule.finish ?? '')}: in hiring and releasing that ${money}.${estimate} ${moved.length} activities start on another day.`;
}

/** What the other dates do to the estimate itself. */
function totalWords(change: number): string {
  if (Math.abs(change) < 0.5) return 'The total of the estimate stays.';
  const way = change > 0 ? 'higher' : 'lower';
  return `The total of the estimate would be ${dollarsOf(Math.abs(change))} ${way} with these dates.`;
}

function dollarsOf(amount: number): string {
  return dollars(Math.round(amount * 100));
}

function pictureOf({ estimate }: Evaluation, { schedule }: LevelledPlan): CrewPicture {
  const before = peopleAtWork(estimate?.schedule ?? schedule, () => false);
  const after = peopleAtWork(schedule, () => false);
  const steps = [...before, ...after];
  const span = chartSpan(Math.min(...steps.map(step => step.from)), Math.max(...steps.map(step => step.to)));
  return {
    ...span,
    months: timeAxis(span.from, span.to).months.filter(month => month.isQuarter),
    ticks: peopleTicks(Math.max(1, ...steps.map(step => step.all))),
    before,
    after,
    words: 'People at work over time, before and after. The tables beside it tell the crews and the dates.',
  };
}

const CREW_COLUMNS: readonly Column[] = [
  { key: 'title', title: 'Crew', kind: 'words' },
  { key: 'peak', title: 'Most at once', unit: 'crews', kind: 'number' },
  { key: 'peakAfter', title: 'after', unit: 'crews', kind: 'number' },
  { key: 'hired', title: 'Hired', unit: 'crews', kind: 'number' },
  { key: 'hiredAfter', title: 'after', unit: 'crews', kind: 'number' },
];

function crewTable({ before, after }: LevelledPlan): TableRows {
  const rows = before.crews.map(({ crew, title, peak, hired }): Row => {
    const now = after.crews.find(one => one.crew === crew);
    return {
      id: crew,
      kind: 'line',
      cells: {
        title: words(title),
        peak: words(String(peak)),
        peakAfter: now === undefined ? NOT_APPLYING : words(String(now.peak)),
        hired: words(String(hired)),
        hiredAfter: now === undefined ? NOT_APPLYING : words(String(now.hired)),
      },
    };
  });
  return {
    id: 'crews-before-after',
    caption: 'Crews before and after',
    columns: CREW_COLUMNS,
    rows: aligned(CREW_COLUMNS, rows),
  };
}

const MOVED_COLUMNS: readonly Column[] = [
  { key: 'title', title: 'Activity', kind: 'words' },
  { key: 'from', title: 'Start', kind: 'words' },
  { key: 'to', title: 'after', kind: 'words' },
  { key: 'days', title: 'Moved', unit: 'calendar days', kind: 'number' },
];

function movedTable({ moved }: LevelledPlan): TableRows {
  const rows = moved.map(({ id, title, from, to }): Row => ({
    id,
    kind: 'line',
    cells: {
      title: words(title),
      from: words(dateWords(from)),
      to: words(dateWords(to)),
      days: words(String(dayOf(to) - dayOf(from)).replace('-', '−')),
    },
  }));
  return {
    id: 'crews-moved',
    caption: 'Activities that start on another day',
    columns: MOVED_COLUMNS,
    rows: aligned(MOVED_COLUMNS, rows),
  };
}
