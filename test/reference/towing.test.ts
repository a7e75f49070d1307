import { describe, expect, it } from 'vitest';
import {
  bargeResistance,
  hullResistance,
  KNOT,
  lockedPropellerResistance,
  neededBollardPull,
  propellerArea,
  propellerDrag,
  quickBollardPull,
  sampleCurve,
  towDays,
  towPlan,
  tugBollardPull,
  windResistance,
  type TowInput,
} from '../../core/towing';

function off(value: number, reference: number): number {
  return Math.abs(value / reference - 1);
}

describe('dead-ship resistance', () => {
  it.each([
    [0.75, 103_125],
    [0.48, 66_000],
    [0.7, 96_250],
  ])(
    'hull at %s lb a long ton and 110,000 long tons is %s lb (Navy towing manual, app. G)',
    (curve, pounds) => {
      expect(hullResistance(curve, 110_000)).toBeCloseTo(pounds, 6);
    },
  );

  it('reads the sample curve at its points and between, and nothing beyond it', () => {
    expect([3, 4, 5, 6].map(sampleCurve)).toEqual([0.15, 0.31, 0.48, 0.75]);
    expect(sampleCurve(5.5)).toBeCloseTo(0.615, 9);
    expect([2, 9].map(sampleCurve)).toEqual([undefined, undefined]);
  });

  it('locked propellers of 150 ft2 at 6 kn resist with 20,179.8 lb, wind of 26 kn with 13,682 lb (same)', () => {
    expect(lockedPropellerResistance(150, 6)).toBeCloseTo(20_179.8, 6);
    expect(windResistance(5000, 26, 0.8)).toBeCloseTo(13_682, 0);
  });

  it("a barge by a classification society's worked sheet: 13,715 N, 18,830 N and 42,619 N", () => {
    const parts = bargeResistance({
      length: 50,
      wettedSurface: 874.17,
      displacement: 1569.15,
      speed: 6 * KNOT,
      daysSinceDock: 50,
      windage: 165,
      windSpeed: 40 * KNOT,
      windCoefficient: 1,
      viscosity: 1.2e-6,
    });
    expect(off(parts.friction, 13_715)).toBeLessThan(2e-4);
    expect(off(parts.wave, 18_830)).toBeLessThan(2e-4);
    expect(off(parts.air, 42_619)).toBeLessThan(2e-4);
  });

  it('locked propellers of a destroyer of 120 x 16 m: 22.91 m2, 111.87 kN at 6 kn (UFC 4-159-03)', () => {
    const area = propellerArea(120, 16, 'destroyer');
    expect(off(area, 22.91)).toBeLessThan(1e-3);
    expect(off(propellerDrag(area, 6 * KNOT), 111.87)).toBeLessThan(1e-3);
  });

  it('quick bollard pull of 5,904 t at 6 kn is 19.400 t', () => {
    expect(quickBollardPull({ displacement: 5904, knots: 6, breadth: 16, windHeight: 10 })).toBeCloseTo(
      19.4,
      3,
    );
  });

  it('3,000 brake horsepower pull 40.179 long tons (US Navy towing manual)', () => {
    expect(tugBollardPull(3000)).toBeCloseTo(40.179, 3);
  });

  it('1,100 nautical miles at 6 kn are 7.639 days (arithmetic)', () => {
    expect(towDays(1100, 6)).toBeCloseTo(7.639, 3);
  });
});

describe('a tow plan', () => {
  const tow: TowInput = {
    length: 120,
    breadth: 16,
    draught: 3,
    displacement: 3365,
    wettedSurface: 1706.4,
    windage: 200,
    windKnots: 20,
    knots: 6,
    nauticalMiles: 300,
    daysSinceDock: 400,
    propellers: 'destroyer',
    route: { airDraught: 25, lowestBridge: 40, shallowestChannel: 6 },
  };

  it('adds its parts, and prices the removal of the propellers as bollard pull saved', () => {
    const { propellers, ...bare } = tow;
    expect(propellers).toBe('destroyer');
    const [on, offPlan] = [towPlan(tow), towPlan(bare)];
    expect(on.total).toBeCloseTo(on.hull + on.propellers + on.wind, 9);
    expect(on.bollardPull - offPlan.bollardPull).toBeCloseTo(on.savedWithoutPropellers, 9);
    expect(on.bollardPull).toBeCloseTo(neededBollardPull(on.total / 9.81), 9);
    expect(on.plannedDays).toBeGreaterThan(on.steadyDays);
  });

  it('finds a bridge that is too low and a channel too shallow', () => {
    const route = { airDraught: 45, lowestBridge: 40, shallowestChannel: 3.5 };
    expect(towPlan({ ...tow, route }).findings.map(({ place }) => place)).toEqual([
      '/route/lowestBridge',
      '/route/shallowestChannel',
    ]);
  });
});
