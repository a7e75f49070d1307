import { at, intAt } from '../base';
import type { SearchExclusion, SearchProblem } from './search';

/** Why an activity does not fit somewhere: what is short and on which day, or whom it would meet. */
export type Clash =
  | { readonly kind: 'resource'; readonly resource: number; readonly day: number }
  | { readonly kind: 'exclusion'; readonly exclusion: number; readonly other: number };

/** One side of an exclusion, as an activity of the other side sees it. */
interface Side {
  readonly exclusion: number;
  readonly members: readonly number[];
  /** How many of them are under way on each day. */
  readonly underWay: Int32Array;
}

/** A resource an activity holds. */
interface Hold {
  readonly resource: number;
  readonly units: number;
  readonly used: Int32Array;
  /** The most that may be in use beside it: on every day, or day by day. */
  readonly most: number;
  readonly capacityByDay: ArrayLike<number> | undefined;
  /** The days on which it holds it, as flags; absent: every day under way. */
  readonly worked: Uint8Array | undefined;
}

/**
 * Who holds what on which day, for activities placed one by one and taken away again. It answers whether one
 * more fits, and if not, what is in the way. It knows nothing of relationships.
 */
export class DayBook {
  private readonly problem: SearchProblem;
  readonly used: readonly Int32Array[];
  private readonly starts: Int32Array;
  private readonly finishes: Int32Array;
  private readonly held: readonly (readonly Hold[])[];
  /** By activity: the sides it is on, and the sides it must not meet. */
  private readonly own: readonly (readonly Side[])[];
  private readonly opposite: readonly (readonly Side[])[];

  constructor(problem: SearchProblem) {
    this.problem = problem;
    this.used = problem.resources.map(() => new Int32Array(problem.horizon));
    const count = problem.activities.length;
    this.starts = new Int32Array(count).fill(-1);
    this.finishes = new Int32Array(count).fill(-1);
    this.held = holdsOf(problem, this.used);
    const own: Side[][] = Array.from({ length: count }, () => []);
    const opposite: Side[][] = Array.from({ length: count }, () => []);
    problem.exclusions.forEach((given, exclusion) => {
      const [first, second] = sidesOf(given, exclusion, problem.horizon);
      for (const [side, other] of [[first, second] as const, [second, first] as const]) {
        for (const member of side.members) {
          at(own, member).push(side);
          at(opposite, member).push(other);
        }
      }
    });
    this.own = own;
    this.opposite = opposite;
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

  /** Whether anything in the book could ever be in the way of an activity. */
  canClash(activity: number): boolean {
    return at(this.held, activity).length + at(this.opposite, activity).length > 0;
  }

  /** What keeps an activity that is not in the book from running then, the latest day first; undefined if it fits. */
  clash(activity: number, start: number, finish: number): Clash | undefined {
    for (const { exclusion, members } of at(this.opposite, activity)) {
      const other = members.find(
        i => i !== activity && at(this.finishes, i) > start && at(this.starts, i) < finish,
      );
      if (other !== undefined) return { kind: 'exclusion', exclusion, other };
    }
    for (const hold of this.limits(activity)) {
      const day = lastShort(hold, start, finish);
      if (day >= start) return { kind: 'resource', resource: hold.resource, day };
    }
    return undefined;
  }

  /** The last day between two moments on which an activity not in the book does not fit; -1 if it fits on all. */
  lastBlocked(activity: number, start: number, finish: number): number {
    let from = start;
    for (const { underWay } of at(this.opposite, activity)) {
      for (let day = finish - 1; day >= from; day--) if (underWay[day] !== 0) from = day + 1;
    }
    for (const hold of this.limits(activity)) from = Math.max(from, lastShort(hold, from, finish) + 1);
    return from > start ? from - 1 : -1;
  }

  /** The first day between two moments on which an activity not in the book does not fit; -1 if it fits on all. */
  firstBlocked(activity: number, from: number, to: number): number {
    let first = to;
    for (const { underWay } of at(this.opposite, activity)) {
      for (let day = from; day < first; day++) if (underWay[day] !== 0) first = day;
    }
    for (const hold of this.limits(activity)) first = firstShort(hold, from, first);
    return first < to ? first : -1;
  }

  /** What can run short for an activity: nothing where it stands fixed. */
  private limits(activity: number): readonly Hold[] {
    return at(this.problem.activities, activity).fixedStart === undefined ? at(this.held, activity) : [];
  }

  /** Whether an activity under way holds a resource on a day: on its work days, and on idle days if so stated. */
  holds(activity: number, resource: number, day: number): boolean {
    const worked = at(this.held, activity).find(hold => hold.resource === resource)?.worked;
    return !worked || worked[day] === 1;
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
    for (const { underWay } of at(this.own, activity)) {
      for (let day = start; day < finish; day++) underWay[day] = intAt(underWay, day) + sign;
    }
    for (const { used, worked, units } of at(this.held, activity)) {
      for (let day = start; day < finish; day++) {
        if (!worked || worked[day] === 1) used[day] = intAt(used, day) + units * sign;
      }
    }
  }
}

function sidesOf({ first, second }: SearchExclusion, exclusion: number, horizon: number): [Side, Side] {
  const side = (members: readonly number[]): Side => ({
    exclusion,
    members,
    underWay: new Int32Array(horizon),
  });
  return [side(first), side(second)];
}

function holdsOf(problem: SearchProblem, used: readonly Int32Array[]): Hold[][] {
  const worked = problem.calendars.map(({ dayOfIndex }) => {
    const flags = new Uint8Array(problem.horizon);
    for (const day of dayOfIndex) flags[day] = 1;
    return flags;
  });
  return problem.activities.map(({ demands, calendar, duration }) => {
    const holds: Hold[] = [];
    for (let resource = 0; resource < demands.length; resource++) {
      const units = at(demands, resource);
      if (units === 0) continue;
      const { capacity, capacityByDay, isHeldOnIdleDays } = at(problem.resources, resource);
      const isOnAllDays = calendar === undefined || duration === 0 || isHeldOnIdleDays === true;
      holds.push({
        resource,
        units,
        used: at(used, resource),
        most: capacity - units,
        capacityByDay,
        worked: isOnAllDays ? undefined : at(worked, calendar),
      });
    }
    return holds;
  });
}

function isShort({ used, most, capacityByDay, units, worked }: Hold, day: number): boolean {
  if (worked && worked[day] !== 1) return false;
  return intAt(used, day) > (capacityByDay ? at(capacityByDay, day) - units : most);
}

function firstShort(hold: Hold, from: number, to: number): number {
  let day = from;
  while (day < to && !isShort(hold, day)) day++;
  return day;
}

/** The last day from `start` on and before `finish`, or the day before `start` if there is none. */
function lastShort(hold: Hold, start: number, finish: number): number {
  let day = finish - 1;
  while (day >= start && !isShort(hold, day)) day--;
  return day;
}
