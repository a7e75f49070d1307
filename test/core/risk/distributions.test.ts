import betaQuantileReference from '@stdlib/stats-base-dists-beta-quantile';
import lognormalReference from '@stdlib/stats-base-dists-lognormal-quantile';
import normalReference from '@stdlib/stats-base-dists-normal-quantile';
import triangularReference from '@stdlib/stats-base-dists-triangular-quantile';
import uniformReference from '@stdlib/stats-base-dists-uniform-quantile';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  distributionFindings,
  isCollapsed,
  lognormalFromP10P90,
  meanOf,
  modeOf,
  quantile,
  samplerOf,
  varianceOf,
  type Distribution,
} from '../../../core/risk';

/** Fifty shares, dense in both tails. */
const FIFTY = Array.from({ length: 50 }, (_, i) => {
  if (i < 5) return 10 ** (i - 6);
  if (i >= 45) return 1 - 10 ** (44 - i - 1);
  return (i - 4) / 41;
});

function worstRelative(d: Distribution, reference: (p: number) => number): number {
  return Math.max(...FIFTY.map(p => Math.abs(quantile(d, p) / reference(p) - 1)));
}

describe('quantiles agree with the stdlib distributions to 1e-9 relative at fifty shares', () => {
  it.each([
    [10, 20, 50],
    [0, 5, 10],
    [100, 100, 260],
    [100, 260, 260],
    [-50, -20, -10],
  ])('triangular %d %d %d', (low, likely, high) => {
    const worst = worstRelative({ kind: 'triangular', low, likely, high }, p =>
      triangularReference(p, low, high, likely),
    );
    expect(worst).toBeLessThan(1e-9);
  });

  it.each([
    [10, 20, 50],
    [0, 5, 10],
    [100, 100, 260],
    [100, 260, 260],
    [1, 1.001, 3],
  ])('PERT %d %d %d', (low, likely, high) => {
    const a = 1 + (4 * (likely - low)) / (high - low);
    const b = 1 + (4 * (high - likely)) / (high - low);
    const reference = (p: number) => low + (high - low) * betaQuantileReference(p, a, b);
    expect(worstRelative({ kind: 'pert', low, likely, high }, reference)).toBeLessThan(1e-9);
  });

  it('uniform', () => {
    expect(
      worstRelative({ kind: 'uniform', low: 3, high: 17 }, p => uniformReference(p, 3, 17)),
    ).toBeLessThan(1e-9);
  });

  it('normal', () => {
    const d: Distribution = { kind: 'normal', mean: 100, standardDeviation: 15 };
    expect(worstRelative(d, p => normalReference(p, 100, 15))).toBeLessThan(1e-9);
  });

  it.each([
    [0, 1],
    [4.6, 0.35],
  ])('lognormal %d %d', (logMean, logStandardDeviation) => {
    const d: Distribution = { kind: 'lognormal', logMean, logStandardDeviation };
    expect(worstRelative(d, p => lognormalReference(p, logMean, logStandardDeviation))).toBeLessThan(1e-9);
  });
});

describe('moments', () => {
  it('triangular (10, 20, 50) has mean 26.6667, variance 72.2222 and the closed-form quantiles', () => {
    // Johnson, Kotz, Balakrishnan: mean (a+m+b)/3, variance (a2+m2+b2-am-ab-mb)/18.
    const d: Distribution = { kind: 'triangular', low: 10, likely: 20, high: 50 };
    expect(meanOf(d)).toBeCloseTo(80 / 3, 10);
    expect(varianceOf(d)).toBeCloseTo(1300 / 18, 10);
    expect([0.1, 0.5, 0.8].map(p => Number(quantile(d, p).toFixed(4)))).toEqual([16.3246, 25.5051, 34.5081]);
  });

  it('PERT (10, 20, 50) has the exact variance 50.7937, not the sixth of the range squared', () => {
    const d: Distribution = { kind: 'pert', low: 10, likely: 20, high: 50 };
    expect(meanOf(d)).toBeCloseTo(70 / 3, 10);
    // A beta with shapes 2 and 4 has variance ab / ((a+b)^2 (a+b+1)), times the range squared.
    expect(varianceOf(d)).toBeCloseTo((1600 * 2 * 4) / (36 * 7), 10);
    expect(varianceOf(d)).toBeCloseTo(50.7937, 4);
  });

  it('every kind has the mean and variance of its own quantile function', () => {
    const kinds: Distribution[] = [
      { kind: 'triangular', low: 1, likely: 2, high: 7 },
      { kind: 'pert', low: 1, likely: 2, high: 7 },
      { kind: 'uniform', low: -3, high: 8 },
      { kind: 'normal', mean: 5, standardDeviation: 2 },
      { kind: 'lognormal', logMean: 0.2, logStandardDeviation: 0.4 },
      { kind: 'discrete', values: [4, 1, 9], probabilities: [0.2, 0.5, 0.3] },
      { kind: 'certain', value: 6 },
    ];
    const n = 20000;
    for (const d of kinds) {
      const draws = Array.from({ length: n }, (_, i) => quantile(d, (i + 0.5) / n));
      const mean = draws.reduce((a, b) => a + b, 0) / n;
      const variance = draws.reduce((a, b) => a + (b - mean) ** 2, 0) / n;
      expect([d.kind, Math.abs(mean - meanOf(d)) < 2e-3]).toEqual([d.kind, true]);
      expect([d.kind, Math.abs(variance - varianceOf(d)) < 5e-3]).toEqual([d.kind, true]);
    }
  });

  it('the mode of a discrete range is its most probable value', () => {
    expect(modeOf({ kind: 'discrete', values: [4, 1, 9], probabilities: [0.2, 0.5, 0.3] })).toBe(1);
  });

  it('a lognormal from P10 and P90 gives both back', () => {
    const d = lognormalFromP10P90(0.8, 1.9);
    expect(quantile(d, 0.1)).toBeCloseTo(0.8, 12);
    expect(quantile(d, 0.9)).toBeCloseTo(1.9, 12);
  });
});

it('the fast draw of a PERT range stays within 1e-6 of the range of the exact quantile', () => {
  for (const likely of [0, 0.01, 0.1, 0.3, 0.5, 0.77, 0.95, 1]) {
    const d: Distribution = { kind: 'pert', low: 0, likely, high: 1 };
    const draw = samplerOf(d);
    for (let i = 0; i < 4000; i++) {
      const u = (i + 0.37) / 4000;
      expect(Math.abs(draw(u) - quantile(d, u))).toBeLessThan(1e-6);
    }
  }
});

it('a range collapsed to one value gives exactly that value for every draw', () => {
  fc.assert(
    fc.property(
      fc.double({ noNaN: true, min: -1e9, max: 1e9 }).map(v => v + 0),
      fc.double({ min: 0, max: 1, noNaN: true }),
      (value, u) => {
        const shapes: Distribution[] = [
          { kind: 'triangular', low: value, likely: value, high: value },
          { kind: 'pert', low: value, likely: value, high: value },
          { kind: 'uniform', low: value, high: value },
          { kind: 'certain', value },
        ];
        for (const d of shapes) expect([isCollapsed(d), samplerOf(d)(u)]).toEqual([true, value]);
      },
    ),
  );
});

it('a range whose values do not rise is a finding that names them', () => {
  const found = distributionFindings({ kind: 'triangular', low: 5, likely: 4, high: 9 }, '/lines/1');
  expect(found.map(f => [f.code, f.weight, f.place])).toEqual([['risk/range-order', 'blocks', '/lines/1']]);
  expect(found[0]?.message).toContain('the low value 5 is above the likely value 4');
  expect(
    distributionFindings({ kind: 'discrete', values: [1, 2], probabilities: [0.5, 0.4] }, '/x'),
  ).toHaveLength(1);
});
