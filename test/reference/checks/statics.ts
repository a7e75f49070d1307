import {
  addedWeight,
  angleOfLoll,
  bmFromCoefficient,
  boxGm,
  endGroundingAngle,
  freeSurfaceCorrection,
  floodPath,
  gmFromInclining,
  gmFromRollPeriod,
  groundingLoss,
  hullFromParticulars,
  hullSolid,
  inertiaCoefficient,
  kbMorrish,
  kbPosdunine,
  kgAfterRemoval,
  levelOf,
  listFromShift,
  listWithoutGm,
  lostBuoyancy,
  orbitalSpeed,
  restAt,
  rollOverPath,
  rollPeriod,
  sinkScreenGm,
  spaceSolid,
  submergedWeight,
  wallSidedGz,
  waterplaneCoefficient,
  waveForces,
  waveLength,
  type FloodPlan,
} from '../../../core/stability';
import { checksOf, share, within, type OutsideCheck } from './check';

const W = 8200;
const box = { length: 100, breadth: 20, draught: 4, kg: 7 };
const midship = { length: 10, breadth: 20, permeability: 1, off: 0 };
const partly = { ...midship, permeability: 0.85 };
const wing = { length: 10, breadth: 5, permeability: 1, off: 7.5 };
const tank = { length: 20, breadth: 10, density: 1.025 };
const form = { length: 120, breadth: 16, volume: 5760 };
const cwp = waterplaneCoefficient(0.6);
const bm = (rule: Parameters<typeof inertiaCoefficient>[1]) =>
  bmFromCoefficient(inertiaCoefficient(cwp, rule), form);
const sinking = {
  displacement: 4100,
  kg: 6,
  area: 2000,
  inertia: (100 * 20 ** 3) / 12,
  floodedShare: 1,
  strips: 1,
};
const wave = { height: 8, period: 12, depth: 30 };
const wreck = { length: 100, breadth: 16, height: 10, submergedWeight: 29852 };

const hull = hullFromParticulars({
  length: 100,
  breadth: 20,
  depth: 10,
  draught: 2,
  blockCoefficient: 1,
  waterplaneCoefficient: 1,
});
const space = { id: 'hold', x0: 0, x1: 100, y0: -10, y1: 10, z0: 0, z1: 10, permeability: 1 };
const barge: FloodPlan = {
  hull: hullSolid(hull, 20),
  depth: 10,
  breadth: 20,
  lightVolume: 4000,
  mismatch: 0,
  spaces: [{ solid: spaceSolid(hull, space, 5), floor: 0, y: 0, sill: 0 }],
};
const HEELS: readonly (readonly [kg: number, heels: readonly number[]])[] = [
  [4, [4.99, 9.18, 15.27, 0]],
  [5, [5.73, 10.52, 17.62, 22.01]],
  [6, [6.53, 11.94, 19.84, 24.94]],
];
const LEVELS = [0.5, 1, 2, 3];

const heelChecks = HEELS.flatMap(([kg, heels]) =>
  checksOf(
    'Equilibrium of a box section by polygon clipping and by strips, computed twice outside the program',
    heels.map((heel, i) => [
      `Heel of the sinking barge at KG ${kg} m, ${LEVELS[i] ?? 0} m of water inside, degrees`,
      heel,
      () => restAt(levelOf(barge, LEVELS[i] ?? 0), barge, { kg, tcg: 0 }).heel,
      within(0.05),
    ]),
  ),
);

export const staticsChecks: readonly OutsideCheck[] = [
  ...checksOf('Schneekluth and Bertram, Ship Design for Efficiency and Economy (1998), as Parsons gives it', [
    ['Waterplane coefficient (1 + 2 Cb) / 3 at Cb 0.60', 0.7333, () => cwp, within(1e-4)],
    ["BM by D'Arcangelo, m", 4.1108, () => bm("D'Arcangelo"), within(1e-3)],
    ['BM by Eames, m', 3.9223, () => bm('Eames'), within(1e-3)],
    ['BM by McCloghrie, m', 3.9772, () => bm('McCloghrie'), within(1e-3)],
    ['KB by Morrish, m', 2.803, () => kbMorrish(5, 5760, cwp * 1920), within(1e-3)],
    ['KB by Posdunine, m', 2.75, () => kbPosdunine(5, 0.6, cwp), within(1e-3)],
  ]),
  ...checksOf('Barrass and Derrett, Ship Stability for Masters and Mates: box formulas worked by hand', [
    ['GM of the barge 100 x 20 x 4 m, KG 7 m', 3.3333, () => boxGm(box), within(1e-4)],
    ['KG once 200 t at 15 m are off, m', 6.8, () => kgAfterRemoval(W, 7, 200, 15), within(1e-3)],
    [
      'GM then, m',
      3.6929,
      () => boxGm({ breadth: 20, draught: 8000 / 1.025 / 2000, kg: kgAfterRemoval(W, 7, 200, 15) }),
      within(1e-3),
    ],
    ['GM lost to a tank of 20 x 10 m, m', 0.2083, () => freeSurfaceCorrection(tank, W), within(1e-4)],
    ['The same halved lengthwise, m', 0.0521, () => freeSurfaceCorrection(tank, W, 2), within(1e-4)],
    ['List from 100 t x 6 m, degrees', 1.2575, () => listFromShift(100, 6, W, 10 / 3), within(1e-3)],
    [
      'List from 100 t x 1 m without GM, degrees',
      8.1405,
      () => listWithoutGm(100, 1, W, 8.3333),
      within(1e-3),
    ],
    ['GM found by that inclining, m', 3.3333, () => gmFromInclining(100, 6, W, 1.2575), within(1e-2)],
    [
      'Loll at GM -0.2, BM 8.3333 m, degrees',
      12.3576,
      () => angleOfLoll(-0.2, 8.3333)?.degrees,
      within(1e-3),
    ],
    ['GM at that loll, m', 0.4095, () => angleOfLoll(-0.2, 8.3333)?.gmThere, within(1e-3)],
    ['Wall-sided GZ at 15 degrees, m', 0.9402, () => wallSidedGz(3.3333, 8.3333, 15), within(1e-3)],
    [
      'GM by lost buoyancy, 10 m open amidships, m',
      2.7222,
      () => lostBuoyancy(box, midship).gm,
      within(1e-4),
    ],
    ['Sinkage of the same, m', 0.4444, () => lostBuoyancy(box, midship).sinkage, within(1e-4)],
    ['GM by added weight of the same, m', 2.45, () => addedWeight(box, midship).gm, within(1e-4)],
    ['Water of the same, t', 911.11, () => addedWeight(box, midship).water, within(5e-3)],
    [
      'W x GM by lost buoyancy, t m',
      22322.2,
      () => lostBuoyancy(box, midship).gm * lostBuoyancy(box, midship).displacement,
      share(1e-4),
    ],
    [
      'W x GM by added weight, t m',
      22322.2,
      () => addedWeight(box, midship).gm * addedWeight(box, midship).displacement,
      share(1e-4),
    ],
    ['GM by lost buoyancy at permeability 0.85, m', 2.8108, () => lostBuoyancy(box, partly).gm, within(1e-3)],
    ['GM by added weight at permeability 0.85, m', 2.5719, () => addedWeight(box, partly).gm, within(1e-3)],
    [
      'List with a wing space of 10 x 5 m open, degrees',
      3.6544,
      () => lostBuoyancy(box, wing).listDegrees,
      within(1e-3),
    ],
    ['GM of the same, m', 3.011, () => lostBuoyancy(box, wing).gm, within(1e-3)],
    [
      'GM lost with 500 t on the ground, P KM / W, m',
      0.6301,
      () => groundingLoss(500, { displacement: W, km: 10.3333, kg: 7 }).onDisplacement,
      within(1e-3),
    ],
    [
      'The same by P KG / (W - P), m',
      0.4545,
      () => groundingLoss(500, { displacement: W, km: 10.3333, kg: 7 }).onReduced,
      within(1e-3),
    ],
    [
      'Small-angle GM sinking over the whole length at 2 m, m',
      -3,
      () => sinkScreenGm(sinking, 2),
      within(1e-6),
    ],
    ['The same at 5 m, m', 0, () => sinkScreenGm(sinking, 5), within(1e-6)],
    [
      'Sinking over 0.6 of the length at 5 m, m',
      3.1667,
      () => sinkScreenGm({ ...sinking, floodedShare: 0.6 }, 5),
      within(1e-3),
    ],
    [
      'With a tight centreline bulkhead at 2 m, m',
      9.5,
      () => sinkScreenGm({ ...sinking, strips: 2 }, 2),
      within(1e-3),
    ],
    ['3,500 t of steel under water, t', 3042.99, () => submergedWeight(3500), share(1e-4)],
  ]),
  ...checksOf('IMO, Intact Stability Code 2008, roll period', [
    [
      'GM read back from its own roll period, m',
      3.3333,
      () => gmFromRollPeriod(rollPeriod(3.3333, box), box),
      within(1e-9),
    ],
  ]),
  ...checksOf('Airy wave theory: 8 m and 12 s in 30 m, as in the US Army Shore Protection Manual', [
    ['Wave length, m', 177.04, () => waveLength(wave), share(5e-4)],
    ['Speed at the bed, m/s', 1.6394, () => orbitalSpeed(wave, 0), share(5e-4)],
    ['Speed 5 m above the bed, m/s', 1.6653, () => orbitalSpeed(wave, 5), within(1e-3)],
    ['Drag on a hull beam-on, kN', 1705, () => waveForces(wave, wreck).drag, within(5)],
    ['Lift on the same, kN', 1364, () => waveForces(wave, wreck).lift, within(5)],
  ]),
  ...checksOf('State report on a 510 ft landing ship dock', [
    [
      'Angle with one end down in 130 ft of water, degrees',
      14.768,
      () => endGroundingAngle(130, 510),
      within(1e-3),
    ],
  ]),
  ...heelChecks,
  ...checksOf('The same section check at KG 4.5 and 5.5 m', [
    [
      'Heel at the end at KG 4.5 m, degrees',
      0,
      () => rollOverPath(floodPath(barge, 160), { kg: 4.5, tcg: 0 }).at(-1)?.heel,
    ],
    [
      'Greatest heel at KG 4.5 m, degrees',
      20.5,
      () =>
        Math.max(...rollOverPath(floodPath(barge, 160), { kg: 4.5, tcg: 0 }).map(point => point.heel ?? 99)),
      within(0.5),
    ],
    [
      'Level without equilibrium at KG 5.5 m, m',
      3.85,
      () =>
        rollOverPath(floodPath(barge, 160), { kg: 5.5, tcg: 0 }).find(point => point.heel === undefined)
          ?.level,
      within(0.06),
    ],
  ]),
];
