import { withId } from '../base';
import { sumCents, type Cents } from '../cash-flow';
import type { SharedRow } from './budget-row';
import { labelsOf, type FormsData } from './forms';
import type { FundingSource } from './plan';

/** One line of SF-424C: total, not allowable, allowable. */
export interface ConstructionLine {
  readonly id: string;
  readonly title: string;
  readonly total: Cents;
  readonly notAllowable: Cents;
  readonly allowable: Cents;
}

/** SF-424C for one award, lines 1 to 17. */
export interface Sf424c {
  readonly kind: 'SF-424C';
  readonly sourceId: string;
  /** Lines 1 to 16. */
  readonly lines: readonly ConstructionLine[];
  /** Line 17: the share of line 16c and the federal assistance requested. */
  readonly line17: { readonly share: number; readonly federal: Cents; readonly isCapped: boolean };
}

/** What SF-424C is made from. */
export interface Sf424cInput {
  readonly rows: readonly SharedRow[];
  readonly award: FundingSource;
  readonly forms: FormsData;
  /** Program income that the form subtracts (deduction); 0 under the other methods. */
  readonly deducted: Cents;
}

/**
 * Fills SF-424C: 12 = 1 to 11, 14 = 12 + 13, 16 = 14 − 15, 17 = 16c × the federal share.
 * @source OMB 4040-0008, form.
 */
export function buildSf424c({ rows, award, forms, deducted }: Sf424cInput): Sf424c {
  const labels = labelsOf(forms, 'SF-424C');
  const title = (id: string): string => withId(labels.totals, id).title;
  const classes = labels.classes.map(one =>
    lineOf(
      one.id,
      one.title,
      rows.filter(row => row.classId === one.id),
    ),
  );
  const line12 = added('12', title('12'), classes);
  const line13 = lineOf(
    '13',
    title('13'),
    rows.filter(row => row.classId === '13'),
  );
  const line14 = added('14', title('14'), [line12, line13]);
  const line15 = { id: '15', title: title('15'), total: deducted, notAllowable: 0, allowable: deducted };
  const line16 = {
    id: '16',
    title: title('16'),
    total: line14.total - line15.total,
    notAllowable: line14.notAllowable,
    allowable: line14.allowable - line15.allowable,
  };
  const federal = sumCents(rows.map(row => row.shares[award.id] ?? 0));
  return {
    kind: 'SF-424C',
    sourceId: award.id,
    lines: [...classes, line12, line13, line14, line15, line16],
    line17: line17(line16.allowable, federal, award.share ?? 1),
  };
}

/** The share printed is the award's; where a cap binds it is what the request is of line 16c. */
function line17(line16c: Cents, federal: Cents, share: number): Sf424c['line17'] {
  const isCapped = Math.abs(federal - line16c * share) >= 1;
  return { share: isCapped && line16c !== 0 ? federal / line16c : share, federal, isCapped };
}

function lineOf(id: string, title: string, rows: readonly SharedRow[]): ConstructionLine {
  const total = sumCents(rows.map(row => row.total));
  const allowable = sumCents(rows.map(row => row.allowable));
  return { id, title, total, notAllowable: total - allowable, allowable };
}

function added(id: string, title: string, lines: readonly ConstructionLine[]): ConstructionLine {
  return {
    id,
    title,
    total: sumCents(lines.map(line => line.total)),
    notAllowable: sumCents(lines.map(line => line.notAllowable)),
    allowable: sumCents(lines.map(line => line.allowable)),
  };
}
