import { describe, expect, test } from 'vitest';
import { summarise, type Evaluation } from '../../../core/evaluation';
import {
  averagedSteps,
  comparedWords,
  compareScenarios,
  comparisonJson,
  criterionTitle,
  decisionOf,
  decisionTable,
  differenceBridge,
  differenceTable,
  dominanceWords,
  isPermittable,
  pairedRisks,
  scoreIn,
  summaryOf,
  turnedByWorseWords,
  type RiskFacts,
} from '../../../core/scenario';
import { uprightChange } from '../../../core/scenario/upright-change';
import { demoProject, estimated, evaluated } from '../evaluation/demo';

const project = demoProject();
const a = evaluated(project, 'fishing-reef');
const b = evaluated(project, 'diver-access-early');
const total = (one: Evaluation) => summarise(estimated(one)).total?.cents ?? Number.NaN;

/** The first scenario under another name, changed as the test needs it. */
function named(id: string, letter: string, change: Partial<Evaluation> = {}): Evaluation {
  return { ...a, letter, scenario: { ...a.scenario, id }, ...change };
}
const parts = estimated(a);
const finishing = (id: string, letter: string, finish: string) =>
  named(id, letter, { estimate: { ...parts, schedule: { ...parts.schedule, finish } } });

const facts = (scenario: string, change: Partial<RiskFacts> = {}): RiskFacts => ({
  ...{
    scenario,
    trials: 4,
    seed: 1,
    p50: 1,
    p80: 2,
    p90: 3,
    finishP50: '2029-01-01',
    finishP80: '2029-02-01',
  },
  ...{ drivers: [], cost: Float64Array.of(1, 2, 3, 4), ...change },
});

describe('the decision table by hand', () => {
  // Ten days between the first and the last to finish: scores 1, 0.6 and 0. The chances run the other way: 0, 0.5, 1.
  const three = [
    finishing('x', 'X', '2029-01-01'),
    finishing('y', 'Y', '2029-01-05'),
    finishing('z', 'Z', '2029-01-11'),
  ];
  const risks = three.map(({ scenario, estimate }, i) =>
    facts(scenario.id, {
      chanceOfDeadline: (i + 1) / 5,
      finishP80: estimate?.schedule.finish ?? never(),
    }),
  );
  const choices = (finish: string, confidence: string) => ({
    weights: [
      { criterion: 'finish' as const, weight: finish },
      { criterion: 'confidence' as const, weight: confidence },
    ],
  });
  const near = (value: number): unknown => expect.closeTo(value, 9);

  test('scales every criterion from the worst to the best and tells where the order turns', () => {
    const table = decisionTable(three, choices('3', '1'), risks);
    expect(table.isBoardsOwn).toBe(true);
    expect(table.weights).toEqual([
      { criterion: 'finish', weight: 0.75 },
      { criterion: 'confidence', weight: 0.25 },
    ]);
    expect(table.ranked.map(({ letter, score }) => [letter, score])).toEqual([
      ['X', near(0.75)],
      ['Y', near(0.575)],
      ['Z', near(0.25)],
    ]);
    expect(table.ranked.map(one => [scoreIn(one, 'finish'), scoreIn(one, 'confidence')])).toEqual([
      [1, 0],
      [near(0.6), near(0.5)],
      [0, 1],
    ]);
    // X and Y are level where w = 0.6 w + 0.5 (1 - w): at 5 / 9.
    expect(table.sensitivity).toEqual([
      { criterion: 'finish', weight: 0.75, from: near(5 / 9), to: 1, firstBelow: 'Y' },
      { criterion: 'confidence', weight: 0.25, from: 0, to: near(4 / 9), firstAbove: 'Y' },
    ]);
    expect(table.dominance).toEqual([]);
    expect(() => scoreIn(table.ranked[0] ?? never(), 'benefit')).toThrow(
      'benefit does not count in this table',
    );
  });

  test('counts weights of nothing alike, breaks ties by letter, and names who is as good in all and better in one', () => {
    const table = decisionTable([...three].reverse(), choices('0', '0'), risks);
    expect(table.weights.map(({ weight }) => weight)).toEqual([0.5, 0.5]);
    expect(table.ranked.map(({ letter }) => letter)).toEqual(['Y', 'X', 'Z']);
    const alike = risks.map(risk => ({ ...risk, missesGrant: 0.3 }));
    expect(decisionTable(three, choices('1', '1'), alike).dominance).toEqual([
      { better: 'X', worse: 'Y' },
      { better: 'X', worse: 'Z' },
      { better: 'Y', worse: 'Z' },
    ]);
  });

  test('one that nobody would choose may turn the order, and who is first without it is told', () => {
    // Finish by days 0, 10 and 40, chance to be in time 0.4, 1 and 0.8: Y leaves Z behind in both.
    const run = [
      facts('x', { missesGrant: 0.6, finishP80: '2029-01-01' }),
      facts('y', { missesGrant: 0, finishP80: '2029-01-11' }),
      facts('z', { missesGrant: 0.2, finishP80: '2029-02-10' }),
    ];
    // With Z the finish of Y scores 0.75: 0.6 of X against 0.45 + 0.4. Without Z it scores 0: 0.6 against 0.4.
    const table = decisionTable(three, choices('0.6', '0.4'), run);
    expect(table.ranked.map(({ letter, score }) => [letter, score])).toEqual([
      ['Y', near(0.85)],
      ['X', near(0.6)],
      ['Z', near(0.4 * (2 / 3))],
    ]);
    expect([table.dominance, table.firstWithoutWorse]).toEqual([[{ better: 'Y', worse: 'Z' }], 'X']);
    expect(turnedByWorseWords(table)).toBe(
      'Y comes first only beside Z, which another scenario leaves behind in all that is compared: scores run from the worst to the best of those compared. Without it X comes first.',
    );
    const [x, y] = three;
    const kept = decisionTable([x ?? never(), y ?? never()], choices('0.6', '0.4'), run);
    expect([kept.ranked[0]?.letter, kept.firstWithoutWorse]).toEqual(['X', undefined]);
    expect(turnedByWorseWords(kept)).toBeUndefined();
  });

  test('what is alike in all counts for none, and its weight goes to what separates', () => {
    const weights = [
      { criterion: 'cost' as const, weight: '3' },
      { criterion: 'finish' as const, weight: '1' },
      { criterion: 'benefit' as const, weight: '1' },
    ];
    const table = decisionTable(
      three.map(one => ({ ...one, project: { ...project, benefits: undefined } })),
      { weights },
    );
    expect([table.weights, table.alike, table.notCompared]).toEqual([
      [{ criterion: 'finish', weight: 1 }],
      ['cost'],
      ['benefit'],
    ]);
    expect(table.ranked.map(({ letter, score, scores }) => [letter, score, scores.cost])).toEqual([
      ['X', 1, undefined],
      ['Y', near(0.6), undefined],
      ['Z', 0, undefined],
    ]);
    expect(comparedWords(table)).toEqual([
      'Compared: “Early finish by the plan”.',
      'No difference, so it turns no order: “Low budget by the plan”.',
      'Left out, because a scenario has no figure for it: “Benefit against cost”.',
    ]);
    expect(dominanceWords(table)[0]).toBe(
      'By the plan X is at least as good as Y and Z in all that is compared, and better in some.',
    );
  });

  test('once all that are ranked were run, cost and finish are those that 80 in 100 runs keep', () => {
    // The plan of X is done first; in its runs it is last and dearest.
    const weights = [
      { criterion: 'cost' as const, weight: '1' },
      { criterion: 'finish' as const, weight: '1' },
    ];
    const run = [
      facts('x', { p80: 9, finishP80: '2030-01-11' }),
      facts('y', { p80: 5, finishP80: '2030-01-01' }),
      facts('z', { p80: 7, finishP80: '2030-01-06' }),
    ];
    const after = decisionTable(three, { weights }, run);
    expect(after.reading).toBe('runs');
    expect(after.ranked.map(({ letter, score }) => [letter, score])).toEqual([
      ['Y', 1],
      ['Z', near(0.5)],
      ['X', 0],
    ]);
    expect(after.weights.map(({ criterion }) => criterionTitle(criterion, after.reading))).toEqual([
      'Low budget that 80 in 100 runs stay under',
      'Early finish that 80 in 100 runs keep',
    ]);
    expect(dominanceWords(after)).toEqual([
      'Y is at least as good as X and Z in all that is compared, and better in some.',
      'Z is at least as good as X in all that is compared, and better in some.',
    ]);
    const before = decisionTable(three, { weights }, run.slice(0, 2));
    expect([before.reading, before.ranked[0]?.letter]).toEqual(['plan', 'X']);
  });

  test('leaves out who misses a goal or has no total, and says why', () => {
    const goal = (title: string) => ({ material: 'oil', title, goal: 'none left', leftOut: [] });
    const missing = named('m', 'M', { estimate: { ...parts, unmetGoals: [goal('Oil'), goal('Paint')] } });
    const { estimate: _, ...empty } = named('e', 'E');
    const table = decisionOf(compareScenarios([a, missing, empty]));
    expect(table.leftOut).toEqual([
      { scenario: 'm', letter: 'M', reason: 'leaves a clean-up goal unmet: Oil; Paint' },
      { scenario: 'e', letter: 'E', reason: 'has no total: see its findings' },
    ]);
    expect(table.ranked.map(({ scenario, title }) => [scenario, title])).toEqual([
      [a.scenario.id, a.scenario.title],
    ]);
    expect([a, missing, empty].map(isPermittable)).toEqual([true, false, false]);
    expect([summaryOf(a)?.total?.cents, summaryOf(empty)]).toEqual([total(a), undefined]);
    expect(decisionTable([], undefined).ranked).toEqual([]);
    expect(compareScenarios([a, empty]).bridges).toEqual([]);
    expect([differenceBridge(empty, a), differenceBridge(a, empty)]).toEqual([undefined, undefined]);
    const goals = differenceTable([a, missing, empty]).find(({ key }) => key === 'permittable');
    expect([goals?.title, goals?.values]).toEqual([
      'Meets every clean-up goal',
      [{ kind: 'words', words: 'yes' }, { kind: 'words', words: 'no: Oil; Paint' }, { kind: 'absent' }],
    ]);
  });
});

describe('what differs, in words', () => {
  test('names options and items by the library, and everything else by its place', () => {
    const at = (...places: string[]) => places.map(place => ({ at: place, to: '' }));
    const [option] = a.library.options.filter(({ id }) => id === 'diver-access');
    const [item] = a.library.items.filter(({ id }) => id === 'inner-openings-cut');
    const figure = (value: string, unit: string) => ({
      value,
      unit,
      basis: 'judgement' as const,
      source: 'Tried',
    });
    const other = named('o', 'O', {
      scenario: {
        ...a.scenario,
        id: 'o',
        changes: at(
          '/options/diver-access',
          '/options/gone-for-good',
          '/items/inner-openings-cut',
          '/items/gone',
          '/site/towDistance',
          '/calendars/deadline',
          '/site/towDistance/unit/none',
        ),
      },
      project: {
        ...project,
        options: { 'diver-access': 'open', 'gone-for-good': 'half-way' },
        items: [
          {
            item: 'inner-openings-cut',
            note: 'Tried',
            crewsAtOnce: figure('2', 'each'),
            hoursPerUnit: figure('3.5', 'h'),
          },
        ],
        site: { ...project.site, towDistance: figure('321', 'nmi') },
      },
    });
    const rows = differenceTable([a, other]).filter(({ group }) => group === 'input');
    const words = (id: string) => option?.values.find(value => value.id === id)?.title;
    const { towDistance } = project.site;
    expect(
      rows.map(({ key, title, values }) => [
        key,
        title,
        ...values.map(value => ('words' in value ? value.words : '')),
      ]),
    ).toEqual([
      [
        '/items/inner-openings-cut',
        item?.title,
        'as in the library',
        'crews at once: 2, hours per unit: 3.5 h',
      ],
      ['/options/diver-access', option?.title, words(option?.default ?? ''), words('open')],
      ['/options/gone-for-good', 'Gone for good', '', 'half-way'],
      ['/site/towDistance', 'Site, tow distance', `${towDistance.value} ${towDistance.unit}`, '321 nmi'],
    ]);
  });

  test('tells results with their kind, as JSON in plain values', () => {
    const late = named('late', 'L', {
      estimate: {
        ...parts,
        schedule: {
          ...parts.schedule,
          start: '2029-01-02',
          finish: '2030-01-31',
          workDays: 999.126,
          peakCrew: 7,
        },
      },
    });
    const rows = differenceTable([a, late]);
    const told = Object.fromEntries(rows.map(({ key, title, values }) => [key, [title, values[1]]]));
    expect(told).toMatchObject({
      start: ['Start', { kind: 'date', iso: '2029-01-02' }],
      finish: ['Finish', { kind: 'date', iso: '2030-01-31' }],
      'work-days': ['Work days', { kind: 'number', value: 999.13, unit: '' }],
      'peak-crew': ['Most people at once', { kind: 'number', value: 7, unit: '' }],
    });
    const { differences } = comparisonJson(compareScenarios([a, late]));
    expect(differences).toContainEqual({
      key: 'work-days',
      group: 'result',
      title: 'Work days',
      values: [parts.schedule.workDays, 999.13],
    });
    expect(uprightChange([a, late], a.scenario.id, 'late')).toStrictEqual({
      workDays: 999.126 - (parts.schedule.workDays ?? Number.NaN),
      tonnesTakenOff: 0,
    });
    expect([uprightChange([a, late], 'gone', 'late'), uprightChange([a, late], 'late', 'gone')]).toEqual([
      {},
      {},
    ]);
    const { estimate: _, ...empty } = named('e', 'E');
    expect(uprightChange([a, empty], a.scenario.id, 'e')).toEqual({});
  });
});

describe('the comparison as JSON', () => {
  test('tells the decision to four digits', () => {
    const weights = [
      { criterion: 'finish' as const, weight: '2' },
      { criterion: 'confidence' as const, weight: '1' },
    ];
    const first = { ...finishing('x', 'X', '2029-01-01'), project: { ...project, decision: { weights } } };
    const second = finishing('y', 'Y', '2029-01-05');
    const { estimate: _, ...empty } = named('e', 'E');
    const risks = [
      facts('x', { chanceOfDeadline: 0.2 }),
      facts('y', { chanceOfDeadline: 0.4, finishP80: '2029-02-09' }),
    ];
    expect(comparisonJson(compareScenarios([first, second, empty], risks))['decision']).toEqual({
      readFrom: 'runs',
      alike: [],
      notCompared: [],
      weights: [
        { criterion: 'finish', weight: 0.6667 },
        { criterion: 'confidence', weight: 0.3333 },
      ],
      boardsOwn: true,
      ranked: [
        { id: 'x', score: 0.6667, scores: { finish: 1, confidence: 0 } },
        { id: 'y', score: 0.3333, scores: { finish: 0, confidence: 1 } },
      ],
      leftOut: [{ id: 'e', reason: 'has no total: see its findings' }],
      sensitivity: [
        { criterion: 'finish', weight: 0.6667, from: 0.5, to: 1, firstBelow: 'Y' },
        { criterion: 'confidence', weight: 0.3333, from: 0, to: 0.5, firstAbove: 'Y' },
      ],
      dominance: [],
    });
  });

  test('names the one group that differs, whatever in it does', () => {
    const { schedule, planned, input } = parts;
    const late = schedule.activities.map(one => ({ ...one, finish: '2031-01-01' }));
    for (const [change, key] of [
      [{ schedule: { ...schedule, activities: late } }, 'duration'],
      [{ planned: planned.map(plan => ({ ...plan, days: plan.days + 1 })) }, 'duration'],
      [{ input: { ...input, measured: new Map() } }, 'quantity'],
      [{ input: { ...input, presence: new Map() } }, 'quantity'],
      [{ input: { ...input, overtimeShare: { ...input.overtimeShare, value: '9' } } }, 'price'],
    ] as const) {
      const bridge = differenceBridge(a, named('o', 'O', { estimate: { ...parts, ...change } }));
      expect(bridge?.steps.map(step => [step.key, step.amount.cents])).toEqual([[key, 0]]);
    }
  });

  test('carries bridges, decision and risk of two scenarios in dollars', () => {
    const risks = [
      facts(a.scenario.id, { p80: 5, cost: Float64Array.of(10, 20, 30) }),
      facts(b.scenario.id, { p80: 9, cost: Float64Array.of(11, 19, 37) }),
      facts('other luck', { seed: 2 }),
    ];
    const comparison = compareScenarios([a, b, named('other luck', 'O'), named('unrun', 'U')], risks);
    expect(pairedRisks(comparison)).toHaveLength(1);
    const json = comparisonJson(comparison);
    // 1, -1 and 7 apart: the middle is 1, 80 of 100 are at most 7, the first is cheaper in two of three.
    expect(json['risk']).toEqual([
      {
        ...{ from: a.scenario.id, to: b.scenario.id, p80Difference: 4, median: 1, atMost: 7 },
        firstCheaper: 0.6667,
      },
    ]);
    const direct = parts.money.result.money(parts.money.sums.direct)?.cents ?? Number.NaN;
    expect(json['scenarios']).toMatchObject([
      {
        ...{
          id: a.scenario.id,
          title: a.scenario.title,
          letter: 'A',
          p50: 1,
          p80: 5,
          finishP80: '2029-02-01',
        },
        total: total(a) / 100,
        directCost: direct / 100,
      },
      { id: b.scenario.id, letter: b.letter, p80: 9 },
      { id: 'other luck', letter: 'O' },
      { id: 'unrun', letter: 'U' },
    ]);
    const bridge = comparison.bridges[0] ?? never();
    expect(json['bridges']).toMatchObject([
      {
        ...{ from: a.scenario.id, to: b.scenario.id, total: (total(b) - total(a)) / 100 },
        steps: bridge.steps.map(({ title, amount }) => ({ title, amount: amount.cents / 100 })),
        risk: { title: bridge.risk?.title, amount: (bridge.risk?.amount.cents ?? Number.NaN) / 100 },
      },
      { to: 'other luck', steps: [], total: 0 },
      { to: 'unrun', steps: [], total: 0 },
    ]);
    expect(bridge.steps.map(({ key, title }) => [key, title])).toContainEqual([
      'quantity',
      'Quantities, crews and ways of working',
    ]);
    expect(Object.keys(comparisonJson(compareScenarios([a])))).not.toContain('risk');
  });
});

test('a cent that cannot be parted goes to the first by name, up or down', () => {
  expect(averagedSteps(['b', 'a'], changed => (changed.size === 2 ? 1 : 0))).toEqual([0, 1]);
  expect(averagedSteps(['a', 'b'], changed => (changed.size === 2 ? -1 : 0))).toEqual([-1, 0]);
  // Of 2 and 1 three times: 2/3 each is cut to nothing, two cents are left, for the first two by name.
  expect(averagedSteps(['c', 'b', 'a'], changed => (changed.size === 3 ? 2 : 0))).toEqual([0, 1, 1]);
  expect(averagedSteps([], () => 7)).toEqual([]);
  expect(() => averagedSteps(['a'], () => 0.5)).toThrow('0.5 is not a whole number of cents');
});

function never(): never {
  throw new Error('it is there');
}
