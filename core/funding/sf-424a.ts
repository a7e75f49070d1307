import { spreadLike, sumCents, type Cents, type MonthAmount } from '../cash-flow';
import { NOT_FOUND, type SharedRow } from './budget-row';
import { fundingYears, quarters } from './funding-periods';
import { labelsOf, type Activity, type FormsData } from './forms';
import type { FundingSource } from './plan';

/** An amount by activity, and over all of them. */
export interface ActivityAmounts {
  readonly id: string;
  readonly title: string;
  readonly byActivity: Readonly<Record<string, Cents>>;
  readonly total: Cents;
}

/** One line of section A: an activity of the programme. */
export interface SummaryLine {
  readonly activityId: string;
  readonly title: string;
  readonly listingNumber: string;
  readonly federal: Cents;
  readonly nonFederal: Cents;
  readonly total: Cents;
}

/** SF-424A for one award, sections A to E. */
export interface Sf424a {
  readonly kind: 'SF-424A';
  readonly sourceId: string;
  readonly programme: string;
  readonly activities: readonly Activity[];
  readonly sectionA: {
    readonly lines: readonly SummaryLine[];
    readonly total: Omit<SummaryLine, 'activityId' | 'title' | 'listingNumber'>;
  };
  /** Lines a to k, and line 7 (program income), which is never added into k. */
  readonly sectionB: readonly ActivityAmounts[];
  readonly sectionC: {
    readonly applicant: Cents;
    readonly state: Cents;
    readonly other: Cents;
    /** What no source bears yet: beside the sources, part of the total. */
    readonly unfunded: Cents;
    readonly total: Cents;
  };
  readonly sectionD: { readonly federal: readonly Cents[]; readonly nonFederal: readonly Cents[] };
  /** Federal money by later year: the first to the fourth after the first. */
  readonly sectionE: readonly Cents[];
}

/** What SF-424A is made from. */
export interface Sf424aInput {
  readonly rows: readonly SharedRow[];
  readonly award: FundingSource;
  readonly sources: readonly FundingSource[];
  readonly activities: readonly Activity[];
  readonly forms: FormsData;
  readonly start: string;
  readonly programIncome: Cents;
}

/** Fills SF-424A from the shared rows of an award. @source OMB 4040-0006, form and instructions. */
export function buildSf424a(input: Sf424aInput): Sf424a {
  const { rows, award, activities } = input;
  const lines = activities.map(activity => summaryLine(activity, input));
  const federal = sumCents(lines.map(line => line.federal));
  const nonFederal = sumCents(lines.map(line => line.nonFederal));
  const federalMonths = monthsOf(rows, row => federalOf(row, award));
  const otherMonths = monthsOf(rows, row => row.allowable - federalOf(row, award));
  const first = quarters(federalMonths, input.start);
  return {
    kind: 'SF-424A',
    sourceId: award.id,
    programme: award.programme?.title ?? award.title,
    activities,
    sectionA: { lines, total: { federal, nonFederal, total: federal + nonFederal } },
    sectionB: objectClasses(input),
    sectionC: nonFederalResources(input),
    sectionD: { federal: first, nonFederal: quarters(otherMonths, input.start) },
    sectionE: fundingYears(federalMonths, input.start),
  };
}

function federalOf(row: SharedRow, award: FundingSource): Cents {
  return row.shares[award.id] ?? 0;
}

function summaryLine(activity: Activity, { rows, award }: Sf424aInput): SummaryLine {
  const own = rows.filter(row => row.activityId === activity.id);
  const federal = sumCents(own.map(row => federalOf(row, award)));
  const total = sumCents(own.map(row => row.allowable));
  return {
    activityId: activity.id,
    title: activity.title,
    listingNumber: award.programme?.listingNumber ?? '',
    federal,
    nonFederal: total - federal,
    total,
  };
}

function objectClasses(input: Sf424aInput): ActivityAmounts[] {
  const { rows, activities } = input;
  const labels = labelsOf(input.forms, 'SF-424A');
  const of = (id: string, title: string, own: readonly SharedRow[]): ActivityAmounts => ({
    id,
    title,
    byActivity: Object.fromEntries(
      activities.map(activity => [
        activity.id,
        sumCents(own.filter(row => row.activityId === activity.id).map(row => row.allowable)),
      ]),
    ),
    total: sumCents(own.map(row => row.allowable)),
  });
  const isDirect = (row: SharedRow): boolean => row.classId !== 'j';
  const wanted: Readonly<Record<string, readonly SharedRow[]>> = {
    i: rows.filter(isDirect),
    j: rows.filter(row => !isDirect(row)),
    k: rows,
  };
  const classes = labels.classes.map(one =>
    of(
      one.id,
      one.title,
      rows.filter(row => row.classId === one.id),
    ),
  );
  const totals = labels.totals.flatMap(one => {
    const own = wanted[one.id];
    return own
      ? [of(one.id, one.title, own)]
      : [{ id: one.id, title: one.title, byActivity: {}, total: input.programIncome }];
  });
  return [...classes, ...totals];
}

function nonFederalResources({ rows, award, sources }: Sf424aInput): Sf424a['sectionC'] {
  const borne = (kinds: readonly string[]): Cents =>
    sumCents(
      sources
        .filter(source => source.id !== award.id && kinds.includes(source.kind))
        .flatMap(source => rows.map(row => row.shares[source.id] ?? 0)),
    );
  const total = sumCents(rows.map(row => row.allowable - federalOf(row, award)));
  const [applicant, state] = [borne(['applicant']), borne(['state'])];
  const unfunded = sumCents(rows.map(row => row.shares[NOT_FOUND] ?? 0));
  return { applicant, state, other: total - applicant - state - unfunded, unfunded, total };
}

/** What part of each row a rule gives, by month of payment. */
export function monthsOf(rows: readonly SharedRow[], part: (row: SharedRow) => Cents): MonthAmount[] {
  return rows.flatMap(row => (part(row) === 0 ? [] : spreadLike(part(row), row.paidMonths)));
}
