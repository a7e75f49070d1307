import { USUAL_TOPSIDE } from '../vessel';
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

/** The parts of the topside that are drawn, and which of them stay. */
export function topsideParts(hull: Hull, extent: string | undefined): readonly DrawnPart[] {
  return USUAL_TOPSIDE.map(({ id, title, from, to, bottom, top, goes }) => {
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
