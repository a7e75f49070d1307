import { valueAt } from '../base';
/** Share of the trials with an answer that end within both the cost and the date. */
export function jointConfidence(
  total: Float64Array,
  finish: Float64Array,
  cost: number,
  date: number,
): number {
  let inside = 0;
  let whole = 0;
  for (let t = 0; t < total.length; t++) {
    if (Number.isNaN(total[t])) continue;
    whole++;
    if (valueAt(total, t) <= cost && valueAt(finish, t) <= date) inside++;
  }
  return inside / whole;
}

/** The joint confidence as one sentence for a board. */
export function jointSentence(share: number): string {
  return `${Math.round(share * 100)} in 100 runs end inside the money and the date.`;
}
