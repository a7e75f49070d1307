import { describe, expect, test } from 'vitest';
import type { Evaluation } from '../../../core/evaluation';
import type { Scenario } from '../../../core/project';
import { compareScenarios, type DecisionTable, type RiskFacts } from '../../../core/scenario';
import { compareRows, type TableRows } from '../../../core/views';
import { rankingWords, weightTable } from '../../../core/views/compare/weights';
import { DEMO, awkward, evaluatedAs } from './awkward';
import { brokenWords, plain } from './laws';

const first = evaluatedAs(DEMO, { upright: true });
const dearer = evaluatedAs(DEMO, { scenario: 'diver-access' });
const nothing = awkward('with a hull that nobody knows');

function estimateOf({ estimate }: Evaluation) {
  if (estimate === undefined) throw new Error('the example is estimated');
  return estimate;
}
const estimate = estimateOf(first);

/** An evaluation under the letter and the name of another scenario. */
function as(letter: string, one: Evaluation, changes: Scenario['changes'] = []): Evaluation {
  return { ...one, letter, scenario: { id: `scenario-${letter}`, title: `Scenario ${letter}`, changes } };
}
/** The first scenario, finished on another day. */
function finishing(finish: string | undefined): Evaluation {
  const { finish: _finish, ...rest } = estimate.schedule;
  const schedule = finish === undefined ? rest : { ...rest, finish };
  return { ...first, estimate: { ...estimate, schedule } };
}
const barred: Evaluation = {
  ...first,
  estimate: { ...estimate, unmetGoals: [{ material: 'fuel', title: 'Fuel', goal: 'Gone', leftOut: [] }] },
};

function compared(
  of: readonly Evaluation[],
  chosen = of[0]?.scenario.id ?? '',
  risks: readonly RiskFacts[] = [],
) {
  return (measures: 'us' | 'metric' = 'us') =>
    compareRows({ comparison: compareScenarios(of, risks), views: [], isStale: false, chosen, measures });
}
const said = (...of: readonly Evaluation[]) => plain(compared(of)().sentence);
const A = as('A', first);
const finish = estimate.schedule.finish ?? '';
const later = (days: number) => {
  const date = new Date(`${finish}T00:00:00Z`);
  date.setUTCDate(date.getUTCDate() + days);
  return date.toISOString().slice(0, 10);
};

describe('the sentence of a comparison', () => {
  test('of nothing, of one scenario and of one without a total', () => {
    expect(said()).toBe('There is nothing to compare yet.');
    expect(said(A)).toMatch(
      /^There is one scenario, A, at \$[\d,]+; a second one would be compared with it\.$/,
    );
    expect(said(as('A', nothing))).toBe('There is one scenario, A; a second one would be compared with it.');
  });

  test.each([
    [0, 'and ends the same day.'],
    [1, 'and ends 1 calendar day later.'],
    [-1, 'and ends 1 calendar day earlier.'],
    [30, 'and ends 30 calendar days later.'],
  ])('of two that cost the same and end %d days apart', (days, end) => {
    expect(said(A, as('B', finishing(later(days))))).toBe(`B costs as much as A ${end}`);
  });

  test('leaves out days that are not known, and does not set a total against one that is not', () => {
    expect(said(A, as('B', finishing(undefined)))).toBe('B costs as much as A.');
    const unknown = 'B cannot be set against A: a total is not known.';
    expect(said(A, as('B', nothing))).toBe(`${unknown} B may not be carried out.`);
    expect(said(as('A', nothing), as('B', first))).toBe(`${unknown} A may not be carried out.`);
  });

  test('says less or more, whichever it is, and who may not be carried out', () => {
    expect(said(A, as('B', dearer))).toMatch(/^B costs \$[\d,]+ more than A/);
    expect(said(as('A', dearer), as('B', first))).toMatch(/^B costs \$[\d,]+ less than A/);
    expect(said(A, as('B', barred))).toMatch(/^B costs as much as A.*\. B may not be carried out\.$/);
  });

  test('of many names the cheapest and the dearest of those with a total', () => {
    expect(said(A, as('B', dearer), as('C', nothing), as('D', first))).toMatch(
      /^Of 4 scenarios A costs least, \$[\d,]+; B costs most, \$[\d,]+ more than A\. C may not be carried out\.$/,
    );
    expect(said(as('A', dearer), as('B', first), as('C', dearer), as('D', dearer))).toMatch(
      /^Of 4 scenarios B costs least, \$[\d,]+ less than A; D costs most, \$[\d,]+\.$/,
    );
    expect(said(as('A', nothing), A, A, A)).toMatch(
      /^4 scenarios stand side by side; a total is not known\./,
    );
  });
});

describe('a comparison', () => {
  const cell = (table: TableRows, row: string, key: string) =>
    table.rows.find(one => one.id === row)?.cells[key]?.text;

  test('of which nothing is known has no picture, and every figure is told as not known', () => {
    const rows = compared([as('A', nothing), as('B', nothing)])();
    expect(rows.frontier).toBeUndefined();
    expect(rows.bridges).toEqual([]);
    expect(rows.scenarios.map(one => one.verdictWords)).toEqual(['no heel worked out', 'no heel worked out']);
    expect(rows.facts.rows.map(row => row.id)).toEqual(['permittable', 'total', 'budget']);
    expect([cell(rows.facts, 'total', 'scenario-A'), cell(rows.facts, 'permittable', 'scenario-A')]).toEqual([
      'not known',
      'no',
    ]);
    expect(brokenWords(rows)).toEqual([]);
  });

  test('tells what differs and what is not known of one', () => {
    const { differences } = compared([A, as('B', nothing)])();
    const values = differences.rows.map(row => row.cells['scenario-B']?.text);
    expect(values).toContain('not known, see Review');
    expect(differences.rows.some(row => /^[\d.]+ %$/.test(row.cells['scenario-A']?.text ?? ''))).toBe(true);
    expect(compared([A, as('B', first)])().differences.rows).toEqual([]);
  });

  test('tells the least GM in the reader’s measures, with two decimals at most, and none without a screen', () => {
    const gm = first.upright?.lowestGmMetres;
    const { facts } = compared([A, as('B', dearer)])('metric');
    expect(cell(facts, 'gm', 'what')).toBe('Lowest GM, m');
    expect(cell(facts, 'gm', 'scenario-B')).toBe('–');
    expect(
      Math.abs(Number(cell(facts, 'gm', 'scenario-A')?.replace('\u2212', '-')) - (gm ?? NaN)),
    ).toBeLessThan(0.006);
    const tenfold = { ...first, upright: { ...first.upright, lowestGmMetres: 12.34 } } as Evaluation;
    expect(cell(compared([as('A', tenfold)])('metric').facts, 'gm', 'scenario-A')).toBe('12.3');
  });

  test('tells how far each heels with the worst and the likely values, and whether she may lie on her side', () => {
    const { upright } = first;
    if (upright === undefined) throw new Error('the example is screened');
    const { greatestHeelDegrees: _heel, ...rest } = upright;
    const lost = { ...rest, likelyHeelDegrees: 12.34, mayRollOver: true } as const;
    const sunk = { outcome: 'sunk', listDegrees: -3.21 } as const;
    const { facts } = compared([
      as('A', { ...first, upright: { ...lost, atTheEnd: sunk } }),
      as('B', { ...first, upright: { ...lost, atTheEnd: { outcome: 'rolled over', listDegrees: 61.9 } } }),
    ])('us');
    const ids = ['heel', 'heel-likely', 'list-at-end', 'on-her-side'];
    expect(ids.map(id => cell(facts, id, 'scenario-A'))).toEqual([
      'no balance',
      '12.3',
      '3.2',
      'within the ranges',
    ]);
    expect(ids.slice(2).map(id => cell(facts, id, 'scenario-B'))).toEqual(['61.9', 'in the simulation']);
    const calm = { ...upright, mayRollOver: false, atTheEnd: sunk };
    expect(
      cell(compared([as('A', { ...first, upright: calm })])('us').facts, 'on-her-side', 'scenario-A'),
    ).toBe('not seen');
    expect(plain(facts.note)).toMatch(
      /screening, not a naval architect’s study\. How she lies on the bottom/,
    );
  });

  test('tells the same heel and the same GM in what differs as side by side', () => {
    const screened = (heel: number, gm: number) =>
      ({
        ...first,
        upright: { ...first.upright, greatestHeelDegrees: heel, lowestGmMetres: gm },
      }) as Evaluation;
    // 0.3048 m is one foot, exactly.
    const { facts, differences } = compared([
      as('A', screened(13.946, 0.6096)),
      as('B', screened(12, 0.3048)),
    ])('us');
    expect(cell(differences, 'heel', 'scenario-A')).toBe('13.9 degrees');
    expect(cell(differences, 'gm', 'scenario-A')).toBe(`${cell(facts, 'gm', 'scenario-A') ?? ''} ft`);
    expect(cell(differences, 'gm', 'scenario-B')).toBe(`${cell(facts, 'gm', 'scenario-B') ?? ''} ft`);
  });

  test('of the same twice has a bridge of no step, and neither is ahead', () => {
    const [bridge] = compared([A, as('B', first)])().bridges;
    expect(plain(bridge?.words)).toBe('A and B cost the same.');
    expect(bridge?.bars.map(bar => [bar.id, bar.from, bar.to])).toEqual([
      ['from', 0, 0],
      ['to', 0, 0],
    ]);
  });

  test('names six changes of another scenario and counts the rest, and a given that is changed can be followed', () => {
    const changes: Scenario['changes'] = [
      {
        at: '/vessel/length',
        to: { value: '430', unit: 'ft', basis: 'surveyed', source: 'Invented for this test' },
      },
      { at: '/options/diver-access', to: 'open' },
      { at: '/calendars/federalHolidays', to: false },
      ...['a', 'b', 'c', 'd', 'e'].map(id => ({ at: `/options/${id}`, to: 'x' })),
    ];
    const rows = compared([A, as('B', dearer, changes)])();
    const told = rows.whys['compare:scenarios-side-by-side|total|scenario-B'];
    expect(told?.rows.map(row => [row.value.text, row.words])).toEqual([
      [cell(rows.facts, 'total', 'scenario-A'), 'the same in scenario A, with its givens'],
      ['changed', 'it changes: length'],
      ['open', 'it changes: diver access'],
      ['changed', 'it changes: federalHolidays'],
      ['x', 'it changes: a'],
      ['x', 'it changes: b'],
      ['x', 'it changes: c'],
      ['2', 'changes more'],
    ]);
    expect(told?.rows.map(row => row.value.why)).toContain('given:/vessel/length');
  });

  test('in which the scenario shown now has no part still tells what each changes', () => {
    const rows = compared([A, as('B', dearer, [{ at: '/options/diver-access', to: 'open' }])], 'elsewhere')();
    expect(rows.whys['compare:scenarios-side-by-side|total|scenario-B']?.rows.map(row => row.words)).toEqual([
      'it changes: diver access',
    ]);
  });
});

describe('what counts', () => {
  const one = (letter: string, score: number) => ({
    scenario: `scenario-${letter}`,
    letter,
    title: letter,
    scores: { cost: score },
    score,
  });
  const TABLE: DecisionTable = {
    weights: [{ criterion: 'cost', weight: 1 }],
    reading: 'plan',
    alike: [],
    notCompared: [],
    isBoardsOwn: false,
    ranked: [one('A', 0.75), one('B', 0.25)],
    leftOut: [],
    sensitivity: [{ criterion: 'cost', weight: 1, from: 0.2, to: 0.9, firstBelow: 'B', firstAbove: 'C' }],
    dominance: [],
  };
  const own = {
    ...first,
    project: { ...DEMO, decision: { weights: [{ criterion: 'cost' as const, weight: '1' }] } },
  };
  const tableOf = (evaluation: Evaluation, change: Partial<DecisionTable> = {}) =>
    weightTable(compareScenarios([evaluation]), { ...TABLE, ...change });
  const reach = (change: Partial<DecisionTable['sensitivity'][number]>, ranked = TABLE.ranked) => {
    const sensitivity = [{ criterion: 'cost' as const, weight: 1, from: 0.2, to: 0.9, ...change }];
    return tableOf(own, { sensitivity, ranked }).rows[0]?.cells['reach']?.text;
  };

  test('holds within its ends, and beyond them another comes first', () => {
    expect(reach({ firstBelow: 'B', firstAbove: 'C' })).toBe(
      '20 to 90 %; below, B comes first; above, C comes first',
    );
    expect(reach({ firstBelow: 'B' })).toBe('20 to 90 %; below, B comes first');
    expect(reach({ firstAbove: 'C' })).toBe('20 to 90 %; above, C comes first');
    expect(reach({})).toBe('any share of it');
    expect(reach({}, [one('A', 1)])).toBe('any share');
  });

  test('is the board’s to change and to add to once it has set weights, and only told before', () => {
    const set = tableOf(own);
    expect(set.rows[0]?.cells['weight']?.edit?.at).toBe('/decision/weights/0/weight');
    expect(set.rows[0]?.cells['remove']?.remove?.label).toBe('weight of low budget');
    expect(set.add?.fields[0]?.choices?.map(choice => choice.id)).not.toContain('cost');
    const usual = tableOf({ ...first, project: { ...DEMO, decision: { weights: [] } } });
    expect(usual.rows[0]?.cells['weight']?.edit).toBeUndefined();
    expect([usual.add, usual.columns.some(column => column.kind === 'action')]).toEqual([undefined, false]);
    expect(usual.rows.map(row => [row.id, row.cells['share']?.text])).toContainEqual([
      'confidence',
      'after the trials',
    ]);
    expect(usual.rows.map(row => [row.id, row.cells['share']?.text])).toContainEqual(['finish', 'not known']);
  });

  test('ranks nobody where nobody may be carried out', () => {
    expect(tableOf(own, { ranked: [] }).rows.map(row => row.id)).toEqual(['cost']);
    expect(rankingWords({ ...TABLE, ranked: [] })).toEqual([
      'No scenario can be ranked: none may be carried out.',
    ]);
    expect(rankingWords({ ...TABLE, ranked: [one('A', 1)] })).toEqual([
      'Only A may be carried out and ranked.',
    ]);
  });

  test('says of a criterion in which all are alike that it separates nobody', () => {
    const table = { alike: ['finish' as const], notCompared: ['confidence' as const] };
    const usual = { ...first, project: { ...DEMO, decision: { weights: [] } } };
    const row = tableOf(usual, table).rows.find(({ id }) => id === 'finish');
    expect(['share', 'scenario-A', 'reach'].map(key => row?.cells[key]?.text)).toEqual([
      'no difference',
      '–',
      'alike in all scenarios: it turns no order',
    ]);
    expect(rankingWords({ ...TABLE, ...table }).slice(1)).toEqual([
      'Compared: “Low budget by the plan”.',
      'No difference, so it turns no order: “Early finish by the plan”.',
      'Left out: the chance to be done in time. It counts once the trials are run for every scenario.',
    ]);
    expect(rankingWords({ ...TABLE, weights: [] })).toEqual(['Nothing that is compared separates A and B.']);
  });

  test.each([
    [true, 'by the board’s weights.'],
    [false, 'by usual weights, which the board has not set yet.'],
  ])('tells whose weights they are: the board’s own is %s', (isBoardsOwn, whose) => {
    expect(rankingWords({ ...TABLE, isBoardsOwn })).toEqual([
      `A comes first with 0.75, then B with 0.25, ${whose}`,
      'Compared: “Low budget by the plan”.',
    ]);
  });
});
