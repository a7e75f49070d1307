import { parseIsoDate } from '../calendar';
import type { DatedActivity } from '../evaluation';
import { holdingWords, type Holding, type ScheduleProblem } from '../scheduling';
import type { Sentence } from './rows';
import { dateWords } from './schedule-axis';

const DATE = /(?<![\w"“-])\d{4}-\d{2}-\d{2}(?![\w"”-])/g;

/**
 * A sentence with its dates in words; what stands in quotation marks is as somebody typed it and stays.
 * @example datesSaid('closed from 2027-06-01') // 'closed from 1 Jun 2027'
 */
export function datesSaid(text: string): string {
  return text.replace(DATE, iso => (parseIsoDate(iso) === undefined ? iso : dateWords(iso)));
}

/** Why an activity is where it is, as a reader of the window is told. */
export function holdingSaid(problem: ScheduleProblem, holding: Holding): string {
  return datesSaid(holdingWords(problem, holding));
}

/** The day the ship goes down, as a sentence of its own; none while no schedule tells it. */
export function sunkWords(sunk: DatedActivity | undefined): Sentence {
  if (sunk === undefined) return [];
  return ['The ship is sunk on ', { text: dateWords(sunk.date), why: `activity:${sunk.id}` }, '.'];
}
