import type { Figure } from '../base';

const remembered = (value: string, unit: string, source: string, low?: string, high?: string): Figure => ({
  value,
  unit,
  ...(low === undefined ? {} : { low }),
  ...(high === undefined ? {} : { high }),
  basis: 'from memory',
  source,
  year: 2026,
});
const judged = (value: string, unit: string, source: string, low: string, high: string): Figure => ({
  ...remembered(value, unit, source, low, high),
  basis: 'judgement',
});

/** Constants of the take-off, each with where it comes from. They hold for every hull type. */
export const ASSUMPTIONS = {
  seaWater: {
    ...remembered('1.025', 't/m3', 'Density of sea water used in ship hydrostatics'),
    basis: 'common practice',
  },
  mumford: {
    ...remembered('1.7', '1', 'Denny-Mumford wetted surface, in UFC 4-159-03 (moorings) equation 18'),
    basis: 'published',
    year: 2005,
  },
  perimeter: judged('1.94', '1', 'Perimeter of the waterline over its length: twice 0.95 to 1.0', '1.9', '2'),
  fullnessShare: remembered('0.8', '1', 'Block coefficient at 0.8 of the depth, Watson and Gilfillan 1977'),
  fullnessSlope: remembered('3', '1', 'Block coefficient at 0.8 of the depth, Watson and Gilfillan 1977'),
  tankSurface: judged(
    '7.7',
    '1',
    'Inner surface of a tank over its volume to the power 2/3: 6.42 for 10 x 6 x 4 m, and 20 % for stiffeners',
    '7',
    '9',
  ),
  twoThirds: {
    ...remembered('0.666666667', '1', 'Surface of similar bodies goes with volume to the power 2/3'),
    basis: 'published',
  },
  openingsPerCompartment: judged(
    '4',
    'each/each',
    'Two openings a side in each compartment until they are sized',
    '2',
    '8',
  ),
  openingPerimeter: judged('5.4', 'm/each', 'Cut of an opening of 1.2 by 1.5 m', '4', '7'),
  ventsPerCompartment: judged(
    '4',
    'each/each',
    'Air escape at both sides and both ends of each compartment',
    '2',
    '6',
  ),
  innerPerCompartment: judged(
    '5',
    'each/each',
    'Openings in bulkheads and decks so that each compartment fills evenly',
    '3',
    '10',
  ),
} as const satisfies Record<string, Figure>;
