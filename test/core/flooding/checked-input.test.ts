import { describe, expect, it } from 'vitest';
import type { UprightCompartment, UprightInput } from '../../../core/flooding';
import { checkUprightInput } from '../../../core/flooding/upright/check-input';
import { missingInputs } from '../../../core/flooding/upright/missing';
import { bargeInput } from './invented-ship';

/** The finding that withholds the screen. */
const blocks = (place: string, message: string, remedy: string) => ({
  ...{ code: 'upright/nonsense', weight: 'blocks', place, message, remedy },
  meaning: 'The upright screen is withheld.',
});
const barge = (change: Partial<UprightInput> = {}) => bargeInput(4, change);
const tonnes = (likely: number) => ({ low: likely, likely, high: likely });
const hull = { length: 100, breadth: 20, depth: 10, lightDraught: 2 };

/** The barge with a change of her hold. */
function withHold(change: Partial<UprightCompartment>): UprightInput {
  return barge({ compartments: barge().compartments.map(hold => ({ ...hold, ...change })) });
}

describe('what is said of a hull that cannot be', () => {
  it.each([
    ['length', 'Length'],
    ['breadth', 'Breadth'],
    ['depth', 'Depth'],
    ['lightDraught', 'Light draught'],
  ])('%s is to be above zero', (field, name) => {
    const found = checkUprightInput(barge({ particulars: { ...hull, [field]: 0 } }));
    expect(found).toContainEqual(
      blocks(
        `/particulars/${field}`,
        `${name} is 0 m; it must be a number above zero.`,
        'Enter the measured value.',
      ),
    );
  });

  it('so is the displacement, and a hull without water under her deck is none', () => {
    expect(checkUprightInput(barge({ displacement: tonnes(0) }))).toContainEqual(
      blocks(
        '/displacement/low',
        'Displacement is 0 t; it must be a number above zero.',
        'Enter the measured value.',
      ),
    );
    expect(checkUprightInput(barge({ particulars: { ...hull, lightDraught: 10 } }))).toContainEqual(
      blocks(
        '/particulars/lightDraught',
        'The draught of 10 m is not below the depth of 10 m: the deck would be under water.',
        'Check draught and depth, and that both are measured from the keel.',
      ),
    );
  });

  it('the block coefficient is that of the likely displacement: 4,100 t of sea water fill 100 x 20 x 2 m', () => {
    const said = (likely: number, particulars: UprightInput['particulars'] = hull) =>
      checkUprightInput(barge({ displacement: tonnes(likely), particulars }));
    expect(said(4920)).toEqual([
      blocks(
        '/displacement/likely',
        'The block coefficient is 1.20: 4920 t do not fit into 100 x 20 x 2 m.',
        'Check the displacement with its unit (long ton, short ton, tonne) and the draught that belongs to it.',
      ),
    ]);
    const unusual = (block: string) => [
      {
        ...{ code: 'upright/nonsense', weight: 'warns', place: '/displacement/likely' },
        message: `The block coefficient is ${block}; ships lie between 0.35 and 0.95.`,
        remedy: 'Right for a box barge or a very fine hull; otherwise check displacement and draught.',
      },
    ];
    expect(said(4100)).toEqual(unusual('1.00'));
    expect(said(3936)).toEqual(unusual('0.96'));
    expect(said(3854)).toEqual([]);
    expect(said(1476)).toEqual([]);
    expect(said(1394)).toEqual(unusual('0.34'));
    // Measured lines need no coefficient.
    expect(said(4920, { ...hull, stations: [] })).toEqual([]);
  });

  it('ranges rise, and no more comes off than is there', () => {
    const rising = 'Give the three values in rising order.';
    const found = (change: Partial<UprightInput>) =>
      checkUprightInput(barge(change)).filter(({ weight }) => weight === 'blocks');
    expect(found({ displacement: { low: 4000, likely: 4100, high: 4050 } })).toEqual([
      blocks('/displacement', 'Displacement in tonnes runs low 4000, likely 4100, high 4050.', rising),
    ]);
    expect(found({ kg: { low: 5, likely: 4, high: 6, basis: 'inclined' } })).toEqual([
      blocks('/kg', 'KG in metres runs low 5, likely 4, high 6.', rising),
    ]);
    expect(found({ kg: { low: 4, likely: 4, high: 5, basis: 'inclined' } })).toEqual([]);
    const half = { mass: 2050, vcg: 4 };
    expect(found({ removedWeights: [half, half] })).toEqual([
      blocks('/removedWeights', '4100 t are removed from a ship of 4100 t.', 'Check the masses.'),
    ]);
    expect(found({ removedWeights: [half, { ...half, mass: 2049 }] })).toEqual([]);
  });
});

describe('what is said of a compartment that cannot be', () => {
  const found = (change: Partial<UprightCompartment>) =>
    checkUprightInput(withHold(change)).filter(({ weight }) => weight === 'blocks');

  it('each of its extents is one', () => {
    for (const flat of [{ x1: 0 }, { y1: -10 }, { z1: 0 }])
      expect(found(flat)).toEqual([
        blocks('/compartments/0', 'Hold has a volume of 0 m3.', 'Give each extent from low to high.'),
      ]);
    // Upside down twice over it would have a volume above zero.
    expect(found({ x0: 0, x1: -10, y0: 5, y1: -5 })).toEqual([
      blocks('/compartments/0', 'Hold has a volume of 1000 m3.', 'Give each extent from low to high.'),
    ]);
  });

  it('its permeability is a share above nothing', () => {
    for (const permeability of [0, -0.5, 1.01, Number.NaN])
      expect(found({ permeability })).toEqual([
        blocks(
          '/compartments/0/permeability',
          `The permeability of Hold is ${permeability}.`,
          'Give a share above 0 and up to 1, such as 0.95 for an empty space.',
        ),
      ]);
    expect(found({ permeability: 0.01 })).toEqual([]);
    expect(found({ permeability: 1 })).toEqual([]);
  });

  it('its ways lead to another, its openings are open', () => {
    const way = { area: 1, z: 1, kind: 'door' } as const;
    for (const to of ['hold', 'galley'])
      expect(found({ connections: [{ ...way, to }] })).toEqual([
        blocks(
          '/compartments/0/connections',
          `Hold is connected to "${to}", which is not another compartment.`,
          'Name another compartment of the list.',
        ),
      ]);
    const hole = { id: 'hole', side: 'bottom', area: 1, z: 0, height: 0, count: 1 } as const;
    for (const wrong of [{ area: 0 }, { count: 0 }, { height: -1 }])
      expect(found({ openings: [hole, { ...hole, ...wrong }] })).toEqual([
        blocks(
          '/compartments/0/openings',
          'An opening of Hold has no area.',
          'Give area and count above zero.',
        ),
      ]);
    expect(found({ openings: [hole] })).toEqual([]);
  });
});

describe('what the screen asks for', () => {
  const range = { low: 1, likely: 2, high: 3 };
  const complete = barge({
    kg: { ...range, basis: 'inclined' },
    displacement: range,
    particulars: { ...hull, stations: [] },
    site: { waterDepth: 30, highestPoint: 12, permitClearance: 15 },
    facts: { afloatUpright: true },
    removedWeights: [{ mass: 1, vcg: 1, lcg: 1, tcg: 0 }],
  });
  const { openingsMismatch: _, site: __, facts: ___, ...unknown } = complete;

  it('is nothing where all is given, and everything where nothing is', () => {
    expect(missingInputs(complete)).toEqual([]);
    expect(
      missingInputs({
        ...unknown,
        kg: { low: 2, likely: 2, high: 2, basis: 'assumed' },
        displacement: { low: 2, likely: 2, high: 2 },
        particulars: hull,
        compartments: [],
        removedWeights: [{ mass: 1, vcg: 1 }],
      }),
    ).toEqual([
      'a measured height of the centre of gravity (inclining, or a weight list)',
      'the range of KG',
      'the range of the displacement (draught survey)',
      'the lines of the hull (an offset table); a form with its coefficients stands in',
      'how unevenly the sides may fill (bulkhead and opening survey)',
      'the compartments',
      'the openings, existing and planned',
      'the air escapes',
      'the depth of the water at the site',
      'the highest point of the ship after removal',
      "the permit's least clear water over the wreck",
      'what is seen of her afloat: upright or listing, a timed roll',
      'length and side of the removed weights',
    ]);
  });

  it('is what one part lacks: a place of one weight, openings and air escapes that no compartment has', () => {
    const weight = { mass: 1, vcg: 1 };
    const bare = complete.compartments.map(hold => ({ ...hold, openings: [], vents: [] }));
    const asked = (change: Partial<UprightInput>) => missingInputs({ ...complete, ...change });
    const places = ['length and side of the removed weights'];
    expect(asked({ removedWeights: [{ ...weight, lcg: 1 }] })).toEqual(places);
    expect(asked({ removedWeights: [...complete.removedWeights, { ...weight, tcg: 0 }] })).toEqual(places);
    expect(asked({ removedWeights: [] })).toEqual([]);
    expect(asked({ compartments: bare })).toEqual(['the openings, existing and planned', 'the air escapes']);
    expect(asked({ compartments: [...bare, ...complete.compartments] })).toEqual([]);
    expect(asked({ site: { waterDepth: 30 } })).toEqual([
      'the highest point of the ship after removal',
      "the permit's least clear water over the wreck",
    ]);
  });
});
