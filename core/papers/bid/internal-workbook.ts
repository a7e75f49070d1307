import type { InternalSheet } from '../../bid';
import { ELEMENTS, type Cents } from '../../cash-flow';
import {
  ELEMENT_TITLES,
  bidView,
  elementKey,
  marginView,
  quoteView,
  type Evaluation,
  type MarginView,
  type QuoteView,
} from '../../evaluation';
import { dollarsOf, fromCents } from '../../money';
import { headingRow, moneyFormula, number, text } from '../workbook/cells';
import type { PaperCell, PaperSheet, PaperWorkbook } from '../workbook/model';

const WARNING =
  'Internal: the whole build-up of the bid. It does not leave the house; the bid is a file of its own.';
const FIRST_ROW = 4;
const TITLES = ELEMENTS.map(element => ELEMENT_TITLES[elementKey(element)]);

/** The internal sheet of a bid as a workbook: lines, elements, facts, mark-ups, wages, quotes and margin. */
export function internalWorkbook(evaluation: Evaluation): PaperWorkbook | undefined {
  const { internal } = bidView(evaluation);
  if (internal === undefined) return undefined;
  const { project, today } = evaluation;
  return {
    title: `${project.title}: internal build-up of the bid`,
    date: today,
    names: [],
    sheets: [
      buildUpSheet(internal),
      factsSheet(internal),
      markUpsSheet(internal, marginView(evaluation)),
      ratesSheet(internal),
      quotesSheet(quoteView(evaluation)),
    ],
  };
}

function buildUpSheet({ items, buildUp }: InternalSheet): PaperSheet {
  const lines = items.flatMap(item => item.lines.map(line => ({ item, line })));
  const guard = FIRST_ROW + lines.length;
  const rows = lines.flatMap(({ item, line }, i): PaperCell[] => {
    const row = FIRST_ROW + i;
    return [
      text(row, 1, item.title),
      text(row, 2, line.title),
      ...ELEMENTS.map((element, column) => money(row, 3 + column, line.amounts[element])),
      moneyFormula(row, 10, `ROUND(SUM(C${row}:I${row}),2)`, fromCents(line.total)),
      text(row, 11, line.source),
    ];
  });
  return sheet(
    'Build-up',
    ['Item', 'Work', ...TITLES, 'Price, USD', 'Source of the rate'],
    [32, 44, 14, 14, 14, 14, 14, 14, 14, 16, 60],
    [
      ...rows,
      text(guard, 2, 'Put new lines in above this row.', 'note'),
      text(guard + 1, 2, 'Contract price', 'total'),
      moneyFormula(
        guard + 1,
        10,
        `ROUND(SUM(J${FIRST_ROW}:J${guard}),2)`,
        buildUp && fromCents(buildUp.price),
        'total',
      ),
    ],
  );
}

function factsSheet({ items }: InternalSheet): PaperSheet {
  const facts = items.flatMap(item =>
    item.lines.flatMap(line => line.facts.map(fact => ({ title: line.title, fact }))),
  );
  return sheet(
    'Hours and rates',
    ['Work', 'Fact', 'Value'],
    [60, 20, 24],
    facts.flatMap(({ title, fact }, i) => [
      text(FIRST_ROW + i, 1, title),
      text(FIRST_ROW + i, 2, fact.title),
      typeof fact.value === 'string'
        ? text(FIRST_ROW + i, 3, fact.value)
        : number(FIRST_ROW + i, 3, fact.value, 4, 'result'),
    ]),
  );
}

function markUpsSheet({ buildUp, markUpShares }: InternalSheet, margin: MarginView): PaperSheet {
  const amounts = buildUp?.markUps ?? [];
  const end = FIRST_ROW + amounts.length + 1;
  return sheet(
    'Mark-ups and margin',
    ['Mark-up', 'Share', 'Amount, USD'],
    [44, 14, 20],
    [
      text(FIRST_ROW, 1, 'Direct cost'),
      ...amountCell(FIRST_ROW, buildUp?.direct),
      ...amounts.flatMap(({ title, amount }, i) => [
        text(FIRST_ROW + 1 + i, 1, title),
        number(FIRST_ROW + 1 + i, 2, markUpShares.find(one => one.title === title)?.share, 4, 'result'),
        money(FIRST_ROW + 1 + i, 3, amount),
      ]),
      text(end, 1, 'Contract price', 'total'),
      ...amountCell(end, buildUp?.price),
      text(end + 2, 1, 'Cost in the plan: the price less profit'),
      ...amountCell(end + 2, margin.plan?.cost),
      text(end + 3, 1, 'Margin in the plan'),
      number(end + 3, 2, margin.plan?.share, 4, 'result'),
      ...amountCell(end + 3, margin.plan?.margin),
      text(end + 4, 1, 'The cost may grow by this share before the margin is gone'),
      number(end + 4, 2, margin.breakEvenGrowth, 4, 'result'),
    ],
  );
}

function ratesSheet({ rates }: InternalSheet): PaperSheet {
  return sheet(
    'Wages',
    ['Rate', 'Unit', 'Value'],
    [60, 14, 14],
    rates.flatMap(({ title, unit, value }, i) => [
      text(FIRST_ROW + i, 1, title),
      text(FIRST_ROW + i, 2, unit),
      number(FIRST_ROW + i, 3, value, 2, 'result'),
    ]),
  );
}

function quotesSheet({ scopes }: QuoteView): PaperSheet {
  const rows = scopes.flatMap(scope => scope.comparison.rows.map(row => ({ scope, row })));
  return sheet(
    'Quotes',
    ['Scope', 'Supplier', 'As quoted, USD', 'At the same scope, USD', 'Over the lowest, USD', 'Relied on'],
    [50, 36, 18, 20, 20, 12],
    rows.flatMap(({ scope, row }, i) => [
      text(FIRST_ROW + i, 1, scope.title),
      text(FIRST_ROW + i, 2, row.quote.supplier),
      money(FIRST_ROW + i, 3, row.quote.amount),
      money(FIRST_ROW + i, 4, row.levelled),
      money(FIRST_ROW + i, 5, row.overLowest),
      text(FIRST_ROW + i, 6, scope.chosen === row.quote.id ? 'yes' : 'no'),
    ]),
  );
}

function sheet(
  name: string,
  headings: readonly string[],
  widths: readonly number[],
  cells: readonly PaperCell[],
): PaperSheet {
  return {
    name,
    cells: [
      text(1, 1, name, 'title'),
      text(2, 1, WARNING, 'caution'),
      ...headingRow(FIRST_ROW - 1, headings),
      ...cells,
    ],
    widths,
    headingRows: FIRST_ROW - 1,
    landscape: true,
  };
}

function amountCell(row: number, amount: Cents | undefined): PaperCell[] {
  return amount === undefined ? [] : [money(row, 3, amount)];
}

function money(row: number, column: number, amount: Cents): PaperCell {
  return {
    row,
    column,
    content: { kind: 'money', value: dollarsOf(fromCents(amount)), role: 'result' },
  };
}
