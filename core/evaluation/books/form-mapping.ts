import type { EstimateLine } from '../../cash-flow';
import { labelsOf, type FormsData, type FundingPlan, type MappingRow } from '../../funding';
import type { Funding } from '../../project';
import type { WorkItem } from '../../work';

/**
 * The mapping of cost to the lines of the forms: the user's own rows first; on SF-424C then the line that each work
 * item names; what is left by the mapping of the forms file.
 */
export function formMapping(
  lines: readonly EstimateLine[],
  items: readonly WorkItem[],
  forms: FormsData,
  own: Funding['mapping'],
): NonNullable<FundingPlan['mapping']> {
  const titles = labelsOf(forms, 'SF-424C').classes;
  const named = lines.flatMap((line): MappingRow[] => {
    const wanted = items.find(item => item.id === line.id)?.formLine.construction;
    const to = titles.find(one => one.title === wanted)?.id;
    return to === undefined ? [] : [{ when: { lineId: line.id }, to }];
  });
  const { 'SF-424A': shippedA, 'SF-424C': shippedC } = forms.mappings;
  const byKind = shippedC.filter(row => row.when.stage === undefined && row.when.lineId === undefined);
  return {
    'SF-424A': [...(own['SF-424A'] ?? []), ...shippedA],
    'SF-424C': [
      ...(own['SF-424C'] ?? []),
      ...byKind.filter(row => row.when.kind !== 'contract'),
      ...named,
      ...shippedC,
    ],
  };
}
