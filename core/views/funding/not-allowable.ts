import type { Funding } from '../../project';
import { aligned, editCell, REMOVE_COLUMN, removeCell, words } from '../cells';
import type { EstimateContext } from '../context';
import { optionalFigure } from '../term-rows';
import type { Column, Row, TableRows } from '../rows';

const COLUMNS: readonly Column[] = [
  { key: 'title', title: 'Work item', kind: 'words' },
  { key: 'amount', title: 'Of it', unit: '$', kind: 'number' },
  { key: 'reason', title: 'Why', kind: 'words' },
  REMOVE_COLUMN,
];

/** Cost that a grantor does not allow, by the reader’s own choice; without an amount the whole work item. */
export function notAllowableTable(
  { evaluation, parts, measures }: EstimateContext,
  { notAllowable }: Funding,
): TableRows {
  const known = [...parts.items, ...evaluation.library.items, ...evaluation.project.ownItems];
  const rows = notAllowable.map(({ item, amount, reason }): Row => {
    const at = `/funding/notAllowable/${item}`;
    const title = known.find(({ id }) => id === item)?.title ?? item.replaceAll('-', ' ');
    return {
      id: item,
      kind: 'line',
      cells: {
        title: words(title),
        amount: optionalFigure(
          `${at}/amount`,
          `Cost of ${title} that is not allowable`,
          amount,
          'USD',
          measures,
        ),
        reason: editCell({
          at: `${at}/reason`,
          kind: 'text',
          value: reason,
          label: `Why ${title} is not allowable`,
        }),
        remove: removeCell(at, `${title} from what is not allowable`),
      },
    };
  });
  const taken = new Set(notAllowable.map(({ item }) => item));
  const choices = parts.items.filter(({ id }) => !taken.has(id)).map(({ id, title }) => ({ id, title }));
  return {
    id: 'not-allowable',
    caption: 'Cost that the grant does not allow',
    columns: COLUMNS,
    rows: aligned(COLUMNS, rows),
    note: ['Without an amount it is the whole of the work item. The county bears it.'],
    add: {
      at: '/funding/notAllowable',
      what: 'cost that the grant does not allow',
      entry: {},
      fields: [
        { path: 'item', kind: 'choice', label: 'Work item', choices },
        { path: 'amount', kind: 'figure', label: 'Of it, $', unit: 'USD', optional: true },
        { path: 'reason', kind: 'text', label: 'Why' },
      ],
    },
  };
}
