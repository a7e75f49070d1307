import { topologicalOrder } from '../../core/base';
import { presenceOf } from '../../core/materials';
import { STAGES, type Library } from '../../core/work';
import type { Fault } from './checks';
import { driversOf, planOf, sameWork, type LibraryScenario } from './scenarios';

export const LEAST_DRIVERS = 30;

/** Fewer different drivers than a library needs that does not scale everything by one size. */
export function fewDrivers(library: Library): Fault[] {
  const count = new Set(library.items.map(item => item.driver)).size;
  return count >= LEAST_DRIVERS ? [] : [`only ${count} different drivers`];
}

/** Two items with the same driver, rate, crew and waste are one item counted twice. */
export function twinItems(library: Library): Fault[] {
  const seen = new Map<string, string>();
  return library.items.flatMap(item => {
    const other = seen.get(sameWork(item));
    seen.set(sameWork(item), item.id);
    return other === undefined ? [] : [`${other} and ${item.id} are the same work`];
  });
}

/** Stages without work in a scenario. */
export function emptyStages(library: Library, scenario: LibraryScenario): Fault[] {
  const { items } = planOf(library, scenario);
  return STAGES.filter(stage => !items.some(item => item.stage === stage)).map(
    stage => `${scenario.type.id}: no work in ${stage}`,
  );
}

/** Clean-up goals of materials on board that no item of the scenario meets. */
export function goalsWithoutItem(library: Library, scenario: LibraryScenario): Fault[] {
  const { items } = planOf(library, scenario);
  const met = new Set(items.flatMap(item => item.meets));
  const drivers = driversOf(library, scenario);
  return library.materials
    .filter(material => (presenceOf(material, { built: scenario.built })?.likely ?? 0) > 0)
    .filter(({ id }) => library.drivers.some(row => row.material === id && drivers.has(row.id)))
    .filter(({ id }) => !met.has(id))
    .map(({ id }) => `${scenario.type.id}: nothing meets the goal of ${id}`);
}

/** Items of a scenario that wait for each other in a circle. */
export function circles(library: Library, scenario: LibraryScenario): Fault[] {
  const { items, relationships } = planOf(library, scenario);
  const number = new Map(items.map((item, index) => [item.id, index]));
  const pairs = relationships.map(({ from, to }): [number, number] => [
    number.get(from) ?? -1,
    number.get(to) ?? -1,
  ]);
  const found = topologicalOrder(items.length, pairs);
  return 'loop' in found ? [found.loop.map(index => items[index]?.id ?? '').join(' -> ')] : [];
}

/** How many items each stage has, as one line. */
export function stageLine(library: Library, scenario: LibraryScenario): string {
  const { items } = planOf(library, scenario);
  return STAGES.map(stage => items.filter(item => item.stage === stage).length).join(' ');
}
