import type { Figure } from '../base';
import type { Project } from '../project';
import type { LowLikelyHigh } from '../flooding';
import { amountIn, isConvertible, isUnit, quantity, type Unit } from '../units';

/** A figure as a number in a unit; nothing when it is absent or does not measure that. */
export function numberIn(figure: Figure | undefined, unit: Unit): number | undefined {
  if (figure === undefined || !isUnit(figure.unit) || !isConvertible(figure.unit, unit)) return undefined;
  return amountIn(quantity(figure.value, figure.unit), unit);
}

/** The range of a figure in a unit; where it has none, the likely value and so much to either side. */
export function rangeIn(
  figure: Figure | undefined,
  unit: Unit,
  likely: number,
  spread: number,
): LowLikelyHigh {
  const at = (text: string | undefined, otherwise: number) =>
    text === undefined || figure === undefined
      ? otherwise
      : (numberIn({ ...figure, value: text }, unit) ?? otherwise);
  return {
    low: at(figure?.low, likely * (1 - spread)),
    likely,
    high: at(figure?.high, likely * (1 + spread)),
  };
}

/** The height above the keel that leaves the clearance asked for over the wreck, metres; absent where one is not known. */
export function heightAllowed({ site }: Pick<Project, 'site'>): number | undefined {
  const [depth, clearance] = [numberIn(site.waterDepth, 'm'), numberIn(site.clearanceRequired, 'm')];
  return depth === undefined || clearance === undefined ? undefined : depth - clearance;
}
