import { describe, expect, it, test } from 'vitest';
import { BugError } from '../../../core/base';
import { dayOf } from '../../../core/calendar';
import { bottomChanges } from '../../../core/views/bottom';
import { tenths } from '../../../core/views/budget';
import { aligned } from '../../../core/views/cells';
import { homeOf, rowsOfFindings } from '../../../core/views/finding-rows';
import { deckBreadth, planOutline, profileOutline, sectionOutline } from '../../../core/views/hull-shape';
import {
  decimalsFor,
  dollarChange,
  dollars,
  padsOf,
  roundText,
  shortNumber,
  shownNumber,
  textOf,
} from '../../../core/views/number-text';
import { peopleAtWork, peopleTicks } from '../../../core/views/people';
import { moneyTicks, monthTicks } from '../../../core/views/risk/axis';
import { chartSpan, dateWords, timeAxis } from '../../../core/views/schedule-axis';
import { roundedDollars, wholeDollars, wholeDollarTable } from '../../../core/views/whole-dollars';

describe('a number as it is printed', () => {
  test.each([
    ['1234', 0, '1,234'],
    ['0', 0, '0'],
    ['456', 0, '456'],
    ['456.0', 0, '456'],
    ['456.25', 1, '456.3'],
    ['45.6', 1, '45.6'],
    ['10', 1, '10'],
    ['2.35', 2, '2.35'],
    ['1', 2, '1'],
    ['-2.5', 2, '−2.5'],
    ['0.5', 3, '0.5'],
    ['0.1', 3, '0.1'],
    ['0.046', 4, '0.046'],
    ['0.00004', 4, '0'],
    ['1000.4', 0, '1,000'],
  ])('%s has %d decimals of meaning and is short %s', (text, decimals, short) => {
    expect([decimalsFor(text), shortNumber(text)]).toEqual([decimals, short]);
  });

  test.each([
    [255_774_700, '$2,557,747', '+$2,557,747'],
    [50, '$1', '+$1'],
    [49, '$0', 'no change'],
    [0, '$0', 'no change'],
    [-49, '$0', 'no change'],
    [-150, '−$2', '−$2'],
    [-250_000, '−$2,500', '−$2,500'],
  ])('%d cents are %s, and as a change %s', (cents, amount, change) => {
    expect([dollars(cents), dollarChange(cents)]).toEqual([amount, change]);
  });

  it('is rounded as text, and what is no number is a fault of the program', () => {
    expect([roundText('.5', 0), roundText('', 1), roundText('-0.04', 1), shownNumber('-1234.55', 1)]).toEqual(
      ['1', '0.0', '0.0', '−1,234.6'],
    );
    expect([textOf(2.345, 2), textOf(-0.0004, 2), textOf(1e15, 18)]).toEqual([
      '2.35',
      '0.00',
      `1000000000000000.${'0'.repeat(18)}`,
    ]);
    expect(() => textOf(Number.NaN, 1)).toThrow(new BugError('NaN cannot be shown'));
    expect(() => roundText('1e3', 1)).toThrow(new BugError('"1e3" is not plain decimal text'));
  });

  it('stands in its column with its point under those of the others', () => {
    expect(padsOf(['12', '3.5', '7.25', '–', '1.250', ''])).toEqual(['.000', '00', '0', '', '', '']);
    expect(padsOf([])).toEqual([]);
    const columns = [
      { key: 'title', title: 'Title', kind: 'words' },
      { key: 'amount', title: 'Amount', kind: 'number' },
      { key: 'share', title: 'Share', kind: 'share' },
    ] as const;
    const row = (id: string, amount: string, share?: string) => ({
      id,
      kind: 'line' as const,
      cells: {
        title: { text: '1' },
        amount: { text: amount },
        ...(share === undefined ? {} : { share: { text: share } }),
      },
    });
    expect(aligned(columns, [row('a', '1.5', '3'), row('b', '20')]).map(({ cells }) => cells)).toEqual([
      { title: { text: '1' }, amount: { text: '1.5' }, share: { text: '3' } },
      { title: { text: '1' }, amount: { text: '20', pad: '.0' } },
    ]);
  });
});

describe('whole dollars', () => {
  test.each([
    [[150, 150], undefined, [2, 1]],
    [[149, 151], undefined, [1, 2]],
    [[199, -50], undefined, [2, -1]],
    [[100, 100], 3, [1, 1]],
    [[140, 130, 130], 4, [2, 1, 1]],
    [[130, 140, 130], 3, [1, 1, 1]],
    [[], undefined, []],
  ])('%j cents that add up to %s are %j', (cents, total, shown) => {
    expect(wholeDollars(cents, total)).toEqual(shown);
  });
  it('are rounded half away from zero, and nothing is never minus nothing', () => {
    expect([-150, -149, -50, 49, 50, 150].map(roundedDollars)).toEqual([-2, -1, -1, 0, 1, 2]);
    expect(Object.is(roundedDollars(-49), 0)).toBe(true);
  });
  it('of a table add up by column and by row', () => {
    expect(
      wholeDollarTable([
        [150, 120],
        [150, 130],
      ]),
    ).toEqual({
      cells: [
        [2, 1],
        [1, 2],
      ],
      columnTotals: [3, 3],
      rowTotals: [3, 3],
      total: 6,
    });
    // $1.50 and $1.50, $0.50 and $0.50: both columns come to $2, the rows to $3 and $1.
    expect(
      wholeDollarTable([
        [150, 150],
        [50, 50],
      ]),
    ).toEqual({
      cells: [
        [1, 2],
        [1, 0],
      ],
      columnTotals: [2, 2],
      rowTotals: [3, 1],
      total: 4,
    });
    // $10.50 and $20.50 of one, $3.50 and $3.50 of another, shown elsewhere as $14 and $24: $31 and $7 in all.
    const split = wholeDollarTable(
      [
        [1050, 2050],
        [350, 350],
      ],
      [14, 24],
    );
    expect([split.cells, split.rowTotals]).toEqual([
      [
        [10, 21],
        [4, 3],
      ],
      [31, 7],
    ]);
    expect(wholeDollarTable([])).toEqual({ cells: [], columnTotals: [], rowTotals: [], total: 0 });
  });
  test.each([
    [
      [1, 1, 1],
      ['33.4', '33.3', '33.3'],
    ],
    [
      [201, -1],
      ['100.5', '−0.5'],
    ],
    [
      [3, -1],
      ['150.0', '−50.0'],
    ],
    [
      [999, 1],
      ['99.9', '0.1'],
    ],
    [
      [0, 0],
      ['0.0', '0.0'],
    ],
  ])('shares of %j are %j and add up to 100.0', (amounts, shares) => {
    expect(tenths(amounts)).toEqual(shares);
  });
});

describe('axes', () => {
  it('of time begin with the month before the work and name each January', () => {
    expect(dateWords('2027-09-03')).toBe('3 Sep 2027');
    expect(chartSpan(dayOf('2026-12-15'), dayOf('2027-01-25'))).toEqual({
      from: dayOf('2026-12-01'),
      to: dayOf('2027-03-01'),
    });
    expect(chartSpan(dayOf('2026-12-15'), dayOf('2027-01-19')).to).toBe(dayOf('2027-02-01'));
    const { months, weeks } = timeAxis(dayOf('2026-11-01'), dayOf('2027-01-10'));
    expect(months).toEqual([
      { at: dayOf('2026-11-01'), to: dayOf('2026-12-01'), text: 'Nov 2026', isQuarter: false },
      { at: dayOf('2026-12-01'), to: dayOf('2027-01-01'), text: 'Dec', isQuarter: false },
      { at: dayOf('2027-01-01'), to: dayOf('2027-01-10'), text: 'Jan 2027', isQuarter: true },
    ]);
    expect(weeks.map(({ text }) => text)).toEqual(['2', '9', '16', '23', '30', '7', '14', '21', '28', '4']);
    expect(weeks[0]).toEqual({ at: dayOf('2026-11-02'), text: '2' });
    expect(timeAxis(dayOf('2027-04-01'), dayOf('2027-11-01')).months.map(one => one.isQuarter)).toEqual([
      true,
      false,
      false,
      true,
      false,
      false,
      true,
    ]);
  });

  test.each([
    ['2026-11-20', '2027-02-03', 'Nov 2026, Dec, Jan 2027, Feb, Mar'],
    ['2027-01-01', '2027-09-01', 'Jan 2027, Mar, May, Jul, Sep'],
    ['2027-01-01', '2028-07-01', 'Jan 2027, Apr, Jul, Oct, Jan 2028, Apr, Jul'],
    ['2027-01-01', '2029-01-01', 'Jan 2027, Jul, Jan 2028, Jul, Jan 2029'],
    ['2027-03-09', '2031-01-01', 'Mar 2027, Mar 2028, Mar 2029, Mar 2030, Mar 2031'],
  ])('of dates from %s to %s have few ticks', (least, most, texts) => {
    const ticks = monthTicks(dayOf(least), dayOf(most));
    expect(ticks.map(({ text }) => text).join(', ')).toBe(texts);
    expect(ticks[0]?.at).toBe(dayOf(`${least.slice(0, 8)}01`));
  });

  test.each([
    [1_010_000, 1_240_000, '1.00 1.05 1.10 1.15 1.20 1.25'],
    [0, 500_000, '0.0 0.1 0.2 0.3 0.4 0.5'],
    [200_000, 800_000, '0.00 0.25 0.50 0.75 1.00'],
    [0, 12_000_000, '0 5 10 15'],
    [0, 60_000_000, '0 10 20 30 40 50 60'],
    [100_000, 150_000, '0.10 0.11 0.12 0.13 0.14 0.15'],
    [100_000, 200_000, '0.100 0.125 0.150 0.175 0.200'],
  ])('of money from %d to %d are in millions: %s', (least, most, texts) => {
    const ticks = moneyTicks(least, most);
    expect(ticks.map(({ text }) => text).join(' ')).toBe(texts);
    expect(ticks.map(({ at }) => Number((at / 1_000_000).toFixed(3)))).toEqual(texts.split(' ').map(Number));
  });

  test.each([
    [1, [0, 2]],
    [8, [0, 2, 4, 6, 8]],
    [9, [0, 5, 10]],
    [81, [0, 50, 100]],
    [401, [0, 200, 400, 600]],
  ])('of people reach %d', (most, ticks) => {
    expect(peopleTicks(most)).toEqual(ticks);
  });

  it('people at work change when an activity begins and on the day after its last', () => {
    const activity = {
      title: '',
      mode: 0,
      workDays: 1,
      totalFloat: 0,
      freeFloat: 0,
      critical: false,
      heldBy: [],
    };
    const activities = [
      { ...activity, id: 'long', start: '2027-01-04', finish: '2027-01-08', crewSize: 4 },
      { ...activity, id: 'short', start: '2027-01-06', finish: '2027-01-06', crewSize: 3 },
      { ...activity, id: 'wait', start: '2027-01-01', finish: '2027-02-06', crewSize: 0 },
    ];
    const [from, middle, after, to] = ['04', '06', '07', '09'].map(day => dayOf(`2027-01-${day}`));
    expect(peopleAtWork({ activities }, id => id === 'short')).toEqual([
      { from, to: middle, all: 4, holding: 0 },
      { from: middle, to: after, all: 7, holding: 3 },
      { from: after, to, all: 4, holding: 0 },
    ]);
    expect(peopleAtWork({ activities: [] }, () => true)).toEqual([]);
  });
});

describe('the bottom line after an edit', () => {
  const before = { total: 100, finish: 1000, unchecked: 305, findings: 4 };
  test.each([
    [
      { total: 150, finish: 999, unchecked: 300 },
      'total +$50, finish −1 calendar day, share not yet checked −0.5 points',
    ],
    [{ total: 99, finish: 1012 }, 'total −$1, finish +12 calendar days'],
    [{ findings: 6, unchecked: 317 }, 'share not yet checked +1.2 points, findings +2'],
    [{ findings: 3, total: undefined, finish: undefined, unchecked: undefined }, 'findings −1'],
  ])('%j: %s', (after, words) => {
    const { changes, words: said } = bottomChanges(before, { ...before, ...after });
    expect(said).toBe(`Worked out: ${words}.`);
    expect(Object.keys(changes)).toEqual(
      ['total', 'finish', 'unchecked', 'findings'].filter(
        key =>
          !(key in after) ||
          Object.entries(after).some(([name, value]) => name === key && value !== undefined),
      ),
    );
  });
  it('that did not move says so, and the first has nothing to move from', () => {
    expect(bottomChanges(before, before)).toEqual({
      changes: {},
      words: 'Worked out; the bottom line did not move.',
    });
    expect(bottomChanges(undefined, before)).toEqual({ changes: {}, words: '' });
    expect(bottomChanges(before, { ...before, total: 101 }).changes).toEqual({
      total: '+$1',
      finish: 'no change',
      unchecked: 'no change',
      findings: 'no change',
    });
  });
});

describe('findings', () => {
  test.each([
    ['/vessel/length', 'vessel'],
    ['/site/waterDepth', 'vessel'],
    ['/items/ocean-tow', 'work'],
    ['/options/season', 'work'],
    ['/quotes/one', 'work'],
    ['/survey/measured', 'materials'],
    ['templates/materials/oil', 'materials'],
    ['/funding/sources', 'funding'],
    ['/contingency/share', 'funding'],
    ['/bid/items', 'bid'],
    ['/receivedBids/one', 'bid'],
    ['/risk/register', 'risk'],
    ['/decision/chosen', 'compare'],
    ['/rates/wages', 'rates'],
    ['/calendars/start', 'schedule'],
    ['/schedule', 'schedule'],
    ['/record/approval', 'review'],
  ])('at %s are put right in %s', (place, view) => {
    expect(homeOf(place)).toBe(view);
  });
  it('stand with those that withhold a figure first, in whole sentences', () => {
    const one = { code: 'a/b', place: '/site', message: 'it is deep', remedy: 'Measure it.' };
    const rows = rowsOfFindings([
      { ...one, weight: 'notes' },
      { ...one, weight: 'warns', meaning: 'is it?' },
      { ...one, weight: 'blocks' },
    ]);
    expect(rows).toEqual([
      { view: 'vessel', at: '/site', finding: { ...one, weight: 'blocks', message: 'It is deep.' } },
      {
        view: 'vessel',
        at: '/site',
        finding: { ...one, weight: 'warns', message: 'It is deep.', meaning: 'Is it?' },
      },
      { view: 'vessel', at: '/site', finding: { ...one, weight: 'notes', message: 'It is deep.' } },
    ]);
  });
});

describe('the hull as it is drawn', () => {
  const near = (value: number) => Math.round(value * 1e4) / 1e4;
  const points = (list: readonly { readonly along: number; readonly up: number }[], ...at: number[]) =>
    at.map(place => list.at(place)).map(point => [near(point?.along ?? NaN), near(point?.up ?? NaN)]);

  it('in profile goes from the stern on deck round by the keel to the stem and back', () => {
    const outline = profileOutline(100, 10);
    expect(outline).toHaveLength(2 + 81 + 81);
    // Deck 4 % up at the stern and 14 % at the stem, transom to 0.72, run from 0.66 of the depth, flat keel.
    expect(points(outline, 0, 1, 2, 42, 82, 83, 103, 123, -1)).toEqual([
      [0, 10.4],
      [0, 7.2],
      [1.5, 6.6],
      [50.75, 0],
      [100, 11.4],
      [100, 11.4],
      [75, 10.2653], // 0.14 x 0.5^2.4 = 0.02653
      [50, 10],
      [0, 10.4],
    ]);
    // A fortieth from the stern of the keel: 6.6 x (0.105 / 0.13)^1.6; at 0.95: 11.4 x 0.5^1.7.
    expect(points(outline, 4, 78)).toEqual([
      [near(1.5 + 98.5 * 0.025), near(6.6 * (0.105 / 0.13) ** 1.6)],
      [near(1.5 + 98.5 * 0.95), near(11.4 * 0.5 ** 1.7)],
    ]);
  });
  it('from above is alike on both sides, full amidships and pointed at the bow', () => {
    const outline = planOutline(100, 20);
    expect(outline).toHaveLength(162);
    expect(points(outline, 0, 16, 40, 80, 81, 121, -1)).toEqual([
      [0, 0],
      [20, 10],
      [50, 10],
      [100, 0],
      [100, -0],
      [50, -10],
      [0, -0],
    ]);
    // 0.4 sqrt(1 - 0.5^2.6) + 0.6 sqrt(0.5) and 1 - 0.5^2.1.
    expect([deckBreadth(0.1), deckBreadth(0.84)].map(near)).toEqual([
      near(0.4 * Math.sqrt(1 - 0.5 ** 2.6) + 0.6 * Math.sqrt(0.5)),
      near(1 - 0.5 ** 2.1),
    ]);
  });
  it('in section has a turn of bilge on either side', () => {
    const outline = sectionOutline(20, 10);
    expect(outline).toHaveLength(20);
    // The radius is 0.22 of the smaller of half the beam and the depth; half way round it is 2.2 (1 - 0.7071) up.
    expect(points(outline, 0, 1, 5, 9, 10, 18, 19)).toEqual([
      [-10, 10],
      [-10, 2.2],
      [-9.3556, 0.6444],
      [-7.8, 0],
      [7.8, 0],
      [10, 2.2],
      [10, 10],
    ]);
    expect(points(sectionOutline(20, 5), 9)).toEqual([[-8.9, 0]]);
  });
});
