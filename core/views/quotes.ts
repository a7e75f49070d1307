import type { Evaluation } from '../evaluation';
import type { Project, Quote } from '../project';
import { measuresOf } from '../units';
import type { WorkItem } from '../work';
import type { EstimateContext } from './context';
import { aligned, editCell, givenCell, REMOVE_COLUMN, removeCell, switchCell, words } from './cells';
import { unitFor, unitWords } from './measures';
import { ownUnit } from './timed';
import type { Addition, Choice, Column, Row, Shown, TableRows } from './rows';

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
export function quoteTable(context: EstimateContext): TableRows {
  const { evaluation, parts } = context;
  const { project } = evaluation;
  const titles = new Map(parts.items.map(item => [item.id, item.title]));
  const rows = project.quotes.map((quote): Row => {
    const at = `/quotes/${quote.id}`;
    const of = `the quote of ${quote.vendor}`;
    return {
      id: quote.id,
      kind: 'line',
      subject: quote.id,
      cells: {
        vendor: editCell({ at: `${at}/vendor`, kind: 'text', value: quote.vendor, label: `Vendor of ${of}` }),
        covers: words(quote.covers.map(({ item }) => titles.get(item) ?? item).join('; ')),
        amount: amountCell(quote, `${at}/amount`, `Amount of ${of}`),
        unit: unitCell(context, quote, `${at}/amount/unit`, `What the price of ${of} is for`),
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
    add: addition(itemChoices(parts.items), pricedUnits(context)),
    ...markUpNote(project.quotes, parts.items),
  };
}

/** The amount as it stands on the quote: in its own unit, whatever the reader's measures. */
function amountCell({ amount }: Quote, at: string, label: string): Shown {
  const { unit: _unit, ...cell } = givenCell(at, label, amount, measuresOf(amount.unit));
  return { ...cell, edit: { ...cell.edit, basis: 'quoted' } };
}

const IN_ALL = { id: 'USD', title: '$ in all' };

function priceFor(unit: string): Choice {
  return { id: `USD/${unit}`, title: unitWords(`USD/${unit}`) };
}

/** A lump sum, or a price for what its one work item is measured in. */
function unitCell(context: EstimateContext, { amount, covers }: Quote, at: string, label: string): Shown {
  const { parts, measures } = context;
  const [cover, ...others] = covers;
  const isThere =
    cover !== undefined && others.length === 0 && parts.items.some(({ id }) => id === cover.item);
  const own = isThere ? ownUnit(context, cover.item) : undefined;
  const units = own === undefined ? [] : [own, unitFor(own, measures)];
  const offered = [...new Set([...units.map(unit => `USD/${unit}`), amount.unit])].filter(
    unit => unit !== 'USD',
  );
  const choices = [IN_ALL, ...offered.map(id => ({ id, title: unitWords(id) }))];
  const now = choices.find(one => one.id === amount.unit)?.title;
  return editCell({ at, kind: 'choice', value: amount.unit, label, choices }, now);
}

/** Everything that work items are measured in, in the reader's measures. */
function pricedUnits(context: EstimateContext): readonly Choice[] {
  const own = context.parts.items.map(item => ownUnit(context, item.id));
  const units = new Set(own.map(unit => unitFor(unit, context.measures)).filter(unit => unit !== '1'));
  return [IN_ALL, ...[...units].map(priceFor).toSorted((a, b) => a.title.localeCompare(b.title))];
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

function addition(items: readonly Choice[], units: readonly Choice[]): Addition {
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
      { path: 'amount', kind: 'figure', label: 'Amount, $', unit: 'USD', basis: 'quoted' },
      { path: 'amount/unit', kind: 'choice', label: 'Priced', choices: units },
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
