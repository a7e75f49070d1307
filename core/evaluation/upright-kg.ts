import type { Figure } from '../base';
import type { EstimateInput } from '../estimate';
import type { UprightInput } from '../flooding';
import type { Project } from '../project';
import { assumedKg, weightTotals, type WeightItem, type WeightTotals } from '../stability';
import { numberIn, rangeIn } from './upright-figures';

/** How far a height of the centre of gravity without a range may be off (judgement). */
const KG_SPREAD = 0.05;
/** How far a mass of the weight list without a range may be off, as a share of it (judgement). */
const MASS_SPREAD = 0.1;
/** How far a height of the weight list without a range may be off, metres (judgement). */
const HEIGHT_SPREAD = 0.3;
/** How far the sum of a weight list may lie from the lightship and still be all of the ship (judgement). */
export const WHOLE_SHIP = 0.1;

/**
 * The height of the centre of gravity: as measured, from a weight list that is all of the ship, or assumed by the
 * hull type; with the distance to starboard where the weight list tells it.
 */
export function centreOfGravity(
  project: Project,
  input: EstimateInput,
  depth: number,
  lightship: number,
): Pick<UprightInput, 'kg' | 'tcg'> {
  const { kg } = project.vessel;
  const measured = numberIn(kg, 'm');
  if (kg !== undefined && measured !== undefined)
    return {
      kg: {
        ...rangeIn(kg, 'm', measured, KG_SPREAD),
        basis: kg.basis === 'surveyed' ? 'inclined' : 'assumed',
      },
    };
  const totals = listTotals(project);
  if (totals !== undefined && isWholeShip(totals, lightship))
    return {
      kg: { ...totals.kg, basis: 'weight list' },
      ...(totals.tcg === undefined ? {} : { tcg: totals.tcg }),
    };
  const share = input.ship.type.quantities['kg-over-depth'];
  const likely = numberIn(share, '1');
  if (likely === undefined) {
    const { low, likely: middle, high } = assumedKg(input.ship.type.id, depth);
    return { kg: { low, likely: middle, high, basis: 'assumed' } };
  }
  const ends = rangeIn(share, '1', likely, KG_SPREAD);
  return { kg: { low: ends.low * depth, likely: likely * depth, high: ends.high * depth, basis: 'assumed' } };
}

/** Whether a weight list is all of the ship and not only its heavy items. */
export function isWholeShip({ mass }: WeightTotals, lightship: number): boolean {
  return Math.abs(mass.likely - lightship) <= WHOLE_SHIP * lightship;
}

/** Mass and centres of the weight list of the document, by the one formula of it. */
export function listTotals(project: Project): WeightTotals | undefined {
  const items = project.vessel.weights.flatMap(listed);
  if (items.length === 0 || items.length < project.vessel.weights.length) return undefined;
  const totals = weightTotals(items);
  return 'kg' in totals ? totals : undefined;
}

function listed(row: Project['vessel']['weights'][number]): WeightItem[] {
  const [mass, vcg] = [numberIn(row.mass, 't'), numberIn(row.vcg, 'm')];
  const [lcg, tcg] = [numberIn(row.lcg, 'm'), numberIn(row.tcg, 'm')];
  if (mass === undefined || vcg === undefined) return [];
  const { basis, source } = row.mass;
  return [
    {
      title: row.title,
      mass,
      vcg,
      ...(lcg === undefined ? {} : { lcg }),
      ...(tcg === undefined ? {} : { tcg }),
      massSpread: halfRange(row.mass, 't', MASS_SPREAD * mass) / mass,
      vcgSpread: halfRange(row.vcg, 'm', HEIGHT_SPREAD),
      provenance: { basis, source },
    },
  ];
}

/** Half of the range of a figure, in a unit; `otherwise` where it has none. */
function halfRange(figure: Figure, unit: 't' | 'm', otherwise: number): number {
  const [low, high] = [figure.low, figure.high].map(text =>
    text === undefined ? undefined : numberIn({ ...figure, value: text }, unit),
  );
  return low === undefined || high === undefined ? otherwise : (high - low) / 2;
}
