import { BASES } from '../base';
import type { EstimateContext } from './context';
import { figureInMeasures, unitWords } from './measures';
import { printed } from './number-text';
import type { WhyRow, WhyRows } from './rows';

/** The openings of a compartment, counted: each with its side, its area and where that comes from. */
export function openingsWhy({ evaluation, measures }: EstimateContext, id: string): WhyRows | undefined {
  if (!id.startsWith('openings:')) return undefined;
  const one = evaluation.project.vessel.compartments.find(each => each.id === id.slice('openings:'.length));
  if (one === undefined) return undefined;
  const rows = one.openings.map((opening): WhyRow => {
    const area = figureInMeasures(opening.area, measures);
    return {
      depth: 0,
      operator: '+',
      value: {
        text: printed(area.value),
        unit: unitWords(area.unit),
        why: `given:/vessel/compartments/${one.id}/openings/${opening.id}/area`,
        basis: opening.area.basis,
        source: opening.area.source,
      },
      words: `${opening.count} to ${opening.side}, the area of one`,
    };
  });
  const none: WhyRow = {
    depth: 0,
    operator: '',
    value: { text: 'none' },
    words: 'is given; the screen then sizes openings for even flooding, which Sinking shows',
  };
  return {
    id,
    title: `Openings of ${one.title}`,
    path: 'Vessel, compartments',
    value: { text: String(one.openings.reduce((sum, opening) => sum + opening.count, 0)) },
    words: 'The openings of the compartment as they are given, counted.',
    rows: rows.length === 0 ? [none] : rows,
    usedBy: [],
    bases: BASES,
    home: 'vessel',
  };
}
