import { at } from '../../base';
import type { SearchProblem, SearchResource } from './problem';

/** The most units of the resource on any day. */
export function peakOf({ capacity, capacityByDay }: SearchResource): number {
  if (!capacityByDay) return Math.max(0, capacity);
  let peak = 0;
  for (let day = 0; day < capacityByDay.length; day++) peak = Math.max(peak, at(capacityByDay, day));
  return peak;
}

/** Work of each activity a day, as the mean share of the resources. */
export function weightsOf({ activities, resources }: SearchProblem): Float64Array {
  const peaks = resources.map(resource => Math.max(1, peakOf(resource)));
  return Float64Array.from(activities, ({ demands }) => {
    const shares = demands.reduce((sum, units, r) => sum + units / at(peaks, r), 0);
    return shares / Math.max(1, resources.length);
  });
}
