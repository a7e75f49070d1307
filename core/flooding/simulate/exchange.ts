import { at, valueAt } from '../../base';
import { AHEAD, linkFlow, type LinkFlow, type TurnedLink } from './apertures';
import { linearSolve } from './linear-solve';
import { SEA } from './ship';
import type { Water } from './waters';

function stiffness(water: Water): number {
  return 1 / water.surface + water.airStiffness;
}

/** All flows with their slopes at this moment. */
export function flowsNow(
  links: readonly TurnedLink[],
  waters: readonly Water[],
  sea: number,
): readonly LinkFlow[] {
  return links.map(link => linkFlow(link, waters, sea));
}

function system(
  links: readonly TurnedLink[],
  flows: readonly LinkFlow[],
  waters: readonly Water[],
  dt: number,
  seaRise: number,
): { matrix: Float64Array; right: Float64Array } {
  const n = waters.length;
  const matrix = new Float64Array(n * n);
  const right = new Float64Array(n);
  for (let i = 0; i < n; i++) matrix[i * n + i] = 1;
  links.forEach(({ link: { a, b } }, k) => {
    const { flow, byA, byB } = at(flows, k);
    if (flow === 0 && byA === 0 && byB === 0) return;
    const waterA = a === SEA ? undefined : waters[a];
    const waterB = at(waters, b);
    for (const [row, sign] of [
      [a, -1],
      [b, 1],
    ] as const) {
      if (row === SEA) continue;
      right[row] = valueAt(right, row) + sign * flow * dt;
      const put = (column: number, slope: number): void => {
        matrix[row * n + column] = valueAt(matrix, row * n + column) - sign * AHEAD * dt * slope;
      };
      if (waterA) put(a, byA * stiffness(waterA));
      else if (seaRise > 0) for (let j = 0; j < n; j++) put(j, byA * seaRise);
      put(b, byB * stiffness(waterB));
    }
  });
  return { matrix, right };
}

/** Volumes that pass each link in a step, m3 from a to b; what leaves a room is never more than it has. */
function passed(
  links: readonly TurnedLink[],
  flows: readonly LinkFlow[],
  waters: readonly Water[],
  change: Float64Array,
  dt: number,
  seaRise: number,
): number[] {
  const rise = seaRise * change.reduce((sum, volume) => sum + volume, 0);
  const head = (room: number): number => {
    const water = room === SEA ? undefined : waters[room];
    return AHEAD * (water ? stiffness(water) * valueAt(change, room) : rise);
  };
  const moved = links.map(({ link: { a, b } }, k) => {
    const { flow, byA, byB } = at(flows, k);
    return (flow + byA * head(a) + byB * head(b)) * dt;
  });
  const leaving = waters.map(() => 0);
  links.forEach(({ link: { a, b } }, k) => {
    const volume = at(moved, k);
    const from = volume > 0 ? a : b;
    if (from !== SEA) leaving[from] = at(leaving, from) + Math.abs(volume);
  });
  return moved.map((volume, k) => {
    const { a, b } = at(links, k).link;
    const from = volume > 0 ? a : b;
    const water = from === SEA ? undefined : waters[from];
    const out = from === SEA ? 0 : at(leaving, from);
    return water && out > 0 && out > water.volume ? (volume * Math.max(0, water.volume)) / out : volume;
  });
}

/**
 * Moves the water of one time step, rooms and sea together, with heads taken partly at the end of the step, so
 * that a full room or a wide door settles instead of chattering. Every volume leaves one place and enters another.
 * @param seaRise metres the sea rises on the ship for each m3 that comes aboard: the sinkage within the step.
 * @returns what came in from the sea, m3.
 */
export function exchange(
  links: readonly TurnedLink[],
  flows: readonly LinkFlow[],
  waters: readonly Water[],
  dt: number,
  seaRise: number,
): number {
  const { matrix, right } = system(links, flows, waters, dt, seaRise);
  linearSolve(matrix, right);
  let fromSea = 0;
  passed(links, flows, waters, right, dt, seaRise).forEach((volume, k) => {
    const { a, b } = at(links, k).link;
    const source = a === SEA ? undefined : waters[a];
    if (source) source.volume -= volume;
    else fromSea += volume;
    at(waters, b).volume += volume;
  });
  return fromSea;
}
