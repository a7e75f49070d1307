import { at, intAt } from '../../base';

/**
 * Units of one resource in use, day by day over the days on which it can be used, with the figures that levelling makes
 * small kept up to date: one more or one fewer unit on a day costs the same few steps, however long the schedule.
 */
export class Profile {
  /** Sum of the squares of the daily use. */
  squares = 0;
  /** Units hired over time: every rise of the use, the first from nothing included. */
  hired = 0;
  /** The highest use. */
  peak = 0;
  /** Place of each day among the usable ones, counted from 1; 0 for a day on which nothing that uses it works. */
  private readonly places: Int32Array;
  /** Use by place; nothing stands before the first and after the last. */
  private readonly units: Int32Array;
  /** How many days have each use. */
  private readonly daysAt: number[];

  /** @param usable for each day whether the resource can be used on it. */
  constructor(usable: Uint8Array) {
    this.places = new Int32Array(usable.length);
    let count = 0;
    usable.forEach((flag, day) => {
      if (flag === 1) this.places[day] = ++count;
    });
    this.units = new Int32Array(count + 2);
    this.daysAt = [count];
  }

  /** Adds units on a day, or takes them away when negative. */
  add(day: number, change: number): void {
    const place = intAt(this.places, day);
    if (place === 0) return;
    const { units } = this;
    const [before, now, after] = [at(units, place - 1), at(units, place), at(units, place + 1)];
    const next = now + change;
    units[place] = next;
    this.squares += next * next - now * now;
    this.hired += rise(before, next) + rise(next, after) - rise(before, now) - rise(now, after);
    this.recount(now, next);
  }

  private recount(now: number, next: number): void {
    const { daysAt } = this;
    daysAt[now] = at(daysAt, now) - 1;
    daysAt[next] = (daysAt[next] ?? 0) + 1;
    if (next > this.peak) this.peak = next;
    while (this.peak > 0 && (daysAt[this.peak] ?? 0) === 0) this.peak--;
  }
}

/** Units hired from one day to the next. The last day is followed by nothing, which hires none. */
function rise(from: number, to: number): number {
  return to > from ? to - from : 0;
}
