import { describe, expect, it } from 'vitest';
import { FAMILIES, presenceOf } from '../../core/materials';
import { STAGES, type Library, type WorkItem } from '../../core/work';
import { circles, emptyStages, fewDrivers, goalsWithoutItem, stageLine, twinItems } from './coverage-faults';
import { shipped } from './library';
import { finishedBefore, pairwise, planOf, scenarioOf } from './scenarios';

const library = shipped();
const { rateBook } = library;
/** Kinds that the command line must know. */
const HULL_TYPES = [
  'freighter',
  'coaster',
  'tanker',
  'workboat',
  'ferry',
  'passenger-ship',
  'trawler',
  'cutter',
  'escort',
  'landing-ship',
  'naval-auxiliary',
  'research-ship',
  'training-ship',
  'aircraft-carrier',
  'barge',
];

describe('hull types', () => {
  it('are all there and say which real kinds each stands for', () => {
    expect(library.hullTypes.map(type => type.id)).toEqual(HULL_TYPES);
    expect(library.hullTypes.filter(type => type.standsFor.length === 0)).toEqual([]);
  });

  it('hold the same quantities, all physical', () => {
    const [first] = library.hullTypes;
    const keys = Object.keys(first?.quantities ?? {}).sort();
    for (const type of library.hullTypes) {
      expect(Object.keys(type.quantities).sort(), type.id).toEqual(keys);
      const money = Object.entries(type.quantities).filter(([, figure]) =>
        /USD|^h$|^h\/|day/.test(figure.unit),
      );
      expect(money, type.id).toEqual([]);
    }
  });

  it('are named by no work item, driver, rate or option', () => {
    const { items, drivers, options } = library;
    const keyed = items.flatMap(item =>
      [...item.when.map(use => JSON.stringify(use)), item.driver].filter(text =>
        HULL_TYPES.some(type => text.includes(`"${type}"`)),
      ),
    );
    const ids = [...drivers, ...options, ...rateBook.crews, ...rateBook.equipment].map(row => row.id);
    expect([...keyed, ...ids.filter(id => HULL_TYPES.includes(id))]).toEqual([]);
  });
});

describe('the work-item library', () => {
  it('has 120 items or more over all stages and uses 30 different drivers or more', () => {
    expect(library.items.length).toBeGreaterThanOrEqual(120);
    expect(fewDrivers(library)).toEqual([]);
    expect(STAGES.filter(stage => !library.items.some(item => item.stage === stage))).toEqual([]);
  });

  it('has no two items with the same driver, rate, crew and waste', () => {
    expect(twinItems(library)).toEqual([]);
  });

  it('leaves no driver, crew, equipment, stream, condition, caution or place unused', () => {
    const text = JSON.stringify([library.items, library.places, library.drivers.map(driver => driver.base)]);
    const bases = new Set(library.drivers.map(driver => driver.base));
    const used = (id: string) => text.includes(`"${id}"`);
    const general = ['costs-and-dates'];
    const unused = [
      ...library.drivers.filter(driver => !used(driver.id) && !bases.has(driver.id)),
      ...[...rateBook.crews, ...rateBook.equipment, ...rateBook.streams, ...rateBook.conditions].filter(
        row => !used(row.id),
      ),
      ...library.cautions.filter(caution => !used(caution.id) && !general.includes(caution.id)),
      ...library.places.filter(place => place.kind !== 'office' && !used(place.id)),
    ].map(row => row.id);
    expect(unused).toEqual([]);
  });

  it('gives every item a range of validity, and a rate with low and high', () => {
    const weak = library.items.filter(
      item =>
        item.valid === undefined ||
        Number(item.valid.from.value) > Number(item.valid.to.value) ||
        (item.hoursPerUnit !== undefined &&
          (item.hoursPerUnit.low === undefined || item.hoursPerUnit.high === undefined)),
    );
    expect(weak.map(item => item.id)).toEqual([]);
  });

  it('keeps the conditions of work out of the rates', () => {
    const CONDITION = /respirator|confined|at height|darkness|poor light|\bheat\b|learning/i;
    const inside = library.items
      .filter(item => CONDITION.test(`${item.hoursPerUnit?.source ?? ''} ${item.hoursPerUnit?.note ?? ''}`))
      .map(item => item.id);
    expect(inside).toEqual([]);
  });

  it('pays the owner’s public staff only for the owner’s own items', () => {
    const owners = new Set(rateBook.crews.filter(crew => crew.employer === 'owner').map(crew => crew.id));
    const wrong = library.items
      .filter(item => item.contract && owners.has(item.crew ?? ''))
      .map(item => item.id);
    expect(wrong).toEqual([]);
  });

  it('hauls every stream that is filled by exactly one item in every scenario, and none that is not', () => {
    const [type] = library.hullTypes;
    if (type === undefined) throw new Error('no hull type');
    for (const built of [1950, 1985])
      for (const options of pairwise(library)) {
        const { items } = planOf(library, scenarioOf(library, type, built, options));
        const filled = new Set(items.flatMap(item => item.wastes.map(waste => waste.stream)));
        for (const { id } of rateBook.streams)
          expect(items.filter(item => item.disposes === id).length, id).toBe(filled.has(id) ? 1 : 0);
      }
  });
});

describe('every hull type and every choice of options', () => {
  const sets = pairwise(library);
  const cases = library.hullTypes.flatMap(type =>
    sets.flatMap(options => [1955, 1985].map(built => scenarioOf(library, type, built, options))),
  );

  it('make at least 500 scenarios, and none of them runs in a circle', () => {
    expect(cases.length).toBeGreaterThanOrEqual(500);
    expect(cases.flatMap(scenario => circles(library, scenario))).toEqual([]);
  });

  it('put every two values of two options together at least once', () => {
    const met = new Set(
      sets.flatMap(set =>
        library.options.flatMap(a => library.options.map(b => `${a.id}=${set[a.id]} ${b.id}=${set[b.id]}`)),
      ),
    );
    const missing = library.options.flatMap((a, i) =>
      library.options
        .slice(i + 1)
        .flatMap(b =>
          a.values.flatMap(x =>
            b.values.flatMap(y =>
              met.has(`${a.id}=${x.id} ${b.id}=${y.id}`) ? [] : [`${a.id}=${x.id} ${b.id}=${y.id}`],
            ),
          ),
        ),
    );
    expect(missing).toEqual([]);
  });

  it('have work in every stage and an item for every clean-up goal', () => {
    expect(
      cases.flatMap(scenario => [...emptyStages(library, scenario), ...goalsWithoutItem(library, scenario)]),
    ).toEqual([]);
  });

  it('of the oldest ships carry all six families', () => {
    for (const type of library.hullTypes) {
      const { items } = planOf(library, scenarioOf(library, type, 1950));
      const families = FAMILIES.filter(
        family =>
          !items.some(item =>
            item.meets.some(id => library.materials.find(m => m.id === id)?.family === family),
          ),
      );
      expect(families, type.id).toEqual([]);
    }
  });

  it('put written acceptance behind every clean-up and before the tow and the sinking', () => {
    for (const scenario of cases.filter((_, index) => index % 7 === 0)) {
      const plan = planOf(library, scenario);
      const behind = finishedBefore(plan, 'acceptance-letter');
      const cleaning = plan.items.filter(item => item.meets.length > 0 && item.driver !== 'stream');
      const late = cleaning.filter(item => !behind.has(item.id)).map(item => item.id);
      expect(late, scenario.type.id).toEqual([]);
      for (const id of ['ocean-tow', 'harbour-tugs', 'removal-of-patches'])
        expect(finishedBefore(plan, id).has('acceptance-letter'), id).toBe(true);
    }
  });

  it('keep the number of items in each stage', () => {
    const options = sets.map((set, i) => `set ${i + 1}: ${Object.values(set).join(' ')}`);
    const counts = cases.map(scenario => {
      const set = sets.findIndex(candidate =>
        Object.entries(candidate).every(([id, value]) => scenario.options[id] === value),
      );
      return `${scenario.type.id} ${scenario.built} set ${set + 1}: ${stageLine(library, scenario)}`;
    });
    expect([`stages: ${STAGES.join(' ')}`, ...options, ...counts]).toMatchSnapshot();
  });
});

describe('the checks of the library', () => {
  const [type] = library.hullTypes;
  if (type === undefined) throw new Error('no hull type');
  const scenario = scenarioOf(library, type, 1955);
  const withItems = (change: (items: readonly WorkItem[]) => readonly WorkItem[]): Library => ({
    ...library,
    items: change(library.items),
  });

  it.each(STAGES)('notice when %s has no work', stage => {
    const spoilt = withItems(items => items.filter(item => item.stage !== stage));
    expect(emptyStages(spoilt, scenario)).toEqual([`${type.id}: no work in ${stage}`]);
  });

  it('notice a goal without an item, of any material', () => {
    const onBoard = library.materials.filter(
      material => (presenceOf(material, { built: 1955 })?.likely ?? 0) > 0,
    );
    expect(onBoard.length).toBeGreaterThan(30);
    for (const { id } of onBoard) {
      const spoilt = withItems(items =>
        items.map(item => ({ ...item, meets: item.meets.filter(met => met !== id) })),
      );
      expect(goalsWithoutItem(spoilt, scenario), id).toEqual([`${type.id}: nothing meets the goal of ${id}`]);
    }
  });

  it('notice an item copied under another name, whatever its title', () => {
    const planted = withItems(items =>
      items.flatMap(item =>
        item.id === 'tank-washing' ? [item, { ...item, id: 'tank-rinsing', title: 'Tanks rinsed' }] : [item],
      ),
    );
    expect(twinItems(planted)).toEqual(['tank-washing and tank-rinsing are the same work']);
    const other = withItems(items =>
      items.flatMap(item =>
        item.id === 'tank-washing' && item.hoursPerUnit !== undefined
          ? [item, { ...item, id: 'tank-rinsing', hoursPerUnit: { ...item.hoursPerUnit, value: '0.123' } }]
          : [item],
      ),
    );
    expect(twinItems(other)).toEqual([]);
  });

  it('notice a library of 29 drivers, and let one of 30 pass', () => {
    const drivers = [...new Set(library.items.map(item => item.driver))];
    const only = (count: number) =>
      withItems(items => items.filter(item => drivers.slice(0, count).includes(item.driver)));
    expect(fewDrivers(only(29))).toEqual(['only 29 different drivers']);
    expect(fewDrivers(only(30))).toEqual([]);
  });

  it('notice a relationship that closes a circle', () => {
    const spoilt = withItems(items =>
      items.map(item =>
        item.id === 'tank-opening'
          ? { ...item, after: [...item.after, { item: 'tank-inspection', kind: 'FS' as const }] }
          : item,
      ),
    );
    expect(circles(spoilt, scenario)[0]).toContain('tank-opening');
  });
});
