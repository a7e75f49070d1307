import {
  asbestosPerSteelTonne,
  blockAtDepth,
  bottomShellThickness,
  cubicNumber,
  cuttingConsumption,
  cuttingMetresPerHour,
  displacementFromBlock,
  equipmentNumeral,
  gasPerMetre,
  massBeforeRemoval,
  meanValue,
  openingSetTotals,
  plateAreaPerTonne,
  reductionShare,
  sideShellThickness,
  steelWeight,
  wettedSurfaceHoltrop,
  wettedSurfaceMumford,
} from '../../../core/vessel';
import { checksOf, share, within, type OutsideCheck } from './check';

/** L 120, B 16, D 10, T 5 m, Cb 0.60, a full erection of 40 x 2.5 m, houses of 50 x 5 m. */
const ship = {
  length: 120,
  breadth: 16,
  depth: 10,
  draught: 5,
  erections: [{ length: 40, height: 2.5 }],
  houses: [{ length: 50, height: 5 }],
};
const shell = { length: 120, frameSpacing: 650, draughtToDepth: 0.6 };
const cut = cuttingConsumption(2000, 10);
const openings = openingSetTotals(14, 1.2, 1.5);

export const hullChecks: readonly OutsideCheck[] = [
  ...checksOf('Watson, Practical Ship Design (1998), 4.4.1 and equation 3.1, worked by hand', [
    ['Cubic number of 120 x 16 x 10 m', 192, () => cubicNumber(120, 16, 10)],
    [
      'Displacement of 120 x 16 x 5 m at Cb 0.60, t',
      5904,
      () => displacementFromBlock(0.6, ship),
      share(1e-4),
    ],
  ]),
  ...checksOf('Watson and Gilfillan, Some ship design methods (1977), worked by hand', [
    ['Equipment numeral of that ship with erection and houses', 3302.5, () => equipmentNumeral(ship)],
    ['Block coefficient at 0.8 of the depth', 0.68, () => blockAtDepth(0.6, 10, 5), within(1e-10)],
    ['Steel weight at K 0.030, t', 1812.9, () => steelWeight(0.03, 3302.5, 0.68), share(1e-3)],
    ['Steel weight at K 0.023, t', 1389.9, () => steelWeight(0.023, 3302.5, 0.68), share(1e-3)],
  ]),
  ...checksOf('UFC 4-159-03, Design: Moorings, equation 18 (Denny-Mumford)', [
    ['Wetted surface of that ship, m2', 2172, () => wettedSurfaceMumford(120, 5, 5760), share(1e-4)],
  ]),
  ...checksOf('Holtrop and Mennen, An approximate power prediction method (1982)', [
    [
      'Wetted surface of that ship at Cm 0.96, Cwp 0.7333, m2',
      2151.2,
      () => wettedSurfaceHoltrop({ ...ship, block: 0.6, midship: 0.96, waterplane: 2.2 / 3, bulbArea: 0 }),
      share(1e-3),
    ],
  ]),
  ...checksOf('Geometry of plates and rectangles at 7.85 t/m3', [
    ['Faces of a tonne of 8 mm plate, m2', 31.847, () => plateAreaPerTonne(8), share(1e-4)],
    ['Area of 14 openings of 1.2 x 1.5 m, m2', 25.2, () => openings.area, within(1e-12)],
    ['Cut length of 14 openings of 1.2 x 1.5 m, m', 75.6, () => openings.cutLength, within(1e-12)],
  ]),
  ...checksOf(
    'Shell thickness rules of a classification society, as remembered',
    [
      [
        'Side shell at L 120 m, frames 650 mm, d/D 0.6, mm',
        10.49,
        () => sideShellThickness(shell),
        share(5e-3),
      ],
      ['Bottom shell of the same, mm', 12.21, () => bottomShellThickness(shell), share(5e-3)],
    ],
    'from memory',
  ),
  ...checksOf('Study of torch cutting at a breaking yard (2013): 2 km of 10 mm plate', [
    ['Fuel gas, kg', 124, () => cut.fuel, within(1e-9)],
    ['Carbon dioxide, kg', 435.4, () => cut.carbonDioxide, within(1e-9)],
    ['Paint to the air, kg', 18, () => cut.paintToAir, within(1e-9)],
    ['Paint fallen, kg', 26.8, () => cut.paintFallen, within(1e-9)],
  ]),
  ...checksOf('Handbook table of hand torch cutting: half an inch at 17.5 in/min, 70 ft3/h of oxygen', [
    ['Speed, m/h', 26.67, () => cuttingMetresPerHour(17.5), share(1e-3)],
    ['Oxygen a metre, m3', 0.0743, () => gasPerMetre(70, 17.5), share(1e-3)],
  ]),
  ...checksOf('UK Parliament HC 1336 (2002-03), Annex 1, naval auxiliaries', [
    ['Asbestos of an oiler, kg a tonne of steel', 5.129, () => asbestosPerSteelTonne(55, 10723), share(1e-3)],
    [
      'Asbestos of a tender, kg a tonne of steel',
      22.75,
      () => asbestosPerSteelTonne(273, 12000),
      share(1e-3),
    ],
  ]),
  ...checksOf('State progress report on an 888 ft aircraft carrier (2011), p. 20', [
    ['PCB removed, % of 832.2 lb', 13.2, () => reductionShare(832.2, 722.6) * 100, within(0.1)],
    [
      'Cable insulation before a tenth came off, lb',
      402_444,
      () => massBeforeRemoval(362_200, 0.1),
      share(5e-4),
    ],
    ['The same, t', 182.54, () => (massBeforeRemoval(362_200, 0.1) * 0.45359237) / 1000, share(5e-4)],
  ]),
  ...checksOf('USGS Minerals Yearbook 2017, iron and steel scrap', [
    ['Mean value of scrap bought, USD/t', 265.03, () => meanValue(11.9e9, 44.9e6), share(1e-3)],
  ]),
  ...checksOf('RAND MR-1377 (2001), disposal options for ships', [
    ['Reefing of 358 ships for 0.5 billion, USD a ship', 1_396_648, () => Math.round(meanValue(0.5e9, 358))],
  ]),
];
