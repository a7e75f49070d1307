import { describe, expect, test } from 'vitest';
import { randomStream } from '../../../core/base';
import { evaluate, type Evaluation } from '../../../core/evaluation';
import type { Project } from '../../../core/project';
import { differenceBridge } from '../../../core/scenario';
import { demoProject } from '../evaluation/demo';

/** Pairs that are bridged: 1,000 when the long run is asked for. */
const PAIRS = process.env['REEFWRIGHT_LONG'] === '1' ? 1000 : 24;
/** Evaluated projects from which the pairs are drawn: as many as give so many pairs. */
const POOL = Math.ceil((1 + Math.sqrt(1 + 8 * PAIRS)) / 2);

/** The example with another wage, profit, tow, tank, options and hours of a day, by a number. */
function drawn(seed: number): Project {
  const project = demoProject();
  const next = randomStream(seed, 'drawn pair');
  const between = (low: number, high: number, digits = 0) => (low + (high - low) * next()).toFixed(digits);
  const judged = { basis: 'judgement' as const, source: 'Drawn for a test' };
  const figure = (value: string, unit: string) => ({ value, unit, ...judged });
  const tanks = project.vessel.tanks.map(tank =>
    next() < 0.5 ? tank : { ...tank, capacity: figure(between(5, 400, 1), 'm3') },
  );
  const profit = { at: 'markUps/profit/share', figure: figure(between(0.03, 0.2, 3), '1') };
  return {
    ...project,
    vessel: { ...project.vessel, tanks },
    site: { ...project.site, towDistance: figure(between(20, 900), 'nmi') },
    rates: { ...project.rates, overrides: next() < 0.3 ? [] : [profit] },
  };
}

function evaluatedAs(seed: number): Evaluation {
  const project = drawn(seed);
  const scenario = project.scenarios[seed % project.scenarios.length]?.id ?? '';
  return evaluate(project, { today: '2026-11-24', seed: 1, schedules: 1, upright: false, scenario });
}

describe('bridges between drawn projects', () => {
  test(`${PAIRS} pairs: the steps are whole cents that add up to the difference, and swapping the two turns every sign`, () => {
    const pool = Array.from({ length: POOL }, (_, i) => evaluatedAs(i + 1));
    const pairs = pool.flatMap((first, i) => pool.slice(i + 1).map(second => [first, second] as const));
    let bridged = 0;
    let several = 0;
    for (const [first, second] of pairs.slice(0, PAIRS)) {
      const there = differenceBridge(first, second);
      const back = differenceBridge(second, first);
      const cents = there?.steps.map(step => step.amount.cents) ?? [];
      expect(cents.every(Number.isSafeInteger)).toBe(true);
      expect(cents.reduce((sum, one) => sum + one, 0)).toBe(there?.total.cents);
      expect(back?.steps.map(({ key, amount }) => [key, amount.cents + 0])).toEqual(
        there?.steps.map(({ key, amount }) => [key, 0 - amount.cents]),
      );
      bridged++;
      if (cents.length > 1) several++;
    }
    expect(bridged).toBe(PAIRS);
    expect(several).toBeGreaterThan(PAIRS / 2);
  }, 3_000_000);
});
