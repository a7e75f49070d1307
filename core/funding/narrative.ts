import { sourceWithYear, type Basis } from '../base';
import { dollars, type Cents, type EstimateLine } from '../cash-flow';
import type { SharedRow } from './budget-row';

/** One sentence of the budget narrative, and the row it speaks of. Its first amount is the row's amount on the form. */
export interface NarrativeSentence {
  readonly rowId: string;
  readonly lineId?: string;
  readonly classId: string;
  readonly text: string;
}

const KIND_WORDS: Readonly<Partial<Record<SharedRow['kind'], string>>> = {
  labour: 'wages',
  fringe: 'fringe benefits',
  equipment: 'hired equipment',
  material: 'materials',
  disposal: 'disposal',
  subcontract: 'bought services',
  fee: 'fees',
  markUp: 'overhead and profit',
};

/** What the narrative needs to know beside the rows. */
export interface NarrativeFacts {
  readonly lines: readonly EstimateLine[];
  readonly indirect: { readonly rate: number; readonly base: Cents };
  readonly contingencyMethod: string;
}

/** The budget narrative: a sentence for every row of the budget, made from the basis of its line. */
export function narrativeOf(rows: readonly SharedRow[], facts: NarrativeFacts): NarrativeSentence[] {
  return rows.map(row => ({
    rowId: row.id,
    ...(row.lineId !== undefined && { lineId: row.lineId }),
    classId: row.classId,
    text: sentence(row, facts),
  }));
}

function sentence(row: SharedRow, facts: NarrativeFacts): string {
  const amount = dollars(row.allowable);
  if (row.kind === 'indirect')
    return `${amount} of indirect cost: ${perCentWords(facts.indirect.rate)} of its part of the base of ${dollars(facts.indirect.base)}.`;
  if (row.kind === 'contingency') return `${amount} of contingency: ${facts.contingencyMethod}.`;
  const line = facts.lines.find(one => one.id === row.lineId);
  if (!line) return `${amount} for ${row.title}.`;
  const kind = KIND_WORDS[row.kind];
  const workings = line.workings === undefined ? '' : `: ${line.workings}`;
  return `${amount} for ${line.title}${kind === undefined ? '' : `, ${kind}`}${workings}; ${basisWords(line)}${partWords(row)}.`;
}

/** A share in per cent, as many decimals as it has. */
export function perCentWords(rate: number): string {
  return `${Number((rate * 100).toFixed(4))} per cent`;
}

const BASIS_WORDS: Readonly<Record<Basis, string>> = {
  quoted: 'quoted for this ship',
  surveyed: 'surveyed on this ship',
  published: 'a published rate',
  'common practice': 'common practice of the trade',
  judgement: "the estimator's judgement",
  'from memory': 'from memory, to be checked',
  'invented for the demo': 'invented for the demo',
};

function basisWords(line: EstimateLine): string {
  return `${BASIS_WORDS[line.basis]} (${sourceWithYear(line)})`;
}

function partWords(row: SharedRow): string {
  return row.allowable === row.total ? '' : `, out of ${dollars(row.total)} in all`;
}
