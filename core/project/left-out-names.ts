import { at, upperFirst } from '../base';
import type { Library } from '../work';

/** Finds what the library calls a row, by its id. */
export type Titles = (id: string) => string | undefined;

/** The names of work items, trades and rates of the library. */
export function libraryTitles({ items, rateBook }: Library): Titles {
  const { trades, crews, equipment, streams, markUps } = rateBook;
  const rows: readonly { readonly id: string; readonly title: string }[] = [
    ...items,
    ...trades,
    ...crews,
    ...equipment,
    ...streams,
    ...markUps,
  ];
  const titles = new Map(rows.map(row => [row.id, row.title]));
  return id => titles.get(id);
}

/** The fields that name an entry, the telling ones first. */
const NAMING = ['title', 'vendor', 'bidder', 'name', 'item', 'trade', 'at', 'id'];

/** Of sections that are one object, the lists whose entries are named. */
const NAMED_LISTS: Readonly<Record<string, readonly string[]>> = {
  bid: ['items', 'alternates'],
  funding: ['sources', 'contracts'],
  benefits: ['uses', 'obligations'],
  risk: ['register', 'surveys', 'ranges'],
};

type Fields = Readonly<Record<string, unknown>>;

function isFields(value: unknown): value is Fields {
  return value !== null && typeof value === 'object' && !Array.isArray(value);
}

/**
 * What the entries at a place are called: by their own title, by the row of the library they are about, or by the
 * part of the section that is filled in.
 */
export function namesAt(place: string, value: unknown, titles: Titles): string[] {
  if (Array.isArray(value)) return value.flatMap(entry => nameOf(entry, titles));
  if (!isFields(value)) return [];
  const named = (NAMED_LISTS[place] ?? []).flatMap(list => namesAt(list, value[list], titles));
  return named.length > 0 ? named : Object.keys(value).filter(isFilled(value)).map(spoken);
}

const isFilled = (fields: Fields) => (field: string) => {
  const value = fields[field];
  return !Array.isArray(value) || value.length > 0;
};

function nameOf(entry: unknown, titles: Titles): string[] {
  if (!isFields(entry)) return [];
  return NAMING.flatMap(field => {
    const found = entry[field];
    if (typeof found !== 'string') return [];
    return [field === 'at' ? spokenPlace(found, titles) : (titles(found) ?? inWords(field, found))];
  }).slice(0, 1);
}

/** Titles and names stand as they were written; a key is put into words. */
function inWords(field: string, found: string): string {
  return field === 'item' || field === 'trade' || field === 'id' ? spoken(found) : found;
}

/** A place of the document in words: the rows of the library by their titles. */
function spokenPlace(place: string, titles: Titles): string {
  const steps = place.split('/').filter(step => step !== '');
  const telling = steps.length > 1 ? steps.slice(1) : steps;
  const words = telling.map(step => titles(step) ?? spoken(step).toLowerCase()).join(', ');
  return upperFirst(words);
}

/** A key in words. */
function spoken(key: string): string {
  const words = key
    .replaceAll('-', ' ')
    .replace(/([a-z])([A-Z])/g, '$1 $2')
    .toLowerCase();
  return upperFirst(words);
}

/** How many names are read out before the rest is counted. */
const FIRST = 4;

/** The first few names, and how many more there are. */
export function fewOf(names: readonly string[]): string {
  const [first, second] = names;
  if (first === undefined) return 'all of it';
  if (second === undefined) return first;
  if (names.length <= FIRST) return `${names.slice(0, -1).join('; ')} and ${at(names, names.length - 1)}`;
  return `${names.slice(0, FIRST - 1).join('; ')} and ${names.length - FIRST + 1} more`;
}
