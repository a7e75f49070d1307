import { BASES } from '../base';
import { monthWords } from '../calendar';
import { aligned, basisCell, words } from './cells';
import { basisReader, idOf } from '../sheet';
import { figureCell, type EstimateContext } from './context';
import { shownNumber } from './number-text';
import type { Column, Row, TableRows, WhyRow, WhyRows } from './rows';

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

const GENERATOR_COLUMNS: readonly Column[] = [
  { key: 'month', title: 'Month', kind: 'words' },
  { key: 'counted', title: 'Counts', unit: 'kg', kind: 'number' },
  { key: 'acute', title: 'Acute', unit: 'kg', kind: 'number' },
  { key: 'category', title: 'Generator category', kind: 'words' },
  { key: 'pickUps', title: 'Pick-ups', kind: 'number' },
];

/** Hazardous waste by calendar month, the category it makes the site, and the pick-ups it asks for. */
export function generatorTable({ parts, evaluation }: EstimateContext): TableRows {
  const months = parts.generator?.months ?? [];
  const rows = months.map((one): Row => {
    const why = `generator:${one.month}`;
    return {
      id: one.month,
      kind: 'line',
      cells: {
        month: words(monthWords(one.month)),
        counted: { text: shownNumber(one.counted.toFixed(3), 1), why },
        acute: { text: shownNumber(one.acute.toFixed(3), 1), why },
        category: { text: one.category, why },
        pickUps: one.pickUps === 0 ? { text: '–', why } : { text: String(one.pickUps), why },
      },
    };
  });
  const large = months.filter(one => one.category === 'large').length;
  const event = evaluation.project.options['episodic-event'] === 'planned';
  const note =
    large === 0
      ? 'The site is never a large generator.'
      : `Large in ${large} ${large === 1 ? 'month' : 'months'}: manifests, 90-day storage and a contingency plan are priced.`;
  return {
    id: 'generator',
    caption: 'Hazardous waste by month',
    columns: GENERATOR_COLUMNS,
    rows: aligned(GENERATOR_COLUMNS, rows),
    note: [event ? `${note} A planned episodic event counts for no month.` : note],
  };
}

/** The generator category of a month: what was generated and the limits it is held against. */
export function generatorWhy({ parts, evaluation }: EstimateContext, id: string): WhyRows | undefined {
  if (!id.startsWith('generator:')) return undefined;
  const month = parts.generator?.months.find(one => one.month === id.slice(10));
  if (month === undefined) return undefined;
  const streams = new Map(evaluation.library.rateBook.streams.map(one => [one.id, one.title]));
  const limit = (point: string): WhyRow[] => {
    const found = evaluation.library.tripPoints.find(one => one.id === point);
    return found === undefined
      ? []
      : [
          {
            depth: 0,
            operator: '',
            value: { text: shownNumber(found.figure.value, 0), unit: 'kg', why: `trip:${point}` },
            words: found.title,
          },
        ];
  };
  return {
    id,
    title: `Hazardous waste of ${monthWords(month.month)}`,
    path: 'Budget, waste',
    value: { text: shownNumber(month.counted.toFixed(3), 1), unit: 'kg that count' },
    words: `The activities that make waste in the month, over their work days: a ${month.category} generator.`,
    rows: [
      ...month.streams.map((stream): WhyRow => ({
        depth: 0,
        operator: '',
        value: { text: '', why: `streams/${stream}/tonnes` },
        words: streams.get(stream) ?? stream,
      })),
      ...['generator-very-small', 'generator-large', 'generator-acute'].flatMap(limit),
    ],
    usedBy: [],
    bases: BASES,
    home: 'budget',
  };
}
