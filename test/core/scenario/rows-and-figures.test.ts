import { describe, expect, test } from 'vitest';
import type { Evaluation } from '../../../core/evaluation';
import type { UprightResult } from '../../../core/flooding';
import {
  compareScenarios,
  comparisonJson,
  CRITERION_TITLES,
  decisionTable,
  differenceTable,
  USUAL_WEIGHTS,
} from '../../../core/scenario';
import { uprightChange } from '../../../core/scenario/upright-change';
import { CRITERIA } from '../../../core/project';
import { demoProject, estimated, evaluated } from '../evaluation/demo';

const project = demoProject();
const a = evaluated(project, 'fishing-reef');
const parts = estimated(a);
const named = (id: string, letter: string, change: Partial<Evaluation> = {}): Evaluation => ({
  ...a,
  letter,
  scenario: { ...a.scenario, id },
  ...change,
});
const { estimate: _, ...bare } = named('bare', 'E');

/** What the upright screen says, as far as a comparison reads it. */
const screened = (verdict: UprightResult['verdict'], change: Partial<UprightResult> = {}): UprightResult => ({
  ...{ verdict, reasons: [], sinks: true, stages: [], sizing: [], missingInputs: [], whatIfs: [] },
  ...{ site: { notes: [] }, yardsticks: [], findings: [], caution: 'Screening.', cannotSee: [], ...change },
});
const leaning = screened('leans', {
  ...{ greatestHeelDegrees: 12.345, likelyHeelDegrees: 9.5, lowestGmMetres: 0.25 },
});
const over = screened('may roll over', { lowestGmMetres: -0.5 });

describe('results side by side', () => {
  const rowsOf = (...evaluations: Evaluation[]) =>
    Object.fromEntries(
      differenceTable(evaluations).map(({ key, title, values }) => [key, [title, ...values]]),
    );

  test('of the upright screen are its verdict, its heel and its metacentric height', () => {
    const [first, second] = [named('x', 'X', { upright: leaning }), named('y', 'Y', { upright: over })];
    expect(rowsOf(first, second, a)).toEqual({
      upright: [
        'Upright screen',
        { kind: 'words', words: 'leans' },
        { kind: 'words', words: 'may roll over' },
        { kind: 'words', words: 'not run' },
      ],
      heel: [
        'Greatest heel while judged (later stages are not)',
        { kind: 'number', value: 12.3, unit: 'degrees' },
        { kind: 'absent' },
        { kind: 'absent' },
      ],
      gm: [
        'Lowest metacentric height',
        { kind: 'number', value: 0.25, unit: 'm' },
        { kind: 'number', value: -0.5, unit: 'm' },
        { kind: 'absent' },
      ],
    });
    const { differences } = comparisonJson(compareScenarios([first, second]));
    expect(differences).toMatchObject([
      { key: 'upright', values: ['leans', 'may roll over'] },
      { key: 'heel', values: ['12.3 degrees', 'absent, see findings'] },
      { key: 'gm', values: ['0.25 m', '-0.5 m'] },
    ]);
  });

  test('of a scenario without an estimate are absent, each in its row', () => {
    const rows = rowsOf(a, bare);
    expect(Object.keys(rows).slice(0, 2)).toEqual(['total', 'budget']);
    expect(Object.keys(rows).slice(-6)).toEqual([
      'unchecked',
      ...['start', 'finish', 'work-days', 'peak-crew', 'permittable'],
    ]);
    expect(Object.values(rows).map(([, , absent]) => absent)).toEqual(
      Object.keys(rows).map(() => ({ kind: 'absent' })),
    );
    expect(rows['total']?.[0]).toBe('Total');
    expect(rows['unchecked']?.[0]).toBe('Share not yet checked');
    expect(rows['unchecked']?.[1]).toMatchObject({ kind: 'share' });
    expect(rows['stage-tow']?.[0]).toBe('Tow, total');
    expect(rows['start']?.[1]).toEqual({ kind: 'date', iso: parts.schedule.start });
    const { differences } = comparisonJson(compareScenarios([a, bare]));
    expect(differences).toContainEqual({
      ...{ key: 'start', group: 'result', title: 'Start' },
      values: [parts.schedule.start, 'absent, see findings'],
    });
  });
});

describe('inputs side by side', () => {
  const changed = (at: string, change: Partial<Evaluation['project']>) => {
    const other = named('o', 'O', {
      project: { ...project, ...change },
      scenario: { ...a.scenario, id: 'o', changes: [{ at, to: '' }] },
    });
    return differenceTable([a, other]).map(({ key, group, title, values }) => [key, group, title, ...values]);
  };
  const words = (text: string) => ({ kind: 'words', words: text });

  test('are told by their fields, without what a reader does not compare', () => {
    const judged = { basis: 'judgement' as const, source: 'Tried', year: 2026 };
    const [tank] = project.vessel.tanks;
    if (tank === undefined) throw new Error('the example has tanks');
    const { sounding: __, ...empty } = tank;
    const tanks = [{ ...empty, capacity: { value: '150', unit: 'm3', ...judged } }];
    const said = changed(`/vessel/tanks/${tank.id}`, { vessel: { ...project.vessel, tanks } });
    expect(said).toEqual([
      [
        ...[`/vessel/tanks/${tank.id}`, 'input', `Vessel, tanks, ${tank.id.replaceAll('-', ' ')}`],
        words(`title: ${tank.title}, capacity: 148 m3, contents: fuel, sounding: 3.2 m3`),
        words(`title: ${tank.title}, capacity: 150 m3, contents: fuel`),
      ],
    ]);
    // By its place in the list where it has no name of its own there.
    const byPlace = changed('/vessel/tanks/0/capacity', { vessel: { ...project.vessel, tanks } });
    expect(byPlace.map(row => row.slice(3))).toEqual([[words('148 m3'), words('150 m3')]]);
  });

  test('counts and shares stand without a unit, and what is not there is as in the library', () => {
    const figure = (value: string, unit: string) => ({
      ...{ value, unit, basis: 'judgement' as const, source: 'Tried' },
    });
    const at = 'markUps/profit/share';
    const rates = { ...project.rates, overrides: [{ at, figure: figure('0.2', '1') }] };
    expect(changed('/rates/overrides/0', { rates }).map(row => row.slice(3))).toEqual([
      [words('as in the library'), words(`at: ${at}, figure: 0.2`)],
    ]);
    const items = [{ item: 'tow', note: 'Tried', crewsAtOnce: figure('2', 'each') }];
    expect(changed('/items/tow', { items }).map(([, , , ...values]) => values[1])).toEqual([
      words('crews at once: 2'),
    ]);
    expect(changed('/items/tow', { items }).map(([, , , ...values]) => values[0])).toEqual([
      words('as in the library'),
    ]);
  });

  test('of all options or all items are named by the list', () => {
    const rows = changed('/options', { options: { ...project.options, ballast: 'solid' } });
    expect(rows.map(([, , title]) => title)).toEqual(['Options']);
    expect(JSON.stringify(rows[0]?.[4])).toContain('ballast: solid');
    const items = [{ item: 'tow', note: 'Tried', include: false }];
    expect(changed('/items', { items }).map(([, , title]) => title)).toEqual(['Items']);
  });
});

describe('what the command line prints of a scenario', () => {
  const scenariosOf = (...evaluations: Evaluation[]) =>
    comparisonJson(compareScenarios(evaluations))['scenarios'];

  test('is its name alone where it has no estimate', () => {
    expect(scenariosOf(bare)).toStrictEqual([{ id: 'bare', title: a.scenario.title, letter: 'E' }]);
  });

  test('has what the upright screen says beside the figures', () => {
    expect(scenariosOf({ ...bare, upright: leaning })).toEqual([
      {
        ...{ id: 'bare', title: a.scenario.title, letter: 'E', verdict: 'leans' },
        ...{ greatestHeelDegrees: 12.345, likelyHeelDegrees: 9.5, lowestGmMetres: 0.25 },
        uprightCaution: 'Screening.',
      },
    ]);
  });

  test('in its bridges has how many degrees and metres separate the two', () => {
    const [first, second] = [
      named('x', 'X', { upright: leaning }),
      named('y', 'Y', { upright: { ...leaning, greatestHeelDegrees: 10.345, lowestGmMetres: 0.75 } }),
    ];
    expect(uprightChange([first, second], 'x', 'y')).toEqual({
      ...{ greatestHeelDegrees: expect.closeTo(-2, 9) as unknown, likelyHeelDegrees: 0, lowestGmMetres: 0.5 },
      ...{ workDays: 0, tonnesTakenOff: 0 },
    });
    expect(uprightChange([first, named('z', 'Z', { upright: over })], 'x', 'z')).toEqual({
      ...{ lowestGmMetres: -0.75, workDays: 0, tonnesTakenOff: 0 },
    });
    // More of the topside comes off for divers, and what comes off is counted as more.
    const divers = evaluated(project, 'diver-access');
    expect(
      Number(uprightChange([a, divers], a.scenario.id, 'diver-access')['tonnesTakenOff']),
    ).toBeGreaterThan(1);
    const { bridges } = comparisonJson(compareScenarios([first, second]));
    expect(bridges).toMatchObject([{ lowestGmMetres: 0.5, workDays: 0 }]);
  });
});

describe('what a decision reads', () => {
  const orderOf = (criterion: (typeof CRITERIA)[number], ...evaluations: Evaluation[]) =>
    decisionTable(evaluations, { weights: [{ criterion, weight: '1' }] }).ranked.map(
      ({ letter, score }) => `${letter} ${score}`,
    );

  test('of the screen: what stays up before what leans, and all else alike', () => {
    const verdicts = ['may roll over', 'leans', 'stays up', 'cannot tell', 'does not sink'] as const;
    const all = verdicts.map((verdict, i) =>
      named(verdict, 'ABCDE'.charAt(i), { upright: screened(verdict) }),
    );
    expect(orderOf('upright', ...all)).toEqual(['C 1', 'B 0.5', 'A 0', 'D 0', 'E 0']);
  });

  test('of a finish that is not known: nothing, and the criterion is left out', () => {
    const { schedule } = parts;
    const open = named('y', 'Y', { estimate: { ...parts, schedule: { ...schedule, finish: '' } } });
    const weights = [
      { criterion: 'finish' as const, weight: '1' },
      { criterion: 'cost' as const, weight: '1' },
    ];
    const table = decisionTable([a, open], { weights });
    expect([table.weights, table.alike, table.notCompared]).toEqual([[], ['cost'], ['finish']]);
  });

  test('of benefits: what comes back for each dollar', () => {
    const { benefits: __, ...without } = project;
    expect(orderOf('benefit', a)).toEqual(['A 1']);
    const weights = [{ criterion: 'benefit' as const, weight: '1' }];
    expect(decisionTable([named('w', 'W', { project: without })], { weights }).weights).toEqual([]);
  });

  test('by the usual weights: cost first, then the screen, the chance to be in time, the finish, what is checked', () => {
    const one = named('x', 'X', { upright: leaning });
    const facts = {
      ...{
        scenario: 'x',
        trials: 1,
        seed: 1,
        p50: 1,
        p80: 1,
        p90: 1,
        finishP50: '',
        finishP80: '2029-01-01',
      },
      ...{ drivers: [], cost: new Float64Array(1), chanceOfDeadline: 0.5 },
    };
    const table = decisionTable([one], undefined, [facts]);
    expect(table.isBoardsOwn).toBe(false);
    expect(table.weights.map(({ criterion, weight }) => [criterion, weight.toFixed(2)])).toEqual([
      ['cost', '0.32'],
      ['upright', '0.24'],
      ['confidence', '0.20'],
      ['finish', '0.16'],
      ['checked', '0.08'],
    ]);
    expect(USUAL_WEIGHTS.map(({ criterion }) => criterion)).not.toContain('benefit');
    expect(CRITERIA.map(criterion => CRITERION_TITLES[criterion])).toEqual([
      'Low budget',
      'Early finish',
      'Likely done before the grant ends, or by the last date',
      'Sinks upright by the screening',
      'Small share not yet checked',
      'Benefit against cost',
    ]);
  });
});
