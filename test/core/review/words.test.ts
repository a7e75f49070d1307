import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { BASES, recordOf } from '../../../core/base';
import { STAGES } from '../../../core/cash-flow';
import {
  estimateClass,
  growthView,
  likeHulls,
  readGrowthData,
  readReviewData,
  review,
  reviewFindings,
  type GrowthData,
  type ReviewActivity,
  type ReviewInput,
  type ReviewLine,
  type ReviewRelationship,
  type ReviewSchedule,
} from '../../../core/review';

const DATA = readReviewData(JSON.parse(readFileSync('templates/review.json', 'utf8')));
const GROWTH = readGrowthData(JSON.parse(readFileSync('templates/growth.json', 'utf8')));

const TOW: ReviewLine = {
  id: 'tow',
  stage: 'tow',
  title: 'Tow',
  total: 600_000_00,
  elementSum: 600_000_00,
  hours: 0,
  basis: 'quoted',
  source: 'invented for the test',
  isRanged: true,
  priceYear: 2025,
  isNormalised: false,
  isCrossChecked: true,
};
const CLEANING: ReviewLine = {
  ...TOW,
  id: 'cleaning',
  stage: 'clean-up',
  title: 'Cleaning',
  total: 400_000_00,
};
const LINES = [TOW, { ...CLEANING, elementSum: CLEANING.total }];

const activity = (
  id: string,
  start: string,
  finish: string,
  rest: Partial<ReviewActivity> = {},
): ReviewActivity => ({
  ...{ id, title: `${id} work`, stage: 'tow', lineIds: [], kind: 'activity', workDays: 5, start, finish },
  ...{ totalFloat: 0, isCritical: true, hours: 0, ...rest },
});
const follows = (from: string, to: string, rest: Partial<ReviewRelationship> = {}): ReviewRelationship => ({
  ...{ from, to, kind: 'FS', lag: 0, ...rest },
});
const ACTIVITIES = [
  activity('a', '2027-01-04', '2027-01-08', { lineIds: ['cleaning'], stage: 'clean-up' }),
  activity('b', '2027-01-11', '2027-02-12', { lineIds: ['tow'] }),
];
const SCHEDULE: ReviewSchedule = {
  activities: ACTIVITIES,
  relationships: [follows('a', 'b')],
  resourceLinks: [],
  start: '2027-01-04',
  finish: '2027-02-12',
  stageDates: [
    { stage: 'clean-up', start: '2027-01-04', finish: '2027-01-08' },
    { stage: 'tow', start: '2027-01-11', finish: '2027-02-12' },
  ],
};
const INPUT: ReviewInput = {
  lines: LINES,
  total: 1_000_000_00,
  priceYear: 2025,
  isEscalated: true,
  excludedStages: [],
  definition: [],
  lessons: [],
  madeOn: '2026-01-01',
  hull: { hullClass: 'ferry' },
  priceFactors: {},
  schedule: SCHEDULE,
};

/** Standing, evidence and ids of one practice. */
function told(practiceId: string, change: Partial<ReviewInput>) {
  const row = review({ ...INPUT, ...change }, DATA, GROWTH).find(one => one.practiceId === practiceId);
  return [row?.standing, row?.evidence, row?.ids];
}
const line = (change: Partial<ReviewLine>) => ({ lines: [{ ...TOW, ...change }, LINES[1] ?? TOW] });
const schedule = (change: Partial<ReviewSchedule>) => ({ schedule: { ...SCHEDULE, ...change } });
const activities = (change: Partial<ReviewActivity>) =>
  schedule({
    activities: [{ ...activity('a', '2027-01-04', '2027-01-08'), ...change }, ...ACTIVITIES.slice(1)],
  });

describe('what the checks of the estimate say', () => {
  it.each<[string, Partial<ReviewInput>, string, string, string[]?]>([
    ['whole-life', { excludedStages: STAGES }, 'met', 'every stage has a line or is left out in writing'],
    [
      'whole-life',
      { lines: [], excludedStages: STAGES.slice(1) },
      'partly',
      `the stage ${STAGES[0]} has no line`,
      [STAGES[0]],
    ],
    ['baseline-defined', {}, 'cannot tell', 'no list of particulars and papers was kept'],
    [
      'baseline-defined',
      { definition: [{ title: 'Length', isKnown: true }] },
      'met',
      'all 1 particulars and papers are known',
    ],
    [
      'baseline-defined',
      { definition: [{ title: 'Length', isKnown: false }] },
      'not met',
      'unknown: Length',
      ['Length'],
    ],
    ['structure', {}, 'met', 'no line stands twice'],
    [
      'structure',
      { lines: [TOW, { ...TOW, id: 'again', title: ' tOW ' }] },
      'partly',
      ' tOW  stands twice in tow',
      ['again'],
    ],
    [
      'structure',
      {
        lines: [
          { ...TOW, title: 'Tow ' },
          { ...TOW, id: 'again' },
        ],
      },
      'partly',
      'Tow stands twice in tow',
      ['again'],
    ],
    ['assumptions', {}, 'met', 'every unchecked figure names its assumption'],
    [
      'assumptions',
      line({ basis: 'judgement', assumption: ' ' }),
      'partly',
      'Tow has the basis “judgement” and names no assumption',
      ['tow'],
    ],
    ['sources', {}, 'met', 'every line names its source'],
    ['sources', line({ source: ' ' }), 'partly', 'Tow names no source', ['tow']],
    ['repeatable', {}, 'met', 'every line has quantity and rate, or a quote'],
    [
      'repeatable',
      line({ basis: 'surveyed' }),
      'partly',
      'Tow is a lump sum of $600,000.00 and no quote',
      ['tow'],
    ],
    ['baseline-agrees', {}, 'met', 'all money falls between Jan 2027 and Feb 2027'],
    [
      'baseline-agrees',
      line({ firstMonth: '2027-01', lastMonth: '2033-04', followsFinish: true }),
      'met',
      'the money runs from Jan 2027 to Apr 2033; what comes after the schedule, which ends in Feb 2027, is owed after the sinking',
    ],
    [
      'baseline-agrees',
      line({ firstMonth: '2027-01', lastMonth: '2027-02' }),
      'met',
      'all money falls between Jan 2027 and Feb 2027',
    ],
    [
      'baseline-agrees',
      line({ lastMonth: '2027-03' }),
      'partly',
      'Tow is spent from Jan 2027 to Mar 2027, outside the schedule',
      ['tow'],
    ],
    [
      'baseline-agrees',
      line({ firstMonth: '2026-12' }),
      'partly',
      'Tow is spent from Dec 2026 to Feb 2027, outside the schedule',
      ['tow'],
    ],
    [
      'approval',
      { approval: { by: ' ', on: '2026-02-01' } },
      'not met',
      'nobody is named who reviewed and agreed',
    ],
    [
      'best-method',
      line({ basis: 'judgement' }),
      'partly',
      'Tow, $600,000.00, has the basis “judgement”',
      ['tow'],
    ],
    [
      'best-method',
      line({ basis: 'judgement', total: 50_000_00 }),
      'partly',
      'Tow, $50,000.00, has the basis “judgement”',
      ['tow'],
    ],
    [
      'best-method',
      line({ basis: 'judgement', total: 49_999_99 }),
      'met',
      'no big line rests on an unchecked figure',
    ],
    ['inflation', {}, 'met', 'prices of 2025, carried to the month of spending'],
    [
      'inflation',
      line({ priceYear: 2023, isNormalised: true }),
      'met',
      'prices of 2025, carried to the month of spending',
    ],
    [
      'inflation',
      line({ priceYear: 2023 }),
      'partly',
      'Tow is in prices of 2023, the estimate in prices of 2025',
      ['tow'],
    ],
    ['arithmetic', {}, 'met', 'every line and the total add up to the cent'],
    [
      'arithmetic',
      line({ elementSum: 599_999_99 }),
      'partly',
      'the elements of Tow add up to $599,999.99, not $600,000.00',
      ['tow'],
    ],
    [
      'arithmetic',
      { total: 1_000_000_01 },
      'partly',
      'the lines add up to $1,000,000.00, not $1,000,000.01',
      ['total'],
    ],
    ['refreshed', { statusDate: '2027-01-31' }, 'met', 'the estimate is 12 months old'],
    ['refreshed', { statusDate: '2027-02-01' }, 'not met', 'the estimate is 13 months old'],
    ['sensitivity', { drivers: ['tow', 'berth', 'cable'] }, 'met', '3 drivers are ranked'],
    ['sensitivity', { drivers: ['tow', 'berth'] }, 'partly', '2 drivers are ranked'],
    [
      'uncertainty',
      { planPercentile: 0.47000000000000003 },
      'met',
      'every line has a range; the plan figure is fewer than 1 in 100',
    ],
    ['uncertainty', { planPercentile: 43 }, 'met', 'every line has a range; the plan figure is 43 in 100'],
    [
      'uncertainty',
      { planPercentile: 43, ...line({ isRanged: false }) },
      'partly',
      'Tow has no range around its amount',
      ['tow'],
    ],
    [
      'cross-checks',
      line({ isCrossChecked: false }),
      'partly',
      'Tow, $600,000.00, is not checked a second way',
      ['tow'],
    ],
    [
      'independent',
      { independent: { total: 1_100_000_00 } },
      'met',
      'an independent estimate of $1,100,000.00 is 10.0 per cent off',
    ],
    [
      'independent',
      { independent: { total: 880_000_00 } },
      'partly',
      'an independent estimate of $880,000.00 is 12.0 per cent off, and the difference is not explained',
    ],
    [
      'lessons',
      activities({ actualFinish: '2027-01-08' }),
      'not met',
      '1 activities are finished, and nothing is written down for the next estimate',
    ],
    [
      'lessons',
      { ...activities({ actualFinish: '2027-01-08' }), lessons: ['ask first', 'look twice'] },
      'met',
      'lessons written down: ask first; look twice',
    ],
    [
      'lessons',
      { lessons: ['ask first'] },
      'met',
      'no work is finished yet, so there is nothing to learn from',
    ],
    ...(
      [
        [70, 'met'],
        [69.9, 'partly'],
        [50, 'partly'],
        [49.9, 'not met'],
      ] as const
    ).map(([budgetPercentile, standing]): [string, Partial<ReviewInput>, string, string] => [
      'contingency-level',
      { contingency: 10_000_00, budgetPercentile, costAtP80: 900_000_00 },
      standing,
      `the estimate with its contingency of $10,000.00 holds in ${Math.floor(budgetPercentile)} of 100 runs; 80 in 100 need a contingency of $0.00`,
    ]),
    [
      'contingency-growth',
      { contingency: 90_000_00 },
      'not met',
      'the budget is 1.09 times the estimate; past hulls grew by 0.84 to 1.66, the middle is 1.32',
    ],
    [
      'contingency-growth',
      { contingency: 100_000_00 },
      'partly',
      'the budget is 1.10 times the estimate; past hulls grew by 0.84 to 1.66, the middle is 1.32',
    ],
    ['history', {}, 'cannot tell', 'no past hull of like class and length is on record'],
  ])('%s with %j is %s', (practice, change, standing, evidence, ids = []) => {
    expect(told(practice, change)).toEqual([standing, [evidence], ids]);
  });

  it('holds the total between half the least and twice the greatest of the past hulls alike', () => {
    // 180 ft: $110,000 and half of $1,685,000, at a factor of one.
    const alike = { hull: { hullClass: 'tug', lengthFeet: 180 }, priceFactors: { 2016: 1, 2022: 1 } };
    const named =
      'small freighter, 2016: $110,000.00; research vessels (pair: 180 and 178 ft), 2022: $842,500.00';
    const at = (total: number) => told('history', { ...alike, total }).slice(0, 2);
    const years = /, \d{4}: /g;
    const words = (row: ReturnType<typeof at>) => JSON.stringify(row).replace(years, ', year: ');
    // The dearer of the two costs 7.7 times the cheaper: nearly any estimate lies between.
    for (const total of [55_000_00, 1_685_000_00]) expect(at(total)[0]).toBe('cannot tell');
    expect(words(at(55_000_00))).toContain(
      `$55,000.00 lies between $55,000.00 and $1,685,000.00, which is too wide to tell much (${named.replace(years, ', year: ')})`,
    );
    const cheapest = { ...alike, priceFactors: { 2016: 1 }, total: 220_000_00 };
    expect(words(told('history', cheapest).slice(0, 2))).toBe(
      JSON.stringify(['met', ['$220,000.00 beside small freighter, year: $110,000.00']]),
    );
    expect(words(at(54_999_99))).toBe(
      JSON.stringify([
        'not met',
        [`$54,999.99 is far below the past hulls alike (${named.replace(years, ', year: ')})`],
      ]),
    );
    expect(words(at(1_685_000_01))).toContain('$1,685,000.01 is far above the past hulls alike');
  });
});

describe('what the checks of the schedule say', () => {
  it.each<[string, Partial<ReviewInput>, string, string, string[]?]>([
    ['activities', {}, 'met', 'every line is covered by an activity'],
    ['activities', activities({ lineIds: [] }), 'partly', 'no activity covers Cleaning', ['cleaning']],
    ['activities', schedule({ activities: [] }), 'cannot tell', 'there is no schedule'],
    ['sequence', {}, 'met', 'every activity hangs on others at both ends'],
    [
      'sequence',
      schedule({
        activities: [...ACTIVITIES, activity('c', '2027-01-05', '2027-02-12')],
        relationships: [follows('a', 'b'), follows('c', 'b')],
      }),
      'partly',
      'the start of c work hangs on nothing',
      ['c'],
    ],
    [
      'sequence',
      schedule({
        activities: [...ACTIVITIES, activity('c', '2027-01-05', '2027-02-11')],
        relationships: [follows('a', 'b'), follows('a', 'c', { kind: 'SS' })],
      }),
      'partly',
      'nothing hangs on the finish of c work',
      ['c'],
    ],
    [
      'sequence',
      schedule({
        activities: [...ACTIVITIES, activity('c', '2027-01-05', '2027-02-11')],
        relationships: [
          follows('a', 'b'),
          follows('a', 'c', { kind: 'SS' }),
          follows('c', 'b', { kind: 'FF' }),
        ],
      }),
      'met',
      'every activity hangs on others at both ends',
    ],
    [
      'sequence',
      activities({ fixedDate: '2027-01-04', reason: ' ' }),
      'partly',
      'a work has a fixed date and no reason for it',
      ['a'],
    ],
    [
      'sequence',
      activities({ fixedDate: '2027-01-04', reason: 'Berth' }),
      'met',
      'every activity hangs on others at both ends',
    ],
    [
      'sequence',
      schedule({ relationships: [follows('a', 'b', { lag: -2 })] }),
      'partly',
      'a to b has a lead of 2 work days',
      ['b'],
    ],
    [
      'sequence',
      schedule({ relationships: [follows('a', 'b', { lag: 3 })] }),
      'partly',
      'a to b has a lag of 3 work days and no reason',
      ['b'],
    ],
    ['resources', {}, 'met', 'every activity with hours has a crew'],
    ['resources', activities({ hours: 8 }), 'partly', 'a work has 8 hours and no crew', ['a']],
    ['resources', activities({ hours: 8, crew: 'cleaners' }), 'met', 'every activity with hours has a crew'],
    [
      'durations',
      activities({ workDays: 44 }),
      'met',
      'no activity is longer than 44 work days without a reason',
    ],
    [
      'durations',
      activities({ workDays: 45, kind: 'hammock' }),
      'met',
      'no activity is longer than 44 work days without a reason',
    ],
    [
      'durations',
      activities({ workDays: 45, reason: 'One crew' }),
      'met',
      'no activity is longer than 44 work days without a reason',
    ],
    ['durations', activities({ workDays: 45 }), 'partly', 'a work takes 45 work days', ['a']],
    ['traceable', {}, 'met', 'the dates follow from the relationships and add up to the stages'],
    [
      'traceable',
      schedule({ relationships: [follows('b', 'a')] }),
      'partly',
      'a work does not wait for b work (FS, 2027-02-12 is after 2027-01-04)',
      ['a'],
    ],
    [
      'traceable',
      schedule({ relationships: [follows('b', 'a', { lag: -30 })] }),
      'met',
      'the dates follow from the relationships and add up to the stages',
    ],
    [
      'traceable',
      schedule({ relationships: [follows('gone', 'a')] }),
      'partly',
      'a relationship names gone and a, of which one is not there',
      ['a'],
    ],
    [
      'traceable',
      schedule({ stageDates: [{ stage: 'tow', start: '2027-01-11', finish: '2027-02-13' }] }),
      'partly',
      'the stage tow runs 2027-01-11 to 2027-02-13, its activities 2027-01-11 to 2027-02-12',
      ['tow'],
    ],
    [
      'traceable',
      schedule({ stageDates: [{ stage: 'sinking', start: '2027-01-11', finish: '2027-02-13' }] }),
      'met',
      'the dates follow from the relationships and add up to the stages',
    ],
    ['critical-path', {}, 'met', 'one unbroken chain leads from the start to the finish'],
    [
      'critical-path',
      schedule({ relationships: [] }),
      'not met',
      'the activities without float form no unbroken chain: what comes before b work has float or is a date',
      ['b'],
    ],
    [
      'critical-path',
      schedule({ finish: '2027-03-01' }),
      'not met',
      'no critical activity ends on 2027-03-01',
      ['finish'],
    ],
    ['float', activities({ totalFloat: 66 }), 'met', 'total float is between 0 and 66 work days'],
    ['float', activities({ totalFloat: 67 }), 'partly', 'a work has 67 work days of total float', ['a']],
    [
      'float',
      activities({ totalFloat: 67, kind: 'hammock' }),
      'met',
      'total float is between 0 and 66 work days',
    ],
    [
      'float',
      activities({ totalFloat: -1, reason: 'Late' }),
      'partly',
      'a work has -1 work days of total float',
      ['a'],
    ],
    ['schedule-risk', {}, 'not met', 'the schedule was not simulated'],
    [
      'schedule-risk',
      { chanceOfFinish: 0.004 },
      'met',
      'the planned finish is held in fewer than 1 of 100 runs',
    ],
    ['schedule-risk', { chanceOfFinish: 0.616 }, 'met', 'the planned finish is held in 62 of 100 runs'],
    ['progress', { statusDate: '2027-01-04' }, 'met', 'all work before 2027-01-04 has its actual dates'],
    [
      'progress',
      { statusDate: '2027-01-05' },
      'partly',
      'a work lies before the status date 2027-01-05 and has no actual date',
      ['a'],
    ],
    [
      'progress',
      { statusDate: '2027-01-09', ...activities({ actualStart: '2027-01-04' }) },
      'partly',
      'a work lies before the status date 2027-01-09 and has no actual date',
      ['a'],
    ],
    ['baseline', {}, 'not met', 'no approved plan is kept'],
    [
      'baseline',
      schedule({ baseline: { finish: '2027-02-12', keptOn: '2026-12-01' } }),
      'met',
      'the plan of 2026-12-01 is kept, finish 2027-02-12',
    ],
  ])('%s with %j is %s', (practice, change, standing, evidence, ids = []) => {
    expect(told(practice, change)).toEqual([standing, [evidence], ids]);
  });

  it('tells every fault in one finding, under the title of its guide', () => {
    const rows = review({ ...INPUT, lines: LINES.map(one => ({ ...one, source: '' })) }, DATA, GROWTH);
    const [finding] = reviewFindings(rows.filter(({ practiceId }) => practiceId === 'sources'));
    const practice = DATA.practices.find(({ id }) => id === 'sources');
    expect(finding).toEqual({
      code: 'review/sources',
      weight: 'warns',
      place: '/review/sources',
      message: 'Tow names no source; Cleaning names no source',
      meaning: `Good practice asks for more: ${practice?.practice ?? ''}`,
      remedy: practice?.remedy,
      rule: 'Cost Estimating and Assessment Guide, GAO-20-195G, practices in our own words',
    });
    expect(() => review(INPUT, { ...DATA, guides: DATA.guides.slice(1) }, GROWTH)).toThrow('the key cost');
  });
});

describe('recorded growth, past hulls and classes at their edges', () => {
  it('asks for nothing of an estimate of nothing, and takes the greatest factor where no hull grew', () => {
    const [one] = GROWTH.growth;
    const factors = (...list: string[]): GrowthData => ({
      ...GROWTH,
      growth: list.flatMap(factor => (one === undefined ? [] : [{ ...one, factor }])),
    });
    expect(growthView(0, 500, GROWTH)).toMatchObject({ factor: 1, leastGrowth: 1.1, atMost: 0 });
    expect(growthView(1000, 0, factors('0.9', '1', '0.95'))).toMatchObject({ leastGrowth: 1, median: 0.95 });
  });

  it('leaves out hulls of unknown length, of part of the work, in other money, and of a year without an index', () => {
    const [first] = GROWTH.history.filter(({ id }) => id === 'h10');
    if (first === undefined) throw new Error('the small freighter is on record');
    const kept = { ...first, id: 'kept', hullClass: 'tug', lengthFeet: 130 };
    const history = [
      kept,
      { ...kept, id: 'far', lengthFeet: 131 },
      { ...kept, id: 'unmeasured', lengthFeet: null },
      { ...kept, id: 'part', isWholeProject: false },
      { ...kept, id: 'pounds', currency: 'GBP' },
      { ...kept, id: 'year', priceYear: 2017 },
      { ...kept, id: 'other', hullClass: 'barge' },
    ];
    const found = (hullClass: string) =>
      likeHulls(
        { hull: { hullClass, lengthFeet: 100 }, priceFactors: { 2016: 1.5 } },
        { ...GROWTH, history },
        0.3,
      );
    expect(found('tug')).toEqual([
      {
        ...{ id: 'kept', hullClass: 'tug', lengthFeet: 130, sunkYear: first.sunkYear, today: 165_000_00 },
        ...{ scope: first.scope, source: first.source },
      },
    ]);
    expect(found('yacht').map(({ id }) => id)).toEqual(['kept', 'other']);
  });

  it('stays in the strongest class when credits leave more than the whole surveyed', () => {
    const nothing = recordOf(BASES, () => 0);
    expect(estimateClass({ ...nothing, surveyed: 120, judgement: -20 }, DATA)).toMatchObject({
      estimateClass: 1,
      share: 1.2,
    });
  });
});
