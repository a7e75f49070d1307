import type { Finding, Provenance } from '../../base';

/** One item of a weight list: tonnes and metres (above the keel, forward of the aft perpendicular, to starboard). */
export interface WeightItem {
  readonly title: string;
  readonly mass: number;
  readonly vcg: number;
  readonly lcg?: number;
  readonly tcg?: number;
  /** How far the mass may be out, as a share of it. */
  readonly massSpread: number;
  /** How far the height may be out, m. */
  readonly vcgSpread: number;
  readonly provenance: Provenance;
}

/** The foot of a weight list. Lengths in metres, masses in tonnes. */
export interface WeightTotals {
  readonly mass: { readonly low: number; readonly likely: number; readonly high: number };
  readonly kg: { readonly low: number; readonly likely: number; readonly high: number };
  /** Absent when an item does not say where along or across the ship it lies. */
  readonly lcg?: number;
  readonly tcg?: number;
  readonly findings: readonly Finding[];
}

function sum(items: readonly WeightItem[], value: (item: WeightItem) => number): number {
  return items.reduce((total, item) => total + value(item), 0);
}

function rootOfSquares(items: readonly WeightItem[], value: (item: WeightItem) => number): number {
  return Math.sqrt(sum(items, item => value(item) ** 2));
}

function centre(
  items: readonly WeightItem[],
  mass: number,
  lever: (item: WeightItem) => number | undefined,
): number | undefined {
  let moment = 0;
  for (const item of items) {
    const arm = lever(item);
    if (arm === undefined) return undefined;
    moment += item.mass * arm;
  }
  return moment / mass;
}

function itemFindings(items: readonly WeightItem[]): Finding[] {
  return items.flatMap((item, i): Finding[] => {
    const isSound = item.mass > 0 && Number.isFinite(item.vcg) && item.massSpread >= 0 && item.vcgSpread >= 0;
    if (isSound) return [];
    return [
      {
        code: 'upright/weight-item',
        weight: 'blocks',
        place: `/weights/${i}`,
        message: `${item.title} has a mass of ${item.mass} t at ${item.vcg} m.`,
        meaning: 'KG and its range are withheld.',
        remedy: 'Enter a mass above zero and a height above the keel, each with how far it may be out.',
      },
    ];
  });
}

/**
 * Mass and KG of a weight list with their ranges: the items' errors are taken as independent, so their effects add
 * as the root of the sum of squares (first order). Absent, with findings, when an item cannot be right.
 * @source Law of propagation of uncertainty, JCGM 100:2008 (GUM) 5.1.2.
 */
export function weightTotals(items: readonly WeightItem[]): WeightTotals | { readonly findings: Finding[] } {
  const findings = itemFindings(items);
  const mass = sum(items, item => item.mass);
  if (findings.length > 0 || items.length === 0) return { findings };
  const kg = sum(items, item => item.mass * item.vcg) / mass;
  const massSpread = rootOfSquares(items, item => item.mass * item.massSpread);
  const byMass = rootOfSquares(items, item => (item.mass * item.massSpread * (item.vcg - kg)) / mass);
  const byHeight = rootOfSquares(items, item => (item.mass * item.vcgSpread) / mass);
  const kgSpread = Math.hypot(byMass, byHeight);
  const lcg = centre(items, mass, item => item.lcg);
  const tcg = centre(items, mass, item => item.tcg);
  return {
    mass: { low: mass - massSpread, likely: mass, high: mass + massSpread },
    kg: { low: kg - kgSpread, likely: kg, high: kg + kgSpread },
    ...(lcg === undefined ? {} : { lcg }),
    ...(tcg === undefined ? {} : { tcg }),
    findings,
  };
}
