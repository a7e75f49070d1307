import { describe, expect, test } from 'vitest';
import type { RiskView } from '../../../core/evaluation';
import { riskRows } from '../../../core/views';
import { contingencyTable, surveyTable } from '../../../core/views/risk/contingency';
import { runOrigin } from '../../../core/views/risk/origin';
import { chanceTable, driverBars, driverTable, finishDrivers } from '../../../core/views/risk/tables';
import { summaryOf } from '../../../core/views/window';
import { studied } from './everything';
import { plain } from './laws';

const rowsOf = (change: Partial<RiskView> | undefined) => {
  const { evaluation, prepared, view } = studied();
  return riskRows({
    evaluation,
    prepared: prepared.prepared,
    findings: prepared.findings,
    view: change === undefined ? undefined : { ...view, ...change },
    isStale: false,
    isWhole: true,
  });
};
const viewOf = (change: Partial<RiskView>): RiskView => ({ ...studied().view, ...change });
const texts = (table: {
  readonly rows: readonly { readonly cells: Readonly<Record<string, { text: string }>> }[];
}) => table.rows.map(row => Object.values(row.cells).map(({ text }) => text));

function driver(id: string, change: Partial<RiskView['drivers'][number]>): RiskView['drivers'][number] {
  const [first] = studied().view.drivers;
  if (first === undefined) throw new Error('the example has drivers');
  return { ...first, id, title: `Driver ${id}`, ...change };
}

test('before a run the sentence tells total and finish, which open', () => {
  const { estimate } = studied().evaluation;
  const cents = (estimate === undefined ? undefined : summaryOf(estimate)?.total?.cents) ?? NaN;
  const finish = estimate?.schedule.finish ?? '';
  const months = 'Jan Feb Mar Apr May Jun Jul Aug Sep Oct Nov Dec'.split(' ');
  const dated = `${Number(finish.slice(8))} ${months[Number(finish.slice(5, 7)) - 1] ?? ''} ${finish.slice(0, 4)}`;
  const { sentence } = rowsOf(undefined);
  expect(plain(sentence)).toBe(
    `How sure $${Math.floor((cents + 50) / 100).toLocaleString('en-US')} and ${dated} are has not been worked out yet.`,
  );
  expect(sentence.flatMap(part => (typeof part === 'string' ? [] : [part.why]))).toEqual([
    'sums/total',
    'schedule:finish',
  ]);
});

describe('what drives the cost', () => {
  const drivers = () => [
    driver('a', {
      costAtLow: 100,
      costAtHigh: 500,
      contribution: 0.4,
      finishContribution: 0.0004,
      kind: 'range',
    }),
    driver('b', {
      costAtLow: 400,
      costAtHigh: 300,
      contribution: 0.1,
      finishContribution: 0.0006,
      kind: 'event',
    }),
    driver('c', {
      costAtLow: 250,
      costAtHigh: 250,
      contribution: -0.02,
      finishContribution: 1,
      kind: 'driver',
    }),
  ];

  test('is a row each with its ends and its swing', () => {
    const { id, rows } = driverTable(viewOf({ drivers: drivers() }));
    expect([id, ...rows.map(row => row.id)]).toEqual(['drivers', 'a', 'b', 'c']);
    expect(texts({ rows })).toEqual([
      ['Driver a', 'range', '40.0', '0.0', '100', '500', '+400'],
      ['Driver b', 'event', '10.0', '0.1', '400', '300', '−100'],
      ['Driver c', 'driver', '0.0', '100.0', '250', '250', '0'],
    ]);
  });

  test('has bars from the lower to the higher end, on the scale of all ends and of the largest share', () => {
    // The ends lie between 100 and 500, and the largest share is 0.4.
    expect(driverBars(viewOf({ drivers: drivers() }))).toEqual({
      a: { from: 0, to: 1, part: 1 },
      b: { from: 0.5, to: 0.75, part: 0.25 },
      c: { from: 0.375, to: 0.375, part: 0 },
    });
    expect(driverBars(viewOf({ drivers: [] }))).toEqual({});
  });

  test('by activity is told in hundredths, and what always drives it in one line', () => {
    const drivesFinish = [
      { activity: 'x', title: 'Tow with PCB aboard', share: 0.9996 },
      { activity: 'y', title: 'PCB survey', share: 1 },
      { activity: 'z', title: 'Boom', share: 0.9995 },
      { activity: 'w', title: 'Cut', share: 0.25 },
    ];
    const { id, rows, note } = finishDrivers(viewOf({ drivesFinish }));
    expect([id, ...rows.map(row => `${row.id} ${row.subject ?? ''}`)]).toEqual([
      'drives-finish',
      'z z',
      'w w',
    ]);
    expect(texts({ rows })).toEqual([
      ['Boom', 'more than 99'],
      ['Cut', '25'],
    ]);
    expect(note).toEqual(['In every run: tow with PCB aboard, PCB survey.']);
  });
});

test('chances are told of money, date, grant, last date and season', () => {
  const joint = {
    ...studied().view.joint,
    budget: 1000,
    date: '2029-03-01',
    joint: 0.5,
    insideMoney: 0.6,
    insideDate: 0.7,
  };
  const table = chanceTable(
    viewOf({
      joint,
      award: { budget: 2000, holdsContingency: true, chance: 0.8 },
      grantPeriod: { end: '2029-12-31', chanceOfMissing: 0.25 },
      deadline: { date: '2029-10-01', chanceOfMissing: 0.1 },
      chanceOfAnotherSeason: 0.001,
    }),
  );
  expect(table.rows.map(row => [row.id, row.cells['what']?.text, row.cells['chance']?.text])).toEqual([
    ['joint', 'Inside $1,000 and by 1 Mar 2029', '50'],
    ['money', 'Inside $1,000', '60'],
    ['date', 'By 1 Mar 2029', '70'],
    ['award', 'Inside $2,000, the total with the contingency', '80'],
    ['grant', 'Misses the grant period, which ends 31 Dec 2029', '25'],
    ['deadline', 'Misses the last date, 1 Oct 2029', '10'],
    ['season', 'Needs another season for the tow or the sinking', 'fewer than 1'],
  ]);
});

test('a contingency and the plan add up to what 80 in 100 runs stay within, to the dollar, and open it', () => {
  const { view } = studied();
  const cents = view.contingencyAtP80.lines.map(({ line }, at) => ({ line, amount: at === 0 ? 100.2 : 0 }));
  // $1,000.40 and $100.20 make $1,100.60: shown as 1,000 and 1,101, so that 101 lie between them.
  const runs = viewOf({
    cost: { ...view.cost, plan: 1000.4 },
    contingencyAtP80: { confidence: 0.8, amount: 100.2, budget: 1100.6, lines: cents },
    contingency: { ...view.contingency, policy: 'percentage' as const },
  });
  const table = contingencyTable(runs, String);
  expect(table.rows.map(row => row.cells['amount']?.text)).toEqual(['1,000', '101', '1,101', '101']);
  expect(table.rows.find(row => row.id === 'plan')?.cells['amount']?.why).toBe('sums/total');
  const origin = runOrigin(table, runs, undefined);
  const column = { key: 'amount', title: 'Contingency', kind: 'number' } as const;
  const told = (id: string) =>
    table.rows
      .filter(row => row.id === id)
      .flatMap(row => origin.steps(column, row).slice(0, 2))
      .map(one => [one.operator, one.value.text]);
  expect(told('total')).toEqual([
    ['=', '$1,101'],
    ['−', '$1,000'],
  ]);
  expect(told('whole')).toEqual([
    ['=', '$1,000'],
    ['+', '$101'],
  ]);
  const covered = {
    confidence: 0.8,
    amount: 0,
    budget: 900,
    lines: cents.map(one => ({ ...one, amount: 0 })),
  };
  expect(contingencyTable(viewOf({ contingencyAtP80: covered }), String).rows.map(row => row.id)).toEqual([
    'total',
  ]);
});

test('a contingency is told line by line, the largest first, in dollars that add up', () => {
  const { view } = studied();
  const [line] = view.contingencyAtP80.lines;
  if (line === undefined) throw new Error('the runs make a contingency');
  const lines = [
    { ...line, line: 'small', amount: 10.5 },
    { ...line, line: 'none', amount: 0.2 },
    { ...line, line: 'large', amount: 20.5 },
  ];
  const change = { contingencyAtP80: { ...view.contingencyAtP80, lines } };
  const contingency = { ...view.contingency, policy: 'percentage' as const, amount: 99.6, reaches: 0.75 };
  const table = contingencyTable(viewOf({ ...change, contingency }), id => `Line ${id}`);
  const plan = Math.round(view.cost.plan ?? NaN);
  const dollars = (amount: number) => amount.toLocaleString('en-US');
  // 20.5, 10.5 and 0.2 make 31.2: of 31 dollars 21 and 10 are shown, the first of two halves raised.
  expect(
    table.rows.map(row => [row.id, row.kind, row.cells['title']?.text, row.cells['amount']?.text]),
  ).toEqual([
    ['plan', 'total', 'Total of the plan', dollars(plan)],
    ['total', 'total', 'Contingency, all lines together', '31'],
    ['whole', 'total', 'Plan and contingency', dollars(plan + 31)],
    ['large', 'line', 'Line large', '21'],
    ['small', 'line', 'Line small', '10'],
  ]);
  expect(table.caption).toBe('Contingency at 80 in 100 runs');
  expect(plain(table.note)).toBe('The document sets $100 aside, which reaches 75 in 100 runs.');
  const { reaches: _reaches, ...unread } = contingency;
  expect(
    plain(contingencyTable(viewOf({ ...change, contingency: unread as typeof contingency }), String).note),
  ).toBe('The document sets no contingency aside.');
});

test('a survey is told with its price and what it narrows', () => {
  const survey = { input: 'x', title: 'A dive', cost: 1000.4, narrowing: 2500.6, perDollar: 2.46 };
  const surveys = [survey as RiskView['surveys'][number]];
  const { id, rows } = surveyTable(viewOf({ surveys }));
  expect([id, rows[0]?.id]).toEqual(['surveys', 'x']);
  expect(texts({ rows })).toEqual([['A dive', '1,000', '+2,501', '2.5']]);
});

test('what would hold and why the plan seldom does are two sentences', () => {
  const { view } = studied();
  const safe = { ...view.safe, sentence: 'This would hold.' } as RiskView['safe'];
  const gap = { ...view.gap, sentence: 'The plan is early.' } as RiskView['gap'];
  expect(plain(rowsOf({ safe, gap }).found?.planWords)).toBe('This would hold. The plan is early.');
  expect(plain(rowsOf({ safe: undefined, gap }).found?.planWords)).toBe('The plan is early.');
});

test('percentiles are told with their range, finish and cash', () => {
  const { view } = studied();
  const { found } = rowsOf({});
  const whole = (dollars: number) => Math.round(dollars).toLocaleString('en-US');
  for (const [place, one] of view.cost.percentiles.entries()) {
    const cells = found?.percentiles.rows[place]?.cells;
    expect(found?.percentiles.rows[place]?.id).toBe(`p${Math.round(one.share * 100)}`);
    expect(cells?.['cost']?.text).toBe(whole(one.value));
    expect(cells?.['range']?.text).toBe(`${whole(one.low)} to ${whole(one.high)}`);
    const cash = view.cashNeed?.percentiles[place]?.value;
    expect(cells?.['cash']?.text).toBe(cash === undefined ? '–' : whole(cash));
    expect(cells?.['finish']?.text.slice(-4)).toBe(view.finish.percentiles[place]?.date.slice(0, 4));
  }
  expect(plain(found?.percentiles.note)).toMatch(
    new RegExp(`The mean cost is \\$${whole(view.cost.mean)}\\. Cash need: a run spends what it costs`),
  );
});
