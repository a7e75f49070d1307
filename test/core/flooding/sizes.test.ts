import { describe, expect, it } from 'vitest';
import {
  sizedOpenings,
  STANDARD_AREA,
  UPRIGHT_DEFAULTS,
  type UprightCompartment,
} from '../../../core/flooding';
import { targetSeconds } from '../../../core/flooding/upright/run-likely';
import { cutAround, isPaired, openingSet, sizedOpeningHeight } from '../../../core/flooding/upright/sizing';
import { bargeInput } from './invented-ship';

const hold: UprightCompartment = {
  ...{ id: 'space', title: 'Space', x0: 0, x1: 20, y0: -10, y1: 10, z0: 0, z1: 10, permeability: 1 },
  ...{ openings: [], vents: [], connections: [], floods: true },
};
const near = (value: number, digits = 9): unknown => expect.closeTo(value, digits);

describe('a set of openings for an area', () => {
  it('is of standard ones of 1.2 x 1.5 m from nine tenths of their area on, cut to size below', () => {
    expect(STANDARD_AREA).toBeCloseTo(1.8, 12);
    const set = (needed: number, inPairs = false) => {
      const { count, each } = openingSet(needed, inPairs);
      return [count, each];
    };
    expect(set(0)).toEqual([0, 0]);
    expect(set(-1)).toEqual([0, 0]);
    expect(set(1.8)).toEqual([1, near(1.8)]);
    expect(set(1.7)).toEqual([1, near(1.8)]);
    expect(set(1.5)).toEqual([1, 1.5]);
    expect(set(3)).toEqual([2, 1.5]);
    expect(set(3.3)).toEqual([2, near(1.8)]);
    // In pairs three are four, so 5 m2 are four of 1.25.
    expect(set(5)).toEqual([3, near(1.8)]);
    expect(set(5, true)).toEqual([4, 1.25]);
    expect(set(7.2, true)).toEqual([4, near(1.8)]);
  });

  it('is cut along twice breadth and height, five quarters as high as broad', () => {
    expect(cutAround(1.8)).toBeCloseTo(2 * (1.2 + 1.5), 12);
    expect(cutAround(0.2)).toBeCloseTo(2 * (0.4 + 0.5), 12);
  });

  it('is cut just clear of the floor, in the middle where there is little height, or where it is told', () => {
    const at = (z0: number, z1: number, entry?: number) =>
      sizedOpeningHeight({ ...hold, z0, z1, ...(entry === undefined ? {} : { entry }) });
    expect(at(1, 8)).toBeCloseTo(1 + 0.75 + 0.2, 12);
    expect(at(1, 2)).toBeCloseTo(1.5, 12);
    expect(at(0, 1.7)).toBeCloseTo(0.75 + 0.1, 12);
    expect(at(1, 8, 6)).toBe(6);
  });

  it('is in pairs where the compartment reaches both sides', () => {
    const paired = (y0: number, y1: number) => isPaired({ ...hold, y0, y1 });
    expect([paired(-1, 1), paired(0, 1), paired(-1, 0), paired(1, 2), paired(-2, -1)]).toEqual([
      true,
      ...[false, false, false, false],
    ]);
  });
});

describe('sizes by hand', () => {
  /** The barge with this one space to be flooded in ten minutes. */
  const sized = (change: Partial<UprightCompartment>, more: Parameters<typeof bargeInput>[1] = {}) =>
    sizedOpenings(bargeInput(4, { compartments: [{ ...hold, ...change }], targetSinkTime: 600, ...more }));

  it('a space kept until late fills in the last quarter of the time under half the depth above its opening', () => {
    // 4,000 m3 under (10 - 8) / 2 = 1 m: 4000 / 0.25 / (0.6 x 600 x sqrt(2 g)) = 10.034 m2, six standard ones of 1.8.
    const needed = 16_000 / (360 * Math.sqrt(19.62));
    expect(sized({ entry: 8 })).toEqual([
      {
        ...{ compartment: 'space', openings: 6, openingArea: near(1.8), area: near(10.8) },
        ...{ cutLength: near(32.4), ventArea: near(1.62), ventCount: 4 },
        fillMinutes: near((10 * needed) / 10.8),
        note: 'Its opening lies above the light waterline: the sea reaches it only once she has sunk to it.',
      },
    ]);
  });

  it('the hold of the barge keeps to one level: 16,000 m3 under 2 m in 180 s ask for 23.650 m2, 14 openings', () => {
    // V / (Cd t sqrt(2 g h)): all her length open, so that she goes down at the head of her light draught.
    const [size] = sized({ x1: 100 }, { targetSinkTime: 180 });
    expect(size).toMatchObject({
      openings: 14,
      openingArea: near(1.8),
      area: near(25.2),
      cutLength: near(75.6),
    });
    // To within the first and the last of the path: the head is counted from the middle of the opening at first.
    expect(((size?.fillMinutes ?? 0) * 60 * 25.2) / 180 / 23.65).toBeCloseTo(1, 1);
  });

  it('air escapes are a tenth of the openings at least, and two at least', () => {
    const vents = (ventShare: number) =>
      sized({ entry: 8 }, { ventShare }).map(({ ventArea, ventCount }) => [ventArea, ventCount]);
    expect(vents(0.05)).toEqual([[near(1.08), 3]]);
    expect(vents(0.5)).toEqual([[near(5.4), 11]]);
    const [small] = sized({ entry: 8, x1: 1 });
    expect(small?.ventCount).toBe(2);
  });

  it('more than fit beside each other with as much steel between is told', () => {
    // 800 m3 in 120 s ask for the same 10.034 m2, but 4 m of side hold one opening each.
    const [tight] = sized({ entry: 8, x1: 4 }, { targetSinkTime: 120 });
    expect(tight?.openings).toBe(6);
    expect(tight?.note).toBe(
      'Structure limits it: 6 openings do not fit into 2 side(s) of its length with steel left between; cut the floor or the bulkheads too, or take longer.',
    );
    const [oneSide] = sized({ entry: 8, x1: 4, y0: 0 }, { targetSinkTime: 120 });
    expect(oneSide?.note).toContain('3 openings do not fit into 1 side(s)');
    const [fits] = sized({ entry: 1, x1: 7.2, z1: 10 }, { targetSinkTime: 600 });
    expect(fits?.openings).toBe(2);
    expect(fits).not.toHaveProperty('note');
  });

  it('what the sea does not reach needs none and is told so', () => {
    const high = { ...hold, id: 'high', x0: 40, x1: 60, z0: 9.99, z1: 10 };
    const [, never] = sizedOpenings(
      bargeInput(4, {
        targetSinkTime: 600,
        compartments: [{ ...hold, x1: 20 }, high],
      }),
    );
    expect(never).toEqual({
      ...{ compartment: 'high', openings: 0, openingArea: 0, area: 0, cutLength: 0, ventArea: 0 },
      ...{ ventCount: 0, fillMinutes: 10 },
      note: 'The sea does not reach it on the common path: it needs no opening.',
    });
  });

  it('a ship that cannot be has no openings', () => {
    expect(sized({ permeability: 0 })).toEqual([]);
  });
});

describe('the time the openings are sized for', () => {
  it('is that of the plan, or of the method: three quarters of an hour flooding, three minutes by charges', () => {
    const { targetSinkTime: _, ...input } = bargeInput(4);
    expect(targetSeconds({ ...input, targetSinkTime: 77 })).toBe(77);
    expect(targetSeconds({ ...input, method: 'flooding' })).toBe(2700);
    expect(targetSeconds({ ...input, method: 'explosive scuttling' })).toBe(180);
  });

  it('stands with the other defaults, each with what it means and where it comes from', () => {
    expect(Object.entries(UPRIGHT_DEFAULTS).map(([key, { value, basis }]) => [key, value, basis])).toEqual([
      ['limits', { staysUp: 7, leans: 15 }, 'judgement'],
      ['mismatch', 0.1, 'judgement'],
      ['ventShare', 0.15, 'common practice'],
      ['openingHeight', 1.5, 'judgement'],
      ['openingBreadth', 1.2, 'judgement'],
      ['sinkTime', { flooding: 2700, 'explosive scuttling': 180 }, 'judgement'],
    ]);
    for (const { means, source } of Object.values(UPRIGHT_DEFAULTS))
      for (const words of [means, source]) expect(words.split(' ').length).toBeGreaterThan(3);
  });
});
