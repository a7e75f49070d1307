import { describe, expect, test } from 'vitest';
import { shippedLibrary } from '../../../core/evaluation';
import { checkProject, readProject, startingProject, type Project } from '../../../core/project';
import { demoProject } from '../evaluation/demo';

const library = shippedLibrary();
const project = demoProject();

function findingsOf(change: Partial<Project>, code: string) {
  return checkProject({ ...project, ...change }, library).filter(finding => finding.code === code);
}

/** The example with a text of it replaced, as it is read. */
function readWith(from: string, to: string) {
  const text = JSON.stringify(project);
  expect(text).toContain(from);
  return readProject(text.replace(from, to)).findings[0];
}

describe('a document that does not fit its schema is refused with what to do', () => {
  const { length } = project.vessel;
  const written = JSON.stringify(length);
  const without = (field: keyof typeof length) =>
    JSON.stringify(Object.fromEntries(Object.entries(length).filter(([key]) => key !== field)));

  test.each([
    ['unit', 'a number without a unit is not used'],
    ['basis', 'State where the number comes from'],
    ['value', 'Add it.'],
  ] as const)('a length without its %s', (field, remedy) => {
    const finding = readWith(`"length":${written}`, `"length":${without(field)}`);
    expect(finding).toMatchObject({ place: `/vessel/length/${field}` });
    expect(finding?.remedy).toContain(remedy);
  });

  test('an amount or a section of the wrong kind is named with its article', () => {
    expect(readWith(`"value":"${length.value}"`, `"value":${length.value}`)?.remedy).toBe(
      'Write a string there.',
    );
    expect(readWith(`"length":${written}`, '"length":"long"')?.remedy).toBe('Write an object there.');
  });
});

describe('what the schema cannot see', () => {
  test('a range that does not hold its value is told with the ends it has', () => {
    const lightship = { ...project.vessel.length, value: '100', unit: 'm' };
    const rangeOf = (range: { low?: string; high?: string }) => {
      const { low: _low, high: _high, ...bare } = lightship;
      return findingsOf(
        { vessel: { ...project.vessel, length: { ...bare, ...range } } },
        'given/range-order',
      ).map(({ message }) => message);
    };
    expect(rangeOf({ low: '110' })).toEqual(['The range 110 m to – does not hold the value 100 m.']);
    expect(rangeOf({ high: '90' })).toEqual(['The range – to 90 m does not hold the value 100 m.']);
    expect(rangeOf({ low: '90', high: '110' })).toEqual([]);
  });

  test('items that wait for each other are named round to the first; a relationship to no item is another fault', () => {
    const circle = [
      { from: 'ocean-tow', to: 'tank-washing', kind: 'FS' as const },
      { from: 'no-such-work', to: 'tank-washing', kind: 'FS' as const },
    ];
    const [loop] = findingsOf({ relationships: circle }, 'items/loop');
    const names = /circle: (.*)\./.exec(loop?.message ?? '')?.[1]?.split(', then ') ?? [];
    expect(names.length).toBeGreaterThan(2);
    expect(names.at(-1)).toBe(names[0]);
    expect(
      checkProject({ ...project, relationships: circle.slice(1) }, library).map(({ place, message }) => [
        place,
        message.includes('no-such-work'),
      ]),
    ).toContainEqual(['/relationships/0', true]);
  });

  test('an item that hauls a stream away needs no driver, any other a known one', () => {
    const haul = library.items.find(item => item.disposes !== undefined);
    const work = library.items.find(item => item.disposes === undefined);
    if (haul === undefined || work === undefined) throw new Error('the library has both');
    const own = (item: typeof haul) =>
      checkProject(
        { ...project, ownItems: [{ ...item, id: 'own-work', driver: 'no-such-driver' }] },
        library,
      ).filter(({ message }) => message.includes('no-such-driver'));
    expect(own(haul)).toEqual([]);
    expect(own(work)).toHaveLength(1);
  });

  test.each([
    ['confidence', 'a confidence'],
    ['percentage', 'a share'],
  ] as const)('a contingency by %s that has nothing to go by withholds the budget', (policy, words) => {
    const other = policy === 'confidence' ? { share: project.contingency.share } : { confidence: '0.8' };
    const found = findingsOf({ contingency: { policy, ...other } }, 'risk/no-contingency-policy');
    expect(found).toMatchObject([{ place: '/contingency', weight: 'warns' }]);
    expect(found[0]?.message).toContain(`follow ${words}`);
  });
});

describe('a project to start from', () => {
  const point = { reader: 'grant', title: 'New', start: '2027-03-01' } as const;

  test('takes the year of a ship from its type, and from nothing else when the type is not known', () => {
    const [type] = library.hullTypes;
    if (type === undefined) throw new Error('the library has types');
    const year = Number(type.quantities['build-year']?.value);
    expect(startingProject(library, { ...point, hullType: type.id }).vessel.built).toBe(year);
    expect(startingProject(library, { ...point, hullType: type.id, built: 1944 }).vessel.built).toBe(1944);
    const unknown = startingProject(library, { ...point, hullType: 'no-such-type' });
    expect(unknown.vessel.built).toBe(1965);
    expect(checkProject(unknown, library).map(({ place }) => place)).toContain('/vessel/hullType');
  });
});

describe('an own item that names what the library does not have', () => {
  const [first] = library.items;
  if (first === undefined) throw new Error('the library has items');
  const own = { ...first, id: 'own-one', after: [] };

  test.each<readonly [string, Partial<Project['ownItems'][number]>]>([
    ['crew', { crew: 'no-such-one' }],
    ['place', { place: 'no-such-one' }],
    ['driver', { driver: 'no-such-one' }],
    ['condition of work', { conditions: ['no-such-one'] }],
  ])('is told of its %s, instead of leaving it out of the hours without a word', (what, change) => {
    const told = findingsOf({ ownItems: [{ ...own, ...change }] }, 'items/names-nothing');
    expect(told.map(finding => finding.message)).toEqual([`There is no ${what} "no-such-one".`]);
  });
});

describe('crews, pieces and days are read as the numbers they are, so their units must say so', () => {
  const { length } = project.vessel;
  const figure = (value: string, unit: string) => ({ ...length, value, unit });
  const placesOf = (change: Partial<Project>) =>
    findingsOf(change, 'given/not-a-count').map(({ place, remedy }) => [place, remedy]);

  test('of a changed item', () => {
    const inUnits = (count: string, days: string): Partial<Project> => ({
      items: [
        {
          item: 'ocean-tow',
          crews: figure('3', count),
          crewsAtOnce: figure('4', count),
          duration: figure('3', days),
          remaining: figure('2', days),
          note: '',
        },
      ],
    });
    expect(placesOf(inUnits('person', 'month'))).toEqual([
      ['/items/ocean-tow/crews/unit', 'Give it as a plain count.'],
      ['/items/ocean-tow/crewsAtOnce/unit', 'Give it as a plain count.'],
      ['/items/ocean-tow/duration/unit', 'Give it in days or in work days.'],
      ['/items/ocean-tow/remaining/unit', 'Give it in days or in work days.'],
    ]);
    for (const [count, days] of [
      ['each', 'day'],
      ['1', 'work-day'],
    ] as const)
      expect(placesOf(inUnits(count, days))).toEqual([]);
  });

  test('of an own item: a time for each of its driver has a unit of its own', () => {
    const [own] = library.items.filter(item => item.equipment.length > 0);
    if (own === undefined) throw new Error('no item of the library hires anything');
    const { duration: _duration, ...bare } = own;
    const hire = {
      ...own.equipment[0],
      equipment: 'crane',
      count: figure('2', 'h'),
      by: 'work-day' as const,
    };
    const withParts = (parts: object) => ({
      ownItems: [{ ...bare, id: 'own-work', equipment: [], ...parts }],
    });
    expect(
      placesOf(
        withParts({ equipment: [hire], crewsAtOnce: figure('2', 'h'), duration: figure('40', 'h') }),
      ).map(([place]) => place),
    ).toEqual([
      '/ownItems/own-work/crewsAtOnce/unit',
      '/ownItems/own-work/duration/unit',
      '/ownItems/own-work/equipment/crane/count/unit',
    ]);
    const perTonne = { driver: own.driver, perUnit: figure('0.1', 'work-day/t') };
    expect(placesOf(withParts({ duration: perTonne }))).toEqual([]);
  });
});
