import type { Evaluation } from '../evaluation';
import type { Project } from '../project';
import type { WorkItem } from '../work';
import type { EstimateContext } from './context';
import { aligned, editCell, givenCell, REMOVE_COLUMN, removeCell, switchCell, words } from './cells';
import { unitWords } from './measures';
import type { Addition, Column, Row, TableRows } from './rows';

const COLUMNS: readonly Column[] = [
  { key: 'vendor', title: 'Vendor', kind: 'words' },
  { key: 'covers', title: 'Work items it prices', kind: 'words' },
  { key: 'amount', title: 'Amount', kind: 'number' },
  { key: 'unit', title: 'Unit', kind: 'unit' },
  { key: 'dated', title: 'Dated', kind: 'words' },
  { key: 'validUntil', title: 'Valid until', kind: 'words' },
  { key: 'chosen', title: 'Relied on', kind: 'words' },
  { key: 'attachment', title: 'Evidence', kind: 'words', wide: true },
  { key: 'note', title: 'Note', kind: 'words' },
  REMOVE_COLUMN,
];

/** Quotes: who asks how much for what, until when, and whether the estimate rests on it. */
export function quoteTable({ evaluation: { project }, parts, measures }: EstimateContext): TableRows {
  const titles = new Map(parts.items.map(item => [item.id, item.title]));
  const rows = project.quotes.map((quote): Row => {
    const at = `/quotes/${quote.id}`;
    const of = `the quote of ${quote.vendor}`;
    const amount = givenCell(`${at}/amount`, `Amount of ${of}`, quote.amount, measures);
    return {
      id: quote.id,
      kind: 'line',
      subject: quote.id,
      cells: {
        vendor: editCell({ at: `${at}/vendor`, kind: 'text', value: quote.vendor, label: `Vendor of ${of}` }),
        covers: words(quote.covers.map(({ item }) => titles.get(item) ?? item).join('; ')),
        amount,
        unit: words(unitWords(quote.amount.unit)),
        dated: editCell({ at: `${at}/dated`, kind: 'date', value: quote.dated, label: `Date of ${of}` }),
        validUntil: editCell({
          at: `${at}/validUntil`,
          kind: 'date',
          value: quote.validUntil,
          label: `Last day of ${of}`,
        }),
        chosen: switchCell(`${at}/chosen`, `Rely on ${of}`, quote.chosen),
        attachment: editCell({
          at: `${at}/attachment`,
          kind: 'choice',
          value: quote.attachment ?? '',
          choices: [
            { id: '', title: 'none' },
            ...project.attachments.map(one => ({ id: one.name, title: one.name })),
          ],
          label: `File that proves ${of}`,
          optional: true,
        }),
        note: editCell({
          at: `${at}/note`,
          kind: 'text',
          value: quote.note ?? '',
          label: `Note on ${of}`,
          optional: true,
        }),
        remove: removeCell(at, of),
      },
    };
  });
  return {
    id: 'quotes',
    caption: 'Quotes',
    columns: COLUMNS,
    rows: aligned(COLUMNS, rows),
    add: addition(itemChoices(parts.items)),
    ...markUpNote(project.quotes, parts.items),
  };
}

/** Which quotes the contractor's mark-ups come on top of. */
function markUpNote(quotes: Project['quotes'], items: readonly WorkItem[]): Pick<TableRows, 'note'> {
  const contract = new Set(items.filter(item => item.contract).map(({ id }) => id));
  const marked = quotes.filter(
    ({ chosen, covers }) => chosen && covers.some(({ item }) => contract.has(item)),
  );
  if (marked.length === 0) return {};
  const whose = [...new Set(marked.map(({ vendor }) => vendor))].join(', ');
  return {
    note: [
      `A quote for work in the contract is priced as a subcontractor’s: the contractor’s mark-ups come on top. That is so for ${whose}.`,
    ],
  };
}

function addition(items: NonNullable<Addition['fields'][number]['choices']>): Addition {
  return {
    at: '/quotes',
    what: 'a quote',
    idFrom: 'vendor',
    entry: { covers: [{ item: '', share: '1' }], exclusions: [] },
    fields: [
      { path: 'vendor', kind: 'text', label: 'Vendor' },
      {
        path: 'covers/0/item',
        kind: 'choice',
        label: 'Work item it prices',
        choices: items,
      },
      { path: 'amount', kind: 'figure', label: 'Lump sum, $', unit: 'USD', basis: 'quoted' },
      { path: 'dated', kind: 'date', label: 'Dated' },
      { path: 'validUntil', kind: 'date', label: 'Valid until' },
      {
        path: 'chosen',
        kind: 'switch',
        label: 'Rely on it',
        choices: [
          { id: 'true', title: 'yes' },
          { id: 'false', title: 'no' },
        ],
      },
      { path: 'note', kind: 'text', label: 'Note', optional: true },
    ],
  };
}

const COVER_COLUMNS: readonly Column[] = [
  { key: 'vendor', title: 'Vendor', kind: 'words' },
  { key: 'item', title: 'Work item', kind: 'words' },
  { key: 'share', title: 'Share of the item', unit: '0 to 1', kind: 'number' },
  REMOVE_COLUMN,
];

/** What each quote prices, item by item. The last item of a quote stays: without one it prices nothing. */
export function coverTable({ evaluation: { project }, parts }: EstimateContext): TableRows {
  const choices = itemChoices(parts.items);
  const rows = project.quotes.flatMap(quote =>
    quote.covers.map((cover, number): Row => {
      const at = `/quotes/${quote.id}/covers/${number}`;
      const of = `the quote of ${quote.vendor}`;
      const edit = { at: `${at}/item`, kind: 'choice', value: cover.item, choices } as const;
      return {
        id: `${quote.id}-${number}`,
        kind: 'line',
        subject: quote.id,
        cells: {
          vendor: words(quote.vendor),
          item: editCell({ ...edit, label: `Work item ${number + 1} of ${of}` }),
          share: editCell({
            at: `${at}/share`,
            kind: 'decimal',
            unit: '1',
            value: cover.share,
            label: `Share of work item ${number + 1} in ${of}`,
          }),
          ...(quote.covers.length === 1
            ? {}
            : { remove: removeCell(at, `work item ${number + 1} of ${of}`) }),
        },
      };
    }),
  );
  return {
    id: 'covers',
    caption: 'What each quote prices',
    columns: COVER_COLUMNS,
    rows: aligned(COVER_COLUMNS, rows),
  };
}

/** Another work item for each quote. */
export function coverAdditions({ evaluation: { project }, parts }: EstimateContext): readonly Addition[] {
  const choices = itemChoices(parts.items);
  return project.quotes.map(quote => ({
    at: `/quotes/${quote.id}/covers`,
    what: `a work item to the quote of ${quote.vendor}`,
    entry: {},
    fields: [
      { path: 'item', kind: 'choice', label: 'Work item it prices', choices },
      { path: 'share', kind: 'decimal', unit: '1', label: 'Share of the item, 0 to 1', value: '1' },
    ],
  }));
}

/** Which of several quotes takes another work item. */
export function coverHint({ project }: Evaluation): string {
  if (project.quotes.length < 2) return '';
  return 'A work item goes to the quote chosen in the table above, and to the first of them until one is chosen.';
}

function itemChoices(items: readonly { readonly id: string; readonly title: string }[]) {
  return items.map(({ id, title }) => ({ id, title })).toSorted((a, b) => a.title.localeCompare(b.title));
}
