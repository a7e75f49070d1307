import type { SearchProblem } from '../../../core/scheduling/search';

/** `[from, to, days]`: `to` starts at least so many days after the start of `from`. */
export type StartLag = readonly [number, number, number];

/** All relationships of a problem without calendars as lags between starts; a maximum is a negative minimum back. */
export function lagsBetweenStarts(problem: SearchProblem): StartLag[] {
  return problem.relationships.flatMap(({ from, to, kind, minimumLag, maximumLag }): StartLag[] => {
    const duration = (i: number): number => problem.activities[i]?.duration ?? 0;
    const shift = (kind.startsWith('F') ? duration(from) : 0) - (kind.endsWith('F') ? duration(to) : 0);
    const minimum: StartLag[] = minimumLag === undefined ? [] : [[from, to, minimumLag + shift]];
    const maximum: StartLag[] = maximumLag === undefined ? [] : [[to, from, -(maximumLag + shift)]];
    return [...minimum, ...maximum];
  });
}

/** A horizon in which everything fits one after the other, positive lags included. */
export function durationSum(problem: SearchProblem): number {
  const work = problem.activities.reduce((sum, activity) => sum + activity.duration, 0);
  return lagsBetweenStarts(problem).reduce((sum, [from, , days]) => {
    return sum + Math.max(0, days - (problem.activities[from]?.duration ?? 0));
  }, work);
}
