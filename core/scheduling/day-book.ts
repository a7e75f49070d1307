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
  /** Work days of each calendar as flags. */
  private readonly worked: readonly Uint8Array[];
  private readonly starts: Int32Array;
  private readonly finishes: Int32Array;
  private readonly excluded: readonly (readonly { readonly other: number; readonly exclusion: number }[])[];

  constructor(problem: SearchProblem) {
    this.problem = problem;
    this.used = problem.resources.map(() => new Int32Array(problem.horizon));
    this.worked = problem.calendars.map(({ dayOfIndex }) => {
      const flags = new Uint8Array(problem.horizon);
      for (const day of dayOfIndex) flags[day] = 1;
      return flags;
    });
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
      if (demands[resource] === 0) continue;
      const day = this.shortDay(activity, resource, start, finish);
      if (day >= 0) return { kind: 'resource', resource, day };
    }
    return undefined;
  }

  /** The first moment between two at which an activity under way would be short or meet an excluded one; -1 if none. */
  firstBlocked(activity: number, from: number, to: number): number {
    let first = to;
    for (const { other } of at(this.excluded, activity)) {
      const start = at(this.starts, other);
      if (start >= from && start < first) first = start;
    }
    const { demands } = at(this.problem.activities, activity);
    for (let resource = 0; resource < demands.length; resource++) {
      if (demands[resource] !== 0) first = this.firstShortDay(activity, resource, from, first);
    }
    return first < to ? first : -1;
  }

  private firstShortDay(activity: number, resource: number, from: number, to: number): number {
    const used = at(this.used, resource);
    const { capacity, capacityByDay } = at(this.problem.resources, resource);
    const demand = at(at(this.problem.activities, activity).demands, resource);
    const worked = this.daysHeld(activity, resource);
    for (let day = from; day < to; day++) {
      if (worked && worked[day] !== 1) continue;
      if ((used[day] ?? 0) + demand > (capacityByDay ? (capacityByDay[day] ?? 0) : capacity)) return day;
    }
    return to;
  }

  /** The last day between two moments on which a resource is short for one more activity; -1 if none. */
  private shortDay(activity: number, resource: number, start: number, finish: number): number {
    const used = at(this.used, resource);
    const { capacity, capacityByDay } = at(this.problem.resources, resource);
    const demand = at(at(this.problem.activities, activity).demands, resource);
    const worked = this.daysHeld(activity, resource);
    for (let day = finish - 1; day >= start; day--) {
      if (worked && worked[day] !== 1) continue;
      if ((used[day] ?? 0) + demand > (capacityByDay ? (capacityByDay[day] ?? 0) : capacity)) return day;
    }
    return -1;
  }

  /** Whether an activity under way holds a resource on a day: on its work days, and on idle days if so stated. */
  holds(activity: number, resource: number, day: number): boolean {
    const worked = this.daysHeld(activity, resource);
    return !worked || worked[day] === 1;
  }

  /** The work days of an activity as flags, where it holds a resource on those only. */
  private daysHeld(activity: number, resource: number): Uint8Array | undefined {
    const { calendar, duration } = at(this.problem.activities, activity);
    if (calendar === undefined || duration === 0) return undefined;
    return at(this.problem.resources, resource).isHeldOnIdleDays === true
      ? undefined
      : at(this.worked, calendar);
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
      const worked = this.daysHeld(activity, resource);
      for (let day = start; day < finish; day++) {
        if (!worked || worked[day] === 1) used[day] = (used[day] ?? 0) + units;
      }
    }
  }
}
