import { describe, expect, it } from 'vitest';
import type { SimulationResult, Snapshot, UprightCompartment, UprightInput } from '../../../core/flooding';
import { at } from '../../../core/base';
import { afterDeckEdge } from '../../../core/flooding/upright/after-deck-edge';
import { screenCases } from '../../../core/flooding/upright/cases';
import { resolveShip } from '../../../core/flooding/upright/resolved';
import { spaceFindings } from '../../../core/flooding/upright/space-findings';
import { stagesOf } from '../../../core/flooding/upright/stages';
import { bargeInput } from './invented-ship';

const limits = { staysUp: 7, leans: 15 };
const near = (value: number, digits = 6): unknown => expect.closeTo(value, digits);

/** The barge at these heights of the centre of gravity, and the first of them as the likely case. */
function looked(kgs: readonly number[], change: Partial<UprightInput> = {}, mismatch = 0) {
  const ship = resolveShip(bargeInput(4, change));
  const ranges = { displacements: [4100], kgs, mismatches: [mismatch] };
  const cases = screenCases(ship, ranges, limits, 16);
  const [likely] = cases;
  if (likely === undefined) throw new Error('there is one case at least');
  return { ship, cases, likely };
}
const run = (change: Partial<SimulationResult> = {}): SimulationResult => ({
  ...{ outcome: 'sunk', history: [], seconds: 60, fullAt: [], volumeError: 0, steps: 1, trappedAir: [] },
  ...change,
});
const [hold] = bargeInput(4).compartments;
if (hold === undefined) throw new Error('the barge has a hold');
const tight: UprightCompartment = {
  ...hold,
  ...{ id: 'tight', title: 'Tight', x0: 80, z1: 2, permeability: 0.5, floods: false, openings: [] },
};
const fore = { ...hold, x1: 80 };

describe('the cases of a screen', () => {
  it('heel as the metacentre says: upright while GM is above nothing, and worse the higher KG is', () => {
    // f = 1: GM = 1 + level - KG, least in the first centimetre of water.
    const { cases } = looked([1, 3, 4.5, 5.5]);
    expect(cases.map(({ standing }) => standing)).toEqual([
      'stays up',
      'leans',
      'may roll over',
      'may roll over',
    ]);
    expect(cases.map(({ lowestGm }) => lowestGm.gm)).toEqual([1, 3, 4.5, 5.5].map(kg => near(1.01 - kg)));
    expect(cases[0]?.greatestHeel).toBeCloseTo(0, 6);
    expect(cases[3]).not.toHaveProperty('greatestHeel');
    expect(cases.map(({ kg, displacement, mismatch }) => [kg, displacement, mismatch])).toEqual(
      [1, 3, 4.5, 5.5].map(kg => [kg, 4100, 0]),
    );
    const [afloat] = looked([4], { compartments: [{ ...hold, permeability: 0.6 }] }).cases;
    expect(afloat?.standing).toBe('does not sink');
  });
});

describe('what is found of spaces', () => {
  it('air escapes under a twentieth of the openings are too few', () => {
    const found = (area: number, openings = hold.openings) => {
      const compartments = [
        tight,
        {
          ...fore,
          openings,
          vents: [
            { area: area / 2, z: 12 },
            { area: area / 2, z: 12 },
          ],
        },
      ];
      const { ship, likely } = looked([0.5], { compartments });
      return spaceFindings(ship, run(), likely).filter(({ code }) => code === 'upright/air-trapped');
    };
    expect(found(0.5)).toEqual([]);
    expect(found(0.4)).toEqual([
      {
        ...{ code: 'upright/air-trapped', weight: 'warns', place: '/compartments/1/vents' },
        message: 'Hold has 10.00 m2 of openings and 0.40 m2 of air escapes.',
        meaning: 'Air that cannot leave keeps buoyancy low or on one side, and holds her up.',
        remedy:
          'Add air escapes of at least a tenth of the opening area at the highest points, on both sides.',
      },
    ]);
    expect(found(0, [])).toEqual([]);
  });

  it('air left at the end, and tight spaces whose middle lies below the centre of gravity', () => {
    const { ship, likely } = looked([0.9], { compartments: [tight, fore] });
    expect(spaceFindings(ship, run({ trappedAir: [{ room: 0, share: 0.256 }] }), likely)).toEqual([
      {
        ...{ code: 'upright/air-left', weight: 'warns', place: '/compartments/1' },
        message: 'At the end of the simulation 26 % of Hold is still air.',
        meaning: 'Buoyancy that stays below the centre of gravity turns her over once she is under.',
        remedy: 'Give it an air escape at its highest point, or flood it earlier.',
      },
    ]);
    const higher = looked([1.1], { compartments: [tight, fore] });
    expect(spaceFindings(higher.ship, run(), higher.likely)).toEqual([
      {
        ...{ code: 'upright/tight-low', weight: 'warns', place: '/compartments/0' },
        message: 'Tight stays tight and lies below the centre of gravity.',
        meaning: 'Once the deck is under, buoyancy low in the ship turns her over.',
        remedy: 'Let it flood late, or press it full before the sinking.',
      },
    ]);
  });

  it('water free over the whole length leaves even keel unstable, from the first centimetre on', () => {
    const { ship, likely } = looked([4]);
    expect(spaceFindings(ship, run(), likely)).toEqual([
      {
        ...{ code: 'upright/undivided-length', weight: 'warns', place: '/compartments' },
        message:
          'At a flood level of 0.01 m the water runs free along so much of her length that even keel is unstable.',
        meaning: 'She goes down by one end, and which one is chance; the section check does not see it.',
        remedy: 'Keep bulkheads across the ship, or flood the middle before the ends.',
      },
    ]);
  });
});

describe('what comes after the deck edge', () => {
  const unknown = 'What stands above the deck is not known: nothing is said about the deck edge under.';

  it('is decided by the air still aboard: 400 m3 at 1 m and, where a tenth of the hold keeps its air, 1,600 m3 at 9.5 m', () => {
    const { ship, likely } = looked([4], { compartments: [tight, fore] });
    expect(afterDeckEdge(ship, likely, run())).toEqual({
      ...{ airCubicMetres: near(400), airLeverMetres: near(-3) },
      notes: [
        unknown,
        '400 m3 of air stay aboard, 3.0 m below the centre of gravity: it turns her over on the way down.',
      ],
    });
    // (400 x 1 + 1600 x 9.5) / 2000 = 7.8 m above the keel.
    expect(afterDeckEdge(ship, likely, run({ trappedAir: [{ room: 0, share: 0.1 }] }))).toEqual({
      ...{ airCubicMetres: near(2000), airLeverMetres: near(3.8) },
      notes: [
        unknown,
        '2000 m3 of air stay aboard, 3.8 m above the centre of gravity: it helps to hold her upright.',
      ],
    });
    const open = looked([4]);
    expect(afterDeckEdge(open.ship, open.likely, run())).toEqual({
      airCubicMetres: 0,
      notes: [
        unknown,
        'No air stays aboard in the simulation: under water nothing rights or turns her but the flow.',
      ],
    });
  });

  it('and by the footprint of the house: l b^3 / 12 less the free surface of the hold, over the light volume', () => {
    const told = (kg: number, length: number, breadth: number) => {
      const { ship, likely } = looked([kg], { superstructure: { length, breadth } });
      const level = likely.path.levels.at(-1)?.state.level ?? Number.NaN;
      // Hull under: 20,000 m3 at 5 m; water 2,000 m2 to the level, its own inertia 100 x 20^3 / 12.
      const own = 20_000 * 5 - (2000 * level ** 2) / 2 - (100 * 20 ** 3) / 12;
      const gm = (own + (length * breadth ** 3) / 12) / 4000 - kg;
      const { houseGmMetres, notes } = afterDeckEdge(ship, likely, run());
      expect(houseGmMetres).toBeCloseTo(gm, 3);
      return [gm, notes[0]] as const;
    };
    const [less, small] = told(4, 20, 12);
    expect(less).toBeLessThan(0);
    expect(small).toBe(
      `With the deck just under, the footprint of the superstructure alone does not hold her upright: GM ${less.toFixed(2)} m.`,
    );
    const [more, large] = told(0.5, 90, 16);
    expect(more).toBeGreaterThan(0);
    expect(large).toBe(
      `With the deck just under, the footprint of the superstructure alone holds her for small angles: GM ${more.toFixed(2)} m.`,
    );
  });
});

describe('stages of the flooding', () => {
  const moment = (t: number, water: number, change: Partial<Snapshot> = {}): Snapshot => ({
    ...{ t, water, volumes: [], levels: [], heel: 0, trim: 0, draught: 2 + water / 2000, ...change },
  });

  it('are those of the simulation at sixteenths of the water, at the greatest list, and when something happens', () => {
    // 16,000 m3 in all: every 1,000 m3 is due once.
    const history = [
      moment(0, 0),
      moment(1, 400),
      moment(2, 1000, { heel: 1, trim: 0.5 }),
      moment(3, 1900, { heel: -2 }),
      moment(4, 2100),
      moment(5, 2200),
      moment(6, 2300, { event: 'deck edge under' }),
      moment(7, 15_900, { heel: 9 }),
      moment(8, 16_000),
      moment(9, 15_990),
    ];
    const { ship, cases, likely } = looked([1]);
    const water = likely.path.levels.at(-1)?.state.volumes.reduce((sum, one) => sum + one, 0) ?? 0;
    const stages = stagesOf(ship, run({ history }), cases, likely);
    expect(stages.map(({ t }) => t)).toEqual([0, 2, 3, 4, 6, 7, 8, 9]);
    // 1,000 m3 stand 0.5 m high over 2,000 m2; GM = 1 + level - KG.
    expect(stages[1]).toEqual({
      ...{ t: 2, level: near(0.5, 3), gm: near(0.5, 3), heel: near(0), list: 1, trim: 0.5, draught: 2.5 },
    });
    expect(stages[4]).toMatchObject({ event: 'deck edge under', level: near(1.15, 3) as number });
    expect(stages[3]).not.toHaveProperty('event');
    // The section check ends with the deck awash: what has more water aboard says so.
    expect(water).toBeGreaterThan(2300);
    expect(stages.map(({ t, isPastCheck }) => [t, isPastCheck === true])).toEqual(
      [0, 2, 3, 4, 6, 7, 8, 9].map(t => [t, at(history, t).water > water]),
    );
    expect(stages.at(-1)?.isPastCheck).toBe(true);
    // Dry: GM is that of the ship afloat, 1 + 400/24 - 1.
    expect(stages[0]).toMatchObject({ level: 0, gm: near(400 / 24) as number });
  });

  it('have the greatest heel over the values of KG, and none where one of them finds no rest', () => {
    const history = [moment(0, 0), moment(1, 2000), moment(2, 16_000)];
    const heels = (kgs: readonly number[]) => {
      const { ship, cases, likely } = looked(kgs);
      return stagesOf(ship, run({ history }), cases, likely).map(({ heel }) => heel);
    };
    const [, two = 0] = heels([3]);
    const [, three = 0] = heels([4]);
    // 9.18 degrees at 1 m and KG 4 m, by polygon clipping and by strips.
    expect(three).toBeCloseTo(9.18, 1);
    expect(two).toBeGreaterThan(0);
    expect(two).toBeLessThan(three);
    expect(heels([3, 4])[1]).toBeCloseTo(three, 6);
    expect(heels([4, 3])[1]).toBeCloseTo(three, 6);
    expect(heels([1, 5.5]).includes(undefined)).toBe(true);
  });
});
