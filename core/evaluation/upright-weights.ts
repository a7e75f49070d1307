import type { Figure } from '../base';
import type { WorkSheet } from '../estimate';
import type { UprightWeight } from '../flooding';
import { SEA_WATER } from '../stability';

/** Ballast that a work item puts aboard: tonnes for one of its units, and where it lies. */
interface Ballast {
  readonly item: string;
  readonly title: string;
  readonly tonnesPerUnit: number;
  /** Height of its centre over the depth of the ship. */
  readonly heightOverDepth: Figure;
}

const low = (value: string, source: string): Figure => ({
  value,
  unit: '1',
  basis: 'judgement',
  source,
  year: 2026,
});

/** Work items that put weight low into the ship. */
export const BALLAST: readonly Ballast[] = [
  {
    item: 'water-ballast',
    title: 'Water ballast',
    tonnesPerUnit: SEA_WATER,
    heightOverDepth: low('0.06', 'Double-bottom tanks pressed full: their middle over the depth'),
  },
  {
    item: 'solid-ballast',
    title: 'Solid ballast',
    tonnesPerUnit: 1,
    heightOverDepth: low('0.12', 'Concrete on the tank top: its middle over the depth'),
  },
];

/** Weights that the work items take off (positive) and put aboard (negative), for the upright screen. */
export function weightsOfWork(work: WorkSheet, depth: number, length: number): UprightWeight[] {
  return [...removed(work, depth, length), ...placed(work, depth, length)];
}

function removed(work: WorkSheet, depth: number, length: number): UprightWeight[] {
  const { columns, scope } = work.removals;
  return scope.rows.flatMap(row => {
    const mass = work.result.number(columns.tonnes, row.key);
    const height = work.result.number(columns.height, row.key);
    return mass === undefined || height === undefined || mass === 0
      ? []
      : [{ title: row.title, mass, vcg: height * depth, lcg: length / 2, tcg: 0 }];
  });
}

function placed(work: WorkSheet, depth: number, length: number): UprightWeight[] {
  return BALLAST.flatMap(({ item, title, tonnesPerUnit, heightOverDepth }) => {
    const isIn = work.rows.some(row => row.item.id === item);
    const quantity = isIn ? work.result.number(work.items.columns.number, item) : undefined;
    if (quantity === undefined || quantity === 0) return [];
    const vcg = Number(heightOverDepth.value) * depth;
    return [{ title, mass: -quantity * tonnesPerUnit, vcg, lcg: length / 2, tcg: 0 }];
  });
}
