import { at, valueAt, wholeAt } from '../base';
/** A budget and a date that hold together with the same chance. */
export interface FrontierPoint {
  readonly finish: number;
  readonly total: number;
}

/**
 * The line of equal chance: for each date the smallest cost such that at least the share `p` of the trials
 * ends within both. Dates rise and costs never rise along it.
 * @param p 0 to 1.
 * @param points at most so many points, spread over the dates that can reach p.
 * @source NASA Cost Estimating Handbook 4.0, appendix J (joint confidence level).
 */
export function frontier(total: Float64Array, finish: Float64Array, p: number, points = 60): FrontierPoint[] {
  const trials = total.length;
  const whole = Array.from(total.keys()).filter(t => Number.isFinite(total[t]) && Number.isFinite(finish[t]));
  const needed = Math.ceil(whole.length * p - 1e-9);
  if (needed < 1 || whole.length < needed) return [];
  const byFinish = Uint32Array.from(whole).sort((a, b) => valueAt(finish, a) - valueAt(finish, b) || a - b);
  const byTotal = Uint32Array.from(whole).sort((a, b) => valueAt(total, a) - valueAt(total, b) || a - b);
  const rankOf = new Uint32Array(trials);
  byTotal.forEach((trial, rank) => (rankOf[trial] = rank));
  const counter = new RankCounter(whole.length);
  const line: FrontierPoint[] = [];
  for (const [i, trial] of byFinish.entries()) {
    counter.add(wholeAt(rankOf, trial));
    const date = valueAt(finish, trial);
    const isLast = i + 1 === byFinish.length;
    if (i + 1 < needed || (!isLast && date === valueAt(finish, wholeAt(byFinish, i + 1)))) continue;
    const cost = valueAt(total, wholeAt(byTotal, counter.find(needed)));
    if (cost !== line.at(-1)?.total) line.push({ finish: date, total: cost });
  }
  return thinned(line, points);
}

function thinned(line: readonly FrontierPoint[], points: number): FrontierPoint[] {
  if (line.length <= points) return [...line];
  return Array.from({ length: points }, (_, i) =>
    at(line, Math.round((i * (line.length - 1)) / (points - 1))),
  );
}

/** Counts ranks and finds the k-th smallest counted. @source P. M. Fenwick, Softw. Pract. Exper. 24 (1994) 327-336. */
class RankCounter {
  private readonly tree: Uint32Array;

  constructor(size: number) {
    this.tree = new Uint32Array(size + 1);
  }

  add(rank: number): void {
    for (let i = rank + 1; i < this.tree.length; i += i & -i) this.tree[i] = wholeAt(this.tree, i) + 1;
  }

  find(k: number): number {
    let position = 0;
    let rest = k;
    for (let step = 2 ** Math.floor(Math.log2(this.tree.length)); step >= 1; step /= 2) {
      const next = position + step;
      if (next < this.tree.length && wholeAt(this.tree, next) < rest) {
        position = next;
        rest -= wholeAt(this.tree, next);
      }
    }
    return position;
  }
}
