import { BugError, type Finding } from '../base';
import { addMonths, dayOf } from '../calendar';
import { compareDecimals, convert, isConvertible, isUnit, quantity, type Unit } from '../units';
import type { TripPoint } from './schema';

/** A trip-point by its key. @throws BugError when the templates hold none of that key. */
export function tripPoint(points: readonly TripPoint[], id: string): TripPoint {
  const found = points.find(point => point.id === id);
  if (found === undefined) throw new BugError(`no trip-point ${id}`);
  return found;
}

/**
 * Whether an amount trips a point: held against it exactly as the rule says (at or above, above, below).
 * @param amount decimal text in the unit of the point's figure.
 */
export function trips(point: TripPoint, amount: string): boolean {
  const above = compareDecimals(amount, point.figure.value);
  switch (point.trips) {
    case 'at or above':
      return above >= 0;
    case 'above':
      return above > 0;
    case 'below':
      return above < 0;
  }
}

/** The limit of a trip-point as a number in a unit. @throws BugError when its unit does not convert. */
export function limitOf(points: readonly TripPoint[], id: string, unit: Unit): number {
  const { figure } = tripPoint(points, id);
  if (!isUnit(figure.unit) || !isConvertible(figure.unit, unit))
    throw new BugError(`the trip-point ${id} is in ${figure.unit}, not ${unit}`);
  return Number(convert(quantity(figure.value, figure.unit), unit).value);
}

const MONTHS_A_CHECK_HOLDS = 24;

/**
 * A finding for each trip-point that nobody has compared with the text of the rule in the last 24 months.
 * @param today `YYYY-MM-DD`.
 */
export function uncheckedTripPoints(points: readonly TripPoint[], today: string): Finding[] {
  return points
    .filter(point => addMonths(dayOf(point.checkedOn), MONTHS_A_CHECK_HOLDS) < dayOf(today))
    .map(point => ({
      code: 'rules/checked-long-ago',
      weight: 'warns',
      place: `templates/trip-points/${point.id}`,
      message: `${point.title} was last compared with its rule on ${point.checkedOn}, more than ${MONTHS_A_CHECK_HOLDS} months before ${today}.`,
      meaning: 'The rule may have changed since.',
      remedy: 'Read the rule again and set the day it was checked.',
      rule: point.rule,
    }));
}
