import { describe, expect, test } from 'vitest';
import { pairedRisk, type RiskFacts } from '../../../core/scenario';

const facts = (scenario: string, cost: readonly number[], seed = 1): RiskFacts => ({
  ...{ scenario, trials: cost.length, seed, p50: 0, p90: 0, finishP50: '', finishP80: '', drivers: [] },
  p80: Math.max(...cost),
  cost: Float64Array.from(cost),
});

describe('two scenarios under the same luck', () => {
  const first = facts('a', [10, 20, 30, 40, 50]);
  test('are taken from each other trial by trial', () => {
    // differences −5, 0, 10, 20, 5: the middle is 5, four of five are at most 10, three are above nothing
    expect(pairedRisk(first, facts('b', [5, 20, 40, 60, 55]))).toEqual({
      ...{ from: 'a', to: 'b', p80Difference: 10, median: 5, atMost: 10, firstCheaper: 0.6 },
    });
  });
  test('are not compared when they were not run alike', () => {
    expect(pairedRisk(first, facts('b', [5, 20, 40, 60]))).toBeUndefined();
    expect(pairedRisk(first, facts('b', [5, 20, 40, 60, 55], 2))).toBeUndefined();
  });
});
