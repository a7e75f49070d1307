import { describe, expect, it } from 'vitest';
import {
  uprightScreen,
  type UprightChoice,
  type UprightCompartment,
  type UprightInput,
} from '../../../core/flooding';
import { bargeInput, coasterInput } from './invented-ship';

const measured = { low: 3.2, likely: 3.3, high: 3.4, basis: 'inclined' } as const;
const one = (likely: number) => ({ low: likely, likely, high: likely });

/** The coaster with a change of her first room. */
function withFirst(change: Partial<UprightCompartment>, more: Partial<UprightInput> = {}): UprightInput {
  const [first, ...rest] = coasterInput().compartments;
  if (!first) throw new Error('the invented ship has compartments');
  return coasterInput({ kg: measured, compartments: [{ ...first, ...change }, ...rest], ...more });
}

function blocked(input: UprightInput): string[] {
  return uprightScreen(input)
    .findings.filter(({ weight }) => weight === 'blocks')
    .map(({ place }) => place);
}

function choice(
  id: string,
  effect: UprightChoice['effect'],
  change: Partial<UprightChoice> = {},
): UprightChoice {
  return { id, title: `Choice ${id}`, cost: 1000, days: 2, effect, ...change };
}

describe('an input no ship can have', () => {
  it('a length of nothing, and one that is no number', () => {
    const { particulars } = coasterInput();
    for (const length of [0, Infinity, Number.NaN])
      expect(blocked(coasterInput({ particulars: { ...particulars, length } }))).toContain(
        '/particulars/length',
      );
  });

  it('an opening without an area', () => {
    const hole = { id: 'hole', side: 'bottom', area: 0, z: 1, height: 0, count: 2 } as const;
    expect(blocked(withFirst({ openings: [hole] }))).toEqual(['/compartments/0/openings']);
  });

  it('a displacement that the closed hull cannot carry', () => {
    const displacement = { low: 1950, likely: 2000, high: 9000 };
    const result = uprightScreen(coasterInput({ kg: measured, displacement }));
    expect(result.findings).toContainEqual(
      expect.objectContaining({ code: 'upright/nonsense', weight: 'blocks', place: '/displacement/high' }),
    );
    expect(result.stages).toEqual([]);
  });
});

describe('which measurement settles what the ranges leave open', () => {
  it('the draughts, when the displacement alone spans two verdicts', () => {
    const wide = { staysUp: 0.1, leans: 89 };
    const heelOf = (displacement: UprightInput['displacement']) =>
      uprightScreen(bargeInput(3, { displacement, limits: wide })).greatestHeelDegrees ?? Number.NaN;
    const range = { low: 3700, likely: 4100, high: 4100 };
    const [most, likely] = [heelOf(range), heelOf(one(4100))];
    expect(most - likely).toBeGreaterThan(0.1);
    const limits = { staysUp: 0.1, leans: (most + likely) / 2 };
    const result = uprightScreen(bargeInput(3, { displacement: range, limits }));
    expect(result.verdict).toBe('cannot tell');
    expect(result.settles?.measurement).toBe('draught survey');
  });

  it('a survey of the bulkheads, when it hangs on how unevenly the sides fill', () => {
    const even = uprightScreen(coasterInput({ kg: measured, displacement: one(2000), openingsMismatch: 0 }));
    const uneven = uprightScreen(
      coasterInput({ kg: measured, displacement: one(2000), openingsMismatch: 0.4 }),
    );
    const [least, most] = [even.greatestHeelDegrees ?? 90, uneven.greatestHeelDegrees ?? 90];
    expect(most - least).toBeGreaterThan(0.2);
    const result = uprightScreen(
      coasterInput({
        kg: { ...one(3.3), basis: 'inclined' },
        displacement: one(2000),
        openingsMismatch: 0.4,
        limits: { staysUp: (least + most) / 2, leans: 89 },
      }),
    );
    expect(result.verdict).toBe('cannot tell');
    expect(result.settles?.measurement).toBe('bulkhead survey');
  });

  it('an inclining, also where KG comes from a list of weights', () => {
    const kg = { low: 4.6, likely: 5, high: 5.4, basis: 'weight list' } as const;
    const { settles } = uprightScreen(coasterInput({ kg }));
    expect(settles?.measurement).toBe('inclining');
    expect(settles?.why).toContain('weight list');
  });
});

describe('ways between compartments', () => {
  it('flood a room from its neighbour, whichever of the two the way is entered with', () => {
    const { compartments } = coasterInput({ kg: measured });
    const bare = compartments.map(({ floods: _floods, ...c }) => c);
    const hole = { id: 'hole', side: 'bottom', area: 1, z: 1, height: 0, count: 2 } as const;
    const way = (to: string) => [{ to, area: 1.6, z: 2, kind: 'door' as const }];
    const joined = bare.map(c => {
      if (c.id === 'room-3') return { ...c, openings: [hole] };
      if (c.id === 'room-2') return { ...c, connections: way('room-3') };
      if (c.id === 'room-5') return { ...c, connections: way('room-4') };
      return c;
    });
    const { sizing } = uprightScreen(coasterInput({ kg: measured, compartments: joined }));
    expect(sizing.map(({ compartment }) => compartment)).toEqual(['room-2', 'room-3']);
  });

  it('of two doors of one room only the closed one can be forgotten open', () => {
    const door = { area: 1.6, z: 2, kind: 'door' } as const;
    const connections = [
      { ...door, to: 'room-2', closed: true },
      { ...door, to: 'wing-port-1' },
    ];
    const { whatIfs } = uprightScreen(withFirst({ connections }));
    expect(whatIfs.map(({ title }) => title).filter(title => title.startsWith('door'))).toEqual([
      'door between Room 1 and Room 2 forgotten open',
    ]);
  });
});

describe('choices that do not do what they are meant to', () => {
  const screen = (choices: readonly UprightChoice[], input: UprightInput) =>
    uprightScreen({ ...input, choices }).choices;
  const even = coasterInput({ kg: measured, displacement: one(2000), openingsMismatch: 0 });

  it('one that no ship can have is left out, alone and in sets', () => {
    const wrong = choice('wrong', { removedWeights: [{ mass: 9000, vcg: 5 }] }, { cost: 1 });
    const found = screen([wrong, choice('none', {})], even);
    expect(found?.each.map(({ ids }) => ids)).toEqual([['none']]);
    expect(found?.message).toContain('None of any set of up to 3 of the choices improves the verdict');
  });

  it('where she finds no rest with or without them no heel is told, and no change of it', () => {
    const found = screen([choice('paint', {})], bargeInput(5.5));
    expect(found?.now).not.toHaveProperty('greatestHeelDegrees');
    expect(found?.each[0]).not.toHaveProperty('likelyHeelDegrees');
    expect(found?.each[0]).not.toHaveProperty('heelChangeDegrees');
  });

  it('one that leaves her afloat is as bad as can be', () => {
    const found = screen([choice('tight', { keepTight: ['hold'] })], bargeInput(4));
    expect(found?.each[0]).toMatchObject({ verdict: 'does not sink', worst: 'does not sink' });
  });

  it('of two of one cost the one of fewer days comes first', () => {
    const better = { kg: { ...one(3.3), basis: 'inclined' as const } };
    const assumed = coasterInput({ kg: { ...one(3.3), basis: 'assumed' }, displacement: one(2000) });
    const found = screen(
      [choice('slow', better, { days: 9 }), choice('quick', better, { days: 1 })],
      assumed,
    );
    expect(found?.cheapest?.ids).toEqual(['quick']);
  });

  it('openings made alike take the unevenness out of the path', () => {
    const uneven = coasterInput({ kg: measured, displacement: one(2000), openingsMismatch: 0.4 });
    const found = screen([choice('alike', { openingsMismatch: 0 })], uneven);
    expect(found?.now.unevenness).toBeGreaterThan(0);
    expect(found?.each[0]?.unevenness).toBeCloseTo(0, 9);
  });

  it('of many only the cheapest sets are looked at, and that is said', () => {
    const many = Array.from({ length: 8 }, (_, i) => choice(`c${i}`, {}, { cost: 100 + i }));
    expect(screen(many, even)?.message).toMatch(/^None of the 80 cheapest sets of the choices/);
  }, 60_000);
});

describe('a site of which less is known', () => {
  const notesOf = (site: UprightInput['site']) =>
    uprightScreen(bargeInput(2.5, site === undefined ? {} : { site })).site;

  it('without a depth nothing is said about it', () => {
    expect(notesOf({}).notes).toEqual(['The depth of the site is not given: nothing is said about it.']);
    expect(notesOf({})).not.toHaveProperty('halfDiagonal');
  });

  it('deeper than she is long: no end stands on the bottom while the other is up', () => {
    const site = notesOf({ waterDepth: 150 });
    expect(site).not.toHaveProperty('endAngleDegrees');
    expect(site).not.toHaveProperty('clearance');
    expect(site.canTurnOver).toBe(true);
  });

  it('shallower than half her diagonal she cannot turn right over; a steep bed may leave her with a list', () => {
    const site = notesOf({ waterDepth: 8, highestPoint: 10, bottomSlope: 0.05 });
    expect(site.canTurnOver).toBe(false);
    expect(site.notes.join(' ')).toMatch(
      /cannot turn right over.*the permit's figure is not given.*slopes 1 in 20, steeper/,
    );
  });

  it('a clearance below that of the permit is told as less', () => {
    const site = notesOf({ waterDepth: 25, highestPoint: 14, permitClearance: 15 });
    expect(site.notes.join(' ')).toContain(
      "Clear water over the wreck 11.0 m is less than the permit's 15.0 m",
    );
  });
});

describe('yardsticks of a ship that leans to port', () => {
  it('are those of the same lean to starboard', () => {
    const leaning = (tcg: number) => {
      const removedWeights = [{ mass: 40, vcg: 10, lcg: 40, tcg }];
      return uprightScreen(
        coasterInput({ kg: measured, displacement: one(2000), openingsMismatch: 0, removedWeights }),
      ).yardsticks.filter(({ condition }) => condition === 'at the worst flood level');
    };
    const [port, starboard] = [leaning(4), leaning(-4)];
    expect(port[0]?.found ?? 0).toBeGreaterThan(0.5);
    port.forEach(({ found }, i) => {
      expect(found).toBeCloseTo(starboard[i]?.found ?? Number.NaN, 4);
    });
  });
});
