import { lowerFirst } from '../base';
import type { Project } from '../project';
import type { Library } from '../work';
import { aligned, asStep, atItsPrices, basisCell, givenCell, words } from './cells';
import { optionalFigure } from './term-rows';
import type { Measures } from './measures';
import type { Column, Row, TableRows } from './rows';

const COLUMNS: readonly Column[] = [
  { key: 'title', title: 'Trade', kind: 'words' },
  { key: 'book', title: 'Rate book', unit: '$ per h', kind: 'number' },
  { key: 'own', title: 'This project pays', unit: '$ per h', kind: 'number' },
  { key: 'basis', title: 'Basis', kind: 'basis' },
  { key: 'source', title: 'Source', kind: 'words' },
];

/** The wage table of the project beside the wages of the rate book; emptied, the book counts again. */
export function wageTable(project: Project, library: Library, measures: Measures, today: string): TableRows {
  const rows = library.rateBook.trades.map((trade): Row => {
    const own = project.rates.wages.find(one => one.trade === trade.id)?.figure;
    const book = givenCell('', trade.title, trade.wage, measures);
    const cell = optionalFigure(
      `/rates/wages/${trade.id}/figure`,
      `Wage of ${lowerFirst(trade.title)}`,
      own,
      trade.wage.unit,
      measures,
    );
    return {
      id: trade.id,
      kind: 'line',
      cells: {
        title: words(trade.title),
        book: { text: book.text, why: `book:${wagePlace(trade.id)}` },
        own: cell.edit === undefined ? cell : { ...cell, edit: atItsPrices(cell.edit, own, today) },
        basis: basisCell(own?.basis ?? trade.wage.basis, own?.source ?? trade.wage.source, cell.why),
        source: words(own?.source ?? trade.wage.source),
      },
    };
  });
  return {
    id: 'wages',
    caption: 'Wage table',
    columns: COLUMNS,
    rows: aligned(COLUMNS, rows),
    note: [wageNote(project, library)],
  };
}

/** Which of two wages of one trade counts. */
function wageNote({ rates }: Project, library: Library): string {
  const changed = library.rateBook.trades
    .filter(({ id }) => rates.overrides.some(one => one.at === wagePlace(id)))
    .filter(({ id }) => rates.wages.some(one => one.trade === id))
    .map(({ title }) => lowerFirst(title));
  const now = changed.length === 0 ? '' : ` That is so for ${changed.join(', ')}.`;
  return `A wage given here counts instead of the rate book. A wage changed under Trades counts instead of both.${now}`;
}

function wagePlace(trade: string): string {
  return `trades/${trade}/wage`;
}

/** The trades at the wages that count: one of the wage table, unless it is changed under Trades itself. */
export function tradesBesideWages(
  table: TableRows,
  { rates }: Project,
  library: Library,
  measures: Measures,
  today: string,
): TableRows {
  const rows = table.rows.map((row): Row => {
    const trade = library.rateBook.trades.find(({ id }) => wagePlace(id) === row.id);
    const given = rates.wages.find(one => one.trade === trade?.id);
    if (trade === undefined || given === undefined || rates.overrides.some(one => one.at === row.id))
      return row;
    const { figure } = given;
    const at = `/rates/overrides/${asStep(row.id)}/figure`;
    const cell = givenCell(at, trade.title, figure, measures);
    const value = {
      ...cell,
      edit: atItsPrices(cell.edit, figure, today),
      why: `given:/rates/wages/${trade.id}/figure`,
    };
    return {
      ...row,
      cells: {
        ...row.cells,
        value,
        basis: basisCell(figure.basis, figure.source, value.why),
        source: words(`${figure.source}, from the wage table`),
      },
    };
  });
  return {
    ...table,
    rows: aligned(table.columns, rows),
    note: ['A wage given in the wage table counts here too. One changed here counts instead of it.'],
  };
}
