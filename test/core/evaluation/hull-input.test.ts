import { describe, expect, it, test } from 'vitest';
import { atDocument } from '../../../core/evaluation/upright-findings';
import { compartmentsOf } from '../../../core/evaluation/upright-compartments';
import { numberIn, rangeIn } from '../../../core/evaluation/upright-figures';
import { isWholeShip, listTotals } from '../../../core/evaluation/upright-kg';
import { uprightInput } from '../../../core/evaluation/upright-input';
import type { Project } from '../../../core/project';
import { demoProject, estimated, evaluated } from './demo';

const demo = demoProject();
const figure = (value: string, unit: string, more: { low?: string; high?: string } = {}) => ({
  value,
  unit,
  basis: 'surveyed' as const,
  source: 'invented',
  ...more,
});
const withVessel = (changes: Partial<Project['vessel']>): Project => ({
  ...demo,
  vessel: { ...demo.vessel, ...changes },
});

type Compartment = Project['vessel']['compartments'][number];
/** A space from 10 to 30 m and from 2 to 12 m above the keel, with nothing in it. */
const space: Compartment = {
  id: 'hold',
  title: 'Hold',
  from: figure('10', 'm'),
  to: figure('30', 'm'),
  bottom: figure('2', 'm'),
  top: figure('12', 'm'),
  permeability: figure('0.85', '1'),
  openings: [],
  vents: [],
  connections: [],
};
const read = (...compartments: Compartment[]) => compartmentsOf(withVessel({ compartments }), 100, 16, 10, 4);

describe('the compartments of the screen', () => {
  it('are as many equal ones as the hull type has, where the document gives none', () => {
    const equal = read();
    expect(equal?.map(({ id, title, x0, x1 }) => `${id} ${title} ${x0} ${x1}`)).toEqual([
      'compartment-1 Compartment 1 0 25',
      'compartment-2 Compartment 2 25 50',
      'compartment-3 Compartment 3 50 75',
      'compartment-4 Compartment 4 75 100',
    ]);
    const [one] = equal ?? [];
    expect({ ...one, id: '', title: '' }).toEqual({
      ...{ id: '', title: '', x0: 0, x1: 25, y0: -8, y1: 8, z0: 0, z1: 10, permeability: 0.9, floods: true },
      ...{ openings: [], vents: [], connections: [] },
    });
    expect(compartmentsOf(withVessel({ compartments: [] }), 100, 16, 10, 0.4)).toHaveLength(1);
  });

  it('are those of the document: full width unless a side is given, flooded unless told otherwise', () => {
    const feet = {
      ...space,
      id: 'feet',
      from: figure('100', 'ft'),
      inner: figure('1', 'm'),
      outer: figure('7', 'm'),
    };
    const found = read(space, feet, { ...space, floods: 'no' }, { ...space, floods: 'late' });
    const plain = { x0: 10, x1: 30, y0: -8, y1: 8, z0: 2, z1: 12, permeability: 0.85, floods: true };
    const none = { openings: [], vents: [], connections: [] };
    expect(found).toEqual([
      { id: 'hold', title: 'Hold', ...plain, ...none },
      { id: 'feet', title: 'Hold', ...plain, ...none, x0: 30.48, y0: 1, y1: 7 }, // 0.3048 m a foot, NIST SP 811
      { id: 'hold', title: 'Hold', ...plain, ...none, floods: false },
      { id: 'hold', title: 'Hold', ...plain, ...none, entry: 10 }, // cut at 0.8 of its own depth: 2 + 0.8 x 10
    ]);
  });

  test.each(['from', 'to', 'bottom', 'top', 'permeability', 'inner', 'outer'] as const)(
    'are none when %s measures something else',
    field => {
      expect(read(space, { ...space, [field]: figure('3', 'kg') })).toBeUndefined();
    },
  );

  it('have openings, vents and connections; one that cannot be read is left out', () => {
    const opening = {
      id: 'door',
      side: 'port' as const,
      count: 2,
      area: figure('1.5', 'm2'),
      centre: figure('4', 'm'),
      height: figure('1', 'm'),
    };
    const wrong = figure('1', 'kg');
    const vent = { area: figure('0.2', 'm2'), centre: figure('11', 'm') };
    const link = { to: 'next', kind: 'door' as const, area: figure('2', 'm2'), centre: figure('3', 'm') };
    const [found] =
      read({
        ...space,
        openings: [
          opening,
          { ...opening, id: 'cut', side: 'both', count: 1 },
          { ...opening, area: wrong },
          { ...opening, centre: wrong },
          { ...opening, height: wrong },
        ],
        vents: [vent, { ...vent, area: wrong }, { ...vent, centre: wrong }],
        connections: [
          link,
          { ...link, height: figure('2', 'm'), closed: true },
          { ...link, area: wrong },
          { ...link, centre: wrong },
        ],
      }) ?? [];
    const cut = { area: 1.5, z: 4, height: 1 };
    expect(found?.openings).toEqual([
      { ...cut, id: 'door', side: 'port', count: 2 },
      { ...cut, id: 'cut-p', side: 'port', count: 1 },
      { ...cut, id: 'cut-s', side: 'starboard', count: 1 },
    ]);
    expect(found?.vents).toEqual([{ area: 0.2, z: 11 }]);
    expect(found?.connections).toEqual([
      { to: 'next', kind: 'door', area: 2, z: 3 },
      { to: 'next', kind: 'door', area: 2, z: 3, height: 2, closed: true },
    ]);
  });
});

describe('a figure of the screen', () => {
  test.each([
    [figure('3', 'm'), 3],
    [figure('10', 'ft'), 3.048],
    [figure('3', 'kg'), undefined],
    [figure('3', 'fathoms'), undefined],
    [undefined, undefined],
  ])('%j is %s m', (given, metres) => {
    expect(numberIn(given, 'm')).toBe(metres);
  });
  test.each([
    [figure('6', 'm', { low: '5', high: '8' }), 5, 8],
    [figure('6', 'm', { low: '5' }), 5, 6.6],
    [figure('6', 'm', { high: '8' }), 5.4, 8],
    [figure('6', 'm'), 5.4, 6.6],
    [figure('6', 'kg', { low: '5', high: '8' }), 5.4, 6.6],
    [undefined, 5.4, 6.6],
  ])('%j ranges from %d to %d about 6', (given, low, high) => {
    const range = rangeIn(given, 'm', 6, 0.1);
    expect([range.low, range.likely, range.high].map(value => Number(value.toFixed(9)))).toEqual([
      low,
      6,
      high,
    ]);
  });
});

describe('the weight list', () => {
  const weight = (id: string, mass: string, vcg: string, more = {}) => ({
    id,
    title: id,
    mass: figure(mass, 't'),
    vcg: figure(vcg, 'm'),
    lcg: figure('0', 'm'),
    tcg: figure('0', 'm'),
    ...more,
  });
  it('adds up to mass and centre: 600 t at 4 m and 400 t at 9 m are 1,000 t at 6 m', () => {
    const totals = listTotals(
      withVessel({ weights: [weight('steel', '600', '4'), weight('house', '400', '9')] }),
    );
    expect([totals?.mass.likely, totals?.kg.likely]).toEqual([1000, 6]);
    if (totals === undefined) throw new Error('the list adds up');
    expect([1111, 1112, 910, 909, 1000].map(lightship => isWholeShip(totals, lightship))).toEqual([
      true,
      false,
      true,
      false,
      true,
    ]);
  });
  it('is none while an entry cannot be read, or there is none', () => {
    expect(listTotals(withVessel({ weights: [] }))).toBeUndefined();
    const odd = weight('odd', '5', '1', { mass: figure('5', 'm') });
    expect(listTotals(withVessel({ weights: [weight('steel', '600', '4'), odd] }))).toBeUndefined();
    const high = weight('odd', '5', '1', { vcg: figure('5', 't') });
    expect(listTotals(withVessel({ weights: [weight('steel', '600', '4'), high] }))).toBeUndefined();
  });
});

it('a finding of the screen stands at its place in the document', () => {
  const { input: given, work } = estimated(evaluated(demo));
  const input = uprightInput(demo, given, work, work);
  const [, second] = input?.compartments ?? [];
  if (input === undefined || second === undefined) throw new Error('the demo has a hull');
  const placed = (place: string) =>
    atDocument({ code: 'upright/x', weight: 'warns', place, message: 'm', remedy: 'r' }, input).place;
  expect(
    [
      '/particulars/length',
      '/particulars/breadth',
      '/particulars/depth',
      '/particulars/lightDraught',
      '/displacement',
      '/kg/low',
      '/facts/list/0',
      '/removedWeights/3',
      '/compartments',
      '/compartments/1',
      '/compartments/1/openings/0',
      '/compartments/99',
      '/elsewhere',
    ].map(placed),
  ).toEqual([
    '/vessel/length',
    '/vessel/beam',
    '/vessel/depth',
    '/vessel/draughtLight',
    '/vessel/lightship',
    '/vessel/kg',
    '/vessel/observedList',
    '/items',
    '/vessel/compartments',
    `/vessel/compartments/${second.id}`,
    `/vessel/compartments/${second.id}/openings/0`,
    '/compartments/99',
    '/elsewhere',
  ]);
});
