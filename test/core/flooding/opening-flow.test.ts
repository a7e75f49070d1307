import { describe, expect, it } from 'vitest';
import { apertureFlow, drivingHead, type Aperture, type Side } from '../../../core/flooding';
import { linearSolve } from '../../../core/flooding/simulate/linear-solve';

// With Cd 0.6 and g 9.81: 0.6 x 2 m2 x sqrt(2 g) = 5.315336 for an opening of 2 m2 and 1 m height.
const door: Aperture = { low: 0, high: 1, area: 2, discharge: 0.6 };
const STRENGTH = 1.2 * Math.sqrt(19.62);
const side = (level: number, air = 0): Side => ({ level, air });

/** Flow over that of an opening under 1 m of head, there and back. */
function roots(a: Side, b: Side, hole: Aperture): number {
  const there = apertureFlow(a, b, hole) / STRENGTH;
  expect(apertureFlow(b, a, hole) / STRENGTH).toBeCloseTo(-there, 12);
  return there;
}

describe('the flow through an opening', () => {
  it('wholly under on both sides is driven by the difference of heads', () => {
    expect(roots(side(3), side(2), door)).toBeCloseTo(1, 12);
    expect(roots(side(6), side(2), door)).toBeCloseTo(2, 12);
    // Air of 1.5 m on the lower side takes its part of the head; on the higher side it adds to it.
    expect(roots(side(4), side(2, 1.75), door)).toBeCloseTo(0.5, 12);
    expect(roots(side(4, 2), side(2), door)).toBeCloseTo(2, 12);
  });

  it('into air is a jet over its depth: 2/3 (2^1.5 - 1) = 1.218951 under 2 m of water', () => {
    expect(roots(side(2), side(-1), door)).toBeCloseTo(1.218951, 6);
    // Half under: 2/3 x 0.5^1.5 = 0.235702.
    expect(roots(side(0.5), side(-1), door)).toBeCloseTo(0.235702, 6);
    // 1 m of air over the water: 2/3 (1.5^1.5 - 1).
    expect(roots(side(0.5, 1), side(-1), door)).toBeCloseTo(0.558078, 6);
    // Air on the dry side holds it back by as much.
    expect(roots(side(2), side(-1, 1), door)).toBeCloseTo(2 / 3, 9);
  });

  it('half under on the lower side is both: 0.5 sqrt(1.5) + 2/3 (1.5^1.5 - 1) = 1.170450', () => {
    expect(roots(side(2), side(0.5), door)).toBeCloseTo(1.17045, 5);
    // 2 m high and of the same area each metre of height carries half as much.
    expect(roots(side(2), side(0.5), { ...door, high: 2 })).toBeCloseTo(
      (0.5 * Math.sqrt(1.5) + (2 / 3) * 1.5 ** 1.5) / 2,
      9,
    );
  });

  it('is nothing where no water stands above its lower edge, whatever the air', () => {
    const high = { ...door, low: 2, high: 3 };
    expect(apertureFlow(side(2), side(0), high)).toBe(0);
    expect(apertureFlow(side(1.9, 5), side(0), high)).toBe(0);
    expect(roots(side(2.5), side(0), high)).toBeCloseTo(0.235702, 6);
  });

  it('through a hole in a floor is driven by the height above it, or above the water that covers it', () => {
    const floor = { ...door, low: 1, high: 1 };
    expect(roots(side(5), side(0), floor)).toBeCloseTo(2, 12);
    expect(roots(side(5), side(4), floor)).toBeCloseTo(1, 12);
    expect(roots(side(5), side(0, 3), floor)).toBeCloseTo(1, 12);
    expect(apertureFlow(side(1), side(0), floor)).toBe(0);
  });

  it('settles without a jump: under a tenth of a millimetre the root gives way to a smooth curve', () => {
    const floor = { ...door, low: 0, high: 0 };
    // sqrt(1e-4) s (1.5 - s / 2) with s = 1/2: 0.01 x 0.5 x 1.25.
    expect(roots(side(1.00005), side(1), floor)).toBeCloseTo(0.00625, 8);
    expect(roots(side(1.0001), side(1), floor)).toBeCloseTo(0.01, 8);
    expect(roots(side(1), side(1), floor)).toBeCloseTo(0, 12);
  });
});

describe('the head that drives a flow', () => {
  it('is from level to level where the lower side covers the edge, and to the edge where it does not', () => {
    const hole = { ...door, low: 1, high: 2 };
    expect(drivingHead(side(5), side(3), hole)).toEqual({ head: 2, isHeldBack: true });
    expect(drivingHead(side(3), side(5), hole)).toEqual({ head: 2, isHeldBack: true });
    expect(drivingHead(side(5), side(0.5), hole)).toEqual({ head: 4, isHeldBack: false });
    expect(drivingHead(side(5), side(1), hole)).toEqual({ head: 4, isHeldBack: false });
    expect(drivingHead(side(5, 1), side(3, 0.5), hole)).toEqual({ head: 2.5, isHeldBack: true });
    // 3 m of water under 4 m of air outweigh 5 m of water.
    expect(drivingHead(side(5), side(3, 4), hole)).toEqual({ head: 2, isHeldBack: true });
  });
});

describe('a system of flows', () => {
  const solved = (matrix: number[], right: number[]): number[] => {
    const answer = Float64Array.from(right);
    linearSolve(Float64Array.from(matrix), answer);
    return [...answer];
  };

  it('is solved, also where the first row cannot lead', () => {
    // x + 2y + 3z = 14, 2x + y + z = 7, 3x + 4z = 15: 1, 2, 3.
    expect(solved([1, 2, 3, 2, 1, 1, 3, 0, 4], [14, 7, 15])).toEqual([
      expect.closeTo(1, 12),
      expect.closeTo(2, 12),
      expect.closeTo(3, 12),
    ]);
    expect(solved([0, 2, 4, 0], [6, 8])).toEqual([2, 3]);
    expect(solved([5], [20])).toEqual([4]);
    expect(solved([], [])).toEqual([]);
  });

  it('keeps its digits where a leading figure is small', () => {
    // 1e-20 x + y = 1, x + y = 2: both are 1 to twenty digits; led by the small one x would be 0.
    expect(solved([1e-20, 1, 1, 1], [1, 2])).toEqual([1, 1]);
    expect(solved([1, 1, -1e20, 1], [2, -1e20])).toEqual([1, 1]);
  });
});
