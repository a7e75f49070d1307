import { intAt } from '../../base';
import { linksOf } from './plain-net';
import type { SearchProblem } from './problem';
import { orderOf } from './tails';

/** Largest problems whose lasting orders are worked out: the table grows with the square of the size. */
const AT_MOST = 4000;

/** Which activities are over before which others start, whatever the schedule: by finish-to-start relationships. */
export class LastingOrders {
  private readonly rows: Int32Array;
  private readonly width: number;

  /** @param problem its finish-to-start relationships form no loop. */
  constructor(problem: SearchProblem) {
    const count = problem.activities.length;
    this.width = count > AT_MOST ? 0 : (count + 31) >>> 5;
    this.rows = new Int32Array(this.width * count);
    if (this.width > 0) this.fill(problem);
  }

  private fill(problem: SearchProblem): void {
    const { rows, width } = this;
    const count = problem.activities.length;
    const pairs = problem.relationships.flatMap(({ from, to, kind, minimumLag = -1 }) =>
      kind === 'FS' && minimumLag >= 0 ? [[from, to] as const] : [],
    );
    const after = linksOf(count, pairs);
    const before = linksOf(
      count,
      pairs.map(([from, to]) => [to, from] as const),
    );
    const order = orderOf(count, before, after);
    for (let k = order.length - 1; k >= 0; k--) {
      const activity = intAt(order, k);
      const row = activity * width;
      for (let s = intAt(after.first, activity); s < intAt(after.first, activity + 1); s++) {
        const next = intAt(after.list, s);
        for (let w = 0; w < width; w++) {
          rows[row + w] = intAt(rows, row + w) | intAt(rows, next * width + w);
        }
        const place = row + (next >>> 5);
        rows[place] = intAt(rows, place) | (1 << (next & 31));
      }
    }
  }

  /** Whether the first is surely over before the second starts. */
  isBefore(first: number, second: number): boolean {
    if (this.width === 0) return false;
    const word = intAt(this.rows, first * this.width + (second >>> 5));
    return (word & (1 << (second & 31))) !== 0;
  }

  /** Whether the two can never run at the same time on account of relationships. */
  isApart(a: number, b: number): boolean {
    return this.isBefore(a, b) || this.isBefore(b, a);
  }
}
