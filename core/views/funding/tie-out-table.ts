import { known } from '../../base';
import { firstDollars } from '../../cash-flow';
import type { Award } from '../../funding';
import { aligned, words } from '../cells';
import { roundText, shownNumber } from '../number-text';
import type { Column, Row, Shown, TableRows } from '../rows';
import { grantId } from './names';

const COLUMNS: readonly Column[] = [
  { key: 'line', title: 'Form line and estimate line', kind: 'words' },
  { key: 'sentence', title: 'What the narrative says', kind: 'words' },
  { key: 'form', title: 'On the form', unit: '$', kind: 'number' },
  { key: 'estimate', title: 'From the estimate', unit: '$', kind: 'number' },
  { key: 'difference', title: 'Difference', unit: '$', kind: 'number' },
];

/** Whole cents as they tie out: `1,234.56`; nothing is `0.00`, because here it says something. */
export function cents(amount: number, why?: string): Shown {
  return {
    text: shownNumber(roundText((amount / 100).toFixed(2), 2), 2),
    ...(why === undefined ? {} : { why }),
  };
}

/** A difference: an accent when it is not nothing. */
export function difference(amount: number, why: string): Shown {
  return { ...cents(amount, why), ...(amount === 0 ? {} : { accent: true as const }) };
}

/** Form line, estimate line behind it, narrative sentence and difference, on one row. */
export function tieOutTable(award: Award): TableRows {
  const { source, rows, narrative, tieOut } = award;
  const sentences = new Map(narrative.map(one => [one.rowId, one.text]));
  const shown = tieOut.flatMap((line): Row[] => {
    const id = `class-${line.classId}`;
    const own = rows.filter(row => row.classId === line.classId);
    const why = (part: string) => grantId('tie', source.id, line.classId, part);
    return [
      {
        id,
        kind: 'group',
        cells: {
          line: words(`${line.classId}  ${line.title}`),
          sentence: words(`${own.length} sentences`),
          form: cents(line.form, why('form')),
          estimate: cents(line.estimate, why('estimate')),
          difference: difference(line.formDifference + line.narrativeDifference, why('difference')),
        },
      },
      ...own.map((row): Row => {
        const text = known(sentences, row.id);
        const told = firstDollars(text) ?? 0;
        const of = grantId('row', source.id, row.id);
        return {
          id: row.id,
          kind: 'line',
          under: id,
          cells: {
            line: words(row.title),
            sentence: words(text),
            form: cents(row.allowable, of),
            estimate: cents(row.total - row.before - row.after - row.notAllowable, of),
            difference: difference(row.allowable - told, of),
          },
        };
      }),
    ];
  });
  return {
    id: `tie-out-${source.id}`,
    caption: `Line by line, ${source.title}`,
    columns: COLUMNS,
    rows: aligned(COLUMNS, shown),
  };
}
