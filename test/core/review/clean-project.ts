import fc from 'fast-check';
import { dayOf, isoOf } from '../../../core/calendar';
import { STAGES, sumCents } from '../../../core/cash-flow';
import type {
  ReviewActivity,
  ReviewInput,
  ReviewLine,
  ReviewRelationship,
  ReviewSchedule,
} from '../../../core/review';

/** CPI factors to 2025 of the price years of the past hulls. */
const PRICE_FACTORS = {
  1987: 2.833,
  2000: 1.87,
  2006: 1.597,
  2007: 1.5527,
  2009: 1.5006,
  2013: 1.382,
  2016: 1.3414,
  2022: 1.1001,
};

/** A project before its sums are taken, so that a planted fault keeps everything else right. */
export interface Draft extends Omit<
  ReviewInput,
  'total' | 'contingency' | 'earlier' | 'independent' | 'schedule'
> {
  readonly schedule: Omit<ReviewSchedule, 'stageDates'>;
  readonly totalOffset: number;
  readonly contingencyShare: number;
  readonly change: readonly number[];
}

/** The project with totals, contingency, steps and stage dates that follow from the draft. */
export function derive(draft: Draft): ReviewInput {
  const { totalOffset, contingencyShare, change, schedule, ...rest } = draft;
  const total = sumCents(draft.lines.map(line => line.total)) + totalOffset;
  const steps = change.map((amount, index) => ({ title: `step ${index + 1}`, amount }));
  return {
    ...rest,
    total,
    contingency: Math.round(total * contingencyShare),
    earlier: { total: total - sumCents(change), steps },
    independent: { total: Math.round(total * 1.06) },
    schedule: { ...schedule, stageDates: stageDates(schedule.activities) },
  };
}

function stageDates(activities: readonly ReviewActivity[]): ReviewSchedule['stageDates'] {
  return STAGES.flatMap(stage => {
    const own = activities.filter(one => one.stage === stage && one.kind !== 'hammock');
    const [start, finish] = [
      own.map(one => one.start).sort()[0],
      own
        .map(one => one.finish)
        .sort()
        .at(-1),
    ];
    return start === undefined || finish === undefined ? [] : [{ stage, start, finish }];
  });
}

interface Numbers {
  readonly amounts: readonly number[];
  readonly durations: readonly number[];
  readonly floats: readonly number[];
  readonly statusAfter: number;
  readonly age: number;
  readonly length: number;
  readonly contingencyShare: number;
  readonly budgetPercentile: number;
}

/** A clean random project: two lines and two activities a stage, one critical chain, everything in order. */
export const cleanDraft: fc.Arbitrary<Draft> = fc
  .record({
    amounts: fc.array(fc.integer({ min: 300_000_00, max: 700_000_00 }), { minLength: 24, maxLength: 24 }),
    durations: fc.array(fc.integer({ min: 12, max: 44 }), { minLength: 12, maxLength: 12 }),
    floats: fc.array(fc.integer({ min: 1, max: 10 }), { minLength: 12, maxLength: 12 }),
    statusAfter: fc.integer({ min: 5, max: 200 }),
    age: fc.integer({ min: 0, max: 300 }),
    length: fc.integer({ min: 420, max: 620 }),
    contingencyShare: fc.integer({ min: 33, max: 70 }).map(per => per / 100),
    budgetPercentile: fc.integer({ min: 70, max: 100 }),
  })
  .map(draftOf);

function draftOf(numbers: Numbers): Draft {
  const lines = linesOf(numbers);
  const schedule = scheduleOf(numbers, lines);
  const statusDate = isoOf(dayOf(schedule.start) + numbers.statusAfter);
  return {
    lines: lines.map(line => ({
      ...line,
      firstMonth: schedule.start.slice(0, 7),
      lastMonth: schedule.finish.slice(0, 7),
    })),
    totalOffset: 0,
    contingencyShare: numbers.contingencyShare,
    change: [12_345, -678_900],
    priceYear: 2025,
    isEscalated: true,
    excludedStages: [],
    definition: ['length', 'built', 'tank soundings', 'coating date'].map(title => ({
      title,
      isKnown: true,
    })),
    schedule: { ...schedule, activities: schedule.activities.map(one => withActuals(one, statusDate)) },
    approval: { by: 'county engineer', on: '2026-11-02' },
    drivers: ['cable', 'tank cleaning', 'tow', 'berth'],
    planPercentile: 43,
    chanceOfFinish: 0.6,
    budgetPercentile: numbers.budgetPercentile,
    costAtP80: 9_000_000_00,
    lessons: ['the first tank took twice the hours'],
    madeOn: isoOf(dayOf(statusDate) - numbers.age),
    statusDate,
    hull: { hullClass: 'naval auxiliary (instrument ship)', lengthFeet: numbers.length },
    priceFactors: PRICE_FACTORS,
  };
}

const BIG = 1_500_000_00;
const SMALL = 50_000_00;

function linesOf({ amounts }: Numbers): ReviewLine[] {
  const drafts = amounts.map((total, index) => ({ total, index }));
  return drafts.map(({ total, index }) => {
    const amount = index === 0 ? BIG : index === amounts.length - 1 ? SMALL : total;
    const isWeak = index === amounts.length - 1;
    const isQuoted = !isWeak && index % 3 === 0;
    const line: ReviewLine = {
      id: `L${index}`,
      stage: STAGES[Math.floor(index / 2)] ?? 'management',
      title: `work ${index}`,
      total: amount,
      elementSum: amount,
      hours: 100,
      basis: isWeak ? 'judgement' : isQuoted ? 'quoted' : 'surveyed',
      source: 'invented for the test',
      isRanged: true,
      priceYear: index % 2 ? 2025 : 2023,
      isNormalised: true,
      isCrossChecked: true,
    };
    return {
      ...line,
      ...(!isQuoted && { workings: '10 at 5' }),
      ...(isWeak && { assumption: 'as the last ship' }),
    };
  });
}

function scheduleOf({ durations, floats }: Numbers, lines: readonly ReviewLine[]): Draft['schedule'] {
  const start = '2027-01-04';
  const activities: ReviewActivity[] = [milestone('begin', STAGES[0], start)];
  const relationships: ReviewRelationship[] = [];
  let day = dayOf(start);
  let before = ['begin'];
  STAGES.forEach((stage, index) => {
    const [duration, float] = [durations[index] ?? 12, floats[index] ?? 1];
    const own = lines.filter(line => line.stage === stage).map(line => line.id);
    const base = { stage, kind: 'activity' as const, hours: 80, crew: 'cleaners', start: isoOf(day) };
    const chain = `A${index}`;
    const side = `B${index}`;
    activities.push(
      {
        ...base,
        id: chain,
        title: chain,
        lineIds: own.slice(0, 1),
        workDays: duration,
        finish: isoOf(day + duration),
        totalFloat: 0,
        isCritical: true,
      },
      {
        ...base,
        id: side,
        title: side,
        lineIds: own.slice(1),
        workDays: duration - float,
        finish: isoOf(day + duration - float),
        totalFloat: float,
        isCritical: false,
      },
    );
    for (const from of before)
      for (const to of [chain, side]) relationships.push({ from, to, kind: 'FS', lag: 0 });
    before = [chain, side];
    day += duration;
  });
  const finish = isoOf(day);
  activities.push(milestone('end', 'management', finish));
  for (const from of before) relationships.push({ from, to: 'end', kind: 'FS', lag: 0 });
  const hammock = {
    ...milestone('site', 'management', start),
    kind: 'hammock' as const,
    finish,
    workDays: 300,
    isCritical: false,
  };
  activities.push(hammock);
  return {
    activities,
    relationships,
    resourceLinks: [],
    start,
    finish,
    baseline: { finish, keptOn: '2026-12-01' },
  };
}

function milestone(id: string, stage: ReviewActivity['stage'], on: string): ReviewActivity {
  return {
    id,
    title: id,
    stage,
    lineIds: [],
    kind: 'milestone',
    workDays: 0,
    start: on,
    finish: on,
    totalFloat: 0,
    isCritical: true,
    hours: 0,
  };
}

function withActuals(one: ReviewActivity, statusDate: string): ReviewActivity {
  return {
    ...one,
    ...(one.start < statusDate && { actualStart: one.start }),
    ...(one.finish < statusDate && { actualFinish: one.finish }),
  };
}
