import { describe, expect, test } from 'vitest';
import { compareScenarios, comparisonJson, riskStep, type RiskFacts } from '../../../core/scenario';
import { summarise } from '../../../core/evaluation';
import { demoProject, estimated, evaluated } from '../evaluation/demo';

const project = demoProject();
const [a, b] = project.scenarios.map(scenario => evaluated(project, scenario.id));
if (a === undefined || b === undefined) throw new Error('the example has scenarios');
const [first, second] = [a, b].map(one => summarise(estimated(one)));

/** The same scenarios without any contingency. */
function without(id: string) {
  return evaluated({ ...project, contingency: { policy: 'confidence' } }, id);
}

function facts(scenario: string, p80: number): RiskFacts {
  const days = { finishP50: '2028-01-01', finishP80: '2028-02-01' };
  return {
    scenario,
    trials: 1,
    seed: 1,
    p50: 0,
    p80,
    p90: 0,
    ...days,
    drivers: [],
    cost: Float64Array.of(0),
  };
}

describe('the step of risk beside a bridge', () => {
  test('is the difference of the contingencies, and leads from the totals to the budgets to the cent', () => {
    const step = riskStep(a, b);
    expect(step?.kind).toBe('contingency');
    expect(step?.title).toMatch(/^Risk: the contingency, a percentage/);
    const cents = (key: 'total' | 'budget' | 'contingency') =>
      (second?.[key]?.cents ?? Number.NaN) - (first?.[key]?.cents ?? Number.NaN);
    expect(step?.amount.cents).toBe(cents('contingency'));
    expect(step?.end.amount.cents).toBe(cents('budget'));
    const [bridge] = compareScenarios([a, b]).bridges;
    expect((bridge?.total.cents ?? 0) + (bridge?.risk?.amount.cents ?? 0)).toBe(step?.end.amount.cents);
  });

  test('turns its sign when the two are swapped', () => {
    expect(riskStep(b, a)?.amount.cents).toBe(0 - (riskStep(a, b)?.amount.cents ?? 0));
  });

  test('without a contingency it is what 80 of 100 runs add beyond the totals; without a simulation there is none', () => {
    const [c, d] = [without(a.scenario.id), without(b.scenario.id)];
    expect(riskStep(c, d)).toBeUndefined();
    const risks = [facts(a.scenario.id, 7_000_000.25), facts(b.scenario.id, 7_500_000.5)];
    const step = riskStep(c, d, risks);
    expect(step?.kind).toBe('simulation');
    expect(step?.end.amount.cents).toBe(50_000_025);
    const [totalC, totalD] = [c, d].map(one => summarise(estimated(one)).total?.cents ?? Number.NaN);
    expect(step?.amount.cents).toBe(50_000_025 - ((totalD ?? 0) - (totalC ?? 0)));
  });

  test('stands in the comparison as JSON with where it leads', () => {
    const json = JSON.stringify(comparisonJson(compareScenarios([a, b])));
    expect(json).toContain('"risk":{"title":"Risk: the contingency');
    expect(json).toContain('"to":{"title":"Difference of the budgets"');
  });
});
