import { describe, expect, it } from 'vitest';
import {
  dry,
  fillLevel,
  hullFromStations,
  hullSolid,
  levelOf,
  restAt,
  UPRIGHT,
  type FloodPlan,
} from '../../../core/stability';
import {
  bargeSinkTime,
  equalisationTime,
  fillTime,
  simulateFlooding,
  trappedAirLevel,
  type Snapshot,
} from '../../../core/flooding';
import { bargeShip, link, roomOf, wholeHold, wideVent } from './boxes';

/** Seconds at which a room first stands at a level, by straight lines between the snapshots. */
function timeAt(history: readonly Snapshot[], value: (s: Snapshot) => number, target: number): number {
  const next = history.findIndex(s => value(s) >= target);
  const [a, b] = [history[next - 1], history[next]];
  if (!a || !b) return Number.NaN;
  return a.t + ((b.t - a.t) * (target - value(a))) / (value(b) - value(a));
}

const tank = roomOf({ ...wholeHold, id: 'tank', x0: 0, x1: 10, y0: -2.5, y1: 2.5 });

describe('flooding of one room under a fixed level outside', () => {
  it('takes the closed-form time through a hole in the floor, within 0.5 %', () => {
    const ship = bargeShip(4, [tank], [link({ area: 0.5 }), wideVent(0)]);
    const run = simulateFlooding(ship, { seconds: 200, heldAt: 3 });
    const filling = { plan: 50, opening: 0.5, outside: 3, sill: 0 };
    for (const level of [1, 2, 2.9])
      expect(timeAt(run.history, s => s.levels[0] ?? 0, level) / fillTime(filling, level)).toBeCloseTo(
        1,
        2.3,
      );
    expect(run.volumeError).toBeLessThan(1e-6);
  });

  it('takes the closed-form time through a hole 1 m up: first a jet, then drowned, within 0.5 %', () => {
    const ship = bargeShip(4, [tank], [link({ area: 0.5, z: 1 }), wideVent(0)]);
    const run = simulateFlooding(ship, { seconds: 200, heldAt: 3 });
    const filling = { plan: 50, opening: 0.5, outside: 3, sill: 1 };
    for (const level of [1, 2.5])
      expect(timeAt(run.history, s => s.levels[0] ?? 0, level) / fillTime(filling, level)).toBeCloseTo(
        1,
        2.3,
      );
  });

  it('stops at the level of trapped air when the room has no vent, within 1 %', () => {
    const closed = roomOf({ ...wholeHold, id: 'closed', x0: 0, x1: 10, y0: -2.5, y1: 2.5, z1: 3 });
    const run = simulateFlooding(bargeShip(4, [closed], [link({ area: 0.5 })]), { seconds: 400, heldAt: 5 });
    const level = run.history.at(-1)?.levels[0] ?? 0;
    expect(Math.abs(level / trappedAirLevel(3, 5) - 1)).toBeLessThan(0.01);
    expect(run.trappedAir[0]?.share).toBeCloseTo(1 - level / 3, 2);
  });

  it('levels two rooms in the closed-form time, within 0.5 %', () => {
    const one = roomOf({ ...wholeHold, id: 'one', x0: 0, x1: 10, y0: -2.5, y1: 2.5 });
    const two = roomOf({ ...wholeHold, id: 'two', x0: 20, x1: 30, y0: -1.5, y1: 1.5 });
    const door = link({ id: 'door', a: 0, b: 1, area: 0.5 });
    const ship = bargeShip(4, [one, two], [door, wideVent(0), wideVent(1)]);
    const run = simulateFlooding(ship, { seconds: 120, heldAt: 3, aboard: [150, 0] });
    const difference = (s: Snapshot): number => -Math.abs((s.levels[0] ?? 0) - (s.levels[1] ?? 0));
    for (const to of [1, 0.1, 0.01]) {
      const closed = equalisationTime([50, 30], 0.5, { from: 3, to });
      expect(Math.abs(timeAt(run.history, difference, -to) / closed - 1)).toBeLessThan(0.005);
    }
    expect(run.volumeError).toBeLessThan(1e-6);
  });
});

describe('a floating barge flooding over its whole length through 10 m2 in the floor', () => {
  it('goes under at the closed-form time of 425.70 s, within 0.5 %, with no list at all', () => {
    const ship = bargeShip(0.5, [roomOf(wholeHold)], [link({ area: 10 }), wideVent(0)]);
    const run = simulateFlooding(ship, { seconds: 1200 });
    expect(run.outcome).toBe('sunk');
    const closed = bargeSinkTime({ waterplane: 2000, displacement: 4100 }, 10, 8);
    expect(Math.abs(run.seconds / closed - 1)).toBeLessThan(0.005);
    expect(run.history.every(s => s.heel === 0)).toBe(true);
    expect(run.volumeError).toBeLessThan(1e-6);
  });

  it('ends afloat at 5.000 m when 0.6 of it floods', () => {
    const part = roomOf({ ...wholeHold, permeability: 0.6 });
    const run = simulateFlooding(bargeShip(2, [part], [link({ area: 10 }), wideVent(0)]), { seconds: 3000 });
    expect(run.outcome).toBe('afloat');
    expect((run.history.at(-1)?.draught ?? 0) / 5).toBeCloseTo(1, 2.3);
  });

  it('heels as the section check says when it floods very slowly, to either side alike', () => {
    const ship = bargeShip(4.5, [roomOf(wholeHold)], [link({ area: 0.2 }), wideVent(0)]);
    const options = { seconds: 12000, longestStep: 40 };
    const starboard = simulateFlooding(ship, { ...options, disturbance: 0.1 });
    const port = simulateFlooding(ship, { ...options, disturbance: -0.1 });
    const mirrored = port.history.map((s, i) => Math.abs(s.heel + (starboard.history[i]?.heel ?? 99)));
    expect(Math.max(...mirrored)).toBeLessThan(1e-6);
    const room = roomOf(wholeHold);
    const plan: FloodPlan = {
      hull: ship.hull,
      depth: 10,
      breadth: 20,
      lightVolume: ship.lightVolume,
      mismatch: 0,
      spaces: [{ solid: room.solid, floor: 0, y: 0, sill: 0 }],
    };
    for (const snapshot of starboard.history.filter(s => s.water > 200 && s.water < 6600)) {
      const rest = restAt(levelOf(plan, snapshot.water / 2000), plan, { kg: 4.5, tcg: 0 });
      expect(Math.abs(Math.abs(snapshot.heel) - (rest.heel ?? 99))).toBeLessThan(0.5);
    }
  });

  it.each([
    {
      name: 'a triangle, apex down',
      light: 2500,
      kg: 8,
      outline: [
        [0, 0],
        [10, 10],
        [-10, 10],
      ] as const,
    },
    {
      name: 'a box with flared sides',
      light: 3600,
      kg: 5.5,
      outline: [
        [-6, 0],
        [6, 0],
        [10, 10],
        [-10, 10],
      ] as const,
    },
  ])('heels as the section check says on other sections too: $name', ({ light, kg, outline }) => {
    const form = hullFromStations(100, 10, [{ x: 50, outline }]);
    const room = roomOf({ ...wholeHold, y0: -20, y1: 20 }, form);
    const base = bargeShip(kg, [room], [link({ area: 0.2 }), wideVent(0)]);
    const ship = { ...base, hull: hullSolid(form, 20), lightVolume: light };
    const run = simulateFlooding(ship, { seconds: 12000, longestStep: 40 });
    const spaces = [{ solid: room.solid, floor: 0, y: 0, sill: 0 }];
    const plan: FloodPlan = {
      hull: ship.hull,
      depth: 10,
      breadth: 20,
      lightVolume: light,
      mismatch: 0,
      spaces,
    };
    const compared = run.history.filter(s => s.water > 300 && s.draught < 8.5 && Math.abs(s.heel) < 45);
    expect(compared.length).toBeGreaterThan(20);
    const leant = compared.map(snapshot => {
      const upright = fillLevel(room.solid, UPRIGHT, snapshot.water, dry());
      const rest = restAt(levelOf(plan, upright), plan, { kg, tcg: 0 });
      expect(Math.abs(Math.abs(snapshot.heel) - (rest.heel ?? 99))).toBeLessThan(0.5);
      return rest.heel ?? 0;
    });
    expect(Math.max(...leant)).toBeGreaterThan(2);
  });

  it('rolls over with KG 5.5 m and comes back upright with KG 4.5 m', () => {
    const of = (kg: number): ReturnType<typeof simulateFlooding> =>
      simulateFlooding(bargeShip(kg, [roomOf(wholeHold)], [link({ area: 2 }), wideVent(0)]), {
        seconds: 4000,
      });
    expect(of(5.5).outcome).toBe('rolled over');
    const back = of(4.5);
    expect(back.outcome).toBe('sunk');
    expect(Math.max(...back.history.map(s => Math.abs(s.heel)))).toBeCloseTo(20.5, 0);
  });
});
