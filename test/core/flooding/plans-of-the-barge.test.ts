import { describe, expect, it } from 'vitest';
import {
  compareChoices,
  sizeCrossFlooding,
  uprightScreen,
  type UprightChoice,
  type UprightCompartment,
  type UprightInput,
} from '../../../core/flooding';
import { cutAround } from '../../../core/flooding/upright/sizing';
import { bargeInput } from './invented-ship';

// The barge with water free over all her length: GM = 1 + level - KG. Up to 1 m she stays upright, at 3 m she leans
// by 9 degrees or so, at 5.5 m she finds no rest.
const kg = (low: number, high = low) => ({ low, likely: low, high, basis: 'inclined' as const });
const choice = (id: string, cost: number, days: number, effect: UprightChoice['effect'], group?: string) => ({
  ...{ id, title: `Choice ${id}`, cost, days, effect },
  ...(group === undefined ? {} : { group }),
});
const [hold] = bargeInput(4).compartments;
if (hold === undefined) throw new Error('the barge has a hold');
const { openings, vents } = hold;

describe('choices side by side', () => {
  const compared = (at: number | UprightInput['kg'], ...choices: UprightChoice[]) =>
    compareChoices(bargeInput(4, { kg: typeof at === 'number' ? kg(at) : at, choices }));
  const [nothing, lower, lowest] = [
    choice('nothing', 50, 2, {}),
    choice('lower', 100, 3, { kg: kg(3) }, 'ballast'),
    choice('lowest', 200, 1, { kg: kg(1) }, 'ballast'),
  ];

  it('are none without choices, or for a ship that cannot be', () => {
    expect(compared(4)).toBeUndefined();
    expect(
      compareChoices(bargeInput(4, { displacement: { low: 0, likely: 0, high: 0 }, choices: [nothing] })),
    ).toBe(undefined);
  });

  it('have each its verdict, and the cheapest set that improves it by a step', () => {
    const found = compared(5.5, nothing, lowest, lower);
    expect(found?.now).toMatchObject({ ids: [], titles: [], cost: 0, days: 0, verdict: 'may roll over' });
    expect(
      found?.each.map(({ ids, cost, days, verdict, worst }) => [ids, cost, days, verdict, worst]),
    ).toEqual([
      [['nothing'], 50, 2, 'may roll over', 'may roll over'],
      [['lowest'], 200, 1, 'stays up', 'stays up'],
      [['lower'], 100, 3, 'leans', 'leans'],
    ]);
    expect(found?.cheapest).toMatchObject({ ids: ['lower'], titles: ['Choice lower'], cost: 100, days: 3 });
    expect(found).not.toHaveProperty('narrows');
    expect(found?.message).toBe(
      'The cheapest set that improves the verdict from "may roll over" to "leans": Choice lower.',
    );
    const leans = compared(3, nothing, lower, lowest);
    expect(leans?.cheapest?.ids).toEqual(['lowest']);
    const heel = leans?.now.greatestHeelDegrees ?? Number.NaN;
    expect(heel).toBeGreaterThan(7);
    expect(leans?.cheapest?.heelChangeDegrees).toBeCloseTo(-heel, 6);
    expect(leans?.now.lowestGmMetres).toBeCloseTo(1.01 - 3, 6);
    expect(leans?.each[0]).toMatchObject({ heelChangeDegrees: 0, unevenness: 0, unevennessChange: 0 });
  });

  it('are put together where no one alone does, one of each group', () => {
    // (4100 x 5.5 - 205 x 25) / 3895 = 4.47 m is still too high; twice as much, (22550 - 10250) / 3690 = 3.33 m, leans.
    const mast = { removedWeights: [{ mass: 205, vcg: 25 }] };
    const found = compared(
      5.5,
      choice('one', 10, 1, mast),
      choice('two', 20, 2, mast),
      choice('three', 30, 4, mast),
    );
    expect(found?.each.map(({ verdict }) => verdict)).toEqual(Array(3).fill('may roll over'));
    expect(found?.cheapest).toMatchObject({ ids: ['one', 'two'], cost: 30, days: 3, verdict: 'leans' });
    expect(found?.message).toBe(
      'The cheapest set that improves the verdict from "may roll over" to "leans": Choice one, Choice two.',
    );
    const grouped = compared(5.5, choice('one', 10, 1, mast, 'mast'), choice('two', 20, 2, mast, 'mast'));
    expect(grouped).not.toHaveProperty('cheapest');
    expect(grouped?.message).toBe(
      'None of any set of up to 3 of the choices improves the verdict "may roll over".',
    );
  });

  it('that improve no verdict may take the worst out of the ranges: the cheapest that does is told', () => {
    const wide = compared(
      kg(1, 5.5),
      nothing,
      choice('narrow', 80, 1, { kg: kg(1, 3) }),
      choice('dear', 90, 1, { kg: kg(1, 3) }),
    );
    expect(wide?.now).toMatchObject({ verdict: 'cannot tell', worst: 'may roll over' });
    expect(wide).not.toHaveProperty('cheapest');
    expect(wide?.narrows).toMatchObject({ ids: ['narrow'], verdict: 'cannot tell', worst: 'leans' });
    expect(wide?.message).toBe(
      'None of any set of up to 3 of the choices improves the verdict "cannot tell". The cheapest set that takes "may roll over" out of the ranges: Choice narrow.',
    );
  });

  it('are held to a verdict that the caller knows', () => {
    const input = bargeInput(4, { kg: kg(1), choices: [nothing] });
    expect(compareChoices(input, 'leans')?.message).toBe(
      'The cheapest set that improves the verdict from "leans" to "stays up": Choice nothing.',
    );
  });
});

describe('the screen of the barge', () => {
  it('tells what it found of her, and where', () => {
    const result = uprightScreen(bargeInput(1));
    expect(result).toMatchObject({
      verdict: 'stays up',
      sinks: true,
      findings: expect.any(Array) as unknown,
    });
    expect(result.greatestHeelDegrees).toBeCloseTo(0, 6);
    expect(result.likelyHeelDegrees).toBeCloseTo(0, 6);
    expect(result.lowestGmMetres).toBeCloseTo(0.01, 6);
    expect(result.atLevel).toBeCloseTo(0.01, 9);
    expect(result.atStage).toBe('flood level 0.00 m, mean draught 2.00 m');
    // 10 m2 in the floor sink her in 425.70 s, when 16,000 of 20,000 m3 are aboard: never full, it keeps the time asked for.
    expect((result.sinkMinutes ?? 0) * 60).toBeCloseTo(425.7, -1);
    expect(result.sizing[0]?.fillMinutes).toBeGreaterThan(0);
    expect(result.findings.map(({ code }) => code)).toEqual(['upright/nonsense']);
    for (const absent of ['settles', 'crossFlooding', 'choices']) expect(result).not.toHaveProperty(absent);
    expect(result.whatIfs.map(({ title, outcome }) => [title, outcome])).toEqual([
      ['all openings even', 'sunk'],
    ]);
    expect(result.whatIfs[0]?.minutes).toBeCloseTo(result.sinkMinutes ?? Number.NaN, 6);
  });

  it('is withheld where the hull cannot carry her, with the most it can', () => {
    const result = uprightScreen(bargeInput(4, { displacement: { low: 4100, likely: 4100, high: 20_500 } }));
    expect(result).toMatchObject({
      ...{ verdict: 'cannot tell', sinks: false, stages: [], sizing: [], whatIfs: [], yardsticks: [] },
      reasons: ['The input cannot be a ship: see the findings.'],
      site: { notes: [] },
    });
    expect(result.findings.at(-1)).toEqual({
      ...{ code: 'upright/nonsense', weight: 'blocks', place: '/displacement/high' },
      message: 'A displacement of 20500 t is more than the closed hull can carry (20500 t).',
      meaning: 'The upright screen is withheld.',
      remedy: 'Check the displacement with its unit, and the lines of the hull.',
    });
    expect(result.missingInputs).toContain('the depth of the water at the site');
    expect(result.cannotSee.length).toBeGreaterThan(4);
  });

  it('says that nothing floods where nothing does', () => {
    const result = uprightScreen(bargeInput(4, { compartments: [{ ...hold, openings: [] }] }));
    expect(result.verdict).toBe('does not sink');
    expect(result.findings).toContainEqual({
      ...{ code: 'upright/nothing-floods', weight: 'warns', place: '/compartments' },
      message: 'No compartment has an opening or is meant to flood.',
      meaning: 'She does not sink, and nothing can be said about how.',
      remedy: 'Enter the compartments with their openings, or mark those that are to be flooded.',
    });
    expect(result).not.toHaveProperty('sinkMinutes');
  });

  it('tries each closed door forgotten open, six of them at most, and one side slower where that may be', () => {
    const rooms = Array.from({ length: 8 }, (_, i): UprightCompartment => ({
      ...{ ...hold, id: `room-${i}`, title: `Room ${i}`, x0: 12.5 * i, x1: 12.5 * (i + 1) },
      openings,
      vents,
      connections: i === 0 ? [] : [{ to: `room-${i - 1}`, area: 1.6, z: 1, kind: 'door', closed: i !== 2 }],
    }));
    const { whatIfs } = uprightScreen(bargeInput(1, { compartments: rooms, openingsMismatch: 0.25 }));
    expect(whatIfs.map(({ title }) => title)).toEqual([
      'all openings even',
      'port side 25 % slower',
      'door between Room 1 and Room 0 forgotten open',
      ...[3, 4, 5, 6, 7].map(i => `door between Room ${i} and Room ${i - 1} forgotten open`),
    ]);
  });
});

describe('cuts across the barge', () => {
  const floor = { id: 'floor', side: 'bottom', z: 0, height: 0, count: 1 } as const;
  const half = (
    id: string,
    y0: number,
    y1: number,
    area: number,
    change: Partial<UprightCompartment> = {},
  ) => ({
    ...{ ...hold, id, title: id, y0, y1, openings: [{ ...floor, area }] },
    ...change,
  });
  const halves = (change: Partial<UprightCompartment> = {}) =>
    bargeInput(0.5, {
      compartments: [half('port', -10, 0, 3), half('starboard', 0, 10, 4, change)],
      targetSinkTime: 300,
    });
  const limits = { shareOfBulkhead: 0.2, cuts: 600, wanted: 0.9 };

  it('are the smallest share of the bulkhead of 100 x 10 m that takes nine tenths of the list', () => {
    const { cuts, peakBefore, peakAfter, removedShare, limit } = sizeCrossFlooding(halves(), limits);
    expect(limit).toBeUndefined();
    expect(peakAfter).toBeLessThanOrEqual(0.1 * peakBefore);
    expect(removedShare).toBeCloseTo(1 - peakAfter / peakBefore, 12);
    const [cut] = cuts;
    expect(cuts).toHaveLength(1);
    expect(cut).toMatchObject({ from: 'port', to: 'starboard', z: 0.75, height: 1.5 });
    const { count = 0, area = 0, cutLength = 0 } = cut ?? {};
    expect(area).toBeLessThan(200);
    expect(cutLength).toBeCloseTo(count * cutAround(area / count), 9);
  });

  it('say what stops them', () => {
    // Two low rooms under one over all her breadth: she lists until the faster one is full, long before the deck goes under.
    const low = { z1: 3 };
    const upper = half('upper', -10, 10, 8, { z0: 3, openings: [{ ...floor, z: 3, area: 8 }] });
    const compartments = [half('port', -10, 0, 3, low), half('starboard', 0, 10, 4, low), upper];
    const stopped = (change: Partial<typeof limits>) =>
      sizeCrossFlooding(bargeInput(0.5, { compartments, targetSinkTime: 600 }), { ...limits, ...change })
        .limit;
    expect(stopped({ shareOfBulkhead: 0.01 })?.kind).toBe('structure');
    expect(stopped({ cuts: 3 })?.kind).toBe('number of cuts');
    expect(stopped({ shareOfBulkhead: 0.01 })?.message).toMatch(
      /^The cuts make the peak list \d+ % greater and do not remove 90 % of it: no more than 1 % of a bulkhead may be cut away\.$/,
    );
    expect(stopped({ cuts: 3 })?.message).toMatch(
      /^The cuts make the peak list \d+ % greater and do not remove 90 % of it: no more than 3 cuts can be made\.$/,
    );
    // Open to the top the same two list her until the deck edge is under.
    expect(sizeCrossFlooding(halves(), { ...limits, shareOfBulkhead: 0.002 }).limit?.message).toMatch(
      /^The cuts remove \d+ % of the peak list and not 90 %: the deck edge is under before the water has crossed\.$/,
    );
  });

  it('are none where no two flooded compartments share a bulkhead along the ship', () => {
    const message = 'No two flooded compartments share a bulkhead along the ship: there is nothing to cut.';
    for (const apart of [{ y0: 1 }, { x0: 99.6 }, { z0: 9.6 }]) {
      const found = sizeCrossFlooding(halves(apart), limits);
      expect(found).toEqual({
        ...{ cuts: [], peakBefore: found.peakBefore, peakAfter: found.peakBefore, removedShare: 0 },
        limit: { kind: 'structure', message },
      });
      expect(found.peakBefore).toBeGreaterThan(1);
    }
  });
});
