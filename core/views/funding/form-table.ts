import { at, known, withId } from '../../base';
import type { Award, Sf424a, Sf424c } from '../../funding';
import { aligned, words } from '../cells';
import { dollarCell } from '../context';
import type { Column, Row, Shown, TableRows } from '../rows';
import { wholeDollars, wholeDollarTable } from '../whole-dollars';
import { grantId } from './names';

const money = (key: string, title: string): Column => ({ key, title, unit: '$', kind: 'number' });

/** The form of an award: object classes by activity, or the lines of a construction budget. */
export function formTable(award: Award): TableRows {
  return award.form.kind === 'SF-424A' ? classTable(award, award.form) : constructionTable(award, award.form);
}

/** Section B of SF-424A in whole dollars, without its sums: section A takes its totals from here. */
export function objectClasses({ activities, sectionB }: Sf424a) {
  const added = sectionB.filter(line => !['i', 'k', '7'].includes(line.id));
  const cells = added.map(line => activities.map(({ id }) => line.byActivity[id] ?? 0));
  return { added, shown: wholeDollarTable(cells) };
}

/** Section B of SF-424A in whole dollars: every column adds up to line k, every row to its total. */
function classTable({ source }: Award, form: Sf424a): TableRows {
  const activities = form.activities.map(activity => activity.id);
  const { added, shown } = objectClasses(form);
  const columns: readonly Column[] = [
    { key: 'id', title: 'Line', kind: 'words' },
    { key: 'title', title: 'Object class', kind: 'words' },
    ...form.activities.map(activity => money(activity.id, activity.title)),
    money('total', 'Total'),
  ];
  const why = (line: string, activity?: string) =>
    grantId('class', source.id, line, ...(activity === undefined ? [] : [activity]));
  const row = (
    id: string,
    title: string,
    cells: readonly number[],
    total: number,
    kind: Row['kind'],
  ): Row => ({
    id,
    kind,
    cells: {
      id: words(id),
      title: words(title),
      ...Object.fromEntries(
        activities.map((activity, place) => [activity, dollarCell(at(cells, place), why(id, activity))]),
      ),
      total: dollarCell(total, why(id)),
    },
  });
  const titleOf = (id: string) => withId(form.sectionB, id).title.replace(/ \(.*\)$/, '');
  const lines = added.map((line, place) =>
    row(line.id, line.title, at(shown.cells, place), at(shown.rowTotals, place), 'line'),
  );
  const indirect = added.findIndex(line => line.id === 'j');
  const direct = row(
    'i',
    titleOf('i'),
    shown.columnTotals.map((total, place) => total - at(at(shown.cells, indirect), place)),
    shown.total - at(shown.rowTotals, indirect),
    'total',
  );
  const rows = [
    ...lines.filter(line => line.id !== 'j'),
    direct,
    ...lines.filter(line => line.id === 'j'),
    row('k', titleOf('k'), shown.columnTotals, shown.total, 'total'),
  ];
  return {
    id: `form-${source.id}`,
    caption: `SF-424A, section B, ${source.title}`,
    columns,
    rows: aligned(columns, rows),
  };
}

const SUMS = new Set(['12', '14', '16']);

/** SF-424C in whole dollars: total less not allowable is allowable on every line. */
function constructionTable({ source }: Award, form: Sf424c): TableRows {
  const columns: readonly Column[] = [
    { key: 'id', title: 'Line', kind: 'words' },
    { key: 'title', title: 'Cost class', kind: 'words' },
    money('total', 'Total'),
    money('notAllowable', 'Not allowable'),
    money('allowable', 'Allowable'),
  ];
  const added = form.lines.filter(line => !SUMS.has(line.id));
  const whole = (part: 'notAllowable' | 'allowable') => wholeDollars(added.map(line => line[part]));
  const [refused, allowed] = [whole('notAllowable'), whole('allowable')];
  const shown = new Map(
    added.map((line, place) => [line.id, { refused: at(refused, place), allowed: at(allowed, place) }]),
  );
  const sum = (ids: readonly string[]) =>
    ids
      .map(id => known(shown, id))
      .reduce((all, one) => ({ refused: all.refused + one.refused, allowed: all.allowed + one.allowed }), {
        refused: 0,
        allowed: 0,
      });
  const classes = added.map(line => line.id).filter(id => Number(id) < 12);
  shown.set('12', sum(classes));
  shown.set('14', sum(['12', '13']));
  const [before, income] = [sum(['14']), sum(['15'])];
  shown.set('16', { refused: before.refused, allowed: before.allowed - income.allowed });
  const rows = form.lines.map(({ id, title }): Row => {
    const one = known(shown, id);
    const cell = (part: string, amount: number): Shown =>
      dollarCell(amount, grantId('line', source.id, id, part));
    return {
      id,
      kind: SUMS.has(id) ? 'total' : 'line',
      cells: {
        id: words(id),
        title: words(title),
        total: cell('total', one.refused + one.allowed),
        notAllowable: cell('notAllowable', one.refused),
        allowable: cell('allowable', one.allowed),
      },
    };
  });
  return {
    id: `form-${source.id}`,
    caption: `SF-424C, ${source.title}`,
    columns,
    rows: aligned(columns, rows),
  };
}
