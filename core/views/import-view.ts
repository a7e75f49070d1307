import {
  IMPORT_FIELDS,
  importTable,
  suggestedMapping,
  type ImportKind,
  type ImportMapping,
  type ImportPreview,
  type Project,
  type TextTable,
} from '../project';
import type { Library } from '../work';
import { words } from './cells';
import { datesSaid } from './dates-said';
import { findingWords } from './finding-words';
import type { Column, Row, TableRows } from './rows';

/** What the reader has chosen of an import so far; what is left out is suggested. */
export interface ImportAsk {
  readonly kind: ImportKind;
  readonly title: string;
  readonly table: TextTable;
  readonly mapping?: ImportMapping;
}

/** One field of an import: the column it comes from, or the words that hold for the whole file. */
export interface ImportField {
  readonly field: string;
  readonly title: string;
  readonly required: boolean;
  readonly heading: string;
  readonly constant: string;
}

/** An import before it is taken: how it is read, what it would change, and the sections as they would be. */
export interface ImportView {
  readonly mapping: ImportMapping;
  readonly headings: readonly string[];
  readonly fields: readonly ImportField[];
  /** Words of the file for materials, trades and the like, and what each means in the document. */
  readonly meanings: readonly { readonly word: string; readonly means: string }[];
  readonly meaningChoices: readonly { readonly id: string; readonly title: string }[];
  readonly summary: string;
  readonly changes: TableRows;
  readonly findings: readonly string[];
  readonly sections: Pick<Project, 'vessel' | 'survey' | 'rates' | 'quotes'> & {
    imports: Project['imports'];
  };
  readonly count: number;
}

const TITLES: Readonly<Record<string, string>> = {
  sample: 'Sample',
  material: 'Material',
  analyte: 'Analyte',
  result: 'Result',
  unit: 'Unit',
  date: 'Date',
  space: 'Space',
  qualifier: 'Qualifier',
  reportingLimit: 'Reporting limit',
  title: 'Name',
  capacity: 'Capacity',
  contents: 'Contents',
  sounding: 'Sounding',
  mass: 'Mass',
  massUnit: 'Unit of mass',
  lengthUnit: 'Unit of length',
  vcg: 'Centre above the keel',
  lcg: 'Centre forward of midships',
  tcg: 'Centre to starboard',
  item: 'Item',
  price: 'Price',
  vendor: 'Vendor',
  quantity: 'Quantity',
  dated: 'Dated',
  validUntil: 'Valid until',
  trade: 'Trade',
  wage: 'Wage',
  basis: 'Basis',
  source: 'Source',
  year: 'Price year',
};

/** The field of each kind whose words must be words of the document. */
const NAMED: Readonly<Partial<Record<ImportKind, string>>> = {
  laboratory: 'material',
  wages: 'trade',
  prices: 'item',
};

const COLUMNS: readonly Column[] = [
  { key: 'kind', title: 'Change', kind: 'words' },
  { key: 'title', title: 'Of what', kind: 'words' },
  { key: 'before', title: 'Before', kind: 'words' },
  { key: 'after', title: 'After', kind: 'words' },
];
/** Changes shown before the rest is only counted. */
const SHOWN = 40;

/** What an import would do, ready to be shown. */
export function importView(project: Project, library: Library, ask: ImportAsk): ImportView {
  const { kind, table, title } = ask;
  const mapping = ask.mapping ?? suggestedMapping(kind, table, title, project.imports ?? []);
  const preview = importTable(project, library, table, mapping);
  const { vessel, survey, rates, quotes, imports } = preview.project;
  const headings = (table[mapping.headingRow - 1] ?? []).map(one => one.trim()).filter(one => one !== '');
  return {
    mapping,
    headings,
    fields: IMPORT_FIELDS[kind].map(({ field, required }) => ({
      field,
      required,
      title: TITLES[field] ?? field,
      heading: mapping.columns[field] ?? '',
      constant: mapping.constants[field] ?? '',
    })),
    meanings: meaningsOf(kind, table, mapping),
    meaningChoices: choicesOf(kind, library),
    summary: `${preview.added} rows are new, ${preview.changed} change what is there, ${preview.same} say what is there already${preview.left.length === 0 ? '' : `, ${preview.left.length} cannot be taken`}.${preview.notes.map(note => ` ${note}`).join('')}`,
    changes: changeTable(preview),
    findings: preview.findings.map(findingWords).map(datesSaid),
    sections: { vessel, survey, rates, quotes, imports },
    count: preview.added + preview.changed,
  };
}

function meaningsOf(kind: ImportKind, table: TextTable, mapping: ImportMapping): ImportView['meanings'] {
  const heading = mapping.columns[NAMED[kind] ?? ''];
  const at = (table[mapping.headingRow - 1] ?? []).findIndex(
    one => one.trim().toLowerCase() === heading?.trim().toLowerCase(),
  );
  if (heading === undefined || at < 0) return [];
  const found = new Set(
    table
      .slice(mapping.headingRow)
      .map(row => (row[at] ?? '').trim())
      .filter(word => word !== ''),
  );
  return [...found].slice(0, SHOWN).map(word => ({ word, means: mapping.words[word] ?? word }));
}

function choicesOf(kind: ImportKind, library: Library): ImportView['meaningChoices'] {
  if (kind === 'laboratory') return library.materials.map(({ id, title }) => ({ id, title }));
  if (kind === 'wages') return library.rateBook.trades.map(({ id, title }) => ({ id, title }));
  return kind === 'prices' ? library.items.map(({ id, title }) => ({ id, title })) : [];
}

function changeTable({ changes }: ImportPreview): TableRows {
  const rows = changes.slice(0, SHOWN).map((change, at): Row => ({
    id: String(at),
    kind: 'line',
    cells: {
      kind: words(change.kind),
      title: words(datesSaid(change.title)),
      before: words(datesSaid(change.before ?? '')),
      after: words(datesSaid(change.after)),
    },
  }));
  const rest = changes.length - rows.length;
  return {
    id: 'import-changes',
    caption: 'What it would change',
    columns: COLUMNS,
    rows,
    ...(rest > 0 ? { note: [`And ${rest} more.`] } : {}),
  };
}
