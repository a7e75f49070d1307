import type { EstimateParts } from '../../evaluation';
import type { MoneySheet } from '../../estimate';
import { letterOf, type EmittedWorkbook } from '../../sheet';
import { headingRow, text } from './cells';
import { inOrder } from './rows';
import type { PaperCell, PaperSheet } from './model';
import { columnRange } from './placed';

const SHEET = 'Labour and crews';

/** Hours, labour and lines by crew: live sums over the sheet Lines. */
export function labourSheet(
  { work, money }: EstimateParts & { readonly money: MoneySheet },
  emitted: EmittedWorkbook,
): PaperSheet | undefined {
  const range = (key: string) => columnRange(emitted, 'lines', key);
  const [crewRange, hourRange, labourRange] = [range('crew'), range('hours'), range('labour')];
  const crews = new Map<string, { title: string; hours: number; cents: number; people: number }>();
  for (const { item } of work.rows) {
    const id = item.crew ?? 'no-crew';
    const [hours, labour] = [
      money.result.number(money.lines.columns.hours, item.id),
      money.result.money(money.lines.columns.labour, item.id),
    ];
    if (hours === undefined || labour === undefined) return undefined;
    const known = crews.get(id) ?? {
      title: titleOf(work, id),
      hours: 0,
      cents: 0,
      people: peopleOf(work, id),
    };
    crews.set(id, { ...known, hours: known.hours + hours, cents: known.cents + labour.cents });
  }
  const rows = [...crews].sort(([, a], [, b]) => b.hours - a.hours);
  const guard = 5 + rows.length;
  return {
    name: SHEET,
    cells: [
      text(1, 1, 'Labour by crew', 'title'),
      text(2, 1, 'Live sums over the sheet Lines. Hours are paid hours of all people of the crew.', 'note'),
      ...headingRow(4, ['Crew', 'Key', 'People', 'Hours', 'Labour, USD']),
      ...inOrder(rows, 5, ([id, crew], row) => [
        text(row, 1, crew.title),
        text(row, 2, id, 'note'),
        {
          row,
          column: 3,
          content: { kind: 'number', value: crew.people, decimals: undefined, role: 'result' },
        },
        sumIf(row, 4, hourRange, crewRange, Math.round(crew.hours * 100) / 100, 'number'),
        sumIf(row, 5, labourRange, crewRange, crew.cents / 100, 'money'),
      ]),
      text(guard, 1, 'Put new crews in above this row.', 'note'),
      text(guard + 1, 1, 'All crews', 'total'),
      ...[4, 5].map(column => allOf(column, guard, rows)),
    ],
    checks: [
      {
        title: 'The hours of the crews are the hours of the lines',
        formula: sumCheck('D', guard, hourRange),
      },
      {
        title: 'The labour of the crews is the labour of the lines',
        formula: sumCheck('E', guard, labourRange),
      },
    ],
    widths: [48, 26, 10, 16, 20],
    headingRows: 4,
    landscape: false,
  };
}

/** The sum of all crews less that of all lines. */
function sumCheck(letter: string, guard: number, lines: string): string {
  return `ROUND('${SHEET}'!${letter}${guard + 1}-SUM(${lines}),2)`;
}

type Crew = readonly [string, { readonly hours: number; readonly cents: number }];

function allOf(column: number, guard: number, rows: readonly Crew[]): PaperCell {
  const letter = letterOf(column);
  const isMoney = column === 5;
  const sum = rows.reduce((all, [, crew]) => all + (isMoney ? crew.cents : crew.hours), 0);
  return {
    row: guard + 1,
    column,
    content: {
      kind: 'formula',
      formula: `ROUND(SUM(${letter}5:${letter}${guard}),2)`,
      result: isMoney ? sum / 100 : Math.round(sum * 100) / 100,
      format: isMoney ? 'money' : 'number',
      decimals: isMoney ? 2 : 1,
    },
    style: 'total',
  };
}

function sumIf(
  row: number,
  column: number,
  range: string,
  keys: string,
  result: number,
  format: 'number' | 'money',
): PaperCell {
  return {
    row,
    column,
    content: {
      kind: 'formula',
      formula: `SUMIFS(${range},${keys},$B${row})`,
      result,
      format,
      decimals: format === 'money' ? 2 : 1,
    },
  };
}

function titleOf(work: EstimateParts['work'], id: string): string {
  return (
    work.crews.crews.scope.rows.find(({ key }) => key === id)?.title ??
    'Without a crew: bought, hired or waited for'
  );
}

function peopleOf(work: EstimateParts['work'], id: string): number {
  return work.crews.crews.scope.index.has(id)
    ? (work.result.number(work.crews.crews.columns.people, id) ?? 0)
    : 0;
}
