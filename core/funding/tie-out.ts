import { firstDollars, sumCents, type Book, type BookEntry, type Cents } from '../cash-flow';
import type { BudgetRow } from './budget-row';
import type { NarrativeSentence } from './narrative';
import type { Sf424a } from './sf-424a';
import type { Sf424c } from './sf-424c';

/** A filled form of either kind. */
export type GrantForm = Sf424a | Sf424c;

/** One row of the tie-out: a line of the form, the estimate lines behind it, their sentences, and the differences. */
export interface TieOutRow {
  readonly classId: string;
  readonly title: string;
  readonly lineIds: readonly string[];
  /** What the estimate gives for the line, allowable. */
  readonly estimate: Cents;
  /** What the form says. */
  readonly form: Cents;
  /** What the printed sentences add up to. */
  readonly narrative: Cents;
  readonly sentences: readonly string[];
  /** Form less estimate. */
  readonly formDifference: Cents;
  /** Form less narrative. */
  readonly narrativeDifference: Cents;
}

/**
 * Ties a form out row by row. The narrative amounts are read back from the printed sentences, the form amounts
 * from the form: neither is the figure it is compared with.
 * @param rows the budget rows as the estimate gives them.
 */
export function tieOut(
  form: GrantForm,
  rows: readonly BudgetRow[],
  narrative: readonly NarrativeSentence[],
): TieOutRow[] {
  return classLines(form).flatMap(({ id, title, amount }) => {
    const own = rows.filter(row => row.classId === id);
    const sentences = narrative.filter(one => one.classId === id);
    if (own.length === 0 && sentences.length === 0 && amount === 0) return [];
    const estimate = sumCents(own.map(row => row.allowable));
    const told = sumCents(sentences.map(one => firstDollars(one.text) ?? 0));
    return [
      {
        classId: id,
        title,
        lineIds: [...new Set(own.flatMap(row => row.lineId ?? []))],
        estimate,
        form: amount,
        narrative: told,
        sentences: sentences.map(one => one.text),
        formDifference: amount - estimate,
        narrativeDifference: amount - told,
      },
    ];
  });
}

/** The lines of a form that costs are mapped to, with what the form says. */
function classLines(form: GrantForm): { id: string; title: string; amount: Cents }[] {
  if (form.kind === 'SF-424A')
    return form.sectionB
      .filter(line => !['i', 'k', '7'].includes(line.id))
      .map(line => ({ id: line.id, title: line.title, amount: line.total }));
  return form.lines
    .filter(line => !['12', '14', '15', '16'].includes(line.id))
    .map(line => ({ id: line.id, title: line.title, amount: line.allowable }));
}

/** The total the form carries: line k of SF-424A, line 16c of SF-424C. */
export function formTotal(form: GrantForm): Cents {
  if (form.kind === 'SF-424A') return form.sectionA.total.total;
  return sumCents(form.lines.filter(line => line.id === '16').map(line => line.allowable));
}

/** The federal assistance a form asks for. */
export function federalRequest(form: GrantForm): Cents {
  return form.kind === 'SF-424A' ? form.sectionA.total.federal : form.line17.federal;
}

/** Every figure of a form, cell by cell, under its place. */
export function bookOfForm(form: GrantForm): Book {
  const entries = form.kind === 'SF-424A' ? cellsOf424a(form) : cellsOf424c(form);
  return { id: `${form.sourceId}/${form.kind}`, title: form.kind, entries };
}

function cellsOf424a(form: Sf424a): BookEntry[] {
  const summary = form.sectionA.lines.flatMap(line => [
    cell(`A/${line.activityId}/federal`, `A, ${line.title}, federal`, line.federal),
    cell(`A/${line.activityId}/non-federal`, `A, ${line.title}, non-federal`, line.nonFederal),
    cell(`A/${line.activityId}/total`, `A, ${line.title}, total`, line.total),
  ]);
  const totals = Object.entries(form.sectionA.total).map(([key, amount]) =>
    cell(`A/5/${key}`, `A, line 5, ${key}`, amount),
  );
  const classes = form.sectionB.flatMap(line => [
    ...Object.entries(line.byActivity).map(([id, amount]) =>
      cell(`B/${line.id}/${id}`, `B, ${line.id}, ${id}`, amount),
    ),
    cell(`B/${line.id}/total`, `B, ${line.id}, total`, line.total),
  ]);
  const resources = Object.entries(form.sectionC).map(([key, amount]) =>
    cell(`C/${key}`, `C, ${key}`, amount),
  );
  const cash = [
    ...form.sectionD.federal.map((amount, quarter) =>
      cell(`D/13/${quarter + 1}`, `D, line 13, quarter ${quarter + 1}`, amount),
    ),
    ...form.sectionD.nonFederal.map((amount, quarter) =>
      cell(`D/14/${quarter + 1}`, `D, line 14, quarter ${quarter + 1}`, amount),
    ),
  ];
  const later = form.sectionE.map((amount, year) =>
    cell(`E/${year + 1}`, `E, year ${year + 1} after the first`, amount),
  );
  return [...summary, ...totals, ...classes, ...resources, ...cash, ...later];
}

function cellsOf424c(form: Sf424c): BookEntry[] {
  const lines = form.lines.flatMap(line => [
    cell(`${line.id}/a`, `line ${line.id}, total`, line.total),
    cell(`${line.id}/b`, `line ${line.id}, not allowable`, line.notAllowable),
    cell(`${line.id}/c`, `line ${line.id}, allowable`, line.allowable),
  ]);
  return [...lines, cell('17', 'line 17, federal assistance requested', form.line17.federal)];
}

/** The narrative as a book: the amount each sentence prints. A sentence without an amount is missing from it. */
export function bookOfNarrative(narrative: readonly NarrativeSentence[]): Book {
  const entries = narrative.flatMap(one => {
    const amount = firstDollars(one.text);
    return amount === undefined ? [] : [cell(one.rowId, one.rowId, amount)];
  });
  return { id: 'narrative', title: 'budget narrative', entries };
}

function cell(key: string, title: string, amount: Cents): BookEntry {
  return { key, title, amount };
}
