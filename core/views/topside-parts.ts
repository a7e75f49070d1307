import type { EstimateContext } from './context';
import type { DrawnPart } from './window-rows';

/** What is chosen for an option. */
export function isOption(context: EstimateContext, id: string): string | undefined {
  return context.parts.input.options[id];
}

interface Hull {
  readonly length: number;
  readonly depth: number;
}

/** A part of a usual topside: its ends over the length, its heights over the depth, and the extents that take it off. */
type Part = readonly [
  id: string,
  title: string,
  from: number,
  to: number,
  bottom: number,
  top: number,
  goes: readonly string[],
];

/**
 * A usual topside for drawing only: house in three tiers, funnel, masts. What stays follows from the extent of
 * removal that is chosen. No weight or area is taken from it.
 */
const PARTS: readonly Part[] = [
  ['house-1', 'House, first tier', 0.2, 0.52, 1, 1.3, ['all']],
  ['house-2', 'House, second tier', 0.24, 0.48, 1.3, 1.6, ['all', 'most']],
  ['house-3', 'Bridge', 0.36, 0.47, 1.6, 1.95, ['all', 'most', 'half']],
  ['funnel', 'Funnel', 0.26, 0.31, 1.6, 2.2, ['all', 'most', 'half', 'clearance']],
  ['mast-1', 'Mast', 0.405, 0.415, 1.95, 2.9, ['all', 'most', 'half', 'clearance']],
  ['mast-2', 'Foremast', 0.75, 0.76, 1.03, 2.4, ['all', 'most', 'half', 'clearance']],
];

/** The parts of the topside that are drawn, and which of them stay. */
export function topsideParts(hull: Hull, extent: string | undefined): readonly DrawnPart[] {
  return PARTS.map(([id, title, from, to, bottom, top, goes]) => {
    const stays = extent === undefined || !goes.includes(extent);
    return {
      id,
      title,
      from: hull.length * from,
      to: hull.length * to,
      bottom: hull.depth * bottom,
      top: hull.depth * top,
      stays,
      label: stays ? '' : title,
    };
  });
}
