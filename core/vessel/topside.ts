/** A part of a usual topside: its ends over the length, its heights over the depth, and the extents that take it off. */
export interface TopsidePart {
  readonly id: string;
  readonly title: string;
  readonly from: number;
  readonly to: number;
  readonly bottom: number;
  readonly top: number;
  readonly goes: readonly string[];
}

const part = (
  id: string,
  title: string,
  ends: readonly [number, number],
  heights: readonly [number, number],
  goes: readonly string[],
): TopsidePart => ({ id, title, from: ends[0], to: ends[1], bottom: heights[0], top: heights[1], goes });

/**
 * A usual topside in proportion (judgement, 2026): house in three tiers, funnel, masts. It serves to draw the ship and
 * to tell how high what stays reaches. No weight or area is taken from it.
 */
export const USUAL_TOPSIDE: readonly TopsidePart[] = [
  part('house-1', 'House, first tier', [0.2, 0.52], [1, 1.3], ['all']),
  part('house-2', 'House, second tier', [0.24, 0.48], [1.3, 1.6], ['all', 'most']),
  part('house-3', 'Bridge', [0.36, 0.47], [1.6, 1.95], ['all', 'most', 'half']),
  part('funnel', 'Funnel', [0.26, 0.31], [1.6, 2.2], ['all', 'most', 'half', 'clearance']),
  part('mast-1', 'Mast', [0.405, 0.415], [1.95, 2.9], ['all', 'most', 'half', 'clearance']),
  part('mast-2', 'Foremast', [0.75, 0.76], [1.03, 2.4], ['all', 'most', 'half', 'clearance']),
];

/** The bow stands this much above the depth at the side (sheer and bulwark; judgement). */
const BOW = 1.14;

/**
 * The highest point above the keel that stays, metres: of the parts the extent of removal leaves, or the bow. Where
 * the topside is taken off for the clearance, what stands above the height the water allows goes too.
 * @param allowed metres of height that leave the clearance; only the extent `clearance` heeds it.
 */
export function highestStaying(depth: number, extent: string | undefined, allowed?: number): number {
  const staying = USUAL_TOPSIDE.filter(({ goes }) => extent === undefined || !goes.includes(extent));
  const usual = depth * Math.max(BOW, ...staying.map(({ top }) => top));
  if (extent !== 'clearance' || allowed === undefined) return usual;
  return Math.max(depth * BOW, Math.min(usual, allowed));
}

/** Breadth of a usual house over the beam (judgement, 2026). */
const HOUSE_BREADTH = 0.8;

/** The part of the deck that the staying house covers, metres: what still pierces the water once the deck is under. */
export function houseStaying(
  length: number,
  beam: number,
  extent: string | undefined,
): { readonly length: number; readonly breadth: number } | undefined {
  const tiers = USUAL_TOPSIDE.filter(({ bottom, goes }) => bottom === 1 && !goes.includes(extent ?? ''));
  const [first] = tiers;
  return first && { length: (first.to - first.from) * length, breadth: HOUSE_BREADTH * beam };
}
