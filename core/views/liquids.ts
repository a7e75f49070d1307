import { unitFor, type Measures } from './measures';

/** Liquids are read in gallons by those who read feet. */
const LIQUIDS = new Set([
  'fuel-left',
  'lube-left',
  'hydraulic-left',
  'sludge-volume',
  'oily-water-volume',
  'foam',
  'antifreeze',
  'sewage-volume',
  'treated-ballast',
  'ballast-left',
]);

/** The unit in which a reader takes the amount of a driver that is counted in a unit. */
export function readersUnit(driver: string, unit: string, measures: Measures): string {
  return unit === 'm3' && measures === 'us' && LIQUIDS.has(driver) ? 'gal' : unitFor(unit, measures);
}
