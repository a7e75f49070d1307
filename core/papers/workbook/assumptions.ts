import { homeOf, idOf, type SheetResult, type Step } from '../../sheet';
import { unitShown } from '../unit-shown';
import { headingRow, text } from './cells';
import { largeSheet, partsOfRows } from './large-sheet';
import type { PaperCell, PaperSheet } from './model';

/** One given number of the estimate with where it comes from. */
export interface Assumption {
  readonly id: string;
  readonly title: string;
  readonly value: string;
  readonly unit: string;
  readonly low: string;
  readonly high: string;
  readonly basis: string;
  readonly source: string;
  readonly year: string;
}

/** Every given number with its unit, range, basis, source and year. Flags and rounding steps are left out. */
export function assumptionsSheet(results: readonly SheetResult[]): PaperSheet {
  const titles = ['Figure', 'What it is', 'Value', 'Unit', 'Low', 'High', 'Basis', 'Source', 'Year'];
  const above = [
    text(1, 1, 'Assumptions: every given number and where it comes from', 'title'),
    text(
      2,
      1,
      'published, common practice, from memory, surveyed, quoted, judgement, invented for the demo',
      'note',
    ),
    ...headingRow(3, titles),
  ];
  const parts = partsOfRows(above, givensOf(results), (row, i) => assumptionRow(row, i + 4));
  return largeSheet({ name: 'Assumptions', headingRows: 3, landscape: true }, parts, () => WIDTHS);
}

const [TITLE_WIDTH, SOURCE_WIDTH] = [48, 80];
const WIDTHS = [44, TITLE_WIDTH, 14, 12, 12, 12, 18, SOURCE_WIDTH, 8];
/** Characters of a column that its words leave free, so that none are cut off. */
const SPARE = 6;

/** A row whose words are longer than their column is wrapped. */
function assumptionRow(given: Assumption, row: number): PaperCell[] {
  const { id, title, value, unit, low, high, basis, source, year } = given;
  const all = [id, title, value, unit, low, high, basis, source, year];
  const isLong = title.length > TITLE_WIDTH - SPARE || source.length > SOURCE_WIDTH - SPARE;
  return all.map((words, column) => text(row, column + 1, words, isLong ? 'words' : 'plain'));
}

/** All given numbers of the sheets. */
export function givensOf(results: readonly SheetResult[]): Assumption[] {
  return results.flatMap(({ sheet }) =>
    [
      ...sheet.blocks.flatMap(block => [...block.entries()]),
      ...sheet.tables.flatMap(table => [...table.placed]),
    ].flatMap(assumptionsOf),
  );
}

function assumptionsOf(step: Step): Assumption[] {
  return (step.kind.givens ?? []).flatMap((given, i) => {
    if (given?.value === undefined || given.neutral === true || given.basis === 'schedule') return [];
    const row = step.scope?.rows[i];
    return [
      {
        id: idOf(step, row?.key),
        title: row === undefined ? homeOf(step).title : `${row.title}: ${homeOf(step).title}`,
        value: given.value,
        unit: unitShown(given.unit),
        low: given.low ?? '',
        high: given.high ?? '',
        basis: given.basis,
        source: given.source,
        year: given.year === undefined ? '' : String(given.year),
      },
    ];
  });
}
