import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { roundUp } from '../../../core/sheet/columns/kernels';
import { roundTo } from '../../../core/sheet/columns/quick-kernels';
import { roundOne } from '../../../core/sheet/columns/rounding';
import { Exact, settle } from '../../../core/sheet/decimal';

/** Half away from zero in whole numbers, which shares nothing with the code under test. */
function roundedRational(numerator: bigint, denominator: bigint, digits: number): string {
  const scaled = numerator * 10n ** BigInt(digits);
  const sign = scaled < 0n ? -1n : 1n;
  const whole = (2n * scaled * sign + denominator) / (2n * denominator);
  const text = whole.toString().padStart(digits + 1, '0');
  const cut = text.length - digits;
  return Number(`${sign < 0n ? '-' : ''}${text.slice(0, cut)}.${text.slice(cut)}`).toFixed(digits);
}

const plus = (text: string) => (Number(text) + 0).toFixed((text.split('.')[1] ?? '').length);

describe('the rounding contract', () => {
  const tenths = fc.integer({ min: -99_999, max: 99_999 });
  const cents = fc.integer({ min: 1, max: 99_999 });

  it('rounds quantity times rate half away from zero, exactly and in columns, credits too', () => {
    fc.assert(
      fc.property(tenths, cents, (quantity, rate) => {
        const expected = plus(roundedRational(BigInt(quantity) * BigInt(rate), 1000n, 2));
        const exact = settle(new Exact(quantity).div(10).times(new Exact(rate).div(100)), 2);
        expect(plus(exact.toFixed(2))).toBe(expected);
        expect(plus(roundOne((quantity / 10) * (rate / 100), 100).toFixed(2))).toBe(expected);
      }),
      { numRuns: 5000 },
    );
  });

  it('rounds forced half cents away from zero, which Math.round and toFixed do not', () => {
    const halves = Array.from({ length: 20_000 }, (_, i) => i - 10_000);
    const out = new Float64Array(1);
    const wrong = halves.filter(k => {
      roundTo(out, Float64Array.of((2 * k + 1) / 2 / 100), 100, 1);
      return Math.round((out[0] ?? NaN) * 100) !== (k >= 0 ? k + 1 : k);
    });
    expect(wrong).toEqual([]);
    expect(halves.some(k => Math.round(((2 * k + 1) / 2 / 100) * 100) !== (k >= 0 ? k + 1 : k))).toBe(true);
  });

  it('rounds ties of three factors as exact rationals do, but for at most 1 in 5,000', () => {
    let wrong = 0;
    for (let i = 0; i < 20_000; i++) {
      const [q, r, f] = [(i * 7919) % 9973, ((i * 104_729) % 49_999) - 25_000, 900 + (i % 300)];
      const expected = plus(roundedRational(BigInt(q) * BigInt(r) * BigInt(f), 1_000_000n, 2));
      if (plus(roundOne((q / 10) * (r / 100) * (f / 1000), 100).toFixed(2)) !== expected) wrong++;
    }
    expect(wrong).toBeLessThanOrEqual(4);
  });

  it('rounds ties that are left when greater amounts nearly cancel', () => {
    expect(roundOne((4569.26 - 80.56) * 1.15 + (930.49 - 6124.86) + 80.56, 100)).toBe(48.2);
    const amount = fc.integer({ min: -10_000_000, max: 10_000_000 });
    const factor = fc.integer({ min: 900, max: 1200 });
    fc.assert(
      fc.property(amount, factor, fc.integer({ min: -20_000, max: 20_000 }), (a, f, left) => {
        const less = Math.round((a * f) / 1000) - left;
        const expected = plus(roundedRational(BigInt(a) * BigInt(f) - BigInt(less) * 1000n, 100_000n, 2));
        expect(plus(roundOne((a / 100) * (f / 1000) - less / 100, 100).toFixed(2))).toBe(expected);
      }),
      { numRuns: 5000 },
    );
  });

  it('goes up to whole containers from exactly k by a detour without one to spare', () => {
    const out = new Float64Array(1);
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 500 }),
        fc.integer({ min: 1, max: 300 }),
        cents,
        (k, holds, by) => {
          const size = new Exact(holds).div(10);
          const detour = size.times(k).div(by).times(by).div(size);
          expect(settle(detour, 8).ceil().toNumber()).toBe(k);
          roundUp(out, Float64Array.of(((((holds / 10) * k) / by) * by) / (holds / 10)), 1e8, 1);
          expect(out[0]).toBe(k);
        },
      ),
      { numRuns: 2000 },
    );
  });

  it('keeps absent absent and gives zero without a sign', () => {
    const out = new Float64Array(3);
    roundTo(out, Float64Array.of(NaN, 0, 0.004), 100, 3);
    expect([...out]).toEqual([NaN, 0, 0]);
    roundUp(out, Float64Array.of(NaN, -0.4, 0), 100, 3);
    expect([...out]).toEqual([NaN, 0, 0]);
  });
});
