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
} from '../../../core/flooding';
import { checksOf, share, within, type OutsideCheck } from './check';

const room = { plan: 50, opening: 0.5, outside: 3, sill: 0 };
const barge = { waterplane: 2000, displacement: 4100 };

export const floodingChecks: readonly OutsideCheck[] = [
  ...checksOf("Torricelli's law with Cd 0.6 (hydraulics handbooks), closed forms worked by hand", [
    ['Flow through 0.5 m2 under 3 m, m3/s', 2.3016, () => orificeFlow(0.5, 3), within(1e-4)],
    ['100 m3 through the same, s', 43.448, () => constantHeadTime(100, 0.5, 3), within(1e-2)],
    ['Flow through a slot of 1 m from 1 to 2 m deep, m3/s', 3.2396, () => weirFlow(1, 1, 2), within(1e-4)],
    ['A floor of 50 m2 filled to 2 m, s', 55.09, () => fillTime(room, 2), within(1e-2)],
    ['The same to the outside level of 3 m, s', 130.344, () => fillTime(room, 3), within(1e-3)],
    ['With the sill at 1 m, to 1 m, s', 26.606, () => fillTime({ ...room, sill: 1 }, 1), within(1e-2)],
    ['With the sill at 1 m, to 2.5 m, s', 79.819, () => fillTime({ ...room, sill: 1 }, 2.5), within(1e-2)],
    [
      'Rooms of 50 and 30 m2 level from 3 m, s',
      48.879,
      () => equalisationTime([50, 30], 0.5, { from: 3, to: 0 }),
      within(1e-3),
    ],
    ['The barge of 4,100 t sinks through 10 m2, s', 425.7, () => bargeSinkTime(barge, 10, 8), share(5e-4)],
    ['Opening that floods 16,000 m3 in 180 s, m2', 23.65, () => openingForTime(16000, 180, 2), share(5e-4)],
    ['Vents for 5 % of the head, share of the opening', 0.1507, () => ventShare(0.05), within(1e-4)],
    ['Vents for 10 % of the head', 0.1037, () => ventShare(0.1), within(1e-4)],
    [
      'Air pressure at the first of these, share of the head',
      0.05,
      () => airPressureShare(ventShare(0.05)),
      within(1e-12),
    ],
  ]),
  ...checksOf("Boyle's law at 10.1 m of sea water to the atmosphere", [
    [
      'Water in a sealed space of 3 m, its floor 5 m under, m',
      0.8718,
      () => trappedAirLevel(3, 5),
      within(1e-3),
    ],
  ]),
  ...checksOf('Published water-ingress table of a salvage manual (10,370 m3/h at 1 m and 1 m2)', [
    ['Discharge coefficient it implies', 0.6503, () => impliedDischarge(10370 / 3600, 1, 1), within(1e-3)],
  ]),
  ...checksOf(
    'Damage-control rule of thumb: 3600 A sqrt(h) gallons a minute',
    [
      [
        'Discharge coefficient it implies, an upper bound',
        0.9999,
        () => impliedDischarge((3600 * 231 * 0.0254 ** 3) / 60, 0.3048 ** 2, 0.3048),
        within(1e-3),
      ],
    ],
    'common practice',
  ),
  ...checksOf('IMO MSC.245(83), cross-flooding arrangements', [
    [
      'Cross-flooding of 100 m3 by 0.3 m2 at F 0.6, s',
      144.83,
      () => crossFloodingTime({ volume: 100, area: 0.3, factor: 0.6 }, { from: 3, to: 0 }),
      share(1e-4),
    ],
  ]),
];
