import { describe, expect, it } from 'vitest';
import {
  airPressureShare,
  bargeSinkTime,
  constantHeadTime,
  crossFloodingTime,
  equalisationTime,
  fillTime,
  impliedDischarge,
  openingForTime,
  orificeFlow,
  trappedAirLevel,
  ventShare,
  weirFlow,
} from '../../core/flooding';

function off(value: number, reference: number): number {
  return Math.abs(value / reference - 1);
}

// Closed forms of Torricelli's law with Cd 0.6 and g 9.81, worked by hand.
describe('orifices and filling times', () => {
  it('0.5 m2 under 3 m pass 2.3016 m3/s', () => {
    expect(orificeFlow(0.5, 3)).toBeCloseTo(2.3016, 4);
    expect(constantHeadTime(100, 0.5, 3)).toBeCloseTo(43.448, 2);
  });

  it('a slot of 1 m breadth from 1 to 2 m deep passes 3.2396 m3/s', () => {
    expect(weirFlow(1, 1, 2)).toBeCloseTo(3.2396, 4);
  });

  it('a floor of 50 m2 fills to 2 m in 55.090 s and levels at 3 m in 130.344 s', () => {
    const room = { plan: 50, opening: 0.5, outside: 3, sill: 0 };
    expect(fillTime(room, 2)).toBeCloseTo(55.09, 2);
    expect(fillTime(room, 3)).toBeCloseTo(130.344, 3);
    const higher = { ...room, sill: 1 };
    expect(fillTime(higher, 1)).toBeCloseTo(26.606, 2);
    expect(fillTime(higher, 2.5)).toBeCloseTo(79.819, 2);
  });

  it('rooms of 50 and 30 m2 level from 3 m in 48.879 s', () => {
    expect(equalisationTime([50, 30], 0.5, { from: 3, to: 0 })).toBeCloseTo(48.879, 3);
  });

  it('the barge sinks in 425.70 s through 10 m2; 180 s ask for 23.650 m2', () => {
    const barge = { waterplane: 2000, displacement: 4100 };
    expect(off(bargeSinkTime(barge, 10, 8), 425.7)).toBeLessThan(5e-4);
    expect(off(openingForTime(16000, 180, 2), 23.65)).toBeLessThan(5e-4);
  });

  it('vents of 0.1507 and 0.1037 of the opening keep the air at 5 and 10 % of the head', () => {
    expect(ventShare(0.05)).toBeCloseTo(0.1507, 4);
    expect(ventShare(0.1)).toBeCloseTo(0.1037, 4);
    expect(airPressureShare(ventShare(0.05))).toBeCloseTo(0.05, 12);
  });

  it('air shut into a space of 3 m with its floor 5 m under stops the water at 0.8718 m (Boyle)', () => {
    expect(trappedAirLevel(3, 5)).toBeCloseTo(0.8718, 3);
  });

  it('a published water-ingress table (10,370 m3/h at 1 m and 1 m2) implies Cd 0.6503', () => {
    expect(impliedDischarge(10370 / 3600, 1, 1)).toBeCloseTo(0.6503, 3);
  });

  it('the damage-control rule of 3600 A sqrt(h) gallons a minute implies Cd 0.9999: an upper bound', () => {
    const gallon = 231 * 0.0254 ** 3;
    expect(impliedDischarge((3600 * gallon) / 60, 0.3048 ** 2, 0.3048)).toBeCloseTo(0.9999, 3);
  });

  it('cross-flooding of 100 m3 by the form of IMO MSC.245(83) takes 144.83 s', () => {
    const ducts = { volume: 100, area: 0.3, factor: 0.6 };
    expect(off(crossFloodingTime(ducts, { from: 3, to: 0 }), 144.83)).toBeLessThan(1e-4);
  });
});
