import { describe, expect, test } from 'vitest';
import { compareScenarios, comparisonJson, differenceBridge } from '../../../core/scenario';
import { estimateJson } from '../../../core/evaluation';
import { sumMoney } from '../../../core/money';
import { mixedTotal } from '../../../core/scenario/hybrid';
import { demoProject, estimated, evaluated } from '../evaluation/demo';

const project = demoProject();
const [a, b, c] = project.scenarios.map(scenario => evaluated(project, scenario.id));
if (a === undefined || b === undefined || c === undefined) throw new Error('the example has three scenarios');

describe('what separates the scenarios of the example', () => {
  test('steps add up to the difference of the totals to the cent, and several groups differ', () => {
    for (const bridge of [differenceBridge(a, b), differenceBridge(a, c), differenceBridge(b, c)]) {
      expect(bridge?.steps.length).toBeGreaterThan(1);
      expect(sumMoney(bridge?.steps.map(step => step.amount) ?? []).cents).toBe(bridge?.total.cents);
    }
    expect(differenceBridge(a, b)?.total.cents).toBe(
      Math.round((Number(estimateJson(b)['total']) - Number(estimateJson(a)['total'])) * 100),
    );
  });

  test('swapping two scenarios turns every sign', () => {
    const [there, back] = [differenceBridge(a, c), differenceBridge(c, a)];
    expect(back?.steps.map(({ key, amount }) => [key, amount.cents + 0])).toEqual(
      there?.steps.map(({ key, amount }) => [key, 0 - amount.cents]),
    );
  });

  test('a mixture of one scenario alone is that scenario, to the cent', () => {
    const parts = [estimated(a), estimated(b)] as const;
    expect(mixedTotal(parts, () => parts[0])).toBe(
      parts[0].money.result.money(parts[0].money.sums.total)?.cents,
    );
    expect(mixedTotal(parts, () => parts[1])).toBe(
      parts[1].money.result.money(parts[1].money.sums.total)?.cents,
    );
  });

  test('a scenario is separated from itself by nothing', () => {
    expect(differenceBridge(a, a)).toEqual({
      from: a.scenario.id,
      to: a.scenario.id,
      steps: [],
      total: expect.objectContaining({ cents: 0 }) as unknown,
    });
  });

  test('a higher profit alone is a step of price alone', () => {
    const dearer = structuredClone(project);
    dearer.rates.overrides.push({
      at: 'markUps/profit/share',
      figure: { value: '0.2', unit: '1', basis: 'judgement', source: 'Tried in a test' },
    });
    const bridge = differenceBridge(a, evaluated(dearer, a.scenario.id));
    expect(bridge?.steps.map(step => step.key)).toEqual(['price']);
    expect(bridge?.total.cents).toBeGreaterThan(0);
  });

  test('the comparison as JSON has no null and leaves out what is not known', () => {
    const json = comparisonJson(compareScenarios([a, b]));
    expect(JSON.stringify(json)).not.toContain('null');
    expect(json).toMatchObject({
      scenarios: [
        { id: a.scenario.id, letter: 'A' },
        { id: b.scenario.id, letter: 'B' },
      ],
      bridges: [{ from: a.scenario.id, to: b.scenario.id }],
    });
  });
});
