import type { Provenance } from '../../base';

/** Range of KG over depth of a light ship. */
export interface AssumedKg extends Provenance {
  readonly low: number;
  readonly likely: number;
  readonly high: number;
}

const FROM_MEMORY = {
  basis: 'from memory',
  source: 'Range of light-ship KG over depth by kind of ship; replace with an inclining or a weight list',
} as const;

function range(low: number, high: number): AssumedKg {
  return { low, likely: (low + high) / 2, high, ...FROM_MEMORY };
}

const CARGO = range(0.55, 0.65);
const PASSENGER = range(0.7, 0.8);
const AUXILIARY = range(0.6, 0.7);
const ESCORT = range(0.65, 0.72);

/** KG over depth by hull type, light condition. Assumed: it never carries "stays up". */
const BY_TYPE: Readonly<Record<string, AssumedKg>> = {
  freighter: CARGO,
  coaster: CARGO,
  tanker: CARGO,
  barge: CARGO,
  workboat: AUXILIARY,
  trawler: AUXILIARY,
  cutter: ESCORT,
  escort: ESCORT,
  ferry: PASSENGER,
  'passenger-ship': PASSENGER,
  'landing-ship': AUXILIARY,
  'naval-auxiliary': AUXILIARY,
  'research-ship': AUXILIARY,
  'training-ship': AUXILIARY,
  'aircraft-carrier': AUXILIARY,
};

/** Assumed KG, m above the keel, of a light ship of a hull type and depth; the widest range for a type not known. */
export function assumedKg(hullType: string, depth: number): AssumedKg {
  const share = BY_TYPE[hullType] ?? range(0.55, 0.8);
  return { ...share, low: share.low * depth, likely: share.likely * depth, high: share.high * depth };
}
