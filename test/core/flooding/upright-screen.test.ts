import { describe, expect, it } from 'vitest';
import { kgAfterRemoval } from '../../../core/stability';
import {
  uprightScreen,
  type UprightChoice,
  type UprightCompartment,
  type UprightInput,
} from '../../../core/flooding';
import { bargeInput, coasterInput } from './invented-ship';

const measured = { low: 3.2, likely: 3.3, high: 3.4, basis: 'inclined' } as const;

describe('the verdict of the upright screen', () => {
  it('separates the barge with KG 4.5 m, which comes back, from KG 5.5 m, which finds no rest', () => {
    const [back, over] = [uprightScreen(bargeInput(4.5)), uprightScreen(bargeInput(5.5))];
    expect(back.greatestHeelDegrees).toBeCloseTo(20.5, 0);
    expect(back.sinkMinutes).toBeGreaterThan(0);
    expect(back.stages.at(-1)?.heel).toBe(0);
    expect(over.greatestHeelDegrees).toBeUndefined();
    expect(over.verdict).toBe('may roll over');
    expect(over.sinkMinutes).toBeUndefined();
    expect(over.reasons.join(' ')).toContain('no equilibrium below 60 degrees');
  });

  it('is "does not sink" for the barge that floods over 0.6 of its volume, and nothing better', () => {
    const input = bargeInput(4);
    const compartments = input.compartments.map(c => ({ ...c, permeability: 0.6 }));
    const result = uprightScreen({ ...input, compartments });
    expect(result.verdict).toBe('does not sink');
    expect(result.reasons.join(' ')).toContain('she stays afloat');
    expect(result.reasons).toContain('No verdict can make a plan good that leaves her afloat.');
    expect(result.sinks).toBe(false);
    expect(result.sinkMinutes).toBeUndefined();
    expect((result.stages.at(-1)?.draught ?? 0) / 5).toBeCloseTo(1, 2.3);
    expect((result.stages.at(-1)?.level ?? 0) / 5).toBeCloseTo(1, 2.3);
  });

  it('is "stays up" only with a measured KG: assumed, the same values are "cannot tell"', () => {
    expect(uprightScreen(coasterInput({ kg: measured })).verdict).toBe('stays up');
    const assumed = uprightScreen(coasterInput({ kg: { ...measured, basis: 'assumed' } }));
    expect(assumed.verdict).toBe('cannot tell');
    expect(assumed.settles?.measurement).toBe('inclining');
  });

  it('is "cannot tell" when the ranges span two verdicts, and names the measurement with its cost', () => {
    const costs = { inclining: { cost: 18_000, days: 2 } };
    const result = uprightScreen(coasterInput({ measurementCosts: costs }));
    expect(result.verdict).toBe('cannot tell');
    expect(result.settles).toMatchObject({ measurement: 'inclining', cost: 18_000, days: 2 });
  });

  it('is "leans" between the limits, and follows the limits the user sets', () => {
    const heel = uprightScreen(bargeInput(2.5)).greatestHeelDegrees ?? 0;
    const at = (staysUp: number, leans: number): string =>
      uprightScreen(bargeInput(2.5, { limits: { staysUp, leans } })).verdict;
    expect(heel).toBeGreaterThan(1);
    expect([at(heel + 1, heel + 2), at(heel - 1, heel + 1), at(heel - 2, heel - 1)]).toEqual([
      'stays up',
      'leans',
      'may roll over',
    ]);
  });
});

describe('what every result carries', () => {
  const result = uprightScreen(coasterInput());

  it('says that it is screening, what it cannot see, and asks for a naval architect and an inclining', () => {
    expect(result.caution).toMatch(/^Screening, not a naval architect's study/);
    expect(result.caution).toMatch(/inclining/);
    expect(result.cannotSee.length).toBeGreaterThan(4);
  });

  it('lists the missing inputs', () => {
    expect(result.missingInputs.join('; ')).toMatch(/centre of gravity.*offset table.*openings/);
  });

  it('has at least ten stages in time, and a size for every flooded compartment', () => {
    expect(result.stages.length).toBeGreaterThanOrEqual(10);
    const times = result.stages.map(({ t }) => t);
    expect([...times].sort((a, b) => a - b)).toEqual(times);
    expect(result.sizing.map(({ compartment }) => compartment)).toEqual(
      coasterInput().compartments.map(({ id }) => id),
    );
  });

  it('is plain data: a copy through JSON is the same', () => {
    expect(JSON.parse(JSON.stringify(result))).toEqual(result);
  });

  it('sizes mirrored wing tanks alike, with air escapes of at least a tenth of the openings', () => {
    const size = (id: string): unknown => {
      const found = result.sizing.find(({ compartment }) => compartment === id);
      return (
        found && {
          ...found,
          compartment: '',
          area: found.area.toFixed(9),
          openingArea: '',
          cutLength: '',
          ventArea: '',
          fillMinutes: '',
        }
      );
    };
    expect(size('wing-port-1')).toEqual(size('wing-starboard-1'));
    for (const { ventArea, area } of result.sizing) expect(ventArea).toBeGreaterThanOrEqual(0.1 * area);
  });

  it('fills within the target time when the openings are sized for it', () => {
    const even = uprightScreen(coasterInput({ kg: measured, openingsMismatch: 0 }));
    expect((even.sinkMinutes ?? 0) / 30).toBeCloseTo(1, 0);
  });
});

describe('sizing of the barge', () => {
  it('gives 14 openings of 1.2 x 1.5 m and 75.6 m of cut for 180 s, as worked by hand from Q = Cd A sqrt(2 g h)', () => {
    const [hold] = bargeInput(4).compartments;
    const compartments = hold ? [{ ...hold, openings: [], vents: [], floods: true }] : [];
    const [size] = uprightScreen(bargeInput(4, { compartments, targetSinkTime: 180 })).sizing;
    expect(size?.openings).toBe(14);
    expect(size?.cutLength).toBeCloseTo(75.6, 9);
  });
});

describe('facts on the water come before any default', () => {
  const kg = { low: 6, likely: 7, high: 8, basis: 'assumed' } as const;

  it('a ship afloat and upright has KG below KM; a default above it is a finding', () => {
    const result = uprightScreen(coasterInput({ kg, facts: { afloatUpright: true } }));
    expect(result.findings.map(({ code }) => code)).toContain('upright/kg-contradicted');
    expect(uprightScreen(coasterInput({ kg })).findings.map(({ code }) => code)).not.toContain(
      'upright/kg-contradicted',
    );
  });

  it('a timed roll narrows the range of KG', () => {
    const wide = { low: 2, likely: 5, high: 6.5, basis: 'assumed' } as const;
    const narrow = uprightScreen(coasterInput({ kg: wide, facts: { rollPeriod: 9 } }));
    const open = uprightScreen(coasterInput({ kg: wide }));
    expect(narrow.lowestGmMetres).toBeGreaterThan(open.lowestGmMetres ?? 99);
  });

  it('a list without a known cause is a finding', () => {
    const result = uprightScreen(coasterInput({ facts: { list: { degrees: 4 } } }));
    expect(result.findings.some(({ place }) => place === '/facts/list')).toBe(true);
  });
});

describe('removing topside weight', () => {
  it('changes the lowest GM by the formula of KG after removal', () => {
    const single = { displacement: { low: 4100, likely: 4100, high: 4100 } };
    const before = uprightScreen(bargeInput(5, single));
    const after = uprightScreen(bargeInput(5, { ...single, removedWeights: [{ mass: 205, vcg: 15 }] }));
    const volume = (4100 - 205) / 1.025;
    const kg = kgAfterRemoval(4100, 5, 205, 15);
    // f = 1: GM = (A T^2/2 - A h^2/2) / V - KG with T = V/A + h: V/(2A) + h - KG.
    expect(after.lowestGmMetres).toBeCloseTo(volume / 4000 + 0.01 - kg, 6);
    expect(after.greatestHeelDegrees ?? 99).toBeLessThan(before.greatestHeelDegrees ?? 99);
  });
});

describe('nonsense hulls give findings and no figure', () => {
  const nonsense: readonly [string, Partial<UprightInput>, string][] = [
    [
      'a draught over the depth',
      { particulars: { length: 80, breadth: 13, depth: 3, lightDraught: 4 } },
      '/particulars/lightDraught',
    ],
    [
      'a block coefficient of 1.2',
      { displacement: { low: 3800, likely: 3838, high: 3900 } },
      '/displacement/likely',
    ],
    ['a range of KG upside down', { kg: { low: 6, likely: 5, high: 4, basis: 'assumed' } }, '/kg'],
    ['more weight removed than she has', { removedWeights: [{ mass: 5000, vcg: 5 }] }, '/removedWeights'],
  ];
  it.each(nonsense)('%s', (_, change, place) => {
    const result = uprightScreen(coasterInput(change));
    expect(result.findings.filter(({ weight }) => weight === 'blocks').map(f => f.place)).toContain(place);
    expect(result.stages).toEqual([]);
    expect(result.greatestHeelDegrees).toBeUndefined();
    expect(result.lowestGmMetres).toBeUndefined();
  });

  it('a compartment of negative volume, an impossible permeability, a way to nowhere', () => {
    const [first, ...rest] = coasterInput().compartments;
    if (!first) throw new Error('the invented ship has compartments');
    const bad: UprightCompartment = {
      ...first,
      x0: 20,
      x1: 10,
      permeability: 1.4,
      connections: [{ to: 'nowhere', area: 1, z: 1, kind: 'door' }],
    };
    const result = uprightScreen(coasterInput({ compartments: [bad, ...rest] }));
    expect(result.findings.filter(({ weight }) => weight === 'blocks').map(f => f.place)).toEqual([
      '/compartments/0',
      '/compartments/0/permeability',
      '/compartments/0/connections',
    ]);
  });
});

describe('choices side by side', () => {
  const choices: readonly UprightChoice[] = [
    { id: 'paint', title: 'Paint the funnel', cost: 1000, days: 1, effect: {} },
    {
      id: 'mast',
      title: 'Take off the mast',
      cost: 20_000,
      days: 3,
      effect: { removedWeights: [{ mass: 2, vcg: 20, lcg: 40, tcg: 0 }] },
    },
    {
      id: 'house',
      title: 'Take off the house',
      cost: 90_000,
      days: 12,
      effect: { removedWeights: [{ mass: 150, vcg: 12, lcg: 20, tcg: 0 }] },
    },
  ];
  const kg = { low: 5.5, likely: 5.5, high: 5.5, basis: 'inclined' } as const;
  const input = coasterInput({
    kg,
    openingsMismatch: 0,
    displacement: { low: 2000, likely: 2000, high: 2000 },
    choices,
  });
  const result = uprightScreen(input);

  it('shows each with cost, days and greatest heel', () => {
    expect(result.choices?.each.map(({ ids, cost }) => [ids[0], cost])).toEqual([
      ['paint', 1000],
      ['mast', 20_000],
      ['house', 90_000],
    ]);
    const heels = result.choices?.each.map(c => c.greatestHeelDegrees ?? 99) ?? [];
    expect(heels[2]).toBeLessThan(heels[0] ?? 0);
  });

  it('proposes the cheapest set that improves the verdict, which no cheaper set does', () => {
    expect(result.choices?.cheapest?.ids).toContain('house');
    expect(result.choices?.cheapest?.ids).not.toContain('paint');
  });

  it('says so when no set does', () => {
    const [paint] = choices;
    const none = uprightScreen({ ...input, choices: paint ? [paint] : [] });
    expect(none.choices?.cheapest).toBeUndefined();
    expect(none.choices?.message).toMatch(/^None of/);
  });
});

describe('the site', () => {
  it('says whether she could turn over, the angle with one end down, the clearance and both wave factors', () => {
    const { site } = uprightScreen(coasterInput({ kg: measured }));
    expect(site.canTurnOver).toBe(true);
    expect(site.endAngleDegrees).toBeCloseTo((Math.asin(30 / 80) * 180) / Math.PI, 9);
    expect(site.clearance).toBe(16);
    expect(site.waveFactors?.inertia).toBeLessThan(site.waveFactors?.dragOnly ?? 0);
    expect(site.notes.join(' ')).toMatch(/coastal engineer/);
  });
});

describe('asymmetric cases', () => {
  it('runs all even, one side slower, and each closed door forgotten open', () => {
    const [first, ...rest] = coasterInput({ kg: measured }).compartments;
    if (!first) throw new Error('the invented ship has compartments');
    const door = { to: 'room-2', area: 1.6, z: 2, kind: 'door', closed: true } as const;
    const compartments = [{ ...first, connections: [door] }, ...rest];
    const { whatIfs } = uprightScreen(coasterInput({ kg: measured, compartments }));
    expect(whatIfs.map(({ title }) => title)).toEqual([
      'all openings even',
      'port side 10 % slower',
      'door between Room 1 and Room 2 forgotten open',
    ]);
    expect(whatIfs[0]?.peakListDegrees).toBe(0);
    expect(whatIfs[1]?.peakListDegrees).toBeGreaterThan(0.1);
  });
});
