import type { UprightResult } from '../flooding';
import { roundText } from './number-text';
import type { DrawnCompartment, ShipPicture } from './window-rows';

export interface FillSteps {
  readonly step: (compartment: string) => DrawnCompartment['step'];
  readonly legend: ShipPicture['steps'];
}

/** Compartments in three steps of lightness by how long they take to fill: thirds of the span from soonest to last. */
export function fillSteps(upright: UprightResult | undefined): FillSteps {
  const minutes = new Map((upright?.sizing ?? []).map(one => [one.compartment, one.fillMinutes]));
  const known = [...minutes.values()].filter(one => Number.isFinite(one));
  if (known.length === 0) return { step: () => undefined, legend: [] };
  const [least, most] = [Math.min(...known), Math.max(...known)];
  const text = (value: number) => roundText(value.toFixed(6), 1);
  if (text(least) === text(most))
    return {
      step: id => (minutes.has(id) ? 0 : undefined),
      legend: [{ step: 0, text: `${text(most)} min` }],
    };
  const third = (most - least) / 3;
  return {
    step: id => {
      const own = minutes.get(id);
      if (own === undefined || !Number.isFinite(own)) return undefined;
      return own <= least + third ? 0 : own <= least + 2 * third ? 1 : 2;
    },
    legend: [
      { step: 0, text: `up to ${text(least + third)}` },
      { step: 1, text: `to ${text(least + 2 * third)}` },
      { step: 2, text: `to ${text(most)} min` },
    ],
  };
}
