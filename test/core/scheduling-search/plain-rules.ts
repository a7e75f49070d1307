import { at } from '../../../core/base';
import type { SearchProblem } from '../../../core/scheduling/search';

/**
 * The rules on ranges of starts, said once more as slowly and plainly as they can be: of each activity the earliest and
 * the latest start, without calendars and dates.
 */
export interface Ranges {
  readonly first: number[];
  readonly last: number[];
}

/** A rule raises earliest and lowers latest starts; it gives false when nothing is left. */
export type Rule = (problem: SearchProblem, ranges: Ranges) => boolean;

export const rangesOf = (first: ArrayLike<number>, last: ArrayLike<number>): Ranges => ({
  first: Array.from(first),
  last: Array.from(last),
});

const lasting = (problem: SearchProblem, i: number): number => at(problem.activities, i).duration;
const held = (problem: SearchProblem, r: number, i: number): number =>
  at(at(problem.activities, i).demands, r);
const numbers = (problem: SearchProblem): number[] => [...problem.activities.keys()];

function raise({ first, last }: Ranges, i: number, moment: number): boolean {
  first[i] = Math.max(at(first, i), moment);
  return at(first, i) <= at(last, i);
}

function lower({ first, last }: Ranges, i: number, moment: number): boolean {
  last[i] = Math.min(at(last, i), moment);
  return at(first, i) <= at(last, i);
}

/** Nothing starts before what comes before it is over. */
export const alongLinks: Rule = (problem, ranges) =>
  problem.relationships.every(
    ({ from, to }) =>
      raise(ranges, to, at(ranges.first, from) + lasting(problem, from)) &&
      lower(ranges, from, at(ranges.last, to) - lasting(problem, from)),
  );

/** Two that demand too much together: where only one order is possible, it is kept. */
export const inOrder: Rule = (problem, ranges) =>
  pairsTooMuch(problem).every(([i, j]) => {
    const canBe = (a: number, b: number) => at(ranges.first, a) + lasting(problem, a) <= at(ranges.last, b);
    const keep = (a: number, b: number) =>
      raise(ranges, b, at(ranges.first, a) + lasting(problem, a)) &&
      lower(ranges, a, at(ranges.last, b) - lasting(problem, a));
    if (canBe(i, j)) return canBe(j, i) || keep(i, j);
    return canBe(j, i) && keep(j, i);
  });

/** Pairs that together demand more than there is of a resource; moments hold nothing. */
export function pairsTooMuch(problem: SearchProblem): (readonly [number, number])[] {
  const known = PAIRS.get(problem);
  if (known) return known;
  const lengthy = numbers(problem).filter(i => lasting(problem, i) > 0);
  const pairs = lengthy.flatMap(i =>
    lengthy
      .filter(j => j > i)
      .filter(j =>
        problem.resources.some(({ capacity }, r) => held(problem, r, i) + held(problem, r, j) > capacity),
      )
      .map(j => [i, j] as const),
  );
  PAIRS.set(problem, pairs);
  return pairs;
}
const PAIRS = new WeakMap<SearchProblem, (readonly [number, number])[]>();

/** Each activity, at its earliest and at its latest, fits beside what others hold at every start they may have. */
export const besideParts: Rule = (problem, ranges) => {
  const { first, last } = ranges;
  const all = numbers(problem);
  /** Units that others hold on a day wherever they start. */
  const others = (r: number, i: number, day: number): number => {
    let sum = 0;
    for (const j of all)
      if (j !== i && at(last, j) <= day && day < at(first, j) + lasting(problem, j))
        sum += held(problem, r, j);
    return sum;
  };
  const fits = (i: number, start: number): boolean =>
    problem.resources.every(({ capacity }, r) => {
      const own = held(problem, r, i);
      for (let day = start; own > 0 && day < start + lasting(problem, i); day++)
        if (own + others(r, i, day) > capacity) return false;
      return true;
    });
  return all.every(i => {
    while (!fits(i, at(first, i))) if (!raise(ranges, i, at(first, i) + 1)) return false;
    while (!fits(i, at(last, i))) if (!lower(ranges, i, at(last, i) - 1)) return false;
    return true;
  });
};

/** Days that an activity cannot spend outside an interval, wherever it starts. */
export function leastInside(
  problem: SearchProblem,
  { first, last }: Ranges,
  i: number,
  left: number,
  right: number,
): number {
  const inside = (start: number) =>
    Math.max(0, Math.min(right, start + lasting(problem, i)) - Math.max(left, start));
  return Math.min(inside(at(first, i)), inside(at(last, i)));
}

/** Applies rules until nothing moves any more; false when they leave nothing. */
export function settled(problem: SearchProblem, ranges: Ranges, rules: readonly Rule[]): boolean {
  const width = (): number => ranges.last.reduce((sum, last, i) => sum + last - at(ranges.first, i), 0);
  for (;;) {
    const before = width();
    if (!rules.every(rule => rule(problem, ranges))) return false;
    if (width() === before) return true;
  }
}

/** Whether there is a schedule in the ranges: they are parted in two, again and again, until every start is fixed. */
export function hasSchedule(problem: SearchProblem, { first, last }: Ranges): boolean {
  const ranges = rangesOf(first, last);
  if (!settled(problem, ranges, [alongLinks, besideParts])) return false;
  const open = numbers(problem).find(i => at(ranges.first, i) < at(ranges.last, i));
  if (open === undefined) return true;
  const earliest = at(ranges.first, open);
  const [now, later] = [rangesOf(ranges.first, ranges.last), ranges];
  now.last[open] = earliest;
  later.first[open] = earliest + 1;
  return hasSchedule(problem, now) || hasSchedule(problem, later);
}
