import type { SearchProblem } from './search';
import { at } from './compile/at';

/** Why an activity does not fit somewhere: what is short and on which day, or whom it would meet. */
export type Clash =
  | { readonly kind: 'resource'; readonly resource: number; readonly day: number }
  | { readonly kind: 'exclusion'; readonly exclusion: number; readonly other: number };

/**
 * Who holds what on which day, for activities placed one by one and taken away again. It answers whether one
 * more fits, and if not, what is in the way. It knows nothing of relationships.
 */
export class DayBook {
  private readonly problem: SearchProblem;
  readonly used: readonly Int32Array[];
  private readonly starts: Int32Array;
  private readonly finishes: Int32Array;
  private readonly excluded: readonly (readonly { readonly other: number; readonly exclusion: number }[])[];

  constructor(problem: SearchProblem) {
    this.problem = problem;
    this.used = problem.resources.map(() => new Int32Array(problem.horizon));
    this.starts = new Int32Array(problem.activities.length).fill(-1);
    this.finishes = new Int32Array(problem.activities.length).fill(-1);
    const excluded: { other: number; exclusion: number }[][] = problem.activities.map(() => []);
    problem.exclusions.forEach(([a, b], exclusion) => {
      at(excluded, a).push({ other: b, exclusion });
      at(excluded, b).push({ other: a, exclusion });
    });
    this.excluded = excluded;
  }

  /** Enters an activity that runs from a start to a finish moment. */
  place(activity: number, start: number, finish: number): void {
    this.starts[activity] = start;
    this.finishes[activity] = finish;
    this.change(activity, start, finish, 1);
  }

  /** Takes an activity out again. */
  remove(activity: number): void {
    this.change(activity, at(this.starts, activity), at(this.finishes, activity), -1);
    this.starts[activity] = -1;
    this.finishes[activity] = -1;
  }

  isPlaced(activity: number): boolean {
    return at(this.starts, activity) >= 0;
  }

  /** What keeps an activity that is not in the book from running then, the latest day first; undefined if it fits. */
  clash(activity: number, start: number, finish: number): Clash | undefined {
    for (const { other, exclusion } of at(this.excluded, activity)) {
      const isApart =
        !this.isPlaced(other) || at(this.finishes, other) <= start || at(this.starts, other) >= finish;
      if (!isApart) return { kind: 'exclusion', exclusion, other };
    }
    const { demands, fixedStart } = at(this.problem.activities, activity);
    if (fixedStart !== undefined) return undefined;
    for (let resource = 0; resource < demands.length; resource++) {
      const demand = at(demands, resource);
      if (demand === 0) continue;
      for (let day = finish - 1; day >= start; day--) {
        if (!this.holds(activity, resource, day)) continue;
        if (at(at(this.used, resource), day) + demand > this.capacity(resource, day))
          return { kind: 'resource', resource, day };
      }
    }
    return undefined;
  }

  /** Whether an activity under way holds a resource on a day: on its work days, and on idle days if so stated. */
  holds(activity: number, resource: number, day: number): boolean {
    const { calendar, duration } = at(this.problem.activities, activity);
    if (calendar === undefined || duration === 0) return true;
    if (at(this.problem.resources, resource).isHeldOnIdleDays === true) return true;
    const { indexOfDay } = at(this.problem.calendars, calendar);
    return at(indexOfDay, day + 1) > at(indexOfDay, day);
  }

  capacity(resource: number, day: number): number {
    const { capacity, capacityByDay } = at(this.problem.resources, resource);
    return capacityByDay ? at(capacityByDay, day) : capacity;
  }

  /** Start and finish moments of an activity in the book. */
  span(activity: number): { readonly start: number; readonly finish: number } {
    return { start: at(this.starts, activity), finish: at(this.finishes, activity) };
  }

  private change(activity: number, start: number, finish: number, sign: 1 | -1): void {
    const { demands } = at(this.problem.activities, activity);
    for (let resource = 0; resource < demands.length; resource++) {
      const units = at(demands, resource) * sign;
      if (units === 0) continue;
      const used = at(this.used, resource);
      for (let day = start; day < finish; day++)
        if (this.holds(activity, resource, day)) used[day] = at(used, day) + units;
    }
  }
}
