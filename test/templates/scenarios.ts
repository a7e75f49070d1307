import { chosenItems, itemRelationships, presentDrivers, type Library, type WorkItem } from '../../core/work';
import { plantOf, type HullType, type Plant } from '../../core/vessel';

/** A scenario of the library: a ship of a type and one value of every option. */
export interface LibraryScenario {
  readonly type: HullType;
  readonly built: number;
  readonly plant: Plant;
  readonly options: Readonly<Record<string, string>>;
}

export function defaultOptions(library: Library): Record<string, string> {
  return Object.fromEntries(library.options.map(option => [option.id, option.default]));
}

export function scenarioOf(
  library: Library,
  type: HullType,
  built: number,
  options: Record<string, string> = {},
): LibraryScenario {
  return {
    type,
    built,
    plant: plantOf(undefined, type, built),
    options: { ...defaultOptions(library), ...options },
  };
}

export function driversOf(library: Library, scenario: LibraryScenario, years = { built: scenario.built }) {
  const { type, plant } = scenario;
  return presentDrivers(library.drivers, library.materials, { type, plant, years, measured: new Map() });
}

/** The items of a scenario and how they follow one another. */
export function planOf(library: Library, scenario: LibraryScenario) {
  const { options, plant } = scenario;
  const items = chosenItems(library.items, {
    options,
    plant,
    drivers: driversOf(library, scenario),
    include: new Map(),
  });
  return { items, relationships: itemRelationships(library.items, items) };
}

/** All items that must be finished before an item starts, by finish-to-start relationships alone. */
export function finishedBefore(plan: ReturnType<typeof planOf>, id: string): ReadonlySet<string> {
  const before = new Map<string, string[]>();
  for (const { from, to, kind } of plan.relationships)
    if (kind === 'FS') before.set(to, [...(before.get(to) ?? []), from]);
  const found = new Set<string>();
  const open = [id];
  for (let next = open.pop(); next !== undefined; next = open.pop())
    for (const from of before.get(next) ?? [])
      if (!found.has(from)) {
        found.add(from);
        open.push(from);
      }
  return found;
}

/** Sets of options in which every two values of two options meet at least once. */
export function pairwise(library: Library): Record<string, string>[] {
  const open = new Set<string>();
  const pairs = (set: Record<string, string>) =>
    library.options.flatMap((a, i) =>
      library.options.slice(i + 1).map(b => `${a.id}=${set[a.id] ?? ''}&${b.id}=${set[b.id] ?? ''}`),
    );
  library.options.forEach((a, i) =>
    library.options.slice(i + 1).forEach(b => {
      for (const x of a.values) for (const y of b.values) open.add(`${a.id}=${x.id}&${b.id}=${y.id}`);
    }),
  );
  const sets: Record<string, string>[] = [];
  for (let shift = 0; open.size > 0; shift += 1) {
    const [a, b] = [...open][0]?.split('&').map(part => part.split('=')) ?? [];
    const set: Record<string, string> = {};
    library.options.forEach((option, i) => {
      const value = option.values[(shift * (i + 1) + Math.floor(shift / (i + 2))) % option.values.length];
      set[option.id] = value?.id ?? option.default;
    });
    for (const [id, value] of [a, b].map(part => [part?.[0], part?.[1]]))
      if (id !== undefined && value !== undefined) set[id] = value;
    pairs(set).forEach(pair => open.delete(pair));
    sets.push(set);
  }
  return sets;
}

/** What an item does, as a key: driver, rate, crew and waste. Two items with one key would be one item counted twice. */
export function sameWork(item: WorkItem): string {
  const rates = [item.hoursPerUnit, item.materialPerUnit, item.subcontractPerUnit, item.feePerUnit];
  const fixed = [item.setupHours, item.subcontractFixed, item.feeFixed];
  const duration = item.duration !== undefined && 'value' in item.duration ? item.duration.value : null;
  return JSON.stringify([
    item.driver,
    item.hoursPerUnit === undefined
      ? [[...rates, ...fixed].map(figure => figure?.value ?? null), duration, item.equipment]
      : item.hoursPerUnit.value,
    item.crew ?? null,
    item.wastes.map(waste => [waste.stream, waste.perUnit.value]),
    item.disposes ?? null,
    item.pricedAs ?? null,
  ]);
}
