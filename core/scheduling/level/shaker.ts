import { at } from '../../base';
import type { LevelState } from './level-state';

/** Times activities are settled one after the other at first, at most, and after each shake. */
const PASSES = 12;
const PASSES_AFTER = 3;
/** Activities shaken up at once, at most, and those near them that are settled anew. */
const MOST_SHAKEN = 4;
const MOST_NEAR = 14;

/** Settles activities in random order, again and again, until none moves. */
function settleAll(
  state: LevelState,
  activities: readonly number[],
  passes: number,
  random: () => number,
): void {
  for (let pass = 0; pass < passes; pass++) {
    const moved = shuffled(activities, random).filter(activity => state.settle(activity, pass % 2 === 0));
    if (moved.length === 0 && pass > 0) return;
  }
}

/** Shakes up a few activities that have to do with each other, and settles what is near them. */
export class Shaker {
  private readonly state: LevelState;
  private readonly random: () => number;
  private readonly movable: readonly number[];
  private readonly near = new Map<number, readonly number[]>();

  constructor(state: LevelState, random: () => number) {
    this.state = state;
    this.random = random;
    this.movable = state.movable();
  }

  /** Everything settled at its cheapest place, from where it is. */
  settleAll(): void {
    settleAll(this.state, this.movable, PASSES, this.random);
  }

  shake(): void {
    const { state, random } = this;
    if (this.movable.length === 0) return;
    const first = at(this.movable, this.pick(this.movable.length));
    const near = shuffled(this.nearTo(first), random);
    const shaken = [first, ...near.slice(0, this.pick(MOST_SHAKEN))];
    for (const activity of shaken) {
      const starts = state.options(activity);
      state.put(activity, at(starts, this.pick(starts.length)));
    }
    settleAll(state, [...shaken, ...near.slice(shaken.length - 1, MOST_NEAR)], PASSES_AFTER, random);
  }

  private pick(count: number): number {
    return Math.floor(this.random() * count);
  }

  private nearTo(activity: number): readonly number[] {
    const known = this.near.get(activity);
    if (known !== undefined) return known;
    const { into, outOf } = this.state.placed;
    const linked = [
      ...at(into, activity).map(({ relationship }) => relationship.from),
      ...at(outOf, activity).map(({ relationship }) => relationship.to),
    ];
    const near = [...new Set([...linked, ...this.state.sharers(activity)])];
    this.near.set(activity, near);
    return near;
  }
}

function shuffled(list: readonly number[], random: () => number): number[] {
  return list
    .map(entry => ({ entry, key: random() }))
    .sort((a, b) => a.key - b.key)
    .map(({ entry }) => entry);
}
