import { BugError, known } from '../base';
import type { Library } from '../work';
import { fewOf, libraryTitles, namesAt, type Titles } from './left-out-names';
import { projectSchema, type Adjustment, type Change, type Project, type Scenario } from './schema';

/** The book that a copy is made without: what the bidder, or the owner, keeps to himself. */
export type LeftOutBook = 'bid' | 'owner';

/** Who reads the copy without a book, what stays behind, and what such a reader can work out all the same. */
export const COPY_READERS: readonly {
  readonly without: LeftOutBook;
  readonly reader: string;
  readonly keeps: string;
}[] = [
  {
    without: 'bid',
    reader: 'the owner',
    keeps:
      'Mark-ups, quotes, vendors, own rates and changed hours and crews stay with you. Whoever opens the copy sees an estimate at the default rates and hours.',
  },
  {
    without: 'owner',
    reader: 'those who bid',
    keeps:
      'Own rates, changes to work items, amounts of alternates, contingency, funding, risk and bids received stay with you. The ship, her quantities and the items and alternates to be priced go along: whoever opens the copy sees an estimate of them at the default rates, which may be near yours.',
  },
];

/** What a copy leaves out, in words, with the number of entries and what they are called. */
export interface LeftOut {
  readonly place: string;
  readonly words: string;
  readonly entries: number;
  /** What the entries are called, each once. */
  readonly names: readonly string[];
  /** The first few names and how many more there are, ready to read. */
  readonly named: string;
}

interface Rule {
  /** Sections that go along. A section that is not named here stays behind: what is new is private until it is named. */
  readonly sections: ReadonlySet<string>;
  /** Fields of an adjusted work item that go along. */
  readonly itemFields: ReadonlySet<string>;
}

const FRAME = ['format', 'version', 'title', 'sample', 'reader', 'statusDate'];
const SHIP = ['vessel', 'site', 'survey', 'calendars', 'options', 'relationships', 'rates', 'contingency'];

const RULES: Readonly<Record<LeftOutBook, Rule>> = {
  bid: {
    sections: new Set([
      ...FRAME,
      ...SHIP,
      'items',
      'funding',
      'benefits',
      'risk',
      'record',
      'notes',
      'scenarios',
    ]),
    itemFields: new Set([
      'item',
      'include',
      'quantity',
      'duration',
      'notBefore',
      'actualStart',
      'actualFinish',
      'remaining',
      'note',
    ]),
  },
  owner: { sections: new Set([...FRAME, ...SHIP, 'bid', 'scenarios']), itemFields: new Set() },
};

/** Fields of the rates that go along with every copy: which book and whose prices, never a price. */
const RATE_FIELDS = new Set(['book', 'priceDate', 'fixedPriceYear']);

const WORDS: ReadonlyMap<string, string> = new Map(
  Object.entries({
    bid: 'Mark-ups, bid items, alternates and who offers',
    'bid/alternates': 'Amounts of alternates',
    'bid/offer': 'Who offers, and until when',
    'bid/lines': 'Work items of this project that stand in bid items',
    quotes: 'Quotes and the names of vendors',
    receivedBids: 'Bids received',
    ownItems: 'Work items of this project with their crews and hours',
    'rates/wages': 'The wage table',
    'rates/overrides': 'Rates changed by hand',
    items: 'Changes made to work items',
    'items/fields': 'Hours and crews of work items',
    funding: 'Funding sources, shares and match',
    benefits: 'Benefit inputs',
    risk: 'Risk register and ranges',
    record: 'Approval, earlier and independent estimates',
    contingency: 'The contingency',
    attachments: 'Attached files, by name',
    notes: 'Notes',
    imports: 'Column mappings of imported files',
    scenarios: 'Changes of scenarios that concern what is left out',
    'scenarios/notes': 'Notes of scenarios',
    decision: 'What the board weighs and has chosen',
    upright: 'What was entered for the upright screen',
  }),
);

/** The fields of an object that say something. */
function given(fields: object): [string, unknown][] {
  return Object.entries(fields).filter(([, value]) => value !== undefined);
}

function entriesOf(value: unknown): number {
  return Array.isArray(value) ? value.length : 1;
}

/** The document, and what is taken out of it as the copy is made. */
class Copying {
  readonly leftOut: LeftOut[] = [];
  readonly #rule: Rule;
  readonly #book: LeftOutBook;
  readonly #titles: Titles;

  constructor(book: LeftOutBook, titles: Titles) {
    this.#book = book;
    this.#titles = titles;
    this.#rule = RULES[book];
  }

  #tell(place: string, left: unknown): void {
    const names = namesAt(place, left, this.#titles);
    const words = known(WORDS, place);
    this.leftOut.push({ place: `/${place}`, words, entries: entriesOf(left), names, named: '' });
  }

  document(project: Project): Record<string, unknown> {
    const kept: Record<string, unknown> = {};
    for (const [name, value] of given(project)) {
      if (this.#rule.sections.has(name)) kept[name] = this.#section(name, value, project);
      else if (name !== 'sha256' && (!Array.isArray(value) || value.length > 0)) this.#tell(name, value);
    }
    // Those who bid go on with a bid of their own, not with the grant budget of the owner.
    return this.#book === 'owner' ? { ...kept, reader: 'bid' } : kept;
  }

  #section(name: string, value: unknown, project: Project): unknown {
    const { rates, items, notes, scenarios } = project;
    if (name === 'rates') return this.#rates(rates);
    if (name === 'items') return this.#items(items);
    if (name === 'notes') return this.#notes(notes);
    if (name === 'scenarios') return scenarios.map(each => this.#scenario(each));
    if (name === 'bid') return this.#bid(project);
    if (name === 'contingency' && this.#book === 'owner') {
      this.#tell('contingency', value);
      return { policy: 'percentage' };
    }
    return value;
  }

  /** What the owner asks prices for goes to those who bid, alternates too; what they may cost, and own work items, do not. */
  #bid({ bid, ownItems }: Project): Project['bid'] {
    if (bid === undefined) return undefined;
    const priced = bid.alternates.filter(({ amount }) => amount !== undefined);
    if (priced.length > 0) this.#tell('bid/alternates', priced);
    if (given(bid.offer ?? {}).length > 0) this.#tell('bid/offer', bid.offer);
    const own = new Set(ownItems.map(item => item.id));
    const named = ownItems.filter(({ id }) => bid.items.some(item => item.lines.includes(id)));
    if (named.length > 0) this.#tell('bid/lines', named);
    const items = bid.items.map(item => ({ ...item, lines: item.lines.filter(line => !own.has(line)) }));
    return { items, alternates: bid.alternates.map(({ id, title }) => ({ id, title })) };
  }

  #rates(rates: Project['rates']): Record<string, unknown> {
    const kept: Record<string, unknown> = {};
    for (const [field, value] of given(rates)) {
      if (RATE_FIELDS.has(field)) kept[field] = value;
      else if (!Array.isArray(value) || value.length > 0) this.#tell(`rates/${field}`, value);
    }
    return kept;
  }

  #items(items: Project['items']): Record<string, unknown>[] {
    const stripped: Adjustment[] = [];
    const kept = items.map(item => {
      const fields = given(item).filter(([field]) => this.#rule.itemFields.has(field));
      if (fields.length < given(item).length) stripped.push(item);
      return Object.fromEntries(fields);
    });
    if (stripped.length > 0) this.#tell('items/fields', stripped);
    return kept;
  }

  #notes(notes: Project['notes']): Project['notes'] {
    const left = notes.filter(note => !this.#goesAlong(note));
    if (left.length > 0) this.#tell('notes', left);
    return notes.filter(note => this.#goesAlong(note));
  }

  /** Whether the place that a note or a change is about is in the copy, whole. */
  #goesAlong({ at }: { readonly at: string }): boolean {
    const [section = '', first = '', second, field] = at.split('/').slice(1);
    if (!this.#rule.sections.has(section)) return false;
    if (section === 'rates') return RATE_FIELDS.has(first);
    if (section === 'contingency') return this.#book !== 'owner';
    // Of the bid what is asked for goes along: an item, the words of an alternate. The rest would tell an amount.
    if (section === 'bid') return first === 'items' || (first === 'alternates' && field === 'title');
    return section !== 'items' || (second !== undefined && this.#rule.itemFields.has(second));
  }

  #scenario(scenario: Scenario): Scenario {
    const { changes, note, ...rest } = scenario;
    const kept = changes.filter(change => this.#goesAlong(change));
    const left = changes.filter(change => !this.#goesAlong(change));
    if (left.length > 0) this.#tell('scenarios', left);
    if (this.#book === 'bid') return { ...scenario, changes: kept };
    if (note !== undefined) this.#tell('scenarios/notes', [scenario]);
    return { ...rest, changes: kept.map(withoutNote) };
  }
}

function withoutNote(change: Change): Change {
  const { note: _note, ...rest } = change;
  return rest;
}

/**
 * A copy of the project for someone else: without the bid book (mark-ups, quotes, vendors, hours and crews) or
 * without the owner's book (estimate, funding, risk, bids received), and the list of what was left out. Names
 * inside free text that goes along, such as the title, are the user's to look through.
 */
export function copyForOthers(
  project: Project,
  without: LeftOutBook,
  library: Library,
): { readonly project: Project; readonly leftOut: readonly LeftOut[] } {
  const copying = new Copying(without, libraryTitles(library));
  const kept = copying.document(project);
  const parsed = projectSchema.safeParse(kept);
  if (!parsed.success) throw new BugError(`a copy does not fit the schema: ${parsed.error.message}`);
  return { project: parsed.data, leftOut: merged(copying.leftOut) };
}

/** One entry for each place, each name once. */
function merged(all: readonly LeftOut[]): LeftOut[] {
  const byPlace = new Map<string, LeftOut>();
  for (const each of all) {
    const before = byPlace.get(each.place);
    const names = [...new Set([...(before?.names ?? []), ...each.names])];
    const entries = (before?.entries ?? 0) + each.entries;
    byPlace.set(each.place, { ...each, entries, names, named: fewOf(names) });
  }
  return [...byPlace.values()];
}
