import betaQuantile from '@stdlib/stats-base-dists-beta-quantile';
import normalQuantile from '@stdlib/stats-base-dists-normal-quantile';
import triangularQuantile from '@stdlib/stats-base-dists-triangular-quantile';
import uniformQuantile from '@stdlib/stats-base-dists-uniform-quantile';
import { intervalRanks, meanOf, quantile, varianceOf, type Distribution } from '../../../core/risk';
import { checksOf, share, within, type OutsideCheck } from './check';

const tri: Distribution = { kind: 'triangular', low: 10, likely: 20, high: 50 };
const pert: Distribution = { kind: 'pert', low: 10, likely: 20, high: 50 };
const normal: Distribution = { kind: 'normal', mean: 3, standardDeviation: 2 };
const uniform: Distribution = { kind: 'uniform', low: 3, high: 17 };
const SHARES = [0.001, 0.1, 0.5, 0.8, 0.999];

const against = (title: string, ours: Distribution, theirs: (p: number) => number) =>
  checksOf(
    'The @stdlib distributions (npm), quantiles',
    SHARES.map(p => [`${title} at ${p}`, theirs(p), () => quantile(ours, p), share(1e-9)]),
  );

export const distributionChecks: readonly OutsideCheck[] = [
  ...checksOf('Closed forms of the triangular distribution (10, 20, 50) in statistics handbooks', [
    ['Mean', 26.6667, () => meanOf(tri), within(1e-4)],
    ['Variance', 72.2222, () => varianceOf(tri), within(1e-4)],
    ['P10 of it', 16.3246, () => quantile(tri, 0.1), within(1e-4)],
    ['P50 of it', 25.5051, () => quantile(tri, 0.5), within(1e-4)],
    ['P80 of it', 34.5081, () => quantile(tri, 0.8), within(1e-4)],
  ]),
  ...checksOf('Moments of the beta distribution with alpha 2 and beta 4 on 10 to 50', [
    ['Mean of PERT (10, 20, 50)', 23.3333, () => meanOf(pert), within(1e-4)],
    ['Its exact variance', 50.7937, () => varianceOf(pert), within(1e-4)],
  ]),
  ...checksOf('Distribution-free interval of a percentile: N q ± 1.96 sqrt(N q (1 − q))', [
    ['P80 of 1,000, lower rank', 775, () => intervalRanks(1000, 0.8).low],
    ['P80 of 1,000, upper rank', 825, () => intervalRanks(1000, 0.8).high],
    ['P80 of 10,000, lower rank', 7921, () => intervalRanks(10_000, 0.8).low],
    ['P80 of 10,000, upper rank', 8079, () => intervalRanks(10_000, 0.8).high],
  ]),
  ...against('Triangular (10, 20, 50)', tri, p => triangularQuantile(p, 10, 50, 20)),
  ...against('PERT (10, 20, 50)', pert, p => 10 + 40 * betaQuantile(p, 2, 4)),
  ...against('Normal (3, 2)', normal, p => normalQuantile(p, 3, 2)),
  ...against('Uniform (3, 17)', uniform, p => uniformQuantile(p, 3, 17)),
];
