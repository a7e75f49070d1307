import {
  bargeResistance,
  hullResistance,
  KNOT,
  lockedPropellerResistance,
  propellerArea,
  propellerDrag,
  quickBollardPull,
  sampleCurve,
  towDays,
  tugBollardPull,
  windResistance,
} from '../../../core/towing';
import { checksOf, share, within, type OutsideCheck } from './check';

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
const propellers = propellerArea(120, 16, 'destroyer');

export const towingChecks: readonly OutsideCheck[] = [
  ...checksOf('US Navy Towing Manual, appendix G', [
    [
      'Hull of 110,000 long tons at 0.75 lb a ton, lb',
      103_125,
      () => hullResistance(0.75, 110_000),
      within(1e-6),
    ],
    ['The same at 0.48 lb a ton, lb', 66_000, () => hullResistance(0.48, 110_000), within(1e-6)],
    ['The same at 0.70 lb a ton, lb', 96_250, () => hullResistance(0.7, 110_000), within(1e-6)],
    [
      'Locked propellers of 150 ft2 at 6 kn, lb',
      20_179.8,
      () => lockedPropellerResistance(150, 6),
      within(1e-6),
    ],
    ['Wind of 26 kn on 5,000 ft2, lb', 13_682, () => windResistance(5000, 26, 0.8), within(0.5)],
    ['Sample curve at 3 kn, lb a ton', 0.15, () => sampleCurve(3)],
    ['Sample curve at 4 kn, lb a ton', 0.31, () => sampleCurve(4)],
    ['Sample curve at 5 kn, lb a ton', 0.48, () => sampleCurve(5)],
    ['Sample curve at 6 kn, lb a ton', 0.75, () => sampleCurve(6)],
    ['Bollard pull of 3,000 brake horsepower, long tons', 40.179, () => tugBollardPull(3000), within(1e-3)],
  ]),
  ...checksOf('Worked sheet of a classification society for the towing of a barge', [
    ['Friction, N', 13_715, () => parts.friction, share(2e-4)],
    ['Waves, N', 18_830, () => parts.wave, share(2e-4)],
    ['Air, N', 42_619, () => parts.air, share(2e-4)],
  ]),
  ...checksOf('UFC 4-159-03, Design: Moorings, propeller drag', [
    ['Expanded area of locked propellers, destroyer of 120 x 16 m, m2', 22.91, () => propellers, share(1e-3)],
    ['Their drag at 6 kn, kN', 111.87, () => propellerDrag(propellers, 6 * KNOT), share(1e-3)],
  ]),
  ...checksOf(
    'Quick rule for bollard pull, trade practice',
    [
      [
        'Bollard pull for 5,904 t at 6 kn, t',
        19.4,
        () => quickBollardPull({ displacement: 5904, knots: 6, breadth: 16, windHeight: 10 }),
        within(1e-3),
      ],
    ],
    'common practice',
  ),
  ...checksOf('Arithmetic of distance and speed', [
    ['1,100 nautical miles at 6 kn, days', 7.639, () => towDays(1100, 6), within(1e-3)],
  ]),
];
