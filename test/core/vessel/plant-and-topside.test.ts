import { describe, expect, it } from 'vitest';
import { shippedLibrary } from '../../../core/evaluation';
import { USUAL_TOPSIDE, highestStaying, houseStaying, plantOf, type HullType } from '../../../core/vessel';

const [shipped] = shippedLibrary().hullTypes;
if (shipped === undefined) throw new Error('the library has no hull types');
const typeOf = (plants: HullType['plants']): HullType => ({ ...shipped, plants });

describe('the propulsion plant', () => {
  const byYears = typeOf([
    { until: 1960, plant: 'steam' },
    { until: 1990, plant: 'diesel' },
  ] as unknown as HullType['plants']);
  it('is what the document says', () => {
    expect(plantOf('none', byYears, 1950)).toBe('none');
  });
  it.each([
    [1950, 'steam'],
    [1960, 'steam'],
    [1961, 'diesel'],
    [1990, 'diesel'],
    [2020, 'diesel'],
  ])('of a ship built in %d is by the hull type %s', (built, plant) => {
    expect(plantOf(undefined, byYears, built)).toBe(plant);
  });
});

describe('what stays of a usual topside', () => {
  // Heights over the depth: mast 2.9, funnel 2.2, bridge 1.95, second tier 1.6, first tier 1.3, bow 1.14.
  it.each([
    [undefined, 29],
    ['none', 29],
    ['clearance', 19.5],
    ['half', 16],
    ['most', 13],
    ['all', 11.4],
  ])('with the extent %s reaches to %d m above the keel of a depth of 10 m', (extent, height) => {
    expect(highestStaying(10, extent)).toBeCloseTo(height, 12);
  });
  it.each([
    [30, 19.5],
    [15, 15],
    [11, 11.4],
  ])('taken off for the clearance goes down to %d m, but not below the bow', (allowed, height) => {
    expect(highestStaying(10, 'clearance', allowed)).toBeCloseTo(height, 12);
    expect(highestStaying(10, 'half', allowed)).toBeCloseTo(16, 12);
  });
  it('covers the deck with its first tier, unless all is taken off', () => {
    expect(houseStaying(100, 20, 'half')).toEqual({ length: 32, breadth: 16 });
    expect(houseStaying(100, 20, undefined)).toEqual({ length: 32, breadth: 16 });
    expect(houseStaying(100, 20, 'all')).toBeUndefined();
  });
  it('is told part by part', () => {
    expect(USUAL_TOPSIDE.map(({ id, title }) => `${id}: ${title}`)).toEqual([
      'house-1: House, first tier',
      'house-2: House, second tier',
      'house-3: Bridge',
      'funnel: Funnel',
      'mast-1: Mast',
      'mast-2: Foremast',
    ]);
    for (const { from, to, bottom, top } of USUAL_TOPSIDE) expect(from < to && bottom < top).toBe(true);
  });
});
