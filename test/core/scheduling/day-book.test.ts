import { expect, it } from 'vitest';
import { at } from '../../../core/base';
import { DayBook } from '../../../core/scheduling/day-book';
import { searchSchedule, type SearchProblem } from '../../../core/scheduling/search';
import { heldOn, unitsOn } from '../scheduling-search/all-schedules';
import { randomProblem } from '../scheduling-search/random-problem';
import { finishDay } from '../scheduling-search/schedule-faults';

/** Days on which an activity under way would be too much beside the others, or meet one that it excludes. */
function blockedDays(problem: SearchProblem, starts: ArrayLike<number>, activity: number): Set<number> {
  const others = [...problem.activities.keys()].filter(i => i !== activity);
  const isOn = (i: number, day: number) => at(starts, i) <= day && day < finishDay(problem, i, at(starts, i));
  const excludes = (i: number) =>
    problem.exclusions.some(
      ({ first, second }) =>
        (first.includes(i) && second.includes(activity)) || (second.includes(i) && first.includes(activity)),
    );
  const days = Array.from({ length: 40 }, (_, day) => day).filter(day => {
    const running = others.filter(i => isOn(i, day));
    const isShort = problem.resources.some((_, r) => {
      const own = heldOn(problem, r, activity, day);
      const used = running.reduce((sum, i) => sum + heldOn(problem, r, i, day), 0);
      return own > 0 && own + used > unitsOn(problem, r, day);
    });
    return isShort || running.some(excludes);
  });
  return new Set(days);
}

it('the day book tells on which days one more activity does not fit, as counted day by day', () => {
  let [blocked, free] = [0, 0];
  for (let seed = 1; seed < 21; seed++) {
    const problem = randomProblem(seed, {
      ...{
        activities: 7,
        hasCalendars: seed % 2 === 0,
        hasVaryingCapacity: seed % 3 === 0,
        hasExclusions: true,
      },
    });
    const { starts } = searchSchedule(problem, { schedules: 40, seed });
    if (!starts) continue;
    const book = new DayBook(problem);
    starts.forEach((start, i) => {
      expect(book.isPlaced(i)).toBe(false);
      book.place(i, start, finishDay(problem, i, start));
    });
    for (const [activity, start] of starts.entries()) {
      if (at(problem.activities, activity).duration === 0) continue;
      expect(book.span(activity)).toEqual({ start, finish: finishDay(problem, activity, start) });
      book.remove(activity);
      expect(book.isPlaced(activity)).toBe(false);
      const days = blockedDays(problem, starts, activity);
      for (let from = 0; from < 24; from += 2)
        for (const to of [from + 1, from + 3, from + 8]) {
          const inside = [...days].filter(day => from <= day && day < to);
          expect(book.lastBlocked(activity, from, to)).toBe(inside.at(-1) ?? -1);
          expect(book.firstBlocked(activity, from, to)).toBe(inside[0] ?? -1);
          const clash = book.clash(activity, from, to);
          expect(clash !== undefined).toBe(inside.length > 0);
          if (clash?.kind === 'resource') expect(days.has(clash.day)).toBe(true);
          if (clash?.kind === 'exclusion') {
            const { start: begins, finish } = book.span(clash.other);
            expect(clash.other).not.toBe(activity);
            expect(begins < to && finish > from).toBe(true);
          }
          if (inside.length > 0) blocked++;
          else free++;
        }
      if (days.size > 0) expect(book.canClash(activity)).toBe(true);
      book.place(activity, start, finishDay(problem, activity, start));
    }
    problem.resources.forEach((_, r) => {
      for (let day = 0; day < 30; day++) expect(book.capacity(r, day)).toBe(unitsOn(problem, r, day));
    });
  }
  expect(Math.min(blocked, free)).toBeGreaterThan(200);
});
