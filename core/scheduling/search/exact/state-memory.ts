import { NONE } from '../dice';

/** States kept side by side under one hash. */
const SHELF = 4;

/**
 * Remembers partial schedules by the set of started activities. A state is dominated by an earlier one with the
 * same set whose time is not later and in which nothing runs longer: whatever completes the one completes the
 * other.
 */
export class StateMemory {
  private readonly count: number;
  private readonly shelves: number;
  private readonly sets: Int32Array;
  private readonly times: Int32Array;
  private readonly next: Uint8Array;
  /** The last start of each kept state, -1 for an empty place. */
  private readonly nows: Int32Array;

  /** @param states how many it should hold at most. */
  constructor(count: number, states: number) {
    this.count = count;
    this.shelves = 1 << Math.min(16, Math.max(6, 32 - Math.clz32(Math.ceil(states / SHELF))));
    this.sets = new Int32Array(this.shelves * SHELF);
    this.times = new Int32Array(this.shelves * SHELF * count);
    this.next = new Uint8Array(this.shelves);
    this.nows = new Int32Array(this.shelves * SHELF).fill(-1);
  }

  /** Whether a remembered state dominates this one; if not, this one is remembered. */
  isDominated(set: number, now: number, finishes: Int32Array): boolean {
    const hash = (Math.imul(set, 0x9e3779b1) >>> 16) & (this.shelves - 1);
    for (let place = hash * SHELF; place < (hash + 1) * SHELF; place++) {
      const kept = this.nows[place] ?? NONE;
      if (kept < 0 || kept > now || this.sets[place] !== set) continue;
      if (this.dominates(place, now, finishes)) return true;
    }
    this.keep(hash, set, now, finishes);
    return false;
  }

  private dominates(place: number, now: number, finishes: Int32Array): boolean {
    const offset = place * this.count;
    for (let i = 0; i < this.count; i++) {
      const running = this.times[offset + i] ?? NONE;
      if (running > now && running > (finishes[i] ?? NONE)) return false;
    }
    return true;
  }

  private keep(hash: number, set: number, now: number, finishes: Int32Array): void {
    const shelf = (this.next[hash] ?? NONE) % SHELF;
    this.next[hash] = shelf + 1;
    const place = hash * SHELF + shelf;
    this.sets[place] = set;
    this.nows[place] = now;
    for (let i = 0; i < this.count; i++) {
      const isIn = (set & (1 << i)) !== 0;
      this.times[place * this.count + i] = isIn ? (finishes[i] ?? NONE) : 0;
    }
  }
}
