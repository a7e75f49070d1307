import { at } from '../../base';
import type { Placed } from '../placed';

/** Which activities are under way on each day slot, by position. */
export type UnderWay = readonly (readonly number[])[];

/** Lists for every day the activities whose span holds it. */
export function underWay(placed: Placed): UnderWay {
  const days: number[][] = Array.from({ length: placed.finish }, () => []);
  placed.compiled.problem.activities.forEach((_, i) => {
    for (let day = at(placed.starts, i); day < at(placed.finishes, i); day++) days[day]?.push(i);
  });
  return days;
}
