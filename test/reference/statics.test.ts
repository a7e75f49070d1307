import { describe, expect, it } from 'vitest';
import {
  addedWeight,
  angleOfLoll,
  bmFromCoefficient,
  boxGm,
  draughtAtLevel,
  endGroundingAngle,
  freeSurfaceCorrection,
  gmFromInclining,
  gmFromRollPeriod,
  groundingLoss,
  inertiaCoefficient,
  kbMorrish,
  kbPosdunine,
  kgAfterRemoval,
  listFromShift,
  listWithoutGm,
  lostBuoyancy,
  orbitalSpeed,
  rollPeriod,
  sinkScreenGm,
  submergedWeight,
  wallSidedGz,
  waterplaneCoefficient,
  waveForces,
  waveLength,
  type ClosedFormShip,
} from '../../core/stability';

// Box barge L 100, B 20, T 4, KG 7 m: every value follows from the box formulas of Barrass and Derrett, Ship
// Stability for Masters and Mates, worked by hand with g 9.81 and sea water of 1.025 t/m3.
const W = 8200;
const box = { length: 100, breadth: 20, draught: 4, kg: 7 };
const midship = { length: 10, breadth: 20, permeability: 1, off: 0 };

describe('coefficients of a test ship of L 120, B 16, T 5 m, Cb 0.60 (Schneekluth and Bertram; Parsons ch. 11)', () => {
  const cwp = waterplaneCoefficient(0.6);
  const hull = { length: 120, breadth: 16, volume: 5760 };

  it('has a waterplane coefficient of 0.7333', () => expect(cwp).toBeCloseTo(0.7333, 4));

  it('has KB 2.8030 m by Morrish and 2.7500 m by Posdunine', () => {
    expect(kbMorrish(5, 5760, cwp * 120 * 16)).toBeCloseTo(2.803, 3);
    expect(kbPosdunine(5, 0.6, cwp)).toBeCloseTo(2.75, 3);
  });

  it.each([
    ["D'Arcangelo", 4.1108],
    ['Eames', 3.9223],
    ['McCloghrie', 3.9772],
  ] as const)('has BM by %s of %s m', (rule, bm) => {
    expect(bmFromCoefficient(inertiaCoefficient(cwp, rule), hull)).toBeCloseTo(bm, 3);
  });
});

describe('the box barge L 100, B 20, T 4, KG 7 m', () => {
  it('has GM 3.3333 m', () => expect(boxGm(box)).toBeCloseTo(3.3333, 4));

  it('has KG 6.8000 and GM 3.6929 m once 200 t at 15 m are off', () => {
    const kg = kgAfterRemoval(W, 7, 200, 15);
    expect(kg).toBeCloseTo(6.8, 3);
    expect(boxGm({ breadth: 20, draught: 8000 / 1.025 / 2000, kg })).toBeCloseTo(3.6929, 3);
  });

  it('loses 0.2083 m of GM to a tank of 20 x 10 m, 0.0521 m when halved lengthwise', () => {
    const tank = { length: 20, breadth: 10, density: 1.025 };
    expect(freeSurfaceCorrection(tank, W)).toBeCloseTo(0.2083, 4);
    expect(freeSurfaceCorrection(tank, W, 2)).toBeCloseTo(0.0521, 4);
  });

  it('lists 1.2575 degrees for 100 t x 6 m, and 8.1405 degrees for 100 t x 1 m with no GM', () => {
    expect(listFromShift(100, 6, W, 10 / 3)).toBeCloseTo(1.2575, 3);
    expect(listWithoutGm(100, 1, W, 8.3333)).toBeCloseTo(8.1405, 3);
    expect(gmFromInclining(100, 6, W, 1.2575)).toBeCloseTo(3.3333, 2);
  });

  it('lolls to 12.3576 degrees with GM -0.2 m and has GM 0.4095 m there', () => {
    const loll = angleOfLoll(-0.2, 8.3333);
    expect(loll?.degrees).toBeCloseTo(12.3576, 3);
    expect(loll?.gmThere).toBeCloseTo(0.4095, 3);
    expect(angleOfLoll(0.1, 8)).toBeUndefined();
  });

  it('has a wall-sided GZ of 0.9402 m at 15 degrees', () => {
    expect(wallSidedGz(3.3333, 8.3333, 15)).toBeCloseTo(0.9402, 3);
  });

  it('open amidships over 10 m: lost buoyancy gives GM 2.7222 m and 0.4444 m of sinkage', () => {
    const lost = lostBuoyancy(box, midship);
    expect(lost.gm).toBeCloseTo(2.7222, 4);
    expect(lost.sinkage).toBeCloseTo(0.4444, 4);
  });

  it('added weight gives GM 2.4500 m with 911.11 t of water; both agree in W GM', () => {
    const [lost, added] = [lostBuoyancy(box, midship), addedWeight(box, midship)];
    expect(added.gm).toBeCloseTo(2.45, 4);
    expect(added.water).toBeCloseTo(911.11, 2);
    expect(Math.abs((lost.gm * lost.displacement) / 22322.2 - 1)).toBeLessThan(1e-4);
    expect(Math.abs((added.gm * added.displacement) / 22322.2 - 1)).toBeLessThan(1e-4);
  });

  it('with a permeability of 0.85 has GM 2.8108 and 2.5719 m', () => {
    const partly = { ...midship, permeability: 0.85 };
    expect(lostBuoyancy(box, partly).gm).toBeCloseTo(2.8108, 3);
    expect(addedWeight(box, partly).gm).toBeCloseTo(2.5719, 3);
  });

  it('with a wing compartment of 10 x 5 m open lists 3.6544 degrees with GM 3.0110 m', () => {
    const wing = { length: 10, breadth: 5, permeability: 1, off: 7.5 };
    const flooded = lostBuoyancy(box, wing);
    expect(flooded.listDegrees).toBeCloseTo(3.6544, 3);
    expect(flooded.gm).toBeCloseTo(3.011, 3);
  });

  it('with 500 t on the bottom loses 0.6301 m (P KM / W) or 0.4545 m (P KG / (W - P))', () => {
    const loss = groundingLoss(500, { displacement: W, km: 10.3333, kg: 7 });
    expect(loss.onDisplacement).toBeCloseTo(0.6301, 3);
    expect(loss.onReduced).toBeCloseTo(0.4545, 3);
  });

  it('rolls in a period that gives back its GM (IMO Intact Stability Code 2008)', () => {
    expect(gmFromRollPeriod(rollPeriod(3.3333, box), box)).toBeCloseTo(3.3333, 9);
  });
});

describe('the small-angle GM while sinking, box 100 x 20 x 10 m of 4,100 t, KG 6 m', () => {
  const ship: ClosedFormShip = {
    displacement: 4100,
    kg: 6,
    area: 2000,
    inertia: (100 * 20 ** 3) / 12,
    floodedShare: 1,
    strips: 1,
  };

  it('open over the whole length is -3.000 m at 2 m of water and zero at 5 m exactly', () => {
    expect(sinkScreenGm(ship, 2)).toBeCloseTo(-3, 6);
    expect(sinkScreenGm(ship, 5)).toBeCloseTo(0, 6);
    expect([0.01, 4, 6, 8].map(h => sinkScreenGm(ship, h).toFixed(2))).toEqual([
      '-4.99',
      '-1.00',
      '1.00',
      '3.00',
    ]);
  });

  it('open over 0.6 of it is 3.1667 m at 5 m, where she floats', () => {
    const part = { ...ship, floodedShare: 0.6 };
    expect(sinkScreenGm(part, 5)).toBeCloseTo(3.1667, 3);
    expect(draughtAtLevel(part, 5)).toBeCloseTo(5, 9);
  });

  it('with a tight centreline bulkhead is 9.500 m at 2 m', () => {
    expect(sinkScreenGm({ ...ship, strips: 2 }, 2)).toBeCloseTo(9.5, 3);
  });
});

describe('site: waves and grounding', () => {
  const wave = { height: 8, period: 12, depth: 30 };

  it('a wave of 8 m and 12 s in 30 m is 177.04 m long and moves 1.6394 m/s at the bed (Airy theory)', () => {
    expect(Math.abs(waveLength(wave) / 177.04 - 1)).toBeLessThan(5e-4);
    expect(Math.abs(orbitalSpeed(wave, 0) / 1.6394 - 1)).toBeLessThan(5e-4);
    expect(orbitalSpeed(wave, 5)).toBeCloseTo(1.6653, 3);
  });

  it('3,500 t of steel weigh 3,042.99 t under water', () => {
    expect(Math.abs(submergedWeight(3500) / 3042.99 - 1)).toBeLessThan(1e-4);
  });

  it('beam-on on a hull of 100 x 16 x 10 m drags 1,705 kN and lifts 1,364 kN; both factors are told', () => {
    const wreck = { length: 100, breadth: 16, height: 10, submergedWeight: 29852 };
    const forces = waveForces(wave, wreck);
    expect(forces.drag).toBeCloseTo(1705, -1);
    expect(forces.lift).toBeCloseTo(1364, -1);
    expect(forces.inertia / 1000).toBeCloseTo(28.6, 1);
    expect(forces.dragOnlyFactor).toBeCloseTo(8.35, 1);
    expect(forces.inertiaFactor).toBeCloseTo(0.5, 1);
  });

  it('a hull of 510 ft in 130 ft of water stands at 14.768 degrees with one end on the bottom', () => {
    expect(endGroundingAngle(130, 510)).toBeCloseTo(14.768, 3);
  });
});
