import { describe, expect, it } from 'vitest';
import { hullFromStations, hullSolid, leverArea, leverAt, leverCurve } from '../../../core/stability';
import { intermediateFactor } from '../../../core/flooding';

type Points = readonly (readonly [number, number])[];

/**
 * An own calculation by strips, sharing nothing with the program: the section is cut into a grid of small squares in
 * the turned axes, the level found by bisection, the lever from the sums.
 */
function leverByStrips(outline: Points, area: number, kg: number, degrees: number): number {
  const phi = (degrees * Math.PI) / 180;
  const turned = outline.map(([y, z]) => [
    y * Math.cos(phi) + z * Math.sin(phi),
    z * Math.cos(phi) - y * Math.sin(phi),
  ]);
  const heights = turned.map(([, w]) => w ?? NaN);
  const strips = 4000;
  const [low, high] = [Math.min(...heights), Math.max(...heights)];
  const dw = (high - low) / strips;
  const rows = Array.from({ length: strips }, (_, k) => {
    const w = low + (k + 0.5) * dw;
    const cuts = turned
      .flatMap(([u = NaN, a = NaN], i) => {
        const [v = NaN, b = NaN] = turned[(i + 1) % turned.length] ?? [];
        return a <= w !== b <= w ? [u + ((v - u) * (w - a)) / (b - a)] : [];
      })
      .sort((a, b) => a - b);
    const [from = NaN, to = NaN] = cuts;
    return { area: (to - from) * dw, middle: (from + to) / 2 };
  });
  let [filled, moment] = [0, 0];
  for (const row of rows) {
    const part = Math.min(1, (area - filled) / row.area);
    if (part <= 0) break;
    filled += part * row.area;
    moment += part * row.area * row.middle;
  }
  return moment / filled - kg * Math.sin(phi);
}

function prism(outline: Points, depth: number) {
  return hullSolid(hullFromStations(100, depth, [{ x: 0, outline }]), 4);
}

const BOX: Points = [
  [-10, 0],
  [10, 0],
  [10, 10],
  [-10, 10],
];
const FLARED: Points = [
  [-7, 0],
  [7, 0],
  [10, 9],
  [-10, 9],
];
const WEDGE: Points = [
  [0, 0],
  [9, 11],
  [-9, 11],
];

function curveOf(outline: Points, depth: number, area: number, kg: number) {
  const ship = { hull: prism(outline, depth), spaces: [], volumes: [], lightVolume: area * 100 };
  return leverCurve(ship, { kg, tcg: 0 });
}

describe('the curve of righting levers', () => {
  it('is 0.9402 m at 15 degrees for the box of 20 m and 4 m draught, as the wall-sided formula (Lewis, PNA 1988)', () => {
    const curve = curveOf(BOX, 10, 80, 7);
    expect(leverAt(curve, 15)).toBeCloseTo(0.9402, 3);
    for (const degrees of [5, 10, 20]) {
      const phi = (degrees * Math.PI) / 180;
      const wallSided = Math.sin(phi) * (10 / 3 + ((0.5 * (20 * 20)) / 48) * Math.tan(phi) ** 2);
      expect(leverAt(curve, degrees)).toBeCloseTo(wallSided, 6);
    }
  });

  it('has the area of the wall-sided formula up to 20 degrees (Simpson by hand)', () => {
    const curve = curveOf(BOX, 10, 80, 7);
    const gz = (degrees: number) => {
      const phi = (degrees * Math.PI) / 180;
      return Math.sin(phi) * (10 / 3 + ((0.5 * 400) / 48) * Math.tan(phi) ** 2);
    };
    let area = 0;
    for (let i = 0; i < 20; i++) area += (gz(i) + 4 * gz(i + 0.5) + gz(i + 1)) / 6;
    expect(leverArea(curve, 0, 20) / area).toBeCloseTo(1, 4);
  });

  it('equals an own calculation by strips beyond bilge and deck edge, for a box, a flared section and a wedge', () => {
    const cases = [
      { outline: BOX, depth: 10, area: 80, kg: 7 },
      { outline: FLARED, depth: 9, area: 60, kg: 5 },
      { outline: WEDGE, depth: 11, area: 30, kg: 6.5 },
    ];
    for (const { outline, depth, area, kg } of cases) {
      const curve = curveOf(outline, depth, area, kg);
      for (const degrees of [8, 25, 40, 55, 70])
        if (degrees < curve.vanishes + 20)
          expect(leverAt(curve, degrees)).toBeCloseTo(leverByStrips(outline, area, kg, degrees), 2);
    }
  });

  it('is the same to port as to starboard for a section alike on both sides', () => {
    const ship = { hull: prism(FLARED, 9), spaces: [], volumes: [], lightVolume: 6000 };
    const [starboard, port] = [
      leverCurve(ship, { kg: 5, tcg: 0 }),
      leverCurve(ship, { kg: 5, tcg: 0 }, 0, -1),
    ];
    expect(port.greatest.gz).toBeCloseTo(starboard.greatest.gz, 9);
    expect(port.vanishes).toBeCloseTo(starboard.vanishes, 6);
  });
});

describe('the factor s of an intermediate stage (SOLAS II-1/7-2)', () => {
  it('is full at 0.05 m and 7 degrees, the fourth root below, and none beyond 15 degrees of heel', () => {
    expect(intermediateFactor({ heel: 5, greatest: 0.05, range: 7 })).toBe(1);
    expect(intermediateFactor({ heel: 5, greatest: 0.025, range: 3.5 })).toBeCloseTo(0.25 ** 0.25, 12);
    expect(intermediateFactor({ heel: 15.1, greatest: 1, range: 30 })).toBe(0);
  });
});
