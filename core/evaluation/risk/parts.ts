import type { Distribution } from '../../risk';
import type { Figure } from '../../base';
import type { EstimateParts } from '../evaluate';
import type { MoneySheet } from '../../estimate';

/** The parts of an estimate that has a schedule and money. */
export type WholeParts = EstimateParts & { readonly money: MoneySheet };

/** A figure with its range as a distribution; without a range it is certain. */
export function spreadOf(figure: Pick<Figure, 'value' | 'low' | 'high'>, times = 1): Distribution {
  const likely = Number(figure.value) * times;
  const low = figure.low === undefined ? likely : Number(figure.low) * times;
  const high = figure.high === undefined ? likely : Number(figure.high) * times;
  return low === high ? { kind: 'certain', value: likely } : { kind: 'triangular', low, likely, high };
}
