import { describe, expect, it } from 'vitest';
import { SEA, type FloodableShip, type Link, type Position } from '../../../core/flooding';
import { breathe, linkFlow, sideOf, turnLinks } from '../../../core/flooding/simulate/apertures';
import { exchange } from '../../../core/flooding/simulate/exchange';
import { settleWaters, startingWaters, type Water } from '../../../core/flooding/simulate/waters';
import { attitude, dry } from '../../../core/stability';
import { bargeShip, link, roomOf, wholeHold } from './boxes';

/** Two tanks of 10 x 5 x 10 m, 500 m3 each. */
const tank = (id: string, x0: number) => roomOf({ ...wholeHold, id, x0, x1: x0 + 10, y0: -2.5, y1: 2.5 });
const rooms = [tank('one', 0), tank('two', 20)];
const shipWith = (links: readonly Link[]): FloodableShip => bargeShip(4, rooms, links);
const level: Position = { level: 3, heel: 0, slope: 0, ground: 'none', sums: dry() };

/** The waters of the two tanks at these volumes, settled upright. */
function watersOf(volumes: readonly [number, number]): Water[] {
  const ship = shipWith([]);
  const waters = startingWaters(ship, volumes);
  settleWaters(ship, waters, attitude(0));
  return waters;
}

/** The tanks once they have breathed through these links with the sea at a level. */
function breathed(
  links: readonly Link[],
  volumes: readonly [number, number],
  sea = 3,
): readonly [Water, Water] {
  const ship = shipWith(links);
  const waters = watersOf(volumes);
  breathe(ship, turnLinks(ship, level), waters, sea);
  const [one, two] = waters;
  if (one === undefined || two === undefined) throw new Error('there are two tanks');
  return [one, two];
}

describe('a link turned with the ship', () => {
  const turned = (change: Partial<Link>, at: Partial<Position>) =>
    turnLinks(shipWith([link(change)]), { ...level, ...at })[0]?.hole;
  const near = (value: number): unknown => expect.closeTo(value, 9);

  it('has its lower and upper edge in the axes of the water', () => {
    expect(turned({ z: 4, height: 2, area: 3 }, {})).toEqual({ low: 3, high: 5, area: 3, discharge: 0.6 });
    // 30 degrees: 4 cos - 6 sin = 0.4641, and half of 2 m cos = 0.8660; a hole to port rises.
    const heel = Math.PI / 6;
    const half = Math.sqrt(0.75);
    expect(turned({ y: 6, z: 4, height: 2 }, { heel })).toMatchObject({
      low: near(4 * half - 3 - half),
      high: near(4 * half - 3 + half),
    });
    expect(turned({ y: -6, z: 4 }, { heel })).toMatchObject({
      low: near(4 * half + 3),
      high: near(4 * half + 3),
    });
    // Down by the stern by 0.05 the water lies that much lower for each metre forward.
    expect(turned({ x: 40, z: 4 }, { slope: 0.05 })).toMatchObject({ low: near(6), high: near(6) });
  });

  it('has the sea or the water of a room on either side', () => {
    const waters = watersOf([100, 0]);
    expect(sideOf(SEA, waters, 3)).toEqual({ level: 3, air: 0 });
    expect(sideOf(0, waters, 3).level).toBeCloseTo(2, 6);
  });
});

describe('a tank with water in it', () => {
  it('stands at its volume over its floor; a full one stands under a thin pipe', () => {
    const [some, full] = watersOf([100, 500]);
    expect(some).toMatchObject({ isFull: false, level: expect.closeTo(2, 6) as unknown });
    expect(some?.surface).toBeCloseTo(50, 6);
    // 0.0001 x 500 m3 too much over a thousandth of 50 m2: 1 m.
    expect(full).toMatchObject({ isFull: true, filledTo: expect.closeTo(10, 4) as unknown });
    expect(full?.level).toBeCloseTo(11, 4);
    expect(full?.surface).toBeCloseTo(0.05, 9);
  });
});

describe('air', () => {
  const hole = link({ b: 0, z: 1, area: 2 });
  const vent = (area: number, z = 12) => link({ id: 'vent', b: 0, z, area, isVent: true });

  it('leaves through an escape above the water and slows the sea by what it holds of the head', () => {
    const [one, two] = breathed([hole, vent(0.2)], [100, 100]);
    // 1 / (1 + 0.1^2 x 1.025 / 0.001225) is the share of the air; the root of the rest passes.
    const share = 1 / (1 + (0.01 * 1.025) / 0.001225);
    expect(one).toMatchObject({
      isBreathing: true,
      air: 0,
      passes: expect.closeTo(Math.sqrt(1 - share), 9) as unknown,
    });
    // Nothing leads to the other: 101.325 kPa are shut in with 400 m3.
    expect(two).toMatchObject({ isBreathing: false, passes: 1, air: 0 });
    expect(two.shutAir).toBeCloseTo(101.325 * 400, 6);
    expect(two.airStiffness).toBeCloseTo(101.325 / 400 / (1.025 * 9.81), 9);
  });

  it('is not slowed by an opening that the sea does not reach, nor where none is', () => {
    expect(breathed([{ ...hole, z: 4 }, vent(0.2)], [100, 0])[0].passes).toBe(1);
    expect(breathed([vent(0.2)], [100, 0])[0].passes).toBe(1);
    // Two openings and two escapes count together.
    const [both] = breathed([hole, hole, vent(0.1), vent(0.3)], [100, 0]);
    expect(both.passes).toBeCloseTo(breathed([hole, vent(0.2)], [100, 0])[0].passes, 12);
  });

  it('cannot leave by an escape under the sea, but by the dry part of a tall opening', () => {
    expect(breathed([vent(0.2, 2)], [0, 0])[0].isBreathing).toBe(false);
    expect(breathed([vent(0.2, 3.5)], [0, 0])[0].isBreathing).toBe(true);
    const tall = (z: number, height: number) => link({ b: 0, z, height, area: 2 });
    // From 2 to 4 m with the sea at 3: half of it is dry, half of 2 m2 against 2 m2 let in.
    const share = 1 / (1 + (0.25 * 1.025) / 0.001225);
    expect(breathed([tall(3, 2)], [0, 0])[0].passes).toBeCloseTo(Math.sqrt(1 - share), 9);
    // With water inside up to 3.5 m a quarter.
    const quarter = 1 / (1 + (0.0625 * 1.025) / 0.001225);
    expect(breathed([tall(3, 2)], [175, 0])[0].passes).toBeCloseTo(Math.sqrt(1 - quarter), 6);
    // Wholly under the sea it breathes above the water inside, until that covers it.
    expect(breathed([tall(1.5, 1)], [0, 0])[0].isBreathing).toBe(true);
    expect(breathed([tall(1.5, 1)], [110, 0])[0].isBreathing).toBe(false);
    // A hole in a floor under the sea never does.
    expect(breathed([hole], [0, 0])[0].isBreathing).toBe(false);
  });

  it('of a tank without an escape leaves through the dry part of a door to one that has', () => {
    const door = (z: number) => link({ id: 'door', a: 0, b: 1, z, height: 2, area: 1.6 });
    const two = (z: number, volumes: readonly [number, number]) =>
      breathed([link({ b: 1, z: 1, area: 1 }), vent(0.4), door(z)], volumes)[1];
    // The vent is narrower than the dry door: 0.4 against 1 m2 let in.
    const share = 1 / (1 + (0.16 * 1.025) / 0.001225);
    expect(two(8, [0, 0])).toMatchObject({
      isBreathing: true,
      passes: expect.closeTo(Math.sqrt(1 - share), 9) as unknown,
    });
    // The door lets pass what is dry of it above the higher water: 0.1 of 2 m, 0.08 m2.
    const narrow = 1 / (1 + (0.0064 * 1.025) / 0.001225);
    expect(two(2, [145, 0]).passes).toBeCloseTo(Math.sqrt(1 - narrow), 5);
    expect(two(2, [160, 0]).isBreathing).toBe(false);
  });

  it('that is shut in is pressed together by the water that comes: Boyle', () => {
    const ship = shipWith([hole]);
    const waters = watersOf([100, 0]);
    const links = turnLinks(ship, level);
    breathe(ship, links, waters, 3);
    waters.forEach((water, i) => (water.volume += i === 0 ? 80 : 0));
    breathe(ship, links, waters, 3);
    // 400 m3 of air in 320: a quarter of the pressure more, over the weight of sea water.
    expect(waters[0]?.air).toBeCloseTo((0.25 * 101.325) / (1.025 * 9.81), 9);
  });
});

describe('a flow and how it changes with the heads', () => {
  const flowOf = (change: Partial<Link>, waters: readonly Water[], sea = 5) =>
    turnLinks(shipWith([link(change)]), level).map(one => linkFlow(one, waters, sea))[0];

  it('is that of the opening: its slope is strength over twice the root of the head', () => {
    const waters = watersOf([0, 200]);
    const strength = 0.6 * Math.sqrt(19.62);
    const open = flowOf({ b: 0, z: 1 }, waters);
    expect(open?.flow).toBeCloseTo(2 * strength, 9);
    expect(open?.byA).toBeCloseTo(strength / 4, 4);
    // A jet into air does not feel the water below it; water over the opening holds it back.
    expect(open?.byB).toBeCloseTo(0, 9);
    const under = flowOf({ b: 1, z: 1 }, waters);
    expect(under?.flow).toBeCloseTo(strength, 4);
    expect(under?.byB).toBeCloseTo(-strength / 2, 3);
    const slowed = flowOf(
      { b: 0, z: 1 },
      waters.map(water => ({ ...water, passes: 0.5 })),
    );
    expect(slowed?.flow).toBeCloseTo(strength, 9);
    expect(slowed?.byA).toBeCloseTo(strength / 8, 4);
  });

  it('of nearly level waters, or into a full tank, is followed by the chord to rest', () => {
    const strength = 0.6 * Math.sqrt(19.62);
    const flat = flowOf({ b: 1, z: 1 }, watersOf([0, 200]), 4.004);
    const chord = (strength * Math.sqrt(0.004)) / 0.004 / 0.6;
    expect((flat?.byA ?? 0) / chord).toBeCloseTo(1, 3);
    expect((flat?.byB ?? 0) / -chord).toBeCloseTo(1, 3);
    const full = flowOf({ b: 1, z: 1 }, watersOf([0, 500]), 15);
    // The full tank stands at 11 m: 4 m of head.
    expect((full?.byA ?? 0) / ((strength * 2) / 4 / 0.6)).toBeCloseTo(1, 3);
    // A full tank that runs out in a jet feels its own level alone.
    const out = flowOf({ a: 0, b: 1, z: 1 }, watersOf([500, 0]), 0);
    expect((out?.byA ?? 0) / ((strength * Math.sqrt(10)) / 10 / 0.6)).toBeCloseTo(1, 3);
    expect(out?.byB).toBe(0);
    // The same out of the room on the other side of the way, into a sea below it.
    const back = flowOf({ b: 0, z: 1 }, watersOf([500, 0]), 0);
    expect(back?.flow).toBeCloseTo(-strength * Math.sqrt(10), 3);
    expect(back?.byA).toBe(0);
    expect((back?.byB ?? 0) / -((strength * Math.sqrt(10)) / 10 / 0.6)).toBeCloseTo(1, 3);
  });
});

describe('the water of one step', () => {
  it('leaves one place and enters another, and no room gives more than it has', () => {
    const links = turnLinks(shipWith([link({ b: 0, z: 0 }), link({ a: 0, b: 1, z: 0, area: 9 })]), level);
    const waters = watersOf([2, 0]);
    const flows = links.map(one => linkFlow(one, waters, 3));
    const fromSea = exchange(links, flows, waters, 5, 0);
    const [one, two] = waters.map(({ volume }) => volume);
    expect(fromSea).toBeGreaterThan(0);
    expect((one ?? 0) + (two ?? 0)).toBeCloseTo(2 + fromSea, 9);
    expect(one).toBeGreaterThanOrEqual(0);
    // A wide hole above a sea that has fallen away empties the room, and no more.
    const emptied = watersOf([2, 0]);
    const wide = turnLinks(shipWith([link({ b: 0, z: 0, area: 9 })]), level);
    const gone = wide.map(one => linkFlow(one, emptied, -1));
    expect(exchange(wide, gone, emptied, 5, 0)).toBeCloseTo(-2, 9);
    expect(emptied[0]?.volume).toBeCloseTo(0, 9);
    const still = watersOf([0, 0]);
    expect(
      exchange(
        links,
        links.map(() => ({ flow: 0, byA: 0, byB: 0 })),
        still,
        5,
        0,
      ),
    ).toBe(0);
    expect(still.map(({ volume }) => volume)).toEqual([0, 0]);
  });

  it('of a hole into air comes to the flow times the step; a sea that rises on the ship adds to it', () => {
    const links = turnLinks(shipWith([link({ b: 0, z: 1 })]), level);
    const moved = (rise: number) => {
      const waters = watersOf([0, 0]);
      return exchange(
        links,
        links.map(one => linkFlow(one, waters, 5)),
        waters,
        2,
        rise,
      );
    };
    const strength = 0.6 * Math.sqrt(19.62);
    expect(moved(0)).toBeCloseTo(4 * strength, 6);
    // v = (2 k + 0.6 (k / 4) rise v) dt with rise 0.1 m a m3: v (1 - 0.03 k) = 4 k.
    expect(moved(0.1)).toBeCloseTo((4 * strength) / (1 - 0.03 * strength), 2);
  });
});
