import { at } from '../../base';
import { QUARTER_TITLES, SECTION_TITLES, laterYearTitle, resourceLines, type Award } from '../../funding';
import { aligned, words } from '../cells';
import { dollarCell } from '../context';
import type { Column, Row, TableRows } from '../rows';
import { roundedDollars, wholeDollars, wholeDollarTable } from '../whole-dollars';
import { objectClasses } from './form-table';
import { grantId } from './names';

const amount = (key: string, title: string): Column => ({ key, title, unit: '$', kind: 'number' });
const TITLE: Column = { key: 'title', title: 'Line', kind: 'words' };

/** Sections A, C, D and E of SF-424A in whole dollars. The construction form has no other sections. */
export function sectionTables({ form, source }: Award): readonly TableRows[] {
  if (form.kind !== 'SF-424A') return [];
  const { sectionA, sectionC, sectionD, sectionE } = form;
  const why = (...parts: readonly string[]) => grantId('section', source.id, ...parts);
  const columnsA = [
    TITLE,
    amount('federal', 'Federal'),
    amount('other', 'Non-federal'),
    amount('total', 'Total'),
  ];
  // What an activity costs stands in section B too, and must be the same there.
  const split = wholeDollarTable(
    [sectionA.lines.map(line => line.federal), sectionA.lines.map(line => line.nonFederal)],
    objectClasses(form).shown.columnTotals,
  );
  const [federal, other] = [at(split.cells, 0), at(split.cells, 1)];
  const sum = (list: readonly number[]) => list.reduce((all, one) => all + one, 0);
  const summary = (id: string, title: string, one: number, two: number, kind: Row['kind']): Row => ({
    id,
    kind,
    cells: {
      title: words(title),
      federal: dollarCell(one, why('A', id, 'federal')),
      other: dollarCell(two, why('A', id, 'nonFederal')),
      total: dollarCell(one + two, why('A', id, 'total')),
    },
  });
  const rowsA = [
    ...sectionA.lines.map((line, place) =>
      summary(line.activityId, line.title, at(federal, place), at(other, place), 'line'),
    ),
    summary('total', 'Total, line 5', at(split.rowTotals, 0), at(split.rowTotals, 1), 'total'),
  ];
  const listed = (
    id: string,
    caption: string,
    entries: readonly (readonly [title: string, cents: number])[],
    whole?: number,
  ): TableRows => {
    const columns = [TITLE, amount('amount', 'Amount')];
    const shown = wholeDollars(
      entries.map(([, cents]) => cents),
      whole,
    );
    const rows = entries.map(([title], place): Row => ({
      id: title,
      kind: 'line',
      cells: { title: words(title), amount: dollarCell(at(shown, place), why(id, String(place))) },
    }));
    const total: Row = {
      id: 'total',
      kind: 'total',
      cells: { title: words('Total'), amount: dollarCell(sum(shown), why(id, 'total')) },
    };
    return {
      id: `${id}-${source.id}`,
      caption,
      columns,
      rows: aligned(columns, whole === undefined ? rows : [...rows, total]),
    };
  };
  const columnsD = [TITLE, amount('federal', 'Federal'), amount('other', 'Non-federal')];
  const rowsD = QUARTER_TITLES.map((title, place): Row => ({
    id: title,
    kind: 'line',
    cells: {
      title: words(title),
      federal: dollarCell(roundedDollars(at(sectionD.federal, place)), why('D', String(place), 'federal')),
      other: dollarCell(
        roundedDollars(at(sectionD.nonFederal, place)),
        why('D', String(place), 'nonFederal'),
      ),
    },
  }));
  return [
    {
      id: `A-${source.id}`,
      caption: SECTION_TITLES.A,
      columns: columnsA,
      rows: aligned(columnsA, rowsA),
    },
    listed(
      'C',
      SECTION_TITLES.C,
      resourceLines(sectionC).map(({ title, amount: cents }) => [title, cents] as const),
      at(split.rowTotals, 1),
    ),
    {
      id: `D-${source.id}`,
      caption: SECTION_TITLES.D,
      columns: columnsD,
      rows: aligned(columnsD, rowsD),
    },
    listed(
      'E',
      SECTION_TITLES.E,
      sectionE.map((cents, place) => [laterYearTitle(place), cents] as const),
    ),
  ];
}
