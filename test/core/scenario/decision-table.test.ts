import { describe, expect, test } from 'vitest';
import type { Evaluation } from '../../../core/evaluation';
import {
  compareScenarios,
  comparisonJson,
  decisionTable,
  differenceTable,
  pairedRisk,
  riskFacts,
  type DecisionTable,
} from '../../../core/scenario';
import { demoProject, estimated, evaluated } from '../evaluation/demo';

const project = demoProject();
const evaluations = project.scenarios.map(scenario => evaluated(project, scenario.id));
const [a, b] = evaluations;
if (a === undefined || b === undefined) throw new Error('the example has three scenarios');

/** A scenario of the same estimate with another share of contingency: nothing but its budget differs. */
function unmet(evaluation: Evaluation): Evaluation {
  const estimate = estimated(evaluation);
  return {
    ...evaluation,
    estimate: {
      ...estimate,
      unmetGoals: [{ material: 'oil', title: 'Oil', goal: 'none left', leftOut: [] }],
    },
  };
}

describe('the decision table', () => {
  test('a scenario that leaves a clean-up goal unmet is never ranked, however cheap it is', () => {
    for (const weights of [[], [{ criterion: 'cost' as const, weight: '1' }]]) {
      const table = decisionTable([unmet(a), b], { weights });
      expect(table.ranked.map(({ letter }) => letter)).toEqual(['B']);
      expect(table.leftOut).toMatchObject([
        { letter: 'A', reason: expect.stringContaining('Oil') as unknown },
      ]);
    }
  });

  test('with one criterion the best of it comes first, and no weight can turn that', () => {
    const cheapest = [...evaluations].sort((x, y) => totalOf(x) - totalOf(y))[0];
    const table = decisionTable(evaluations, { weights: [{ criterion: 'cost', weight: '1' }] });
    expect(table.ranked[0]?.letter).toBe(cheapest?.letter);
    expect(table.sensitivity).toEqual([{ criterion: 'cost', weight: 1, from: 0, to: 1 }]);
  });

  test('at the end of a weight range the two scenarios named have the same score', () => {
    const weights = [
      { criterion: 'cost' as const, weight: '0.5' },
      { criterion: 'finish' as const, weight: '0.3' },
      { criterion: 'checked' as const, weight: '0.2' },
    ];
    const table = decisionTable(evaluations, { weights });
    for (const range of table.sensitivity)
      for (const [at, other] of [
        [range.from, range.firstBelow],
        [range.to, range.firstAbove],
      ] as const) {
        if (other === undefined) continue;
        const others = weights.filter(({ criterion }) => criterion !== range.criterion);
        const rest = others.reduce((sum, { weight }) => sum + Number(weight), 0);
        const moved = decisionTable(evaluations, {
          weights: [
            { criterion: range.criterion, weight: at.toFixed(6) },
            ...others.map(({ criterion, weight }) => ({
              criterion,
              weight: ((Number(weight) * (1 - at)) / rest).toFixed(6),
            })),
          ],
        });
        const score = (letter: string | undefined) => moved.ranked.find(one => one.letter === letter)?.score;
        expect(score(other)).toBeCloseTo(score(table.ranked[0]?.letter) ?? Number.NaN, 4);
      }
  });

  test('a scenario that is worse in everything is dominated, and the same twice is not', () => {
    const table = decisionTable(
      [a, { ...a, letter: 'Z', scenario: { ...a.scenario, id: 'again' } }],
      undefined,
    );
    expect(table.dominance).toEqual([]);
  });
});

describe('the difference table', () => {
  test('shows only rows in which scenarios differ, inputs and results', () => {
    const rows = differenceTable(evaluations);
    expect(rows.some(({ group }) => group === 'input')).toBe(true);
    expect(rows.find(({ key }) => key === 'total')?.values.length).toBe(evaluations.length);
    for (const { values } of rows)
      expect(new Set(values.map(value => JSON.stringify(value))).size).toBeGreaterThan(1);
    expect(differenceTable([a, a])).toEqual([]);
  });
});

describe('two simulations with one seed', () => {
  test('share their luck: a scenario against itself differs in no trial', () => {
    const plan = { trials: 500, seed: 7 };
    const [first, other] = [riskFacts(a, plan), riskFacts(b, plan)];
    if (first === undefined || other === undefined) throw new Error('the example can be simulated');
    expect(pairedRisk(first, first)).toMatchObject({
      p80Difference: 0,
      median: 0,
      atMost: 0,
      firstCheaper: 0,
    });
    const apart = pairedRisk(first, other);
    expect(apart?.p80Difference).toBeCloseTo(other.p80 - first.p80, 6);
    const json = comparisonJson(compareScenarios([a, b], [first, other]));
    expect(json['risk']).toHaveLength(1);
    expect(JSON.stringify(json)).not.toContain('null');
  }, 60_000);
});

describe('the chance to be done before the grant ends', () => {
  const facts = (scenario: string, missesGrant: number, p80 = 1) => ({
    ...{ scenario, trials: 100, seed: 1, p50: 1, p80, p90: 1 },
    ...{ finishP50: '2029-01-01', finishP80: '2029-01-01', drivers: [], cost: new Float64Array(1) },
    missesGrant,
  });
  const scoreOf = (table: DecisionTable, letter: string) =>
    table.ranked.find(one => one.letter === letter)?.scores.confidence;

  test('counts by the usual weights once every scenario was simulated', () => {
    const [risky, safe] = [facts(a.scenario.id, 0.6), facts(b.scenario.id, 0.25)];
    const before = decisionTable([a, b], undefined);
    const after = decisionTable([a, b], undefined, [risky, safe]);
    expect(after.weights.map(({ criterion }) => criterion)).toContain('confidence');
    expect([scoreOf(after, a.letter), scoreOf(after, b.letter)]).toEqual([0, 1]);
    expect(decisionTable([a, b], undefined, [risky]).weights).toEqual(before.weights);
    // Without a simulation the others keep their proportions; what is alike and the screen are left out here.
    const [cost, finish] = before.weights.map(({ weight }) => weight);
    expect((cost ?? 0) / (finish ?? 1)).toBeCloseTo(2, 10);
    expect([before.notCompared, before.alike]).toEqual([['upright', 'confidence'], ['checked']]);
  });

  test('keeps the scenario that risks the grant from being as good in all that counts', () => {
    const cheap = evaluations.find(({ scenario }) => scenario.id === 'early-sinking');
    if (cheap === undefined) throw new Error('the example sinks early in one scenario');
    const isDominant = (table: DecisionTable) =>
      table.dominance.some(({ better }) => better === cheap.letter);
    expect(isDominant(decisionTable([a, cheap], undefined))).toBe(true);
    const risks = [facts(a.scenario.id, 0.25, 2), facts(cheap.scenario.id, 0.6)];
    expect(isDominant(decisionTable([a, cheap], undefined, risks))).toBe(false);
  });
});

function totalOf(evaluation: Evaluation): number {
  const { money } = estimated(evaluation);
  return money.result.money(money.sums.total)?.cents ?? Number.NaN;
}
