import { describe, expect, it } from 'vitest';
import type { UprightInput, UprightTank } from '../../../core/flooding';
import { hearFacts } from '../../../core/flooding/upright/kg-facts';
import { centreAfter, resolveShip } from '../../../core/flooding/upright/resolved';
import { slackMoment } from '../../../core/flooding/upright/free-surface';
import { bargeInput } from './invented-ship';

// The box of 100 x 20 m at 2 m draught: KM = T/2 + B^2/(12 T) = 1 + 400/24.
const KM = 1 + 400 / 24;
const heard = (change: Partial<UprightInput>) => hearFacts(resolveShip(bargeInput(4, change)));
const wide = { low: 2, likely: 12, high: 30, basis: 'assumed' } as const;
const near = (value: number): unknown => expect.closeTo(value, 6);

/** 12 t m of free surface for each m of a tank of 12 m breadth: 10 m of fresh water give 1,440 t m. */
const tank: UprightTank = {
  ...{ title: 'Tank', length: 10, breadth: 12, parts: 1, density: 1 },
  ...{ capacity: 100, volume: 50, emptied: false },
};

describe('KG once the facts are heard', () => {
  it('stays as given where nothing is seen of her', () => {
    const { kg, km, findings } = heard({});
    expect(km).toBeCloseTo(KM, 6);
    expect(kg).toEqual({ low: 4, likely: 4, high: 4 });
    expect(findings).toEqual([]);
  });

  it('is below KM where she floats upright', () => {
    const { kg, findings } = heard({ kg: { ...wide, likely: 20 }, facts: { afloatUpright: true } });
    expect(kg).toEqual({ low: 2, likely: near(KM), high: near(KM) });
    expect(findings).toEqual([
      {
        ...{ code: 'upright/kg-contradicted', weight: 'warns', place: '/kg' },
        message:
          'KG of 20.00 m (assumed) contradicts what is seen: she floats upright, so KG is below KM 17.67 m.',
        meaning: 'What is given and what is seen cannot both be right, and the verdict turns on it.',
        remedy: 'Replace the value: the screen uses the nearest KG the facts allow.',
      },
    ]);
    expect(heard({ kg: wide, facts: { afloatUpright: true } }).findings).toEqual([]);
  });

  it('above KM without such a fact is told, and kept', () => {
    for (const facts of [undefined, { afloatUpright: false }]) {
      const { kg, findings } = heard({ kg: { ...wide, likely: 20 }, ...(facts && { facts }) });
      expect(kg).toEqual({ low: 2, likely: 20, high: 30 });
      expect(findings).toEqual([
        {
          ...{ code: 'upright/kg-above-km', weight: 'warns', place: '/kg' },
          message: 'With KG of 20.00 m (assumed) she would not float upright: KM is 17.67 m.',
          meaning: 'What is given and what is seen cannot both be right, and the verdict turns on it.',
          remedy: 'If she lies afloat and upright, say so: KG is then below KM, and the screen uses that.',
        },
      ]);
    }
  });

  it('follows a timed roll, whose coefficient may be out by a tenth', () => {
    // C = 0.373 + 0.023 B/T - 0.043 L/100 = 0.56; GM = (2 C B / period)^2 = (22.4 / period)^2.
    const { kg, findings } = heard({ kg: wide, facts: { rollPeriod: 10 } });
    expect(kg).toEqual({
      low: near(KM - (22.4 / 9) ** 2),
      likely: 12,
      high: near(KM - (22.4 / 11) ** 2),
    });
    expect(findings).toEqual([]);
    const off = heard({ facts: { rollPeriod: 10 } });
    expect(off.kg.high).toBeCloseTo(KM - (22.4 / 9) ** 2, 6);
    expect(off.findings.map(({ message }) => message)).toEqual([
      'KG of 4.00 m (inclined) contradicts what is seen: she rolls once in 10 s.',
    ]);
    expect(heard({ facts: { rollPeriod: 0 } }).kg).toEqual({ low: 4, likely: 4, high: 4 });
  });

  it('follows a list with its moment, to a fifth of GM, to either side', () => {
    // 1,000 t m list 4,100 t by 2 degrees: GM = 1000 / (4100 tan 2) = 6.9845 m.
    const gm = 1000 / (4100 * Math.tan(Math.PI / 90));
    for (const [degrees, moment] of [
      [2, 1000],
      [-2, 1000],
      [2, -1000],
    ] as const) {
      const { kg, findings } = heard({ kg: { ...wide, likely: 11 }, facts: { list: { degrees, moment } } });
      expect(kg).toEqual({ low: near(KM - 1.2 * gm), likely: 11, high: near(KM - 0.8 * gm) });
      expect(findings).toEqual([]);
    }
    const { findings } = heard({
      kg: { ...wide, likely: 16 },
      facts: { afloatUpright: true, list: { degrees: -2, moment: -1000 } },
    });
    expect(findings.map(({ message }) => message)).toEqual([
      'KG of 16.00 m (assumed) contradicts what is seen: she floats upright, so KG is below KM 17.67 m; 1000 t m list her 2 degrees.',
    ]);
  });

  it('a list without a cause is told and bounds nothing; one of no degrees is none', () => {
    const { kg, findings } = heard({ facts: { list: { degrees: 4 } } });
    expect(kg).toEqual({ low: 4, likely: 4, high: 4 });
    expect(findings).toEqual([
      {
        ...{ code: 'upright/kg-contradicted', weight: 'warns', place: '/facts/list' },
        message:
          'She lists 4 degrees with no known cause: GM may be negative, or weight may sit off the centreline.',
        meaning: 'What is given and what is seen cannot both be right, and the verdict turns on it.',
        remedy: 'Find the cause before planning the flooding; give its moment when it is known.',
      },
    ]);
    for (const list of [{ degrees: 0 }, { degrees: 0, moment: 500 }])
      expect(heard({ facts: { list } })).toMatchObject({ kg: { low: 4, high: 4 }, findings: [] });
  });

  it('of facts that exclude each other the lower bound stands', () => {
    const { kg } = heard({ facts: { rollPeriod: 10, list: { degrees: 10, moment: 1 } } });
    // A tiny moment that lists her far: KG almost at KM, which the roll of 10 s excludes.
    const gm = 1 / (4100 * Math.tan(Math.PI / 18));
    expect(kg).toEqual({ low: near(KM - 1.2 * gm), likely: near(KM - 1.2 * gm), high: near(KM - 1.2 * gm) });
  });

  it('lies that much lower below KM as slack tanks take of it: 1,440 t m of 4,100 t', () => {
    expect(heard({ tanks: [tank] }).km).toBeCloseTo(KM - 1440 / 4100, 6);
    expect(heard({ tanks: [{ ...tank, emptied: true }] }).km).toBeCloseTo(KM - 1440 / 4100, 6);
  });
});

describe('the free surface of tanks', () => {
  it('counts between two hundredths and all but two hundredths of the capacity', () => {
    const at = (volume: number) => slackMoment([{ ...tank, volume }], false);
    expect([2, 2.1, 97.9, 98].map(at)).toEqual([0, 1440, 1440, 0]);
    // Two parts across quarter it; two tanks add up.
    expect(slackMoment([{ ...tank, parts: 2 }, tank], false)).toBe(360 + 1440);
  });

  it('is gone from tanks that the plan empties, once she is sunk, and raises the centre from the others', () => {
    const tanks = [tank, { ...tank, emptied: true }];
    expect(slackMoment(tanks, false)).toBe(2880);
    expect(slackMoment(tanks, true)).toBe(1440);
    const removedWeights = [
      { mass: 100, vcg: 24, tcg: 10 },
      { mass: 400, vcg: 4 },
    ];
    // (4100 x 4 - 100 x 24 - 400 x 4) / 3600 and (0 - 100 x 10 - 0) / 3600, before the free surface.
    const input = bargeInput(4, { tanks, removedWeights });
    expect(centreAfter(input, 4100, 4)).toEqual({
      kg: near(12_400 / 3600 + 1440 / 3600),
      tcg: near(-1000 / 3600),
    });
    expect(centreAfter({ ...input, tcg: 0.5 }, 4100, 4).tcg).toBeCloseTo((2050 - 1000) / 3600, 9);
    expect(centreAfter(bargeInput(4), 4100, 4)).toEqual({ kg: 4, tcg: 0 });
  });
});
