import { describe, expect, it } from 'vitest';
import type { RangedGiven } from '../../../core/evaluation/risk/ranged-givens';
import { shippedRisk } from '../../../core/evaluation/risk/risk-file';
import {
  idsThatMatter,
  idsWorthCarrying,
  likelyCashNeed,
  screenGivens,
  shapeOf,
} from '../../../core/evaluation/risk/screen-givens';
import type { TrialModel } from '../../../core/evaluation/risk/trial-model';
import { TRIALS_PER_CHUNK, varianceOf } from '../../../core/risk';
import type { ChainScheduler } from '../../../core/scheduling';

const given = (
  id: string,
  low: number,
  likely: number,
  high: number,
  more: Partial<RangedGiven> = {},
): RangedGiven => ({
  ...{ id, title: id, column: id, rows: [], work: [], money: [], items: [], stages: new Set() },
  ...{ low, likely, high, ...more },
});

/** The cost is 1 000 + 10 × the price + 2 × the pace, and the finish 50 + 3 × the pace. */
function study(givens: readonly RangedGiven[]) {
  const columns = new Map(givens.map(({ id }) => [id, new Float64Array(TRIALS_PER_CHUNK)]));
  const value = (id: string, trial: number) => columns.get(id)?.[trial] ?? 0;
  const total = new Float64Array(TRIALS_PER_CHUNK);
  const asked: number[] = [];
  const model: TrialModel = {
    ...{ columns, liveSteps: 1 },
    work: () => [],
    money: ({ n, asksCash }) => {
      expect(asksCash).toBe(false);
      for (let t = 0; t < n; t++) total[t] = 1000 + 10 * value('price', t) + 2 * value('pace', t);
      return { total, lines: [total] };
    },
  };
  const scheduler: ChainScheduler = {
    ...{ activities: ['only'], first: 0, horizon: 1000, plannedFinish: 50, openRuns: new Map() },
    ...{ closes: new Uint8Array(1), isMilestone: new Uint8Array(1), isUnderWay: new Uint8Array(1) },
    countDriving: () => undefined,
    chunk: ({ n, finish, starts, finishes }) => {
      asked.push(n);
      expect([starts.length, finishes.length]).toEqual([1, 1]);
      for (let t = 0; t < n; t++) finish[t] = 50 + 3 * value('pace', t);
    },
  };
  return { model, scheduler, asked, columns };
}

describe('what each given does alone', () => {
  const price = given('price', 5, 8, 20, { shape: 'uniform' });
  const pace = given('pace', 1, 2, 4, { shape: 'uniform' });

  it('is what its two ends move, all others at their likely values, by how it is spread', () => {
    const { model, scheduler, asked, columns } = study([price, pace]);
    const [ofPrice, ofPace] = screenGivens([price, pace], model, scheduler);
    // A uniform spread has a twelfth of the square of its width: 10 × 15 = 150 dollars; 2 × 3 and 3 × 3.
    expect(ofPrice).toMatchObject({ id: 'price', swing: 150, finish: 0 });
    expect(ofPrice?.cost).toBeCloseTo(150 ** 2 / 12, 6);
    expect(ofPace).toMatchObject({ id: 'pace', swing: 6 });
    expect([ofPace?.cost, ofPace?.finish]).toEqual([expect.closeTo(3, 9), expect.closeTo(6.75, 9)]);
    expect(asked).toEqual([4]);
    // Afterwards all stand at their likely values again.
    expect([...(columns.get('price') ?? [])].every(value => value === 8)).toBe(true);
    expect([...(columns.get('pace') ?? [])].every(value => value === 2)).toBe(true);
  });

  it('is found for more givens than one chunk has room for, each beside the likely values of the others', () => {
    const half = TRIALS_PER_CHUNK / 2;
    const others = Array.from({ length: half }, (_, i) => given(`other-${i}`, 0, 1, 2));
    const all = [...others.slice(0, -1), pace, price];
    const { model, scheduler, asked } = study(all);
    const effects = screenGivens(all, model, scheduler);
    expect(effects.map(effect => effect.id)).toEqual(all.map(({ id }) => id));
    expect(asked).toEqual([TRIALS_PER_CHUNK, 2]);
    expect(effects.at(-1)).toMatchObject({ id: 'price', swing: 150 });
    expect(effects.at(-2)).toMatchObject({ id: 'pace', swing: 6 });
    expect(effects.slice(0, -2).every(effect => effect.swing === 0)).toBe(true);
  });

  it('leaves the cash need of the plan to be asked with every given at its likely value', () => {
    const { model, scheduler, columns } = study([price, pace]);
    for (const one of [price, pace]) columns.get(one.id)?.fill(one.likely);
    const need = likelyCashNeed(model, scheduler, ({ n }, [line]) => Float64Array.of(n, line?.[0] ?? 0));
    expect(need).toBe(1);
    expect(likelyCashNeed(model, scheduler, (_, [line]) => Float64Array.of(line?.[0] ?? 0))).toBe(1084);
    expect(likelyCashNeed(model, scheduler, undefined)).toBeUndefined();
  });
});

describe('the givens that are drawn', () => {
  const effect = (id: string, cost: number, finish: number, swing = 0) => ({ id, cost, finish, swing });

  it('explain 995 parts in a thousand of the variance of cost and of finish, the largest first', () => {
    const effects = [
      effect('a', 900, 0),
      effect('b', 94, 0),
      effect('c', 4, 0),
      effect('d', 2, 5),
      effect('e', 0, 0),
    ];
    // 900 + 94 are 994 of 1 000, so the third is still taken; of the finish the fourth is all.
    expect([...idsThatMatter(effects)].toSorted()).toEqual(['a', 'b', 'c', 'd']);
    expect([...idsThatMatter([effect('a', 900, 0), effect('b', 95, 0), effect('c', 5, 0)])]).toEqual([
      'a',
      'b',
    ]);
    expect(idsThatMatter([effect('e', 0, 0)]).size).toBe(0);
  });

  it('are all but those whose swings together come to two thousandths of the total, and those of the finish', () => {
    const effects = [
      effect('a', 1, 0, 50),
      effect('b', 1, 0, 1.5),
      effect('c', 1, 0, 0.5),
      effect('d', 1, 1, 0.1),
    ];
    // Of 1 000 two: 0.1 + 0.5 is below, with 1.5 it is 2.1.
    expect([...idsWorthCarrying(effects, 1000)].toSorted()).toEqual(['a', 'b', 'd']);
    expect([...idsWorthCarrying(effects, -1000)].toSorted()).toEqual(['a', 'b', 'd']);
    expect([...idsWorthCarrying(effects, 1050)].toSorted()).toEqual(['a', 'd']);
    expect([...idsWorthCarrying(effects, 0)].toSorted()).toEqual(['a', 'b', 'c', 'd']);
  });

  it('are spread as the project says, and by themselves with most weight at the likely value', () => {
    const of = (shape: RangedGiven['shape'], more: Partial<RangedGiven> = {}) =>
      shapeOf(given('g', 1, 2, 4, { ...(shape === undefined ? {} : { shape }), ...more }));
    expect(of(undefined)).toEqual({ kind: 'pert', low: 1, likely: 2, high: 4 });
    expect(of('triangular')).toEqual({ kind: 'triangular', low: 1, likely: 2, high: 4 });
    expect(of('uniform')).toEqual({ kind: 'uniform', low: 1, high: 4 });
    const outcomes = [
      { value: '1', probability: '0.25' },
      { value: '3', probability: '0.75' },
    ];
    expect(of('discrete', { outcomes })).toEqual({
      kind: 'discrete',
      values: [1, 3],
      probabilities: [0.25, 0.75],
    });
    expect(of('discrete')).toEqual({ kind: 'discrete', values: [], probabilities: [] });
    expect(of('lognormal').kind).toBe('lognormal');
    // 0.25 × (1 − 2.5)² + 0.75 × (3 − 2.5)².
    expect(varianceOf(of('discrete', { outcomes }))).toBeCloseTo(0.75, 9);
  });
});

describe('the risk file', () => {
  it('is read once, with events, drivers and twelve months of weather each', () => {
    const file = shippedRisk();
    expect(shippedRisk()).toBe(file);
    expect(file.events.length).toBeGreaterThan(3);
    for (const { workable } of file.weather.series) expect(workable).toHaveLength(12);
  });
});
