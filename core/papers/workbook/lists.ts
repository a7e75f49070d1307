import { at, type Finding } from '../../base';
import type { Evaluation } from '../../evaluation';
import type { SheetResult } from '../../sheet';
import { givensOf } from './assumptions';
import { headingRow, text } from './cells';
import type { PaperSheet } from './model';

/** A sheet of words: a title, what it is for, and a table of text. */
export function listSheet(
  name: string,
  title: string,
  note: string,
  heads: readonly string[],
  rows: readonly (readonly string[])[],
  widths: readonly number[],
): PaperSheet {
  return {
    name,
    cells: [
      text(1, 1, title, 'title'),
      text(2, 1, note, 'note'),
      ...headingRow(3, heads),
      ...rows.flatMap((row, i) => row.map((words, column) => text(i + 4, column + 1, words, 'words'))),
    ],
    widths,
    headingRows: 3,
    landscape: true,
  };
}

/** All findings, the heaviest first. */
export function findingsSheet(findings: readonly Finding[]): PaperSheet {
  const order = { blocks: 0, warns: 1, notes: 2 };
  const words = { blocks: 'withholds a figure', warns: 'look at', notes: 'note' };
  const rows = [...findings]
    .sort((a, b) => order[a.weight] - order[b.weight])
    .map(finding => [
      words[finding.weight],
      finding.place,
      finding.message,
      finding.meaning ?? '',
      finding.remedy,
      finding.rule ?? '',
    ]);
  return listSheet(
    'Findings',
    'Findings: what is wrong or open in the data',
    rows.length === 0 ? 'None.' : 'A figure that a finding withholds is absent, never zero.',
    ['Weight', 'Where', 'What', 'What it means', 'What to do', 'Rule'],
    rows,
    [18, 30, 50, 40, 50, 30],
  );
}

/** Cautions of the work in this scenario. */
export function cautionsSheet({ library }: Evaluation): PaperSheet {
  return listSheet(
    'Cautions',
    'Cautions: people get hurt in this trade',
    library.cautionClosing,
    ['Work', 'Danger', 'Care', 'Who decides', 'Where to look', 'Basis of that'],
    library.cautions.map(row => [
      row.work,
      row.danger,
      row.care,
      row.decides,
      row.pointer,
      `${row.pointerBasis.basis}: ${row.pointerBasis.source}`,
    ]),
    [26, 34, 50, 26, 36, 40],
  );
}

/** Every source once, with its basis and year, and how many figures rest on it. */
export function sourcesSheet(results: readonly SheetResult[]): PaperSheet {
  const uses = new Map<string, number>();
  for (const { basis, source, year } of givensOf(results)) {
    const key = JSON.stringify([source, basis, year]);
    uses.set(key, (uses.get(key) ?? 0) + 1);
  }
  const rows = [...uses]
    .map(([key, count]) => [...(JSON.parse(key) as string[]), String(count)])
    .sort(byText);
  return listSheet(
    'Sources',
    'Sources: where the figures come from',
    'Each source once; the sheet Assumptions has the figures.',
    ['Source', 'Basis', 'Year', 'Figures'],
    rows,
    [100, 20, 8, 10],
  );
}

function byText(a: readonly string[], b: readonly string[]): number {
  return at(a, 0) < at(b, 0) ? -1 : 1;
}

/** What this scenario changes in the project, and the planner's own changes to items and rates. */
export function changesSheet({ scenario, project }: Evaluation): PaperSheet {
  const rows = [
    ...scenario.changes.map(change => [change.at, wordsOf(change.to), change.note ?? '', 'scenario']),
    ...project.rates.overrides.map(row => [
      `/rates/${row.at}`,
      `${row.figure.value} ${row.figure.unit}`,
      row.note ?? row.figure.source,
      'rates',
    ]),
    ...project.items.map(item => [`/items/${item.item}`, '', item.note, 'items']),
  ];
  return listSheet(
    'Change log',
    'Change log: what differs from the starting values',
    rows.length === 0 ? 'Nothing was changed.' : 'Places as in the project file.',
    ['Where', 'Set to', 'Why', 'Kind'],
    rows,
    [46, 50, 60, 12],
  );
}

function wordsOf(value: unknown): string {
  return typeof value === 'string' ? value : JSON.stringify(value);
}
