import { hullFromParticulars, hullSolid, spaceSolid } from '../../core/stability';
import { SEA, simulateFlooding, uprightScreen, type FloodableShip, type Link } from '../../core/flooding';
import { coasterInput } from '../core/flooding/invented-ship';

/** A ship of 120 m with 40 compartments: ten lengths, two decks, two sides, doors between neighbours. */
function fortyCompartments(): FloodableShip {
  const hull = hullFromParticulars({
    length: 120,
    breadth: 18,
    depth: 12,
    draught: 4,
    blockCoefficient: 0.6,
    waterplaneCoefficient: 0.74,
  });
  const rooms = Array.from({ length: 40 }, (_, i) => {
    const [length, isUpper, isPort] = [Math.floor(i / 4), Math.floor(i / 2) % 2 === 1, i % 2 === 1];
    const box = {
      x0: 12 * length,
      x1: 12 * length + 12,
      y0: isPort ? -9 : 0,
      y1: isPort ? 0 : 9,
      z0: isUpper ? 6 : 0,
      z1: isUpper ? 12 : 6,
    };
    const solid = spaceSolid(hull, { id: `room ${i}`, ...box, permeability: 0.9 }, 6);
    return { id: `room ${i}`, solid, floor: box.z0, top: box.z1, box };
  });
  const still = { height: 0.8, discharge: 0.6, isVent: false };
  const links = rooms.flatMap(({ box }, i): Link[] => {
    const at = { x: (box.x0 + box.x1) / 2, y: box.y0 < 0 ? -6 : 6 };
    const isUpper = box.z0 > 0;
    return [
      ...(isUpper ? [] : [{ ...still, ...at, id: `sea ${i}`, a: SEA, b: i, z: 1, area: 0.22 }]),
      ...(isUpper ? [] : [{ ...still, ...at, id: `hatch ${i}`, a: i, b: i + 2, z: 6, height: 0, area: 1.5 }]),
      ...(i < 36
        ? [{ ...still, ...at, id: `door ${i}`, a: i, b: i + 4, x: box.x1, z: box.z0 + 1, area: 1.6 }]
        : []),
      { ...still, ...at, id: `vent ${i}`, a: SEA, b: i, z: 13, height: 0, area: 0.3, isVent: true },
    ];
  });
  const capacity = hullSolid(hull, 20);
  return {
    hull: capacity,
    length: 120,
    breadth: 18,
    depth: 12,
    lightVolume: 5000,
    centre: { x: 60, y: 0, z: 5.5 },
    rooms,
    links,
  };
}

/** Milliseconds of a run: the median of eleven after three to warm up. */
function median(run: () => void): number {
  const times = Array.from({ length: 14 }, () => {
    const start = performance.now();
    run();
    return performance.now() - start;
  });
  return times.slice(3).sort((a, b) => a - b)[5] ?? Number.NaN;
}

/** What the bench of the screening found. */
export interface UprightTimes {
  /** Milliseconds of ten minutes of flooding with 40 compartments. */
  readonly simulation: number;
  /** Milliseconds of the whole screening of a coaster of 9 compartments. */
  readonly screening: number;
  readonly steps: number;
  readonly outcome: string;
  readonly volumeError: number;
}

/** Times the flooding of 40 compartments and the screening of a coaster. */
export function uprightTimes(): UprightTimes {
  const ship = fortyCompartments();
  const last = simulateFlooding(ship, { seconds: 600 });
  return {
    simulation: median(() => simulateFlooding(ship, { seconds: 600 })),
    screening: median(() => uprightScreen(coasterInput())),
    steps: last.steps,
    outcome: last.outcome,
    volumeError: last.volumeError,
  };
}

/** `npm run bench -- upright`. */
export function upright(): Promise<number> {
  process.stdout.write(`${JSON.stringify(uprightTimes())}\n`);
  return Promise.resolve(0);
}
