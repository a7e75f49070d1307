import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { equilibriumHeel, heelSearch, rightingMoment, type WetShip } from '../../../core/stability';
import { simulateFlooding, type Link, type Room, type SimulationResult } from '../../../core/flooding';
import { bargeShip, link, roomOf, wholeHold, wideVent } from './boxes';

const side = (id: string, y0: number, y1: number, x0 = 0, x1 = 100): Room =>
  roomOf({ ...wholeHold, id, x0, x1, y0, y1 });

function greatest(run: SimulationResult): number {
  return Math.max(...run.history.map(({ heel }) => Math.abs(heel)));
}

describe('asymmetric flooding', () => {
  const rooms = [side('port', -10, 0), side('starboard', 0, 10)];
  const holes = (port: number, starboard: number): Link[] => [
    link({ id: 'port', b: 0, y: -5, area: port }),
    link({ id: 'starboard', b: 1, y: 5, area: starboard }),
    wideVent(0),
    wideVent(1),
  ];

  it('stays upright with equal openings and lists towards the side that fills faster', () => {
    const even = simulateFlooding(bargeShip(3, rooms, holes(4, 4)), { seconds: 600 });
    expect(greatest(even)).toBe(0);
    const uneven = simulateFlooding(bargeShip(3, rooms, holes(3.6, 4)), { seconds: 600 });
    expect(Math.max(...uneven.history.map(({ heel }) => heel))).toBeGreaterThan(1);
  });

  it('gives mirror images for mirrored openings', () => {
    const one = simulateFlooding(bargeShip(3, rooms, holes(3.6, 4)), { seconds: 300, disturbance: 0.1 });
    const other = simulateFlooding(bargeShip(3, rooms, holes(4, 3.6)), { seconds: 300, disturbance: -0.1 });
    const apart = one.history.map((s, i) => Math.abs(s.heel + (other.history[i]?.heel ?? 99)));
    expect(Math.max(...apart)).toBeLessThan(1e-6);
  });

  it('lists less with a wide cut between the sides, and a forgotten door changes the outcome', () => {
    const ways = (area: number): Link[] => [
      ...holes(3, 4),
      ...(area > 0 ? [link({ id: 'cut', a: 0, b: 1, z: 0.4, height: 0.8, area })] : []),
    ];
    const tight = greatest(simulateFlooding(bargeShip(0.5, rooms, ways(0)), { seconds: 300 }));
    const open = greatest(simulateFlooding(bargeShip(0.5, rooms, ways(20)), { seconds: 300 }));
    expect(open).toBeLessThan(0.3 * tight);
  });
});

describe('a symmetric ship with negative GM', () => {
  it('goes from a nudge of 0.1 degrees to the equilibrium heel of the section check', () => {
    const hold = roomOf(wholeHold);
    const ship = bargeShip(5, [hold], []);
    const run = simulateFlooding(ship, { seconds: 60, aboard: [2000] });
    const wet: WetShip = {
      hull: ship.hull,
      spaces: [hold.solid],
      volumes: [2000],
      lightVolume: ship.lightVolume,
    };
    const moment = (heel: number): number => rightingMoment(wet, { kg: 5, tcg: 0 }, heel);
    const rest = equilibriumHeel(moment, 0, heelSearch(1));
    expect(Math.abs(run.history.at(-1)?.heel ?? 0)).toBeCloseTo(((rest ?? 0) * 180) / Math.PI, 2);
    // 10.52 degrees at 1 m of water and KG 5 m: computed by clipping and by strips elsewhere.
    expect(Math.abs(run.history.at(-1)?.heel ?? 0)).toBeCloseTo(10.52, 1);
  });
});

describe('trim and the bottom', () => {
  const ends = [side('aft', -10, 10, 0, 30), side('fore', -10, 10, 30, 100)];
  const links = [
    link({ x: 15, b: 0, area: 6 }),
    link({ id: 'later', x: 65, b: 1, area: 6 }),
    wideVent(0, 40),
    wideVent(1, 40),
  ];

  it('a ship that floods aft first goes down by the stern, and the stern touches first', () => {
    const run = simulateFlooding(bargeShip(0.5, ends, links), { seconds: 3000, waterDepth: 14 });
    const first = run.history.find(({ event }) => event?.includes('on the bottom') === true);
    expect(first?.event).toBe('stern on the bottom');
    expect(first?.trim).toBeGreaterThan(0);
    expect(['sunk', 'on the bottom']).toContain(run.outcome);
    expect(run.volumeError).toBeLessThan(1e-6);
  });

  it('trims as the formula of trim says for a small weight of water aft', () => {
    // Water of 100 m3 in an aft room 0 to 10 m: 102.5 t at 45 m behind the middle, GML of the box after it.
    const room = side('peak', -1, 1, 0, 10);
    const run = simulateFlooding(bargeShip(2, [room], []), { seconds: 5, aboard: [100] });
    const t = 4100 / 2000;
    const volume = 4000 + 100;
    const draught = volume / 2000;
    const centre = 100 / 20 / 2;
    const kg = (4000 * 2 + 100 * centre) / volume;
    const free = (2 * 10 ** 3) / 12 / volume;
    const gml = draught / 2 + (20 * 100 ** 3) / 12 / volume - kg - free;
    const trim = (100 * 45 * 100) / (volume * gml);
    expect(t).toBeCloseTo(2.05, 9);
    expect(run.history.at(-1)?.trim).toBeCloseTo(trim, 1);
  });
});

describe('air', () => {
  it('a small vent slows the filling by the root of one less the share of the head it holds', () => {
    // Vent of 0.1037 of the opening: air at 10 % of the head, flow 0.949 (worked from the two orifices in series).
    const tank = side('tank', -2.5, 2.5, 0, 10);
    const seconds = (vent: number): number => {
      const ship = bargeShip(
        4,
        [tank],
        [link({ area: 0.5 }), link({ id: 'vent', b: 0, z: 100, area: vent, isVent: true })],
      );
      const run = simulateFlooding(ship, { seconds: 400, heldAt: 3 });
      return run.history.find(({ levels }) => (levels[0] ?? 0) >= 2)?.t ?? Number.NaN;
    };
    expect(seconds(0.5 * 0.1037) / seconds(1e4)).toBeCloseTo(1 / 0.949, 1);
  });
});

describe('water is conserved', () => {
  it('to a millionth for any rooms, doors and openings', () => {
    const sizes = fc.record({
      walls: fc.array(fc.double({ min: 12, max: 88, noNaN: true }), { minLength: 1, maxLength: 4 }),
      holes: fc.array(fc.double({ min: 0, max: 3, noNaN: true }), { minLength: 5, maxLength: 5 }),
      doors: fc.array(fc.double({ min: 0.05, max: 5, noNaN: true }), { minLength: 5, maxLength: 5 }),
      kg: fc.double({ min: 1, max: 6, noNaN: true }),
    });
    fc.assert(
      fc.property(sizes, ({ walls, holes, doors, kg }) => {
        const at = [0, ...[...walls].sort((a, b) => a - b), 100];
        const rooms = at.slice(1).map((x, i) => side(`room ${i}`, -10, 10, at[i] ?? 0, x));
        const solid = rooms.filter(room => room.solid.capacity > 1);
        const links = solid.flatMap((_, i): Link[] => [
          link({ id: `hole ${i}`, b: i, x: (at[i] ?? 0) + 1, z: 0.5, height: 0.8, area: holes[i] ?? 0 }),
          ...(i > 0
            ? [link({ id: `door ${i}`, a: i - 1, b: i, x: at[i] ?? 0, z: 1, height: 2, area: doors[i] ?? 1 })]
            : []),
          wideVent(i),
        ]);
        const run = simulateFlooding(bargeShip(kg, solid, links), { seconds: 600 });
        expect(run.volumeError).toBeLessThan(1e-6);
        for (const { volumes } of run.history)
          volumes.forEach((volume, i) =>
            expect(volume).toBeLessThan(1.01 * (solid[i]?.solid.capacity ?? 0) + 1),
          );
      }),
      { numRuns: 25 },
    );
  });
});
