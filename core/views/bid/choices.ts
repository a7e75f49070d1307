import type { Figure } from '../../base';
import type { BidChoices } from '../../project';
import type { BidView } from '../../evaluation';
import type { EstimateContext } from '../context';
import { aligned, editCell, REMOVE_COLUMN, removeCell, switchCell, words } from '../cells';
import type { Measures } from '../measures';
import { optionalFigure } from '../term-rows';
import type { Addition, Column, Row, Shown, TableRows } from '../rows';

const NOTHING = { id: '', title: 'none' };

const ITEM_COLUMNS: readonly Column[] = [
  { key: 'number', title: 'Item', kind: 'words' },
  { key: 'title', title: 'Description', kind: 'words' },
  { key: 'headings', title: 'Headings of the work in it', kind: 'words' },
  { key: 'quantity', title: 'Quantity', kind: 'number' },
  { key: 'unit', title: 'Unit', kind: 'words' },
  { key: 'unitPriced', title: 'Priced by unit', kind: 'words' },
  { key: 'allowance', title: 'Allowance', unit: '$', kind: 'number' },
  REMOVE_COLUMN,
];

/** The headings of the work as items to begin with, each to be changed or taken out; nothing where there are items. */
export function beginBid(
  { evaluation: { project } }: EstimateContext,
  view: BidView,
): BidChoices | undefined {
  const { bid } = project;
  if (view.schedule === undefined || (bid?.items.length ?? 0) > 0) return undefined;
  const items = view.schedule.items.map(({ item: { id, title, unit } }) => ({
    ...{ id, title, unit, unitPriced: false },
    headings: [title],
    lines: [],
  }));
  return items.length === 0 ? undefined : { ...bid, items, alternates: bid?.alternates ?? [] };
}

/** The items of the bid as the owner decides them; without any the headings of the work are the items. */
export function itemChoices({ evaluation: { project, library }, measures }: EstimateContext): TableRows {
  const contract = [...library.items, ...project.ownItems].filter(item => item.contract);
  const titleOf = (line: string) => contract.find(({ id }) => id === line)?.title ?? line;
  const rows = (project.bid?.items ?? []).map((item, index): Row => {
    const at = `/bid/items/${item.id}`;
    return {
      id: item.id,
      kind: 'line',
      cells: {
        number: words(String(index + 1)),
        title: editCell({
          at: `${at}/title`,
          kind: 'text',
          value: item.title,
          label: `Description of ${item.title}`,
        }),
        headings: words([...item.headings, ...item.lines.map(titleOf)].join('; ')),
        quantity: optionalFigure(`${at}/quantity`, `Quantity of ${item.title}`, item.quantity, '1', measures),
        unit: editCell({ at: `${at}/unit`, kind: 'text', value: item.unit, label: `Unit of ${item.title}` }),
        unitPriced: switchCell(`${at}/unitPriced`, `${item.title} priced by unit`, item.unitPriced),
        allowance: optionalFigure(
          `${at}/allowance`,
          `Allowance for ${item.title}`,
          item.allowance,
          'USD',
          measures,
        ),
        remove: removeCell(at, `the bid item ${item.title}`),
      },
    };
  });
  const headings = [...new Set(contract.map(item => item.bidItem))];
  const add: Addition = {
    at: '/bid/items',
    what: 'a bid item',
    idFrom: 'title',
    entry: { headings: [], lines: [] },
    fields: [
      { path: 'title', kind: 'text', label: 'Description' },
      {
        path: 'headings/0',
        kind: 'choice',
        label: 'Heading of the work in it',
        choices: [NOTHING, ...headings.map(id => ({ id, title: id }))],
        optional: true,
      },
      {
        path: 'lines/0',
        kind: 'choice',
        label: 'Or one line of the work, out of its heading',
        choices: [NOTHING, ...contract.map(({ id, title }) => ({ id, title }))],
        optional: true,
      },
      { path: 'unit', kind: 'text', label: 'Unit', value: 'lump sum' },
      {
        path: 'unitPriced',
        kind: 'switch',
        label: 'Priced by unit',
        choices: [
          { id: 'false', title: 'no' },
          { id: 'true', title: 'yes' },
        ],
      },
      { path: 'quantity', kind: 'figure', label: 'Quantity', unit: '1', optional: true },
      { path: 'allowance', kind: 'figure', label: 'Allowance, $', unit: 'USD', optional: true },
    ],
  };
  return {
    id: 'bid-items',
    caption: 'Items of the bid',
    columns: ITEM_COLUMNS,
    rows: aligned(ITEM_COLUMNS, rows),
    ...((project.bid?.items.length ?? 0) === 0 ? {} : { add }),
  };
}

const ALTERNATE_COLUMNS: readonly Column[] = [
  { key: 'title', title: 'Alternate', kind: 'words' },
  { key: 'amount', title: 'Adds', unit: '$', kind: 'number' },
  REMOVE_COLUMN,
];

/** Alternates: what each adds to the base bid, or takes from it. */
export function alternateTable({ evaluation: { project }, measures }: EstimateContext): TableRows {
  const rows = (project.bid?.alternates ?? []).map((one): Row => {
    const at = `/bid/alternates/${one.id}`;
    return {
      id: one.id,
      kind: 'line',
      cells: {
        title: editCell({
          at: `${at}/title`,
          kind: 'text',
          value: one.title,
          label: `Words of the alternate ${one.title}`,
        }),
        amount: alternateAmount(`${at}/amount`, `Amount of ${one.title}`, one.amount, measures),
        remove: removeCell(at, `the alternate ${one.title}`),
      },
    };
  });
  return {
    id: 'alternates',
    caption: 'Alternates',
    columns: ALTERNATE_COLUMNS,
    rows: aligned(ALTERNATE_COLUMNS, rows),
    add: {
      at: '/bid/alternates',
      what: 'an alternate',
      idFrom: 'title',
      entry: {},
      fields: [
        { path: 'title', kind: 'text', label: 'Words, beginning with Add or Deduct' },
        {
          path: 'amount',
          kind: 'figure',
          label: 'Adds, $; less with a minus',
          unit: 'USD',
          optional: true,
        },
      ],
    },
  };
}

/** What an alternate adds or takes; one that nobody has priced says so. */
function alternateAmount(at: string, label: string, amount: Figure | undefined, measures: Measures): Shown {
  const shown = optionalFigure(at, label, amount, 'USD', measures);
  return amount === undefined ? { ...shown, text: 'no price' } : shown;
}
