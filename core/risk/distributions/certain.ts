import type { KindRecord } from './kind';

/** One value and no doubt: what a collapsed range is. */
export const certain: KindRecord<'certain'> = {
  quantile: d => d.value,
  mean: d => d.value,
  variance: () => 0,
  mode: d => d.value,
  sampler: d => () => d.value,
  problem: d => (Number.isFinite(d.value) ? undefined : 'the value is not a finite number'),
};
