import { describe, expect, it, test } from 'vitest';
import { shippedLibrary, TEMPLATE_FILES } from '../../../core/evaluation/templates';
import {
  chosenItems,
  itemRelationships,
  presentDrivers,
  readLibrary,
  type Driver,
  type WorkItem,
} from '../../../core/work';

const library = shippedLibrary();
function first<T>([one]: readonly T[]): T {
  if (one === undefined) throw new Error('the library is empty');
  return one;
}
const figure = (value: string, unit = '1') => ({
  value,
  unit,
  basis: 'judgement' as const,
  source: 'invented',
});

/** An item of nothing but an id and a driver. */
function item(id: string, more: Partial<WorkItem> = {}): WorkItem {
  const { disposes: _disposes, span: _span, ...plain } = first(library.items);
  return { ...plain, id, driver: 'plates', when: [], wastes: [], after: [], meets: [], ...more };
}

describe('the items of a scenario', () => {
  const waste = (stream: string) => ({ wastes: [{ stream, perUnit: figure('1', 't') }] });
  const all = [
    item('cut'),
    item('burn', { when: [{ option: 'method', is: ['burning', 'either'] }] }),
    item('boiler', { when: [{ plant: ['steam'] }] }),
    item('pipes', { when: [{ driver: 'pipes', present: true }] }),
    item('oil', { driver: 'oil', ...waste('oil') }),
    item('haul-oil', { driver: 'stream', disposes: 'oil' }),
    item('profile-oil', { when: [{ stream: 'oil', filled: true }] }),
    item('both', { when: [{ plant: ['steam'] }, { driver: 'pipes', present: true }] }),
  ];
  const chosen = (
    more: {
      options?: Record<string, string>;
      plant?: 'steam' | 'diesel';
      drivers?: string[];
      include?: [string, boolean][];
    } = {},
  ) =>
    chosenItems(all, {
      options: more.options ?? {},
      plant: more.plant ?? 'diesel',
      drivers: new Set(more.drivers ?? ['plates']),
      include: new Map(more.include ?? []),
    })
      .map(({ id }) => id)
      .join(' ');

  test.each([
    ['those of its drivers', {}, 'cut'],
    ['those of an option', { options: { method: 'either' } }, 'cut burn'],
    ['not those of another value of the option', { options: { method: 'sawing' } }, 'cut'],
    ['those of the plant', { plant: 'steam' as const }, 'cut boiler'],
    ['those that wait for a driver', { drivers: ['plates', 'pipes'] }, 'cut pipes'],
    [
      'those for which all conditions hold',
      { plant: 'steam' as const, drivers: ['plates', 'pipes'] },
      'cut boiler pipes both',
    ],
    [
      'the haul of what is filled, and what is done for it',
      { drivers: ['plates', 'oil'] },
      'cut oil haul-oil profile-oil',
    ],
    ['the haul alone without its driver', { drivers: ['oil'] }, 'oil haul-oil'],
    [
      'no haul of what was left out',
      { drivers: ['plates', 'oil'], include: [['oil', false]] as [string, boolean][] },
      'cut',
    ],
    [
      'what the planner put in, filled or not',
      {
        include: [
          ['boiler', true],
          ['haul-oil', true],
          ['cut', false],
        ] as [string, boolean][],
      },
      'boiler haul-oil',
    ],
    [
      'the haul of what the planner put in',
      { include: [['oil', true]] as [string, boolean][] },
      'cut oil haul-oil profile-oil',
    ],
  ])('are %s', (_, choices, ids) => {
    expect(chosen(choices)).toBe(ids);
  });
});

describe('the relationships of a scenario', () => {
  const after = (id: string, more = {}) => ({ item: id, kind: 'FS' as const, ...more });
  const lag = figure('3', 'day');
  const maximumLag = figure('9', 'day');
  const all = [
    item('a'),
    item('b', { after: [after('a', { kind: 'SS', lag })] }),
    item('c', { after: [after('b', { lag, maximumLag })] }),
    item('d', { after: [after('c'), after('b', { kind: 'FF' }), after('gone')] }),
    item('e', { after: [after('f')] }),
    item('f', { after: [after('e'), after('a')] }),
    item('g', { after: [after('e'), after('g')] }),
  ];
  const among = (...ids: string[]) =>
    itemRelationships(
      all,
      all.filter(({ id }) => ids.includes(id)),
    );
  it('are those of its items, with their lags', () => {
    expect(among('a', 'b', 'c', 'd')).toEqual([
      { from: 'a', to: 'b', kind: 'SS', lag },
      { from: 'b', to: 'c', kind: 'FS', lag, maximumLag },
      { from: 'c', to: 'd', kind: 'FS' },
      { from: 'b', to: 'd', kind: 'FF' },
    ]);
  });
  it('pass through what is not in it, finish to start and without its lag', () => {
    expect(among('a', 'd')).toEqual([{ from: 'a', to: 'd', kind: 'FS' }]);
    expect(among('a', 'c')).toEqual([{ from: 'a', to: 'c', kind: 'FS' }]);
    expect(among('b', 'd')).toEqual([
      { from: 'b', to: 'd', kind: 'FS' },
      { from: 'b', to: 'd', kind: 'FF' },
    ]);
  });
  it('end where items go round in a circle, and none leads to itself', () => {
    expect(among('a', 'e', 'g')).toEqual([
      { from: 'a', to: 'e', kind: 'FS' },
      { from: 'e', to: 'g', kind: 'FS' },
    ]);
    expect(among('a', 'g')).toEqual([{ from: 'a', to: 'g', kind: 'FS' }]);
  });
  it('prefer what is said to what is passed through', () => {
    const twice = [
      item('a'),
      item('b', { after: [after('a')] }),
      item('c', { after: [after('b'), after('a', { lag })] }),
    ];
    const chosen = twice.filter(({ id }) => id !== 'b');
    expect(itemRelationships(twice, chosen)).toEqual([{ from: 'a', to: 'c', kind: 'FS', lag }]);
    const turned = [
      item('a'),
      item('b', { after: [after('a')] }),
      item('c', { after: [after('a', { lag }), after('b')] }),
    ];
    expect(
      itemRelationships(
        turned,
        turned.filter(({ id }) => id !== 'b'),
      ),
    ).toEqual([{ from: 'a', to: 'c', kind: 'FS', lag }]);
  });
});

describe('the drivers of a ship', () => {
  const { fixed: _fixed, plant: _plant, material: _material, ...plain } = first(library.drivers);
  const driver = (id: string, more: Partial<Driver> = {}): Driver => ({
    ...plain,
    id,
    base: 'length',
    atReference: figure('5'),
    ...more,
  });
  const material = { ...first(library.materials), id: 'paint', decidedBy: 'built' as const };
  const share = (likely: number) => ({ low: 0, likely, high: likely });
  const era = (from: number, likely: number) => ({ ...first(material.eras), from, share: share(likely) });
  const paint = { ...material, eras: [era(0, 1), era(1980, 0)] };
  const unknown = { ...material, id: 'unknown', eras: [] };
  const drivers = [
    driver('plain'),
    driver('none', { atReference: figure('0') }),
    driver('some-anyway', { atReference: figure('0'), fixed: figure('2') }),
    driver('nothing-fixed', { atReference: figure('0'), fixed: figure('0') }),
    driver('steam', { plant: 'steam' }),
    driver('on-steam', { base: 'steam' }),
    driver('of-hull', { atReference: { hullQuantity: 'propeller-count' } }),
    driver('of-no-hull', { atReference: { hullQuantity: 'no-such-thing' } }),
    driver('paint', { material: 'paint' }),
    driver('unknown', { material: 'unknown' }),
    driver('no-material', { material: 'no-such-material' }),
  ];
  const type = { ...first(library.hullTypes), quantities: { 'propeller-count': figure('1', 'each') } };
  const ship = {
    type,
    plant: 'diesel' as const,
    years: { built: 1960 },
    measured: new Map<string, string>(),
  };
  const always = ['plain', 'some-anyway', 'of-hull'];
  const present = (more: Partial<Parameters<typeof presentDrivers>[2]> = {}) =>
    [...presentDrivers(drivers, [paint, unknown], { ...ship, ...more })].sort();
  const presence = (likely: number) =>
    new Map([['paint', { ...share(likely), basis: 'surveyed' as const, source: 'a survey' }]]);

  test.each([
    ['by plant, hull and years', {}, ['paint', 'no-material']],
    [
      'with what scales from those of its plant',
      { plant: 'steam' as const },
      ['paint', 'no-material', 'steam', 'on-steam'],
    ],
    ['without what was out of use when it was built', { years: { built: 1985 } }, ['no-material']],
    [
      'with what a survey found',
      { years: { built: 1985 }, presence: presence(0.1) },
      ['no-material', 'paint'],
    ],
    ['without what a survey did not find', { presence: presence(0) }, ['no-material']],
    [
      'with what was measured, of whatever plant',
      { measured: new Map([['steam', '3']]) },
      ['paint', 'no-material', 'steam', 'on-steam'],
    ],
    ['without what was measured as none', { measured: new Map([['paint', '0']]) }, ['no-material']],
  ])('are told %s', (_, more, ids) => {
    expect(present(more)).toEqual([...always, ...ids].sort());
  });
});

describe('the templates', () => {
  it('make a library in the order of the stages', () => {
    const { library: read, findings } = readLibrary(TEMPLATE_FILES);
    expect(findings).toEqual([]);
    for (const part of [read?.hullTypes, read?.drivers, read?.options, read?.closures, read?.windows])
      expect(part).not.toEqual([]);
    const stages = [...new Set(read?.items.map(({ stage }) => stage))];
    expect([stages[0], stages.at(-1), stages.length]).toEqual(['title-and-assessment', 'management', 12]);
  });

  test.each([
    [
      'hullTypes',
      { hullTypes: [{ ...first(library.hullTypes), title: 7 }] },
      'hull-types/hullTypes/0/title',
      `row "${first(library.hullTypes).id}": `,
    ],
    ['materials', 3, 'materials/', 'the file: '],
    ['cautions', null, 'cautions/', 'the file: '],
    ['tripPoints', {}, 'trip-points/tripPoints', 'the file: '],
    ['rates', { ...library.rateBook, trades: [{ id: 5 }] }, 'rates/trades/0/id', 'the file: '],
    ['indices', [], 'indices/', 'the file: '],
    ['drivers', { drivers: [{ id: 'a' }, { id: 'b', title: 1 }] }, 'drivers/drivers/0/title', 'row "a": '],
    ['places', { places: [null] }, 'places/places/0', 'the file: '],
    ['options', { options: [{ id: 'x', values: [{ id: 'y' }] }] }, 'options/options/0/title', 'row "x": '],
    ['optionAmounts', { amounts: 'none' }, 'option-amounts/amounts', 'the file: '],
    ['seasons', {}, 'seasons/closures', 'the file: '],
    ['work', [{ items: [] }, { items: [{ id: 'cut' }] }], 'work/2/items/0/stage', 'row "cut": '],
  ])('with a row of %s that does not fit make none, and say which', (file, raw, place, row) => {
    const { library: read, findings } = readLibrary({ ...TEMPLATE_FILES, [file]: raw });
    expect(read).toBeUndefined();
    const one = first(findings);
    expect(one.place).toBe(`templates/${place}`);
    expect(one.message.slice(0, row.length)).toBe(row);
    expect({ ...one, place: '', message: '' }).toEqual({
      code: 'templates/row-does-not-fit',
      weight: 'blocks',
      place: '',
      message: '',
      meaning: 'There is no library, and nothing can be estimated.',
      remedy: 'Correct the row; DEVELOPERS.md says what a row needs.',
    });
  });
  it('name the innermost row that has an id', () => {
    const option = { ...first(library.options), values: [{ id: 'y', title: 3 }] };
    const { findings } = readLibrary({ ...TEMPLATE_FILES, options: { options: [option] } });
    expect(findings.map(({ place, message }) => [place, message.split(':')[0]])).toContainEqual([
      'templates/options/options/0/values/0/title',
      'row "y"',
    ]);
  });
});
