import { grantView, type Evaluation, type GrantView } from '../../evaluation';
import { NOT_FOUND, UNFUNDED_TITLE, budgetParts } from '../../funding';
import { fromCents } from '../../money';
import { CHANGED_SINCE, centsCell, changedSinceRow, headingRow, moneyFormula, text } from './cells';
import { formSectionsSheet } from './form-sections';
import { inOrder } from './rows';
import type { PaperCell, PaperCheck, PaperSheet } from './model';

type Book = NonNullable<GrantView['book']>;
type Award = Book['awards'][number];
type Cash = NonNullable<GrantView['cash']>;

const SHEET = 'Funding forms';

/**
 * The grant budget: who bears what, each form against the estimate, and on a sheet of its own the cash of the owner by
 * month. Shares come from the program as values; sums and differences are live.
 */
export function fundingSheets(evaluation: Evaluation): PaperSheet[] {
  const { book, cash } = grantView(evaluation);
  if (book === undefined || cash === undefined) return [];
  return [formsSheet(book, cash), formSectionsSheet(book.awards), ownersCashSheet(cash)];
}

function formsSheet(book: Book, cash: Cash): PaperSheet {
  const cells: PaperCell[] = [
    text(1, 1, 'Funding: who bears the cost, as the forms have it, US dollars', 'title'),
    text(
      2,
      1,
      'Shares, limits and terms of payment are worked out by the program; sums and differences are live.',
      'note',
    ),
  ];
  let next = 4;
  /** Adds a block and gives its last row, in which it is summed up. */
  const add = (block: Block): number => {
    cells.push(...block.cells);
    next += block.rows + 2;
    return next - 3;
  };
  const sources = add(
    summed(
      'Source',
      borneParts(book).map(({ title, amount }) => [title, amount]),
      'All sources',
      next,
    ),
  );
  const budget = add(reconciled(book, next));
  if (book.unfunded !== 0) add(unfundedBlock(book, sources, budget, next));
  const forms = book.awards.map((award): [Award, number] => [award, add(awardBlock(award, next))]);
  add(
    summed(
      'County payments by fiscal year',
      cash.fiscalYears.map(({ fiscalYear, amount }) => [`Fiscal year ${fiscalYear}`, amount]),
      'All years',
      next,
    ),
  );
  return {
    name: SHEET,
    cells,
    checks: checksOf(unfundedFormula(sources, budget, SHEET), book, forms),
    widths: [60, 20, 20, 20],
    headingRows: 2,
    landscape: false,
  };
}

/** The budget of the forms without what no source bears yet. */
function borneParts(book: Book) {
  return budgetParts(book).filter(({ id }) => id !== NOT_FOUND);
}

/** What no source bears yet: the budget of the forms less what bears it, from the rows in which they are summed up. */
function unfundedFormula(sources: number, budget: number, sheet?: string): string {
  const on = sheet === undefined ? '' : `'${sheet}'!`;
  return `ROUND(${on}B${budget}-${on}B${sources},2)`;
}

function unfundedBlock({ unfunded }: Book, sources: number, budget: number, top: number): Block {
  return {
    cells: [
      text(top, 1, `${UNFUNDED_TITLE}: the budget of the forms that no source bears yet`, 'caution'),
      moneyFormula(top, 2, unfundedFormula(sources, budget), fromCents(unfunded), 'total'),
    ],
    rows: 1,
  };
}

/** The checks: what no source bears yet must be nothing, and each form have what the estimate has. */
function checksOf(unfunded: string, book: Book, forms: readonly (readonly [Award, number])[]): PaperCheck[] {
  return [
    {
      title: 'Of the budget of the forms, which leads back to the total, no source bears yet',
      formula: unfunded,
      result: book.unfunded / 100,
    },
    ...forms.map(([{ form, source }, row]) => ({
      title: `${form.kind}, ${source.title}: the form has what the estimate has`,
      formula: `ROUND('${SHEET}'!D${row},2)`,
    })),
  ];
}

interface Block {
  readonly cells: readonly PaperCell[];
  readonly rows: number;
}

function summed(head: string, rows: readonly (readonly [string, number])[], all: string, top: number): Block {
  const guard = top + rows.length + 1;
  const sum = rows.reduce((total, [, amount]) => total + amount, 0);
  return {
    cells: [
      ...headingRow(top, [head, 'Amount']),
      ...inOrder(rows, top + 1, ([title, amount], row) => [text(row, 1, title), centsCell(row, 2, amount)]),
      text(guard, 1, 'Put new rows in above this row.', 'note'),
      text(guard + 1, 1, all, 'total'),
      moneyFormula(guard + 1, 2, `ROUND(SUM(B${top + 1}:B${guard}),2)`, fromCents(sum), 'total'),
    ],
    rows: rows.length + 3,
  };
}

/** From the total of this workbook to the budget of the forms. */
function reconciled({ reconciliation: { from, steps, to } }: Book, top: number): Block {
  const changed = top + steps.length + 2;
  const guard = changed + 1;
  return {
    cells: [
      ...headingRow(top, ['From the estimate to the budget of the forms', 'Amount']),
      text(top + 1, 1, from.title),
      moneyFormula(top + 1, 2, 'sums_total', fromCents(from.amount)),
      ...inOrder(steps, top + 2, ({ title, amount }, row) => [
        text(row, 1, title),
        centsCell(row, 2, amount),
      ]),
      ...changedSinceRow(changed, `-${CHANGED_SINCE}`),
      text(guard, 1, 'Put new steps in above this row.', 'note'),
      text(guard + 1, 1, to.title, 'total'),
      moneyFormula(guard + 1, 2, `ROUND(SUM(B${top + 1}:B${guard}),2)`, fromCents(to.amount), 'total'),
    ],
    rows: steps.length + 5,
  };
}

/** The lines of one award's form, each against what the estimate has for it. */
function awardBlock({ source, form, tieOut }: Award, top: number): Block {
  const guard = top + tieOut.length + 1;
  const column = (letter: string, read: (row: Award['tieOut'][number]) => number, at: number) =>
    moneyFormula(
      guard + 1,
      at,
      `ROUND(SUM(${letter}${top + 1}:${letter}${guard}),2)`,
      fromCents(tieOut.reduce((sum, row) => sum + read(row), 0)),
      'total',
    );
  return {
    cells: [
      ...headingRow(top, [`${form.kind}: ${source.title}`, 'Estimate', 'Form', 'Difference']),
      ...inOrder(tieOut, top + 1, (line, row) => [
        text(row, 1, line.title),
        centsCell(row, 2, line.estimate),
        centsCell(row, 3, line.form),
        moneyFormula(row, 4, `ROUND(C${row}-B${row},2)`, fromCents(line.form - line.estimate)),
      ]),
      text(guard, 1, 'Put new lines in above this row.', 'note'),
      text(guard + 1, 1, 'All lines of the form', 'total'),
      column('B', ({ estimate }) => estimate, 2),
      column('C', ({ form: onForm }) => onForm, 3),
      column('D', ({ form: onForm, estimate }) => onForm - estimate, 4),
    ],
    rows: tieOut.length + 3,
  };
}

/** Paid, received and carried by month; what is carried is live. */
function ownersCashSheet({ cash }: Cash): PaperSheet {
  const { months } = cash.view;
  const first = 4;
  return {
    name: 'Cash of the owner',
    cells: [
      text(1, 1, 'Cash of the owner by month, US dollars', 'title'),
      text(2, 1, 'Paid and received come from the program; what is carried is live.', 'note'),
      ...headingRow(first - 1, ['Month', 'Paid', 'Received', 'Carried', 'Gap beyond own share']),
      ...inOrder(months, first, ({ month, paid, received, carried, gap }, row) => [
        text(row, 1, month),
        centsCell(row, 2, paid),
        centsCell(row, 3, received),
        moneyFormula(
          row,
          4,
          row === first ? `ROUND(B${row}-C${row},2)` : `ROUND(D${row - 1}+B${row}-C${row},2)`,
          fromCents(carried),
        ),
        centsCell(row, 5, gap),
      ]),
    ],
    widths: [24, 20, 20, 20, 24],
    headingRows: 3,
    landscape: false,
  };
}
