import { describe, expect, test } from 'vitest';
import { shippedLibrary } from '../../../core/evaluation';
import {
  copyForOthers,
  projectSchema,
  startingProject,
  writeProject,
  type LeftOutBook,
} from '../../../core/project';

const figure = (value: string, unit: string, source: string) => ({
  value,
  unit,
  basis: 'quoted' as const,
  source,
  year: 2026,
});

/** A project in which everything private is a word or number that stands nowhere else. */
function fullProject() {
  const start = startingProject(shippedLibrary(), {
    reader: 'comparison',
    hullType: 'freighter',
    title: 'Invented freighter',
    start: '2027-01-04',
  });
  return projectSchema.parse({
    ...start,
    rates: {
      ...start.rates,
      wages: [{ trade: 'labourer', figure: figure('71.2345', 'USD/h', 'secret-wage-source') }],
      overrides: [
        { at: '/rates/x', figure: figure('8123.45', 'USD', 'secret-rate-source'), note: 'secret-rate-note' },
      ],
    },
    quotes: [
      {
        id: 'q1',
        vendor: 'Secret Vendor Works',
        dated: '2026-10-01',
        validUntil: '2027-10-01',
        covers: [{ item: 'hull-survey', share: '1' }],
        exclusions: ['secret-exclusion'],
        amount: figure('43210.98', 'USD', 'secret-quote-source'),
        chosen: true,
        attachment: 'secret-quote.pdf',
      },
    ],
    items: [
      {
        item: 'hull-survey',
        hoursPerUnit: figure('3.14159', 'h', 'secret-crew-source'),
        crewsAtOnce: figure('7', '1', 'secret-crews-at-once'),
        quantity: figure('2', '1', 'shared-quantity-source'),
        note: 'shared-item-note',
      },
    ],
    funding: undefined,
    record: { approval: { by: 'Secret Approver', on: '2026-11-02' } },
    receivedBids: [{ id: 'b1', bidder: 'Secret Bidder Yard', prices: [], alternates: [] }],
    contingency: { policy: 'percentage', share: figure('0.1357', '1', 'secret-contingency-source') },
    attachments: [{ name: 'secret-attachment.pdf', sha256: 'ab' }],
    notes: [
      { at: '/quotes/q1', text: 'secret-quote-text' },
      { at: '/vessel/length', text: 'shared-vessel-text' },
      { at: '/items/hull-survey', text: 'secret-item-text' },
    ],
    scenarios: [
      {
        id: 'a',
        title: 'Plain',
        note: 'secret-scenario-note',
        changes: [
          { at: '/quotes/q1/chosen', to: false, note: 'secret-change-note' },
          { at: '/rates/overrides/0', to: 'secret-override-value' },
          { at: '/items/hull-survey/hoursPerUnit', to: 'secret-hours-value' },
          { at: '/site/county', to: 'shared-county' },
        ],
      },
    ],
  });
}

const PRIVATE_OF_BIDDER = [
  '71.2345',
  'secret-wage-source',
  '8123.45',
  'secret-rate-source',
  'secret-rate-note',
  'Secret Vendor Works',
  'secret-exclusion',
  '43210.98',
  'secret-quote-source',
  'secret-quote.pdf',
  '3.14159',
  'secret-crew-source',
  'secret-crews-at-once',
  'secret-quote-text',
  'secret-item-text',
  'secret-change-note',
  'secret-override-value',
  'secret-hours-value',
  'Secret Bidder Yard',
  'secret-attachment.pdf',
];
const PRIVATE_OF_OWNER = [
  ...PRIVATE_OF_BIDDER,
  'Secret Approver',
  '0.1357',
  'secret-contingency-source',
  'secret-scenario-note',
  'shared-quantity-source',
  'shared-item-note',
  'shared-vessel-text',
];

describe.each<[LeftOutBook, readonly string[], readonly string[]]>([
  [
    'bid',
    PRIVATE_OF_BIDDER,
    [
      'shared-quantity-source',
      'shared-item-note',
      'shared-vessel-text',
      'shared-county',
      'Secret Approver',
      '0.1357',
      'secret-scenario-note',
    ],
  ],
  ['owner', PRIVATE_OF_OWNER, ['shared-county']],
])('a copy without the %s’s book', (book, gone, kept) => {
  const full = fullProject();
  const { project, leftOut } = copyForOthers(full, book, shippedLibrary());
  const bytes = writeProject(project);

  test('has none of its values in its bytes', () => {
    expect(gone.filter(value => !writeProject(full).includes(value))).toEqual([]);
    expect(gone.filter(value => bytes.includes(value))).toEqual([]);
  });

  test('keeps what it is shared for', () => {
    expect(kept.filter(value => !bytes.includes(value))).toEqual([]);
    expect(project.vessel).toEqual(full.vessel);
    expect(project.site).toEqual(full.site);
  });

  test('lists every section that is left out, in words', () => {
    const places = leftOut.map(each => each.place);
    for (const place of [
      '/quotes',
      '/receivedBids',
      '/rates/wages',
      '/rates/overrides',
      '/attachments',
      '/scenarios',
    ])
      expect(places).toContain(place);
    expect(leftOut.every(each => each.words.length > 3 && each.entries > 0)).toBe(true);
  });

  test('says which entries are left out, by what people call them', () => {
    const named = new Map(leftOut.map(each => [each.place, each.named]));
    expect(named.get('/quotes')).toBe('Secret Vendor Works');
    expect(named.get('/receivedBids')).toBe('Secret Bidder Yard');
    expect(named.get('/rates/wages')).toBe('Yard labourer');
    expect(named.get('/attachments')).toBe('secret-attachment.pdf');
    expect(named.get(book === 'bid' ? '/items/fields' : '/items')).toMatch(/^[A-Z][a-z]+ [a-z ,]+$/);
    expect([...named.values()].filter(words => words === '' || words.includes('/'))).toEqual([]);
  });

  test('is for the work that its reader has before him', () => {
    expect(project.reader).toBe(book === 'owner' ? 'bid' : 'comparison');
  });

  test('opens again as a whole document', () => {
    expect(projectSchema.safeParse(JSON.parse(bytes)).success).toBe(true);
  });

  test('a section added to the document later stays behind until it is named', () => {
    const known = new Set(Object.keys(projectSchema.shape));
    const along = new Set(Object.keys(copyForOthers(full, book, shippedLibrary()).project));
    const secret = ['quotes', 'receivedBids', 'attachments', 'ownItems', 'imports'];
    for (const name of secret.filter(each => known.has(each)))
      expect(along.has(name) && JSON.stringify(project[name as 'quotes']) !== '[]', name).toBe(false);
  });
});

describe('names of what is left out', () => {
  const vendors = (count: number) => {
    const full = fullProject();
    const [quote] = full.quotes;
    if (quote === undefined) throw new Error('the project has no quote');
    const quotes = Array.from({ length: count }, (_, at) => ({
      ...quote,
      id: `q${at}`,
      vendor: `Yard ${at + 1}`,
    }));
    const { leftOut } = copyForOthers({ ...full, quotes }, 'bid', shippedLibrary());
    return leftOut.find(each => each.place === '/quotes');
  };

  test.each([
    [1, 'Yard 1'],
    [2, 'Yard 1 and Yard 2'],
    [4, 'Yard 1; Yard 2; Yard 3 and Yard 4'],
    [6, 'Yard 1; Yard 2; Yard 3 and 3 more'],
  ])('of %i entries the first few are read out and the rest is counted', (count, words) => {
    const left = vendors(count);
    expect(left?.named).toBe(words);
    expect(left?.names).toHaveLength(count);
    expect(left?.entries).toBe(count);
  });
});

describe('the items of the bid', () => {
  const full = fullProject();
  const [first] = shippedLibrary().items.filter(item => item.contract);
  if (first === undefined) throw new Error('the library has contract work');
  const own = { ...first, id: 'secret-own-work', title: 'Secret own work' };
  const item = { id: 'one', title: 'Clean-up', unit: 'lump sum', unitPriced: false };
  const document = projectSchema.parse({
    ...full,
    ownItems: [own],
    bid: {
      items: [{ ...item, headings: [first.bidItem], lines: [first.id, own.id] }],
      alternates: [
        {
          id: 'more',
          title: 'Add a secret-free alternate',
          amount: figure('76543.21', 'USD', 'secret-alternate'),
        },
      ],
    },
  });

  test('go along to those who bid, alternates without what they may cost, and without own work items', () => {
    const { project, leftOut } = copyForOthers(document, 'owner', shippedLibrary());
    expect(project.bid).toEqual({
      items: [{ ...item, headings: [first.bidItem], lines: [first.id] }],
      alternates: [{ id: 'more', title: 'Add a secret-free alternate' }],
    });
    const bytes = writeProject(project);
    for (const secret of ['secret-own-work', 'Secret own work', '76543.21', 'secret-alternate'])
      expect([secret, bytes.includes(secret)]).toEqual([secret, false]);
    const told = new Map(leftOut.map(each => [each.place, each.named]));
    expect(told.get('/bid/alternates')).toBe('Add a secret-free alternate');
    expect(told.get('/bid/lines')).toBe('Secret own work');
  });

  test('are not told by what scenarios change in them: amounts stay, words go along', () => {
    const changes = [
      { at: '/bid/alternates/more/amount', to: 'secret-amount' },
      { at: '/bid/alternates/new', to: 'secret-entry' },
      { at: '/bid/alternates/more/title', to: 'Add another alternate' },
      { at: '/bid/items/one/title', to: 'Clean-up of all decks' },
    ];
    const scenarios = [{ id: 'a', title: 'Plain', changes }];
    const { project, leftOut } = copyForOthers({ ...document, scenarios }, 'owner', shippedLibrary());
    expect(project.scenarios[0]?.changes).toEqual(changes.slice(2));
    expect(leftOut.find(each => each.place === '/scenarios')?.entries).toBe(2);
  });

  test('go to those who bid without who offers, and to the owner with nothing of the bid', () => {
    const offer = { bidder: 'Secret Offering Yard', contact: 'secret-contact', validUntil: '2027-03-31' };
    const offered = projectSchema.parse({ ...document, bid: { ...document.bid, offer } });
    const { project, leftOut } = copyForOthers(offered, 'owner', shippedLibrary());
    expect(project.bid?.offer).toBeUndefined();
    expect(writeProject(project)).not.toMatch(/Secret Offering Yard|secret-contact|2027-03-31/);
    expect(leftOut.find(each => each.place === '/bid/offer')?.words).toBe('Who offers, and until when');
    const owner = copyForOthers(offered, 'bid', shippedLibrary());
    expect(writeProject(owner.project)).not.toMatch(/Secret Offering Yard|secret-contact/);
    expect(owner.leftOut.find(each => each.place === '/bid')?.words).toContain('who offers');
  });

  test('are asked for by an alternate without an amount, of which there is nothing to tell', () => {
    const open = { ...document, bid: { items: [], alternates: [{ id: 'more', title: 'Add a rail' }] } };
    const { project, leftOut } = copyForOthers(open, 'owner', shippedLibrary());
    expect(project.bid?.alternates).toEqual([{ id: 'more', title: 'Add a rail' }]);
    expect(leftOut.map(each => each.place)).not.toContain('/bid/alternates');
  });

  test('stay with the contractor when the owner reads the copy', () => {
    const { project, leftOut } = copyForOthers(document, 'bid', shippedLibrary());
    expect(project.bid).toBeUndefined();
    expect(leftOut.map(each => each.place)).toContain('/bid');
  });

  test('are nothing to tell of where there are no alternates and no own work in them', () => {
    const plain = {
      ...document,
      ownItems: [],
      bid: { items: [{ ...item, headings: [], lines: [] }], alternates: [] },
    };
    const places = copyForOthers(plain, 'owner', shippedLibrary()).leftOut.map(each => each.place);
    expect(places.filter(place => place.startsWith('/bid'))).toEqual([]);
  });
});
