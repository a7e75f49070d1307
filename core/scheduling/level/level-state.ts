import { at } from '../compile/at';
import { earliestByRelationships, latestByRelationships } from '../bounds';
import { move, type Placed } from '../placed';
import { finishFrom, nextStart, previousStart } from '../time';
import type { LevellingObjective } from './objective';

/** A schedule being levelled: its cost, and the moves that keep every rule and the last finish. */
export class LevelState {
  readonly placed: Placed;
  private readonly lastMoment: number;
  private readonly objective: LevellingObjective;
  private readonly weights: readonly number[];
  private readonly usableDays: readonly Int32Array[];

  constructor(placed: Placed, lastMoment: number, objective: LevellingObjective, weights: readonly number[]) {
    this.placed = placed;
    this.lastMoment = lastMoment;
    this.objective = objective;
    this.weights = weights;
    this.usableDays = weights.map((_, resource) => usableDays(placed, resource, lastMoment));
  }

  /** The weighted figure over all resources. */
  cost(): number {
    return this.weights.reduce(
      (sum, weight, resource) => sum + (weight === 0 ? 0 : weight * this.costOf(resource)),
      0,
    );
  }

  private costOf(resource: number): number {
    const used = at(this.placed.book.used, resource);
    return this.objective.value(Array.from(at(this.usableDays, resource), day => at(used, day)));
  }

  /** The starts an activity can have while the others stay, itself left out of the day book. */
  private *places(activity: number): Generator<number> {
    const { search } = this.placed.compiled;
    const { notBefore = 0 } = at(search.activities, activity);
    const first = nextStart(
      search,
      activity,
      Math.max(notBefore, earliestByRelationships(this.placed, activity)),
    );
    const last = previousStart(
      search,
      activity,
      latestByRelationships(this.placed, activity, this.lastMoment),
    );
    for (let start = first; start <= last; start = nextStart(search, activity, start + 1)) {
      if (!this.placed.book.clash(activity, start, finishFrom(search, activity, start))) yield start;
    }
  }

  /** Moves an activity to the place of least cost; ties go to the later place if so asked. Says whether it moved. */
  settle(activity: number, prefersLater: boolean): boolean {
    const now = at(this.placed.starts, activity);
    let best = { start: now, cost: Infinity };
    for (const start of this.options(activity)) {
      this.put(activity, start);
      const cost = this.cost();
      if (cost < best.cost || (cost === best.cost && prefersLater)) best = { start, cost };
    }
    this.put(activity, best.start);
    return best.start !== now;
  }

  /** Every start an activity can have while the others stay. */
  options(activity: number): number[] {
    const { placed } = this;
    if (at(placed.compiled.search.activities, activity).fixedStart !== undefined)
      return [at(placed.starts, activity)];
    const finish = at(placed.finishes, activity);
    placed.book.remove(activity);
    const starts = [...this.places(activity)];
    placed.book.place(activity, at(placed.starts, activity), finish);
    return starts.length > 0 ? starts : [at(placed.starts, activity)];
  }

  put(activity: number, start: number): void {
    move(this.placed, activity, start, finishFrom(this.placed.compiled.search, activity, start));
  }
}

/** The days on which anything that uses a resource can work: weekends are no swing of a crew. */
function usableDays(placed: Placed, resource: number, lastMoment: number): Int32Array {
  const { search, activities } = placed.compiled;
  const users = activities.filter((_, i) => at(at(search.activities, i).demands, resource) > 0);
  const flags = [...new Set(users.map(user => user.open.flags))];
  const days = Array.from({ length: lastMoment }, (_, day) => day);
  if (at(search.resources, resource).isHeldOnIdleDays === true) return Int32Array.from(days);
  return Int32Array.from(days.filter(day => flags.some(open => open[day] === 1)));
}
