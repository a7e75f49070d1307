import { at } from '../../base';
import { earliestByRelationships, latestByRelationships } from '../bounds';
import type { Clash } from '../day-book';
import { move, type Placed } from '../placed';
import { finishFrom, NEVER, nextStart } from '../time';
import type { LevellingObjective } from './objective';
import { Profile } from './profile';
import { usableDays } from './uses';

/** What levelling makes small: the weighted figure first, evenness among equals. */
export interface LevelCost {
  readonly figure: number;
  readonly squares: number;
}

/** Whether a cost is less; among equal figures the smaller sum of squares. */
export function isLess(a: LevelCost, b: LevelCost): boolean {
  return a.figure < b.figure || (a.figure === b.figure && a.squares < b.squares);
}

/** One resource that levelling looks at. */
interface Levelled {
  readonly resource: number;
  readonly weight: number;
  readonly profile: Profile;
}

/** A schedule being levelled: its cost, kept up to date, and the moves that keep every rule and the last finish. */
export class LevelState {
  readonly placed: Placed;
  private readonly lastMoment: number;
  private readonly objective: LevellingObjective;
  private readonly levelled: readonly Levelled[];
  /** Of each activity the levelled resources that it uses. */
  private readonly usedBy: readonly (readonly Levelled[])[];

  /** @param weights of each resource of the problem against the others; those of nothing are left aside. */
  constructor(placed: Placed, lastMoment: number, objective: LevellingObjective, weights: readonly number[]) {
    const { activities } = placed.compiled.search;
    this.placed = placed;
    this.lastMoment = lastMoment;
    this.objective = objective;
    this.levelled = weights.flatMap((weight, resource) =>
      weight === 0
        ? []
        : [{ resource, weight, profile: new Profile(usableDays(placed, resource, lastMoment)) }],
    );
    this.usedBy = activities.map(({ demands }) =>
      this.levelled.filter(({ resource }) => at(demands, resource) > 0),
    );
    activities.forEach((_, i) => this.enter(i, at(placed.starts, i), at(placed.finishes, i), 1));
  }

  cost(): LevelCost {
    return this.costOf(this.levelled);
  }

  private costOf(levelled: readonly Levelled[]): LevelCost {
    let [figure, squares] = [0, 0];
    for (const { weight, profile } of levelled) {
      figure += weight * this.objective.of(profile);
      squares += weight * profile.squares;
    }
    return { figure, squares };
  }

  /** The activities that use a levelled resource in common with one, itself left out. */
  sharers(activity: number): number[] {
    const own = new Set(at(this.usedBy, activity));
    return this.usedBy.flatMap((used, i) => (i !== activity && used.some(one => own.has(one)) ? [i] : []));
  }

  /** Moves an activity to the place of least cost; ties go to the later place if so asked. Says whether it moved. */
  settle(activity: number, prefersLater: boolean): boolean {
    if (this.isFixed(activity)) return false;
    const { placed } = this;
    const now = at(placed.starts, activity);
    let [start, finish] = [now, at(placed.finishes, activity)];
    placed.book.remove(activity);
    let best = { start: now, cost: WORST };
    // The use of all other resources stays, so only its own decide.
    const own = at(this.usedBy, activity);
    for (const place of this.places(activity)) {
      const next = finishFrom(placed.compiled.search, activity, place);
      if (own.length > 0) this.slide(activity, start, finish, place, next);
      [start, finish] = [place, next];
      const cost = this.costOf(own);
      const isEqual = cost.figure === best.cost.figure && cost.squares === best.cost.squares;
      if (isLess(cost, best.cost) || (isEqual && prefersLater)) best = { start: place, cost };
    }
    const last = finishFrom(placed.compiled.search, activity, best.start);
    this.slide(activity, start, finish, best.start, last);
    placed.starts[activity] = best.start;
    placed.finishes[activity] = last;
    placed.book.place(activity, best.start, last);
    return best.start !== now;
  }

  /** Every start an activity can have while the others stay. */
  options(activity: number): number[] {
    const now = at(this.placed.starts, activity);
    if (this.isFixed(activity)) return [now];
    const finish = at(this.placed.finishes, activity);
    this.placed.book.remove(activity);
    const starts = [...this.places(activity)];
    this.placed.book.place(activity, now, finish);
    return starts.length > 0 ? starts : [now];
  }

  put(activity: number, start: number): void {
    const { placed } = this;
    const finish = finishFrom(placed.compiled.search, activity, start);
    this.slide(activity, at(placed.starts, activity), at(placed.finishes, activity), start, finish);
    move(placed, activity, start, finish);
  }

  /** Goes back to starts that were all kept together before. */
  restore(starts: Int32Array): void {
    starts.forEach((start, activity) => {
      if (start !== at(this.placed.starts, activity)) this.put(activity, start);
    });
  }

  /** The activities that may lie elsewhere. */
  movable(): number[] {
    return Array.from(this.placed.starts.keys()).filter(activity => !this.isFixed(activity));
  }

  private isFixed(activity: number): boolean {
    return at(this.placed.compiled.search.activities, activity).fixedStart !== undefined;
  }

  /** The starts an activity that is not in the day book can have while the others stay, the earliest first. */
  private *places(activity: number): Generator<number> {
    const { placed } = this;
    const { search } = placed.compiled;
    const { notBefore = 0 } = at(search.activities, activity);
    const last = latestByRelationships(placed, activity, this.lastMoment);
    const first = Math.max(notBefore, earliestByRelationships(placed, activity));
    for (let start = nextStart(search, activity, first); start <= last;) {
      const finish = finishFrom(search, activity, start);
      if (finish >= NEVER) return;
      const clash = placed.book.clash(activity, start, finish);
      if (clash === undefined) yield start;
      const free = clash === undefined ? start : this.freeAfter(clash);
      start = nextStart(search, activity, Math.max(free, start + 1));
    }
  }

  /** The first moment at which what is in the way is over. */
  private freeAfter(clash: Clash): number {
    return clash.kind === 'resource' ? clash.day + 1 : this.placed.book.span(clash.other).finish;
  }

  /** Moves the use of an activity from one span to another: only the days that differ are touched. */
  private slide(activity: number, start: number, finish: number, toStart: number, toFinish: number): void {
    if (toStart >= finish || toFinish <= start) {
      this.enter(activity, start, finish, -1);
      this.enter(activity, toStart, toFinish, 1);
      return;
    }
    this.enter(activity, start, toStart, -1);
    this.enter(activity, toFinish, finish, -1);
    this.enter(activity, toStart, start, 1);
    this.enter(activity, finish, toFinish, 1);
  }

  private enter(activity: number, from: number, to: number, sign: 1 | -1): void {
    if (to <= from) return;
    const { book, compiled } = this.placed;
    const { demands } = at(compiled.search.activities, activity);
    for (const { resource, profile } of at(this.usedBy, activity)) {
      const units = at(demands, resource) * sign;
      for (let day = from; day < to; day++) {
        if (book.holds(activity, resource, day)) profile.add(day, units);
      }
    }
  }
}

const WORST: LevelCost = { figure: Infinity, squares: Infinity };
