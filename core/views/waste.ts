import { aligned, basisCell, words } from './cells';
import { basisReader, idOf } from '../sheet';
import { figureCell, type EstimateContext } from './context';
import type { Column, Row, TableRows } from './rows';

const COLUMNS: readonly Column[] = [
  { key: 'title', title: 'Stream', kind: 'words' },
  { key: 'quantity', title: 'Quantity', kind: 'number' },
  { key: 'unit', title: 'Unit', kind: 'unit' },
  { key: 'counts', title: 'Towards the generator category', kind: 'words' },
  { key: 'basis', title: 'Basis', kind: 'basis' },
];

/** Waste by stream, with its weakest basis. */
export function wasteTable(context: EstimateContext): TableRows {
  const { parts, evaluation } = context;
  const { work } = parts;
  const basis = basisReader(work.result);
  const step = work.streams.columns.tonnes;
  const rows = evaluation.library.rateBook.streams.flatMap((stream): Row[] => {
    const figure = work.result.at(step, stream.id);
    if (figure.number === 0) return [];
    const shown = figureCell(context, work.result, step, stream.id, 1);
    const id = idOf(step, stream.id);
    return [
      {
        id: stream.id,
        kind: 'line',
        cells: {
          title: words(stream.title),
          quantity: shown,
          unit: words(shown.unit ?? ''),
          counts: words(stream.counts ? 'counts' : 'does not count'),
          basis: basisCell(basis(id), undefined, id),
        },
      },
    ];
  });
  return { id: 'waste', caption: 'Waste and scrap', columns: COLUMNS, rows: aligned(COLUMNS, rows) };
}
