import { valueAt } from '../../base';
import type { Finding } from '../../base';
import { certain } from './certain';
import { discrete } from './discrete';
import type { Distribution, DistributionKind } from './distribution';
import type { DrawKernel, KindRecord } from './kind';
import { lognormal } from './lognormal';
import { normal } from './normal';
import { pert } from './pert';
import { triangular } from './triangular';
import { uniform } from './uniform';

export type { DrawKernel } from './kind';
export type { Distribution, DistributionKind, DistributionOf } from './distribution';
export { lognormalFromP10P90 } from './lognormal';

const KINDS: { readonly [K in DistributionKind]: KindRecord<K> } = {
  certain,
  discrete,
  lognormal,
  normal,
  pert,
  triangular,
  uniform,
};

/** A share of outcomes too small to matter (2 to the power of -40). */
const NEXT_TO_NONE = 2 ** -40;

/** A distribution with its record bound to it. */
interface Bound {
  quantile(p: number): number;
  mean(): number;
  variance(): number;
  mode(): number;
  sampler(): (u: number) => number;
  kernel(): DrawKernel;
  problem(): string | undefined;
}

function bound<K extends DistributionKind>(
  kind: KindRecord<K>,
  d: Extract<Distribution, { kind: K }>,
): Bound {
  return {
    quantile: p => kind.quantile(d, p),
    mean: () => kind.mean(d),
    variance: () => kind.variance(d),
    mode: () => kind.mode(d),
    sampler: () => kind.sampler(d),
    kernel: () => kind.kernel?.(d) ?? oneByOne(kind.sampler(d)),
    problem: () => kind.problem(d),
  };
}

function bind(d: Distribution): Bound {
  switch (d.kind) {
    case 'certain':
      return bound(KINDS.certain, d);
    case 'discrete':
      return bound(KINDS.discrete, d);
    case 'lognormal':
      return bound(KINDS.lognormal, d);
    case 'normal':
      return bound(KINDS.normal, d);
    case 'pert':
      return bound(KINDS.pert, d);
    case 'triangular':
      return bound(KINDS.triangular, d);
    case 'uniform':
      return bound(KINDS.uniform, d);
  }
}

/** The value that a share `p` (0 to 1) of outcomes does not exceed, in the unit of the given. */
export function quantile(d: Distribution, p: number): number {
  return bind(d).quantile(p);
}

/** The mean, in the unit of the given. */
export function meanOf(d: Distribution): number {
  return bind(d).mean();
}

/** The variance, in the unit of the given squared. */
export function varianceOf(d: Distribution): number {
  return bind(d).variance();
}

/** The most likely value; of a uniform the middle. */
export function modeOf(d: Distribution): number {
  return bind(d).mode();
}

/** The quantile as a fast function for draws: exact for all kinds but PERT, there within 1e-6 of the range. */
export function samplerOf(d: Distribution): (u: number) => number {
  return bind(d).sampler();
}

/** The same for many draws at once. */
export function drawKernelOf(d: Distribution): DrawKernel {
  return bind(d).kernel();
}

function oneByOne(draw: (u: number) => number): DrawKernel {
  return (levels, out, n) => {
    for (let t = 0; t < n; t++) out[t] = draw(valueAt(levels, t));
  };
}

/** Whether the distribution has one value only, so that a trial equals the plan exactly. */
export function isCollapsed(d: Distribution): boolean {
  const draw = samplerOf(d);
  return draw(NEXT_TO_NONE) === draw(1 - NEXT_TO_NONE);
}

/** The findings on a distribution whose numbers do not belong together. */
export function distributionFindings(d: Distribution, place: string): Finding[] {
  const problem = bind(d).problem();
  if (problem === undefined) return [];
  return [
    {
      code: 'risk/range-order',
      weight: 'blocks',
      place,
      message: `In the range ${problem}.`,
      meaning: 'No trial can be drawn from this range.',
      remedy: 'Correct the low, likely and high values so that they rise in this order.',
    },
  ];
}
