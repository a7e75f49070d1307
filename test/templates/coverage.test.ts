import { describe, expect, it } from 'vitest';
import { topologicalOrder } from '../../core/base';
import { FAMILIES, presenceOf } from '../../core/materials';
import { STAGES } from '../../core/work';
import { shipped } from './library';
import { driversOf, finishedBefore, pairwise, planOf, sameWork, scenarioOf } from './scenarios';

const library = shipped();
const { rateBook } = library;
/** Kinds that the command line must know. */
const HULL_TYPES = [
  'freighter',
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
  it('has 120 items or more over all stages and uses more than 30 different drivers', () => {
    expect(library.items.length).toBeGreaterThanOrEqual(120);
    expect(new Set(library.items.map(item => item.driver)).size).toBeGreaterThanOrEqual(30);
    expect(STAGES.filter(stage => !library.items.some(item => item.stage === stage))).toEqual([]);
  });

  it('has no two items with the same driver, rate, crew and waste', () => {
    const seen = new Map<string, string>();
    const twins = library.items.flatMap(item => {
      const other = seen.get(sameWork(item));
      seen.set(sameWork(item), item.id);
      return other === undefined ? [] : [`${other} and ${item.id}`];
    });
    expect(twins).toEqual([]);
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

  it('hauls every stream that an item fills, by exactly one item in every scenario', () => {
    const streams = new Set(library.items.flatMap(item => item.wastes.map(waste => waste.stream)));
    for (const options of pairwise(library)) {
      const [type] = library.hullTypes;
      if (type === undefined) throw new Error('no hull type');
      const { items } = planOf(library, scenarioOf(library, type, 1950, options));
      for (const stream of streams)
        expect(items.filter(item => item.disposes === stream).length, stream).toBe(1);
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
    for (const scenario of cases) {
      const { items, relationships } = planOf(library, scenario);
      const number = new Map(items.map((item, index) => [item.id, index]));
      const pairs = relationships.map(({ from, to }): [number, number] => [
        number.get(from) ?? -1,
        number.get(to) ?? -1,
      ]);
      const found = topologicalOrder(items.length, pairs);
      const loop = 'loop' in found ? found.loop.map(index => items[index]?.id) : [];
      expect(loop, JSON.stringify(scenario.options)).toEqual([]);
    }
  });

  it('have work in every stage and an item for every clean-up goal', () => {
    for (const scenario of cases) {
      const { items } = planOf(library, scenario);
      expect(STAGES.filter(stage => !items.some(item => item.stage === stage))).toEqual([]);
      const met = new Set(items.flatMap(item => item.meets));
      const drivers = driversOf(library, scenario);
      const unmet = library.materials
        .filter(material => (presenceOf(material, { built: scenario.built })?.likely ?? 0) > 0)
        .filter(material => library.drivers.some(d => d.material === material.id && drivers.has(d.id)))
        .filter(material => !met.has(material.id))
        .map(material => material.id);
      expect(unmet, scenario.type.id).toEqual([]);
    }
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
    const counts = library.hullTypes.map(type => {
      const { items } = planOf(library, scenarioOf(library, type, 1955));
      const stages = STAGES.map(stage => `${stage} ${items.filter(item => item.stage === stage).length}`);
      return `${type.id}: ${stages.join(', ')}`;
    });
    expect(counts).toMatchSnapshot();
  });
});
