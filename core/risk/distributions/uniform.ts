import { orderProblem, type KindRecord } from './kind';

/** Any value between low and high is as likely as any other. Its mode is taken as the middle. */
export const uniform: KindRecord<'uniform'> = {
  quantile: (d, p) => d.low + p * (d.high - d.low),
  mean: d => (d.low + d.high) / 2,
  variance: d => (d.high - d.low) ** 2 / 12,
  mode: d => (d.low + d.high) / 2,
  sampler({ low, high }) {
    const span = high - low;
    return u => low + u * span;
  },
  problem: d => orderProblem(d.low, d.low, d.high),
};
