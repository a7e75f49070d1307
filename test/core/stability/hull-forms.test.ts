import { describe, expect, it } from 'vitest';
import {
  dry,
  hullFromParticulars,
  hullSolid,
  kbPosdunine,
  uprightDraught,
  UPRIGHT,
  wet,
  outlineOf,
  clipToRectangle,
  signedArea,
} from '../../../core/stability';

describe('a hull made from particulars', () => {
  const particulars = [
    { length: 120, breadth: 16, depth: 10, draught: 5, blockCoefficient: 0.6, waterplaneCoefficient: 0.7333 },
    { length: 80, breadth: 13, depth: 8, draught: 3, blockCoefficient: 0.48, waterplaneCoefficient: 0.68 },
    { length: 200, breadth: 30, depth: 18, draught: 7, blockCoefficient: 0.82, waterplaneCoefficient: 0.88 },
  ];

  it.each(particulars)(
    'has the volume, waterplane and centre of buoyancy of its coefficients, Cb $blockCoefficient',
    p => {
      const sums = wet(hullSolid(hullFromParticulars(p), 40), UPRIGHT, p.draught, dry());
      const box = p.length * p.breadth;
      expect(sums.volume / (box * p.draught)).toBeCloseTo(p.blockCoefficient, 6);
      expect(sums.area / box).toBeCloseTo(p.waterplaneCoefficient, 6);
      const kb = kbPosdunine(p.draught, p.blockCoefficient, p.waterplaneCoefficient);
      expect(sums.mw / sums.volume / kb).toBeCloseTo(1, 1.7);
    },
  );

  it.each(particulars)("has a waterplane inertia within 7 % of D'Arcangelo's or Eames' estimate", p => {
    const sums = wet(hullSolid(hullFromParticulars(p), 40), UPRIGHT, p.draught, dry());
    const ci = sums.auu / (p.length * p.breadth ** 3);
    const cwp = p.waterplaneCoefficient;
    const estimates = [0.1216 * cwp - 0.041, cwp ** 2 / 11.7];
    expect(Math.min(...estimates.map(e => Math.abs(ci / e - 1)))).toBeLessThan(0.07);
  });

  it('floats at the draught of its volume', () => {
    const [p] = particulars;
    if (!p) throw new Error('there is a first hull');
    const hull = hullSolid(hullFromParticulars(p), 40);
    expect(uprightDraught(hull, 0.6 * 120 * 16 * 5)).toBeCloseTo(5, 6);
  });
});

describe('outlines', () => {
  it('turn counter-clockwise, and clip to a rectangle', () => {
    const diamond = outlineOf([
      [0, 2],
      [1, 1],
      [0, 0],
      [-1, 1],
    ]);
    expect(signedArea(diamond)).toBeCloseTo(2, 12);
    expect(signedArea(clipToRectangle(diamond, 0, 5, 0, 1))).toBeCloseTo(0.5, 12);
    expect(clipToRectangle(diamond, 3, 5, 0, 1).length).toBe(0);
  });
});
