import { describe, expect, it } from 'vitest';
import { intermediateFactor } from '../../../core/flooding';
import { screenCases } from '../../../core/flooding/upright/cases';
import { resolveShip } from '../../../core/flooding/upright/resolved';
import { yardsticks } from '../../../core/flooding/upright/yardsticks';
import { bargeInput } from './invented-ship';

const near = (value: number): unknown => expect.closeTo(value, 6);

describe('yardsticks of the barge', () => {
  const of = (kg: number) => {
    const ship = resolveShip(bargeInput(4));
    const ranges = { displacements: [4100], kgs: [kg], mismatches: [0] };
    return screenCases(ship, ranges, { staysUp: 7, leans: 15 }, 16).flatMap(likely =>
      yardsticks(ship, likely),
    );
  };

  it('are told with what they ask, and what she has: GM = 1 + 400/24 - KG', () => {
    // At her worst she lies at 15.3 degrees with levers beyond: past 15 degrees, and upright her GM is below nothing.
    expect(
      of(4).map(({ condition, rule, asks, unit, meets }) => [condition, rule, asks, unit, meets]),
    ).toEqual([
      ...[
        ['46 CFR 170.173(b)', 'GM of at least 0.15 m', 'm', true],
        ['46 CFR 170.173(b)', 'GZ of at least 0.20 m at 30 degrees or more', 'm', true],
        ['46 CFR 170.173(b)', 'greatest GZ at 25 degrees or more', 'degrees', true],
        ['46 CFR 170.173(b)', 'at least 3.15 metre degrees up to 30 degrees', 'm degrees', true],
        ['46 CFR 170.173(b)', 'at least 5.15 metre degrees up to 40 degrees', 'm degrees', true],
        ['46 CFR 170.173(b)', 'at least 1.72 metre degrees between 30 and 40 degrees', 'm degrees', true],
        ['46 CFR 170.173(c)', 'greatest GZ at 15 degrees or more', 'degrees', true],
        ['46 CFR 28.570', 'GM of at least 0.35 m', 'm', true],
        ['46 CFR 28.570', 'righting levers up to 60 degrees', 'degrees', true],
      ].map(row => ['afloat before the sinking', ...row]),
      ...[
        ['46 CFR 172.245', 'heel of at most 15 degrees', 'degrees', false],
        ['46 CFR 172.245', 'range of at least 20 degrees beyond it', 'degrees', true],
        ['46 CFR 172.245', 'greatest GZ of at least 0.10 m', 'm', true],
        ['46 CFR 172.245', 'GM of at least 0.05 m', 'm', false],
        ['33 CFR 157.21', 'heel of at most 25 degrees', 'degrees', true],
        ['IMO guidance after damage', 'greatest GZ of at least 0.05 m', 'm', true],
        ['IMO guidance after damage', 'range of at least 7 degrees', 'degrees', true],
        ['SOLAS II-1/7-2', 'factor s of an intermediate stage, 1 is full', '1', false],
      ].map(row => ['at the worst flood level', ...row]),
    ]);
    const gms = (kg: number) => of(kg).filter(({ asks }) => asks.startsWith('GM'));
    expect(gms(4).map(({ found }) => found)).toEqual([near(41 / 3), near(41 / 3), expect.any(Number)]);
    expect(gms(17.4).map(({ meets }) => meets)).toEqual([true, false, false]);
    expect(gms(17.55).map(({ meets }) => meets)).toEqual([false, false, false]);
  });

  it('of an area add up: from 0 to 40 is to 30 and from there on', () => {
    const areas = of(4)
      .filter(({ unit }) => unit === 'm degrees')
      .map(({ found = Number.NaN }) => found);
    const [to30 = 0, to40 = 0, between = 0] = areas;
    expect(to30 + between).toBeCloseTo(to40, 6);
    expect(to30).toBeGreaterThan(between);
  });

  it('have nothing to be measured from where she finds no rest, and are then not met', () => {
    const worst = of(5.5).filter(({ condition }) => condition === 'at the worst flood level');
    expect(worst).toHaveLength(8);
    for (const row of worst) expect(row).toMatchObject({ meets: false });
    for (const row of worst) expect(row).not.toHaveProperty('found');
  });
});

describe('the factor of an intermediate stage', () => {
  const settled = { heel: 10, greatest: 0.1, range: 20 };

  it('is full from 0.05 m and 7 degrees on, and the fourth root of what is there of them below', () => {
    expect(intermediateFactor(settled)).toBe(1);
    expect(intermediateFactor({ ...settled, greatest: 0.05, range: 7 })).toBe(1);
    expect(intermediateFactor({ ...settled, greatest: 0.025 })).toBeCloseTo(0.5 ** 0.25, 12);
    expect(intermediateFactor({ ...settled, range: 3.5 })).toBeCloseTo(0.5 ** 0.25, 12);
    expect(intermediateFactor({ heel: 10, greatest: 0.025, range: 3.5 })).toBeCloseTo(0.25 ** 0.25, 12);
  });

  it('is nothing beyond 15 degrees of heel, and without a lever or a range', () => {
    expect(intermediateFactor({ ...settled, heel: 15 })).toBe(1);
    expect(intermediateFactor({ ...settled, heel: 15.1 })).toBe(0);
    expect(intermediateFactor({ ...settled, greatest: -0.1, range: -3 })).toBe(0);
    expect(intermediateFactor({ ...settled, greatest: 0 })).toBe(0);
    expect(intermediateFactor({ ...settled, range: 0 })).toBe(0);
  });
});
