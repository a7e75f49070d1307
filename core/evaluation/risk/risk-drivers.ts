import type { RiskDriver } from '../../risk';
import type { Library } from '../../work';
import { spreadOf } from './parts';
import type { RangedGiven } from './ranged-givens';
import type { RiskDriverRow } from './risk-file';

/** The drivers of the template on the givens of this estimate; one that moves nothing is left out. */
export function riskDrivers(
  rows: readonly RiskDriverRow[],
  givens: readonly RangedGiven[],
  library: Library,
): RiskDriver[] {
  const ofMaterials = new Set(library.drivers.flatMap(d => (d.material === undefined ? [] : [d.id])));
  return rows.flatMap((row): RiskDriver[] => {
    const inputs = givens.filter(given => row.moves.some(move => isMoved(move, given, ofMaterials)));
    if (inputs.length === 0) return [];
    const { id, title, note } = row;
    return [{ id, title, probability: 1, factor: spreadOf(row.factor), inputs: inputs.map(i => i.id), note }];
  });
}

function isMoved(
  move: RiskDriverRow['moves'][number],
  given: RangedGiven,
  ofMaterials: ReadonlySet<string>,
): boolean {
  if (!move.columns.includes(given.column)) return false;
  if (move.stages && !move.stages.some(stage => given.stages.has(stage))) return false;
  const keys = given.rows.map(row => row.slice(row.lastIndexOf('.') + 1));
  if (move.equipment && !keys.some(key => move.equipment?.includes(key))) return false;
  return move.materials !== true || keys.some(key => ofMaterials.has(key));
}
