import type { Provenance } from '../../base';
import type { SinkingMethod, UprightLimits } from './types';

/** A default of the screen with where it comes from. */
export interface UprightDefault<T> extends Provenance {
  readonly value: T;
  readonly means: string;
}

/** Every default of the screen; each can be overridden in the input. */
export const UPRIGHT_DEFAULTS = {
  limits: {
    value: { staysUp: 7, leans: 15 } satisfies UprightLimits,
    means: 'greatest heel, degrees, still called "stays up" and "leans"',
    basis: 'judgement',
    source: 'Half of, and the whole of, the 15 degrees of 46 CFR 172.245 after damage',
  },
  mismatch: {
    value: 0.1,
    means: 'how much slower one side may fill than the other',
    basis: 'judgement',
    source: 'Wing cases of 5 to 10 per cent difference of opening area',
  },
  ventShare: {
    value: 0.15,
    means: 'area of air escapes over area of openings; never under 0.10',
    basis: 'common practice',
    source: 'Ten per cent air-pipe rule; air counter-pressure named in IMO MSC.245(83), 2007',
  },
  openingHeight: {
    value: 1.5,
    means: 'height of the standard opening, m; its breadth is 1.2 m',
    basis: 'judgement',
    source: 'Standard shell cut of 1.2 x 1.5 m for the take-off of cuts',
  },
  openingBreadth: {
    value: 1.2,
    means: 'breadth of the standard opening, m',
    basis: 'judgement',
    source: 'Standard shell cut of 1.2 x 1.5 m for the take-off of cuts',
  },
  sinkTime: {
    value: { flooding: 2700, 'explosive scuttling': 180 } satisfies Record<SinkingMethod, number>,
    means: 'seconds from release to gone that the openings are sized for; faster is not safer',
    basis: 'judgement',
    source:
      'Recorded: naval instrument ship of 523 ft 114 s, repair ship 217 s by scuttling charges (press, 2009 and 2001); flooding takes a quarter of an hour to hours',
  },
} as const satisfies Record<string, UprightDefault<unknown>>;
