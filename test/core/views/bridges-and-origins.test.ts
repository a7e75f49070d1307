import { describe, expect, test } from 'vitest';
import type { Evaluation } from '../../../core/evaluation';
import { fromCents } from '../../../core/money';
import { summaryOf, type Bridge, type Comparison } from '../../../core/scenario';
import { compareRows } from '../../../core/views';
import { bridgeRows } from '../../../core/views/compare/bridge';
import { factTable } from '../../../core/views/compare/facts';
import { comparedOrigin, totalSteps } from '../../../core/views/compare/origin';
import { studied } from './everything';

const named = (letter: string, title: string, one: Evaluation): Evaluation => ({
  ...one,
  letter,
  scenario: { id: title.toLowerCase(), title, changes: [] },
});
const A = () => named('A', 'Closed', studied().evaluation);
const B = () => named('B', 'Open', studied().other);
const totalOf = (one: Evaluation) => {
  const cents = summaryOf(one)?.total?.cents ?? Number.NaN;
  return Math.sign(cents) * Math.floor((Math.abs(cents) + 50) / 100);
};
const printed = (dollars: number) => Math.abs(dollars).toLocaleString('en-US');

/** A bridge between two in steps of so many dollars. */
function bridged(from: Evaluation, to: Evaluation, dollars: readonly number[]): Comparison {
  const steps = dollars.map((amount, at) => ({
    key: `step-${at}` as Bridge['steps'][number]['key'],
    title: `Step ${at}`,
    amount: fromCents(amount * 100),
  }));
  const total = fromCents(100 * dollars.reduce((sum, one) => sum + one, 0));
  const bridge: Bridge = { from: from.scenario.id, to: to.scenario.id, total, steps };
  return { evaluations: [from, to], bridges: [bridge], risks: [] };
}
function rowOf(comparison: Comparison) {
  const [row] = bridgeRows(comparison);
  if (row === undefined) throw new Error('there is a bridge');
  return row;
}

describe('a bridge between two scenarios', () => {
  test('is a table from the one total over its steps to the other, with a note', () => {
    const apart = totalOf(B()) - totalOf(A());
    const { id, letter, title, table } = rowOf(bridged(A(), B(), [100, -300, 0, apart + 200]));
    expect([id, letter, title]).toEqual(['closed-open', 'B', 'What separates A from B, $']);
    expect([table.id, table.caption]).toEqual(['bridge-open', 'What separates A from B']);
    expect(table.columns.map(({ key, kind, unit }) => [key, kind, unit])).toEqual([
      ['title', 'words', undefined],
      ['amount', 'number', '$'],
    ]);
    expect(
      table.rows.map(row => [row.id, row.kind, ...Object.values(row.cells).map(({ text }) => text)]),
    ).toEqual([
      ['from', 'total', 'A Closed', printed(totalOf(A()))],
      ['step-0', 'line', 'Step 0', '+100'],
      ['step-1', 'line', 'Step 1', '−300'],
      ['step-2', 'line', 'Step 2', '0'],
      ['step-3', 'line', 'Step 3', `+${printed(apart + 200)}`],
      ['to', 'total', 'B Open', printed(totalOf(B()))],
    ]);
    expect(table.note).toEqual([
      'Each step is the average over every order of making the changes, so none depends on coming first.',
      'Rounded to whole dollars that add up; to the cent the steps stand in the report and the workbook.',
    ]);
  });

  test('is drawn on the scale of its steps, from the least sum so far to the most', () => {
    const apart = totalOf(B()) - totalOf(A());
    expect(apart).toBeGreaterThan(1000);
    const { bars, words } = rowOf(bridged(A(), B(), [100, -300, apart + 200]));
    // The sums so far are 0, 100, −200 and the difference: the scale is from −200 to the difference.
    const place = (sum: number) => (sum + 200) / (apart + 200);
    expect(bars).toEqual([
      {
        id: 'from',
        title: 'A Closed',
        text: printed(totalOf(A())),
        from: place(0),
        to: place(0),
        kind: 'total',
      },
      { id: 'step-0', title: 'Step 0', text: '+100', from: place(0), to: place(100), kind: 'adds' },
      { id: 'step-1', title: 'Step 1', text: '−300', from: place(100), to: 0, kind: 'saves' },
      { id: 'step-2', title: 'Step 2', text: `+${printed(apart + 200)}`, from: 0, to: 1, kind: 'adds' },
      { id: 'to', title: 'B Open', text: printed(totalOf(B())), from: 1, to: 1, kind: 'total' },
    ]);
    expect(words).toBe(`B costs $${printed(apart)} more than A; most of it is step 2.`);
  });

  test('says less where it is less, and as much where the steps cancel out', () => {
    const apart = totalOf(B()) - totalOf(A());
    expect(rowOf(bridged(B(), A(), [-apart])).words).toBe(
      `A costs $${printed(apart)} less than B; most of it is step 0.`,
    );
    const same = named('B', 'Same', studied().evaluation);
    expect(rowOf(bridged(A(), same, [-250, 200, 50])).words).toBe(
      'B costs as much as A; most of it is step 0.',
    );
    const { bars } = rowOf(bridged(A(), same, [-200, 200]));
    expect(bars.map(({ from, to }) => [from, to])).toEqual([
      [1, 1],
      [1, 0],
      [0, 1],
      [1, 1],
    ]);
    expect(rowOf(bridged(A(), same, [])).words).toBe('A and B cost the same.');
  });
});

describe('what stands behind a figure side by side', () => {
  const about = () => {
    const comparison: Comparison = { evaluations: [A(), B()], bridges: [], risks: [] };
    const views = [
      { ...studied().view, scenario: 'closed' },
      { ...studied().view, scenario: 'open' },
    ];
    return { comparison, views, chosen: 'closed' };
  };
  const table = () => factTable(about().comparison, 'closed', 'us');
  const ask = (key: string, id: string) => {
    const origin = comparedOrigin(table(), about());
    const column = { key, title: key, kind: 'number' } as const;
    const cells = { what: { text: 'What' }, closed: { text: '1' }, open: { text: '2' } };
    const row = { id, kind: 'line', cells } as const;
    return { words: origin.words(column, row), steps: origin.steps(column, row), origin };
  };

  test('is told as worked out for its scenario, with the way to follow it', () => {
    expect(ask('closed', 'total').words).toBe('Worked out for scenario A, which is shown now.');
    expect(ask('open', 'total').words).toBe(
      'Worked out for scenario B as a whole. Choose B at the top of the list to follow it step by step.',
    );
    for (const id of ['p80', 'finish-p80', 'deadline'])
      expect(ask('open', id).words).toBe('Read from the runs of scenario B, put in order.');
    expect(ask('closed', 'p80').origin).toMatchObject({
      path: 'Compare, side by side',
      home: 'compare',
      hasNoUnits: true,
    });
  });

  test.each([
    ['total', 'sums/total'],
    ['budget', 'sums/budget'],
    ['finish', 'schedule:finish'],
    ['work-days', 'schedule:finish'],
    ['unchecked', 'basis:unchecked'],
    ['heel', 'upright:verdict'],
    ['gm', 'upright:verdict'],
  ])('leads from %s to the same of the scenario shown now', (id, why) => {
    expect(ask('open', id).steps).toEqual([
      { depth: 0, operator: '', value: { text: '1', why }, words: 'the same in scenario A, with its givens' },
    ]);
  });

  test('of the runs is the runs, and only those of the scenario shown now lead to its givens', () => {
    const [own, others] = [ask('closed', 'p80').steps, ask('open', 'p80').steps];
    expect(own.length).toBe(others.length);
    expect(own.length).toBeGreaterThan(4);
    expect(own.slice(0, -1).some(({ value }) => value.why !== undefined)).toBe(true);
    expect(others.slice(0, -1).every(({ value }) => value.why === undefined)).toBe(true);
    expect(others.slice(0, -1).map(({ value }) => value.text)).toEqual(
      own.slice(0, -1).map(({ value }) => value.text),
    );
    expect(ask('closed', 'misses-grant').steps.length).toBe(1);
  });

  test('of the other tables is their rule and the totals of all', () => {
    const rules = ['bridge-open', 'frontier', 'weights', 'differences'].map(id => {
      const { path, words } = comparedOrigin({ ...table(), id, caption: 'What differs' }, about());
      return [path, words({ key: 'x', title: 'x', kind: 'number' }, { id: 'x', kind: 'line', cells: {} })];
    });
    const path = 'Compare, what differs';
    expect(rules).toEqual([
      [path, expect.stringMatching(/^Each step is the average over every order/)],
      [path, expect.stringMatching(/^The least budget with which so many runs end inside both/)],
      [path, expect.stringMatching(/^Each scenario stands between the worst, 0, and the best, 1\./)],
      [path, undefined],
    ]);
    expect(totalSteps(about()).map(({ value, words }) => [value.text, value.why, words])).toEqual([
      ['total of A', 'sums/total', 'Closed'],
      ['total of B', 'compare:scenarios-side-by-side|total|open', 'Open'],
    ]);
  });
});

test('scenarios are told with heel and standing, and runs against each other', () => {
  const { facts, view, evaluation } = studied();
  const upright = { verdict: 'leans', greatestHeelDegrees: 12.5 } as Evaluation['upright'];
  const leaning = { ...A(), upright } as Evaluation;
  const evaluations = [leaning, B()];
  const cost = Float64Array.from([1, 2, 3, 4]);
  const risk = { ...facts, trials: 4, scenario: 'closed', cost };
  const beside = { ...risk, scenario: 'open', cost: Float64Array.from([2, 1, 4, 5]) };
  const comparison: Comparison = { evaluations, bridges: [], risks: [risk, beside] };
  const rows = compareRows({
    comparison,
    views: [{ ...view, scenario: 'closed', confidence: 0.7 }],
    isStale: true,
    chosen: 'closed',
    measures: 'us',
  });
  expect(rows.scenarios).toEqual([
    {
      id: 'closed',
      letter: 'A',
      title: 'Closed',
      isChosen: true,
      isPermittable: true,
      verdict: 'leans',
      verdictWords: 'greatest heel 13°',
    },
    {
      id: 'open',
      letter: 'B',
      title: 'Open',
      isChosen: false,
      isPermittable: true,
      verdict: undefined,
      verdictWords: 'no heel worked out',
    },
  ]);
  // A is the cheaper in three of four runs.
  expect(rows.paired).toEqual(['With the same luck A costs less than B in 75 of 100 runs.']);
  expect([rows.hasRuns, rows.isStale, rows.waiting]).toEqual([true, true, undefined]);
  const waiting = (risks: Comparison['risks'], isStale: boolean) =>
    compareRows({
      comparison: { ...comparison, risks },
      views: [],
      isStale,
      chosen: 'closed',
      measures: 'us',
    }).waiting;
  expect(waiting([], false)).toBe('They add P80 and the lines of equal chance.');
  expect(waiting([], true)).toBe('The runs before are of an older document.');
  expect(waiting([risk], false)).toBe('The trials of B have not been run; the others keep theirs.');
  expect(waiting([beside], true)).toBe('The trials of A are of an older document, or were not run.');
  expect(rows.frontier?.title).toBe('70 in 100 end inside both, $ million');
  expect(rows.frontier?.lines.map(({ letter, isChosen }) => [letter, isChosen])).toEqual([['A', true]]);
  expect(rows.frontier?.plans.map(({ letter, dollars }) => [letter, dollars])).toEqual([
    ['A', totalOf(A())],
    ['B', totalOf(B())],
  ]);
  const { deadline } = evaluation.project.calendars;
  expect(rows.frontier?.lastDate === undefined).toBe(deadline === undefined);
});
