import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  chanceOfMissing,
  contingencyAt,
  contingencyBy,
  equalChanceLine,
  evenlySafe,
  frontier,
  jointConfidence,
  jointView,
  policyOf,
  simulate,
  type SimulationResult,
} from '../../../core/risk';
import { prepare } from './small-project';

const prepared = prepare({
  ranges: {
    asbestos: { kind: 'triangular', low: 80_000, likely: 100_000, high: 190_000 },
    tow: { kind: 'triangular', low: 20_000, likely: 25_000, high: 60_000 },
    days: { kind: 'triangular', low: 40, likely: 50, high: 90 },
    scrap: { kind: 'uniform', low: 0, high: 20_000 },
  },
  activities: { work: { days: read => read('days') } },
  lines: {
    asbestos: read => Math.round(read('asbestos') * 100) / 100,
    tow: read => Math.round(read('tow') * 100) / 100,
    berth: (_, finish) => Math.round(finish * 1234.56 * 100) / 100,
    fee: () => 4321.09,
    scrap: read => -Math.round(read('scrap') * 100) / 100,
  },
});

function simulated(): SimulationResult {
  const run = simulate(prepared, { trials: 5000, seed: 8, ranksDrivers: false });
  if (run === undefined) throw new Error('the run was not asked to stop');
  return run;
}
const result = simulated();

describe('contingency', () => {
  it.each([0.5, 0.7, 0.8, 0.9])('at %d is split to lines that add up to it to the cent', confidence => {
    const { amount, lines, budget } = contingencyAt(prepared, result, confidence);
    expect(amount).toBeCloseTo(budget - prepared.plan.total, 6);
    expect(amount).toBeGreaterThan(0);
    expect(lines.reduce((sum, l) => sum + Math.round(l.amount * 100), 0)).toBe(Math.round(amount * 100));
    expect(lines.every(l => l.amount >= 0)).toBe(true);
  });

  it('goes to the lines that are uncertain, most to the widest, none to a fixed fee', () => {
    const parts = new Map(contingencyAt(prepared, result, 0.8).lines.map(l => [l.line, l.amount]));
    expect(parts.get('fee')).toBe(0);
    expect(parts.get('asbestos')).toBeGreaterThan(parts.get('tow') ?? Infinity);
  });

  it('is nothing when the plan already covers the confidence', () => {
    const { amount, lines } = contingencyAt(prepared, result, 0.01);
    expect([amount, lines.every(l => l.amount === 0)]).toEqual([0, true]);
  });

  it('is set by a percentage or a confidence, and both at once is a finding', () => {
    const percentage = { estimateClass: 3, share: 0.15 } as const;
    expect(policyOf({ percentage, confidence: 0.8 }, '/p')).toMatchObject({
      code: 'risk/two-contingencies',
      weight: 'blocks',
    });
    expect(policyOf({}, '/p')).toMatchObject({ code: 'risk/no-contingency-policy' });
    expect(policyOf({ percentage }, '/p')).toEqual({ kind: 'percentage', ...percentage });
    const set = contingencyBy({ kind: 'percentage', ...percentage }, prepared, result);
    expect(set.amount).toBe(Math.round(prepared.plan.total * 15) / 100);
    expect(set.confidence).toBe(
      jointConfidence(result.samples.total, result.samples.finish, set.budget, Infinity),
    );
    expect(contingencyBy({ kind: 'confidence', confidence: 0.8 }, prepared, result)).toEqual(
      contingencyAt(prepared, result, 0.8),
    );
  });
});

describe('joint confidence', () => {
  it('is never above the chance of the money or of the date alone', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 4999 }), fc.integer({ min: 0, max: 4999 }), (a, b) => {
        const view = jointView(result, result.samples.total[a] ?? 0, result.samples.finish[b] ?? 0);
        expect(view.joint).toBeLessThanOrEqual(Math.min(view.insideMoney, view.insideDate));
        expect(view.joint).toBeGreaterThanOrEqual(view.insideMoney + view.insideDate - 1 - 1e-12);
      }),
    );
  });

  it('of independent cost and date is the product of both chances', () => {
    // Four trials, every pairing of two costs and two dates.
    const [total, finish] = [Float64Array.of(1, 1, 2, 2), Float64Array.of(1, 2, 1, 2)];
    expect([
      jointConfidence(total, finish, 1, 1),
      jointConfidence(total, finish, 2, 1),
      jointConfidence(total, finish, 2, 2),
    ]).toEqual([0.25, 0.5, 1]);
  });

  it('is said in one sentence', () => {
    expect(jointView(result, Infinity, Infinity).sentence).toBe(
      '100 in 100 runs end inside the money and the date.',
    );
  });

  it('leaves out trials without an answer', () => {
    expect(jointConfidence(Float64Array.of(1, Number.NaN), Float64Array.of(1, Number.NaN), 2, 2)).toBe(1);
  });
});

describe('the budget and date that are each as safe as the other', () => {
  it.each([0.5, 0.8, 0.95])(
    'hold together with %d, and the next lower percentile of both does not',
    share => {
      const point = evenlySafe(result, share);
      if (point === undefined) throw new Error('the run has answers');
      const { total, finish } = result.samples;
      expect(jointConfidence(total, finish, point.budget, point.finish)).toBe(point.joint);
      expect(point.joint).toBeGreaterThanOrEqual(share);
      const [money, date] = [
        jointConfidence(total, finish, point.budget, Infinity),
        jointConfidence(total, finish, Infinity, point.finish),
      ];
      expect(Math.abs(money - date)).toBeLessThan(0.002);
      // No cheaper budget holds with that date, and the percentile below it of both does not hold.
      expect(jointConfidence(total, finish, point.budget - 0.01, point.finish)).toBeLessThan(share);
      const step = (q: number) => [total, finish].map(of => of.toSorted()[Math.ceil(q * of.length) - 1] ?? 0);
      const [budget = 0, day = 0] = step(Math.round(date * 1000 - 1) / 1000);
      expect(jointConfidence(total, finish, budget, day)).toBeLessThan(share);
    },
  );

  it('have the least budget of their date where many runs end on one day', () => {
    // Ten runs of 1 to 10 dollars, all but the dearest on day 5: 8 of them end inside 8 dollars by day 5.
    const total = Float64Array.from({ length: 10 }, (_, run) => run + 1);
    const finish = Float64Array.from(total, cost => (cost === 10 ? 9 : 5));
    const point = evenlySafe({ ...result, samples: { ...result.samples, total, finish } }, 0.8);
    expect(point).toEqual({ budget: 8, finish: 5, joint: 0.8 });
    // The dearest in time, the cheapest late: eight runs hold at 9 dollars on day 5.
    const late = Float64Array.from(total, cost => (cost === 1 ? 9 : 5));
    const other = evenlySafe({ ...result, samples: { ...result.samples, total, finish: late } }, 0.8);
    expect(other).toEqual({ budget: 9, finish: 5, joint: 0.8 });
  });

  it('are the percentile itself where money and date move as one', () => {
    const samples = { ...result.samples, finish: result.samples.total };
    const point = evenlySafe({ ...result, samples }, 0.8);
    expect(point?.budget).toBe(result.samples.total.toSorted()[3999]);
    expect(point?.joint).toBe(0.8);
  });
});

describe('the line of equal chance', () => {
  it('holds exactly the chance asked for at every point, and no cheaper point would', () => {
    for (const { finish, total } of equalChanceLine(result, 0.7)) {
      const share = jointConfidence(result.samples.total, result.samples.finish, total, finish);
      expect(share).toBeGreaterThanOrEqual(0.7);
      expect(jointConfidence(result.samples.total, result.samples.finish, total - 0.01, finish)).toBeLessThan(
        0.7,
      );
    }
  });

  it('trades a later date for less money, never the other way', () => {
    const line = equalChanceLine(result, 0.7);
    expect(line.length).toBeGreaterThan(10);
    expect(line.length).toBeLessThanOrEqual(60);
    line.slice(1).forEach((point, i) => {
      expect(point.finish).toBeGreaterThan(line[i]?.finish ?? Infinity);
      expect(point.total).toBeLessThan(line[i]?.total ?? -Infinity);
    });
  });

  it('is found by counting in the same way as by trying every pair', () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.integer({ min: 0, max: 20 }), fc.integer({ min: 0, max: 20 })), {
          minLength: 1,
          maxLength: 40,
        }),
        fc.constantFrom(0.3, 0.5, 0.8, 1),
        (pairs, p) => {
          const [total, finish] = [Float64Array.from(pairs, x => x[0]), Float64Array.from(pairs, x => x[1])];
          const tried = [...new Set(finish)]
            .sort((a, b) => a - b)
            .flatMap(date => {
              const costs = [...new Set(total)].sort((a, b) => a - b);
              const cost = costs.find(c => jointConfidence(total, finish, c, date) >= p - 1e-12);
              return cost === undefined ? [] : [{ finish: date, total: cost }];
            });
          const corners = tried.filter(
            (point, i) => i === 0 || point.total < (tried[i - 1]?.total ?? Infinity),
          );
          expect(frontier(total, finish, p, 1000)).toEqual(corners);
        },
      ),
    );
  });
});

it('the plan figure stands at its own percentile, and the chance of missing a day is the share of later runs', () => {
  const later = result.samples.finish.filter(f => f > prepared.plan.finish).length / 5000;
  expect(chanceOfMissing(result, prepared.plan.finish)).toBeCloseTo(later, 12);
  expect(result.finish.planShare).toBeCloseTo(1 - later, 12);
  // Triangular (40, 50, 90): the share up to the likely value is (50 - 40) / (90 - 40).
  expect(Math.abs((result.finish.planShare ?? 0) - 0.2)).toBeLessThan(0.01);
});
