import { isoOf } from '../../calendar';
import { at } from '../../base';
import type { Compiled } from './compiled';

/** First and last day of an activity between two moments; of a milestone the one day it opens or closes. */
export function datesOfMoments(
  compiled: Compiled,
  activity: number,
  start: number,
  finish: number,
): { readonly start: string; readonly finish: string } {
  const { isMilestone, isClosing } = at(compiled.activities, activity);
  const last = isMilestone ? start - (isClosing ? 1 : 0) : finish - 1;
  const first = isMilestone ? last : start;
  return { start: isoOf(compiled.first + first), finish: isoOf(compiled.first + last) };
}
