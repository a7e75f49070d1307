import { type Provenance, valueAt } from '../base';
import { sorted } from './percentiles';

/** How the cost of a past reef project grew from its first public figure to its last. */
export interface CostGrowth extends Provenance {
  readonly project: string;
  /** Last figure over first. */
  readonly growth: number;
}

/** Past hulls by class and length. The sample is small and made of projects that reached the press. */
export const COST_GROWTH: readonly CostGrowth[] = [
  {
    project: 'aircraft carrier 888 ft, from the middle estimate',
    growth: 1.66,
    basis: 'published',
    source: 'local broadcaster',
    year: 2005,
  },
  { project: 'instrument ship 523 ft', growth: 1.51, basis: 'published', source: 'press', year: 2009 },
  { project: 'landing ship dock 510 ft', growth: 1.23, basis: 'from memory', source: 'press of the time' },
  {
    project: 'liner 990 ft, by contract amendment',
    growth: 1.41,
    basis: 'published',
    source: 'county contract amendment',
  },
  {
    project: 'research vessels (pair) 180 ft, allocated against spent',
    growth: 0.84,
    basis: 'published',
    source: 'press',
    year: 2023,
  },
  {
    project: 'landing ship (Australia), remedial work',
    growth: 1.1,
    basis: 'published',
    source: 'state ministerial brief CTS 27243/18',
    year: 2018,
  },
];

/**
 * Where a budget over the plan stands among past projects: a check from outside, beside the simulation.
 * @param ratio budget over plan total.
 * @returns the share of past projects whose growth it would have covered, and the middle growth.
 * @source B. Flyvbjerg, Eur. Planning Studies 16 (2008) 3-21 (reference class forecasting).
 */
export function amongPastProjects(ratio: number): { covered: number; of: number; middleGrowth: number } {
  const growths = sorted(Float64Array.from(COST_GROWTH, c => c.growth));
  const covered = growths.filter(g => g <= ratio).length;
  return { covered, of: growths.length, middleGrowth: medianOf(growths) };
}

/** The middle of rising values; of an even number the mean of the two in the middle. */
function medianOf(rising: Float64Array): number {
  const [below, above] = [Math.ceil(rising.length / 2) - 1, Math.floor(rising.length / 2)];
  return (valueAt(rising, below) + valueAt(rising, above)) / 2;
}
