import type { Project } from '../project';
import type { Library } from '../work';
import { aligned, asStep, basisCell, givenCell, words } from './cells';
import { optionalFigure } from './funding/terms';
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
export function wageTable(project: Project, library: Library, measures: Measures): TableRows {
  const rows = library.rateBook.trades.map((trade): Row => {
    const own = project.rates.wages.find(one => one.trade === trade.id)?.figure;
    const book = givenCell('', trade.title, trade.wage, measures);
    const cell = optionalFigure(
      `/rates/wages/${trade.id}/figure`,
      `Wage of ${trade.title.toLowerCase()}`,
      own,
      trade.wage.unit,
      measures,
    );
    return {
      id: trade.id,
      kind: 'line',
      cells: {
        title: words(trade.title),
        book: { text: book.text, why: `given:/rates/overrides/${asStep(`trades/${trade.id}/wage`)}/figure` },
        own: cell,
        basis: basisCell(own?.basis ?? trade.wage.basis, own?.source ?? trade.wage.source, cell.why),
        source: words(own?.source ?? trade.wage.source),
      },
    };
  });
  return { id: 'wages', caption: 'Wage table', columns: COLUMNS, rows: aligned(COLUMNS, rows) };
}
