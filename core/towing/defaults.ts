import type { Figure } from '../base';

const judged = (value: string, unit: string, source: string, low: string, high: string): Figure => ({
  value,
  unit,
  low,
  high,
  basis: 'judgement',
  source,
  year: 2026,
});

/** What a dead-ship tow is planned with where the site says nothing else. */
export const TOW_DEFAULTS = {
  speed: judged(
    '5.5',
    'kn',
    'Dead ships are towed at 4 to 6 knots; 956 nmi took about eight days (press, 2009)',
    '4',
    '6',
  ),
  wind: judged(
    '26',
    'kn',
    'Head wind of the sample computation in the US Navy towing manual, appendix G',
    '20',
    '40',
  ),
  fouling: judged('365', 'day', 'Days since docking that the friction formula is trusted for', '50', '730'),
} as const satisfies Record<string, Figure>;
