import { describe, expect, it } from 'vitest';
import {
  applyEffect,
  SEA,
  SHARP_EDGE,
  withCuts,
  type UprightCompartment,
  type UprightConnection,
  type UprightInput,
  type UprightOpening,
  type UprightSizing,
} from '../../../core/flooding';
import { floodedIds, floodPlan, resolveShip } from '../../../core/flooding/upright/resolved';
import { shipToSimulate } from '../../../core/flooding/upright/to-simulate';
import { bargeInput } from './invented-ship';

const space: UprightCompartment = {
  ...{ id: 'aft', title: 'Aft', x0: 0, x1: 40, y0: -10, y1: 10, z0: 0, z1: 10, permeability: 1 },
  ...{ openings: [], vents: [], connections: [], floods: true },
};
const forward = { ...space, id: 'forward', title: 'Forward', x0: 40, x1: 100 };
const near = (value: number): unknown => expect.closeTo(value, 9);

/** The barge with these compartments as the simulation takes her, one tenth uneven. */
function simulated(
  compartments: UprightCompartment[],
  sizing: UprightSizing[] = [],
  change: Partial<UprightInput> = {},
) {
  const ship = resolveShip(bargeInput(4, { compartments, ...change }));
  return shipToSimulate(ship, sizing, { displacement: 4100, kg: 4, mismatch: 0.1 });
}
const hole = (side: UprightOpening['side'], change: Partial<UprightOpening> = {}): UprightOpening => ({
  ...{ id: 'hole', side, area: 2, z: 3, height: 1.5, count: 2, ...change },
});
const sized = (change: Partial<UprightSizing> = {}): UprightSizing => ({
  ...{ compartment: 'aft', openings: 4, openingArea: 1.8, area: 7.2, cutLength: 0, ventArea: 1 },
  ...{ ventCount: 2, fillMinutes: 10, ...change },
});

describe('openings to the sea', () => {
  it('lie at the side they are cut in, and those to port pass a tenth less', () => {
    const { links } = simulated([
      { ...space, openings: [hole('port'), hole('starboard'), hole('bottom', { z: 0 }), hole('deck')] },
    ]);
    const frame = { a: SEA, b: 0, x: 20, discharge: SHARP_EDGE, isVent: false };
    expect(links).toEqual([
      { ...frame, id: 'aft-opening-0', y: -10, z: 3, height: 1.5, area: near(3.6) },
      { ...frame, id: 'aft-opening-1', y: 10, z: 3, height: 1.5, area: 4 },
      { ...frame, id: 'aft-opening-2', y: 0, z: 0, height: 0, area: 4 },
      { ...frame, id: 'aft-opening-3', y: 0, z: 3, height: 0, area: 4 },
    ]);
  });

  it('in a floor are slower too where the compartment lies to port', () => {
    const areas = (y0: number, y1: number) =>
      simulated([{ ...space, y0, y1, openings: [hole('bottom'), hole('starboard')] }]).links.map(
        ({ area }) => area,
      );
    expect(areas(-10, 0)).toEqual([near(3.6), 4]);
    expect(areas(0, 10)).toEqual([4, 4]);
  });

  it('are those sized for a compartment without its own: half to each side, as high as their area asks', () => {
    const { links } = simulated([space], [sized()]);
    // 1.8 m2 are 1.2 x 1.5 m, their middle 0.75 + 0.2 m above the floor.
    expect(links.map(({ y, z, height, area }) => [y, z, height, area])).toEqual([
      [-10, near(0.95), near(1.5), near(3.24)],
      [10, near(0.95), near(1.5), near(3.6)],
      [0, 10, 0, 1],
    ]);
    expect(links.map(({ isVent }) => isVent)).toEqual([false, false, true]);
    expect(links.map(({ id }) => id)).toEqual(['aft-opening-0', 'aft-opening-1', 'aft-vent-0']);
    const lying = (y0: number, y1: number, z1 = 10) =>
      simulated([{ ...space, y0, y1, z1 }], [sized()])
        .links.filter(({ isVent }) => !isVent)
        .map(({ y, height, area }) => [y, height, area]);
    expect(lying(-10, 0)).toEqual([[-10, near(1.5), near(6.48)]]);
    expect(lying(0, 10)).toEqual([[10, near(1.5), near(7.2)]]);
    // No opening is higher than its compartment.
    expect(lying(0, 10, 1)).toEqual([[10, 1, near(7.2)]]);
  });

  it('are none where none were sized, or for another', () => {
    expect(simulated([space]).links).toEqual([]);
    expect(simulated([space], [sized({ openings: 0, ventArea: 0.5 })]).links).toMatchObject([
      { isVent: true },
    ]);
    expect(simulated([space], [sized({ compartment: 'forward' })]).links).toEqual([]);
    // Own openings and own air escapes stand, whatever is sized.
    const own = { ...space, openings: [hole('port')], vents: [{ area: 0.3, z: 12 }] };
    expect(simulated([own], [sized()]).links.map(({ id, z, area }) => [id, z, area])).toEqual([
      ['aft-opening-0', 3, near(3.6)],
      ['aft-vent-0', 12, 0.3],
    ]);
  });
});

describe('ways between rooms', () => {
  const way = (change: Partial<UprightConnection> = {}): UprightConnection => ({
    ...{ to: 'forward', area: 1.6, z: 2, kind: 'door', ...change },
  });
  const waysOf = (
    own: UprightConnection[],
    back: UprightConnection[] = [],
    change: Partial<UprightCompartment> = {},
  ) =>
    simulated([
      { ...space, ...change, connections: own },
      { ...forward, connections: back },
    ]).links;

  it('lie in the middle of what the two share, once, also where both name it', () => {
    const there = { a: 0, b: 1, x: 40, y: 0, z: 2, height: 2, area: 1.6, discharge: 0.6, isVent: false };
    expect(waysOf([way()])).toEqual([{ ...there, id: '0-1-door-2-1.6' }]);
    expect(waysOf([way()], [way({ to: 'aft' })])).toHaveLength(1);
    expect(waysOf([], [way({ to: 'aft' })])).toEqual([{ ...there, a: 1, b: 0, id: '0-1-door-2-1.6' }]);
    expect(waysOf([way()], [way({ to: 'aft', z: 5 })])).toHaveLength(2);
    expect(waysOf([way()], [], { y0: 4 })).toMatchObject([{ x: 40, y: 7 }]);
  });

  it('are 2 m high, a cut 0.8 m, unless told, and no higher than the room', () => {
    const height = (change: Partial<UprightConnection>, room: Partial<UprightCompartment> = {}) =>
      waysOf([way(change)], [], room).map(one => one.height);
    expect(height({ kind: 'corridor' })).toEqual([2]);
    expect(height({ kind: 'cut' })).toEqual([0.8]);
    expect(height({ kind: 'cut', height: 1.2 })).toEqual([1.2]);
    expect(height({}, { z0: 1, z1: 2.5 })).toEqual([1.5]);
  });

  it('that are closed, or lead nowhere she floods, pass nothing', () => {
    expect(waysOf([way({ closed: true })])).toEqual([]);
    expect(
      simulated([
        { ...space, connections: [way()] },
        { ...forward, floods: false },
      ]).links,
    ).toEqual([]);
  });

  it('let the sea into a room behind an open one, but not through a closed door nor into a tight room', () => {
    const bare = ({ floods: _, ...rest }: UprightCompartment): UprightCompartment => rest;
    const open = { ...bare(space), openings: [hole('port')] };
    const third = { ...bare(space), id: 'third' };
    const flooded = (...rooms: UprightCompartment[]) => [...floodedIds(rooms)].sort();
    const chain = { ...bare(forward), connections: [way({ to: 'aft' })] };
    expect(flooded(open, chain, third)).toEqual(['aft', 'forward']);
    // Named from the last to the first, it takes more than one look.
    const last = { ...third, connections: [way({ to: 'forward' })] };
    expect(flooded(last, chain, open)).toEqual(['aft', 'forward', 'third']);
    expect(flooded(open, { ...chain, connections: [way({ to: 'aft', closed: true })] })).toEqual(['aft']);
    expect(flooded(open, { ...chain, floods: false })).toEqual(['aft']);
    expect(flooded({ ...open, floods: false }, chain)).toEqual([]);
  });
});

describe('the lowest way into a space', () => {
  const sillOf = (change: Partial<UprightCompartment>) => {
    const { floods: _, ...bare } = { ...space, z0: 1, z1: 8 };
    const ship = resolveShip(bargeInput(4, { compartments: [{ ...bare, ...change }, forward] }));
    return floodPlan(ship, 4100, 0).spaces[0]?.sill;
  };
  const door: UprightConnection = { to: 'forward', area: 1.6, z: 2, kind: 'door' };

  it('is the lower edge of its openings or an air escape, its floor where it is joined or sized', () => {
    expect(sillOf({ openings: [hole('port'), hole('starboard', { z: 5 })] })).toBe(2.25);
    expect(sillOf({ openings: [hole('port', { z: 7 })], vents: [{ area: 1, z: 6 }] })).toBe(6);
    expect(sillOf({ openings: [hole('port')], connections: [door] })).toBe(1);
    expect(sillOf({ openings: [hole('port')], connections: [{ ...door, closed: true }] })).toBe(2.25);
    expect(sillOf({ floods: true })).toBe(1);
    expect(sillOf({ floods: true, entry: 6 })).toBe(6);
    expect(sillOf({ openings: [hole('port')], entry: 6 })).toBe(2.25);
  });
});

describe('weight and place', () => {
  it('is what stays aboard: removed weights move the centre the other way', () => {
    const at = (removedWeights: UprightInput['removedWeights']) => simulated([space], [], { removedWeights });
    const { lightVolume, centre } = at([]);
    expect(lightVolume).toBeCloseTo(4000, 9);
    expect(centre).toEqual({ x: near(50), y: 0, z: 4 });
    // (4100 x 50 - 100 x 9) / 4000, (0 - 100 x 5) / 4000 and (4100 x 4 - 100 x 14) / 4000.
    const off = at([{ mass: 100, vcg: 14, lcg: 9, tcg: 5 }]);
    expect(off.centre).toEqual({ x: near(204_100 / 4000), y: near(-0.125), z: near(3.75) });
    expect(off.lightVolume).toBeCloseTo(4000 / 1.025, 9);
    // Of no known place along the ship it leaves her on an even keel; a second one is taken from what is left.
    expect(at([{ mass: 100, vcg: 14 }]).centre.x).toBeCloseTo(50, 9);
    const twice = at([
      { mass: 100, vcg: 4, lcg: 0 },
      { mass: 1000, vcg: 4, lcg: 10 },
    ]);
    expect(twice.centre.x).toBeCloseTo((205_000 - 10_000) / 3000, 9);
  });

  it('goes with the rooms that flood, each from its floor to its top', () => {
    const { rooms, length, breadth, depth } = simulated([{ ...space, z0: 1, z1: 8 }]);
    expect([length, breadth, depth]).toEqual([100, 20, 10]);
    expect(rooms).toMatchObject([{ id: 'aft', floor: 1, top: 8 }]);
    expect(rooms[0]?.solid.capacity).toBeCloseTo(40 * 20 * 7, 6);
  });
});

describe('what a choice changes', () => {
  const input = bargeInput(4, { compartments: [space, forward], sizes: [sized()] });

  it('is what it names, and the sizes stand as long as nothing of the openings changes', () => {
    expect(applyEffect(input, {})).toEqual(input);
    const weight = { mass: 5, vcg: 9 };
    const kg = { low: 1, likely: 2, high: 3, basis: 'inclined' } as const;
    expect(
      applyEffect(
        { ...input, removedWeights: [weight] },
        { removedWeights: [weight], kg, openingsMismatch: 0.3 },
      ),
    ).toEqual({ ...input, removedWeights: [weight, weight], kg, openingsMismatch: 0.3 });
    expect(applyEffect(input, { keepTight: ['forward'] })).toEqual({
      ...input,
      compartments: [space, { ...forward, floods: false }],
    });
  });

  it('new openings, late ones and another method are sized anew; another method has its own time', () => {
    const { sizes: _, ...unsized } = input;
    expect(applyEffect(input, { openings: [{ ...hole('port'), compartment: 'forward' }] })).toEqual({
      ...unsized,
      compartments: [space, { ...forward, openings: [hole('port')] }],
    });
    expect(applyEffect(input, { late: [{ compartment: 'aft', entry: 7 }] })).toEqual({
      ...unsized,
      compartments: [{ ...space, entry: 7 }, forward],
    });
    const { targetSinkTime: __, ...untimed } = unsized;
    expect(applyEffect(input, { method: 'explosive scuttling' })).toEqual({
      ...untimed,
      method: 'explosive scuttling',
    });
  });

  it('cuts become ways of the compartment they begin in', () => {
    const cut: UprightConnection = { to: 'forward', area: 1, z: 1, kind: 'cut' };
    const cut2 = { ...space, connections: [cut] };
    expect(applyEffect(input, { cuts: [{ ...cut, from: 'aft' }] })).toEqual({
      ...input,
      compartments: [cut2, forward],
    });
    expect(withCuts({ ...input, compartments: [cut2, forward] }, [{ ...cut, from: 'aft' }])).toEqual({
      ...input,
      compartments: [{ ...space, connections: [cut, cut] }, forward],
    });
  });
});
