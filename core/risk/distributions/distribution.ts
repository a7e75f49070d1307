/**
 * The shape of what is not known about one given: plain data, so that it travels to worker threads as it is.
 * What each kind means stands in the record of its kind.
 */
export type Distribution =
  | { readonly kind: 'certain'; readonly value: number }
  | { readonly kind: 'triangular'; readonly low: number; readonly likely: number; readonly high: number }
  | { readonly kind: 'pert'; readonly low: number; readonly likely: number; readonly high: number }
  | { readonly kind: 'uniform'; readonly low: number; readonly high: number }
  | { readonly kind: 'normal'; readonly mean: number; readonly standardDeviation: number }
  | { readonly kind: 'lognormal'; readonly logMean: number; readonly logStandardDeviation: number }
  | {
      readonly kind: 'discrete';
      readonly values: readonly number[];
      readonly probabilities: readonly number[];
    };

export type DistributionKind = Distribution['kind'];

/** One distribution of the given kind. */
export type DistributionOf<K extends DistributionKind> = Extract<Distribution, { kind: K }>;
