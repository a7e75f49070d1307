import { describe, expect, it } from 'vitest';
import {
  gmUpright,
  hullFromStations,
  hullSolid,
  levelOf,
  restAt,
  rightingMoment,
  spaceSolid,
  type FloodPlan,
} from '../../../core/stability';

// An own calculation that shares nothing with core: it turns the outline, clips it with a horizontal line point by
// point, takes areas and centroids with the shoelace formula, and finds levels and heels by plain bisection.
type Points = readonly (readonly [number, number])[];

function turned(points: Points, heel: number): Points {
  const [s, c] = [Math.sin(heel), Math.cos(heel)];
  return points.map(([y, z]) => [y * c + z * s, z * c - y * s]);
}

function below(points: Points, level: number): Points {
  const kept: [number, number][] = [];
  for (let i = 0; i < points.length; i++) {
    const [a, b] = [points[i], points[(i + 1) % points.length]];
    if (!a || !b) continue;
    if (a[1] <= level) kept.push([a[0], a[1]]);
    if (a[1] <= level !== b[1] <= level) {
      const t = (level - a[1]) / (b[1] - a[1]);
      kept.push([a[0] + t * (b[0] - a[0]), level]);
    }
  }
  return kept;
}

function shoelace(points: Points): { area: number; moment: number } {
  let [area, moment] = [0, 0];
  points.forEach(([y1, z1], i) => {
    const [y2, z2] = points[(i + 1) % points.length] ?? [y1, z1];
    const cross = y1 * z2 - y2 * z1;
    area += cross / 2;
    moment += ((y1 + y2) * cross) / 6;
  });
  return { area, moment };
}

function zero(low: number, high: number, value: (x: number) => number): number {
  let [a, b] = [low, high];
  for (let i = 0; i < 60; i++) {
    const middle = (a + b) / 2;
    if (value(middle) < 0) a = middle;
    else b = middle;
  }
  return a;
}

function momentAtArea(points: Points, area: number): number {
  const level = zero(-50, 50, x => shoelace(below(points, x)).area - area);
  return shoelace(below(points, level)).moment;
}

/** Heel in degrees at which the section rests from upright; none below 60. */
function ownHeel(points: Points, light: number, level: number, kg: number): number | undefined {
  const inside = shoelace(below(points, level)).area;
  const righting = (heel: number): number => {
    const outline = turned(points, heel);
    return (
      momentAtArea(outline, light + inside) - momentAtArea(outline, inside) - light * kg * Math.sin(heel)
    );
  };
  const degree = Math.PI / 180;
  if (righting(0.1 * degree) >= 0) return 0;
  for (let d = 0.5; d <= 60; d += 0.5)
    if (righting(d * degree) >= 0) return zero((d - 0.5) * degree, d * degree, righting) / degree;
  return undefined;
}

const triangle: Points = [
  [0, 0],
  [10, 10],
  [-10, 10],
];
const flared: Points = [
  [-6, 0],
  [6, 0],
  [10, 10],
  [-10, 10],
];

function planOf(points: Points, light: number): FloodPlan {
  const hull = hullFromStations(100, 10, [{ x: 50, outline: points }]);
  const whole = { id: 'hold', x0: 0, x1: 100, y0: -20, y1: 20, z0: 0, z1: 10, permeability: 1 };
  return {
    hull: hullSolid(hull, 20),
    depth: 10,
    breadth: 20,
    lightVolume: 100 * light,
    mismatch: 0,
    spaces: [{ solid: spaceSolid(hull, whole, 5), floor: 0, y: 0, sill: 0 }],
  };
}

const cases: [string, Points, number, number, number][] = [];
for (const [name, points, light, kgs] of [
  ['a triangle, apex down', triangle, 25, [1.5, 4, 5.5, 7, 10]],
  ['a box with flared sides', flared, 36, [1, 3, 5, 8]],
] as const)
  for (const kg of kgs) for (const level of [0.5, 1, 2, 3, 4]) cases.push([name, points, light, level, kg]);

describe('the equilibrium heel of other sections equals an own polygon calculation within 0.05 degrees', () => {
  it.each(cases)('%s', (_, points, light, level, kg) => {
    const own = ownHeel(points, light, level, kg);
    const plan = planOf(points, light);
    const rest = restAt(levelOf(plan, level), plan, { kg, tcg: 0 }).heel;
    expect(rest === undefined).toBe(own === undefined);
    if (rest !== undefined && own !== undefined) expect(Math.abs(rest - own)).toBeLessThan(0.05);
  });

  it('has cases that heel, cases that stay upright and cases without rest', () => {
    const found = cases.map(([, points, light, level, kg]) => ownHeel(points, light, level, kg));
    expect(found.some(heel => heel === 0)).toBe(true);
    expect(found.some(heel => heel !== undefined && heel > 5)).toBe(true);
    expect(found.some(heel => heel === undefined)).toBe(true);
  });
});

describe('small angles', () => {
  it.each([{ points: triangle }, { points: flared }])(
    'GM upright is the slope of the righting moment',
    ({ points }) => {
      const plan = planOf(points, 30);
      const { ship } = levelOf(plan, 1.5);
      const small = 1e-4;
      const slope = rightingMoment(ship, { kg: 5, tcg: 0 }, small) / (plan.lightVolume * small);
      expect(gmUpright(ship, 5)).toBeCloseTo(slope, 4);
    },
  );
});
