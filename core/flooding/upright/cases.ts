import { floodPath, rollOverPath, type FloodPath, type PathPoint } from '../../stability';
import { centreAfter, floodPlan, type ResolvedShip } from './resolved';
import type { LowLikelyHigh, UprightLimits } from './types';

/** What one set of values comes to. */
export type Standing = 'stays up' | 'leans' | 'may roll over' | 'does not sink';

/** One corner of the ranges: displacement, height of the centre of gravity, unevenness of the openings. */
export interface ScreenCase {
  readonly displacement: number;
  readonly kg: number;
  readonly mismatch: number;
  readonly path: FloodPath;
  readonly points: readonly PathPoint[];
  readonly standing: Standing;
  /** Greatest equilibrium heel, degrees; absent where none exists. */
  readonly greatestHeel?: number;
  readonly worst: PathPoint;
  readonly lowestGm: PathPoint;
}

/** The ranges a screen runs over; one value each gives one case. */
export interface CaseRanges {
  readonly displacements: readonly number[];
  readonly kgs: readonly number[];
  readonly mismatches: readonly number[];
}

export function distinct(range: LowLikelyHigh): number[] {
  return [...new Set([range.low, range.likely, range.high])];
}

/** The point of the greatest heel, the earliest of several; one without rest is worse than any. */
function worstOf(points: readonly PathPoint[]): PathPoint {
  const heel = (point: PathPoint): number => Math.abs(point.heel ?? Infinity);
  return points.reduce((worst, point) => (heel(worst) >= heel(point) ? worst : point));
}

function standingOf(path: FloodPath, heel: number | undefined, limits: UprightLimits): Standing {
  if (!path.end.sinks) return 'does not sink';
  if (heel === undefined || heel > limits.leans) return 'may roll over';
  return heel > limits.staysUp ? 'leans' : 'stays up';
}

function caseOf(
  ship: ResolvedShip,
  path: FloodPath,
  at: { displacement: number; kg: number; mismatch: number },
  limits: UprightLimits,
): ScreenCase {
  const points = rollOverPath(path, centreAfter(ship.input, at.displacement, at.kg));
  const worst = worstOf(points);
  const wet = points.filter(point => point.level > 0);
  const lowestGm = (wet.length > 0 ? wet : points).reduce((a, b) => (b.gm < a.gm ? b : a));
  const heel = worst.heel === undefined ? undefined : Math.abs(worst.heel);
  const standing = standingOf(path, heel, limits);
  const greatest = heel === undefined ? {} : { greatestHeel: heel };
  return { ...at, path, points, standing, ...greatest, worst, lowestGm };
}

/** Every corner of the ranges, each with its standing. The water moments are shared between the values of KG. */
export function screenCases(
  ship: ResolvedShip,
  ranges: CaseRanges,
  limits: UprightLimits,
  steps = 32,
): ScreenCase[] {
  return ranges.displacements.flatMap(displacement =>
    ranges.mismatches.flatMap(mismatch => {
      const path = floodPath(floodPlan(ship, displacement, mismatch), steps);
      return ranges.kgs.map(kg => caseOf(ship, path, { displacement, kg, mismatch }, limits));
    }),
  );
}
