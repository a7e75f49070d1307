import { DEGREE } from '../constants';

/** How the search for rest goes about it; angles in radians. */
export interface HeelSearch {
  /** Heel beyond which no rest is looked for. */
  readonly limit: number;
  /** The nudge that shows whether rest upright is stable. */
  readonly disturbance: number;
  readonly step: number;
  /** Moments below this are none (m4). */
  readonly tolerance: number;
}

export function heelSearch(tolerance: number): HeelSearch {
  return { limit: 60 * DEGREE, disturbance: 0.1 * DEGREE, step: DEGREE, tolerance };
}

type Moment = (heel: number) => number;

/** Zero of the moment between two heels of opposite sign: bisection helped by false position. */
function between(moment: Moment, from: number, to: number): number {
  let [a, b] = [from, to];
  let [ma, mb] = [moment(a), moment(b)];
  for (let i = 0; i < 60 && Math.abs(b - a) > 1e-6; i++) {
    const line = a - (ma * (b - a)) / (mb - ma);
    const c = i % 3 === 2 ? (a + b) / 2 : line;
    const mc = moment(c);
    if (mc === 0) return c;
    if (mc > 0 === ma > 0) [a, ma] = [c, mc];
    else [b, mb] = [c, mc];
  }
  return a - (ma * (b - a)) / (mb - ma);
}

/** +1 when the moment carries her to starboard from this heel, -1 to port, 0 when it leaves her. */
function carriedTo(moment: Moment, heel: number, search: HeelSearch): -1 | 0 | 1 {
  const m = moment(heel);
  if (Math.abs(m) > search.tolerance) return m < 0 ? 1 : -1;
  if (heel !== 0) return heel > 0 ? -1 : 1;
  return moment(search.disturbance) < -search.tolerance ? 1 : 0;
}

/**
 * The heel (radians) at which she comes to rest when let go at `start`: she moves the way the moment carries her
 * until it vanishes. A moment that leaves her where she is lets her come back upright. None within the limit is
 * `undefined`: she rolls over.
 */
export function equilibriumHeel(moment: Moment, start: number, search: HeelSearch): number | undefined {
  const way = carriedTo(moment, start, search);
  if (way === 0) return start;
  let heel = start;
  for (let i = 0; i < 400; i++) {
    const ahead = heel + way * (heel === start && start === 0 ? search.disturbance : search.step);
    const next = heel !== 0 && ahead * heel < 0 ? 0 : Math.min(search.limit, Math.max(-search.limit, ahead));
    if (next === heel) return undefined;
    const m = moment(next);
    if (next === 0 && Math.abs(m) <= search.tolerance) {
      const still = carriedTo(moment, 0, search);
      if (still === 0) return 0;
    } else if (m * way > 0) return between(moment, heel, next);
    heel = next;
  }
  return undefined;
}
