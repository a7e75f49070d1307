import { keepingParts, onceFor } from '../base';
import type { EstimateInput } from '../estimate';
import { knownItems, type Project } from '../project';
import {
  chosenItems,
  itemRelationships,
  presentDrivers,
  type Driver,
  type ItemRelationship,
  type Library,
  type WorkItem,
} from '../work';
import { unmetGoals, type UnmetGoal } from './goals';
import { classedItems, noticeRelationships } from './rules';

/** What is done in a scenario, in which order, and which clean-up goals that leaves unmet. */
export interface ScopeOfWork {
  /** The drivers the ship has, in the order of the library. */
  readonly drivers: readonly Driver[];
  readonly items: readonly WorkItem[];
  readonly relationships: readonly ItemRelationship[];
  readonly unmetGoals: readonly UnmetGoal[];
}

/** The scope of a scenario: the items that the ship, the options and the planner call for. */
export function scopeOfWork(project: Project, library: Library, input: EstimateInput): ScopeOfWork {
  const all = classedItems(knownItems(project, library), library, project);
  const { isIn, ...scope } = chosenScope(project, input, all);
  return { ...scope, items: all.filter(item => isIn.has(item.id)) };
}

/** The scope without the items themselves: it stays the same when what they cost or take changes. */
const chosenScope = keepingParts(
  4,
  partsOf,
  (project: Project, input: EstimateInput, all: readonly WorkItem[]) => {
    const { library, options, plant } = input;
    const present = driversOf(input);
    const include = new Map(
      project.items.flatMap((item): [string, boolean][] =>
        item.include === undefined ? [] : [[item.item, item.include]],
      ),
    );
    const scope = { options, plant, drivers: present };
    const items = chosenItems(all, { ...scope, include });
    const would = include.size === 0 ? items : chosenItems(all, { ...scope, include: new Map() });
    return {
      drivers: library.drivers.filter(driver => present.has(driver.id)),
      isIn: new Set(items.map(item => item.id)),
      relationships: [
        ...itemRelationships(all, items),
        ...noticeRelationships(library, items),
        ...ownRelationships(project, items),
      ],
      unmetGoals: unmetGoals(project, library, present, items, would),
    };
  },
);

/** All that the scope looks at: of each item its name, what calls for it, and what it follows, meets and makes. */
function partsOf(project: Project, input: EstimateInput, all: readonly WorkItem[]): readonly unknown[] {
  const { library, options, plant, years, measured, presence, ship } = input;
  const parts: unknown[] = [library, options, plant, years, presence, ship.type, project.relationships];
  for (const [id, given] of measured) parts.push(id, given.value);
  for (const { item, include, quantity } of project.items) parts.push(item, include, quantity?.value);
  for (const item of project.ownItems) parts.push(item.id);
  for (const item of all) parts.push(callsOf(item));
  return parts;
}

const callsOf = onceFor(({ id, driver, disposes, span, when, wastes, after, meets }: WorkItem) => [
  ...[id, driver, disposes, span],
  ...[when, wastes, after, meets],
]);

function driversOf({ library, ship, plant, years, measured, presence }: EstimateInput): ReadonlySet<string> {
  const values = new Map(
    [...measured].flatMap(([id, given]): [string, string][] =>
      given.value === undefined ? [] : [[id, given.value]],
    ),
  );
  return presentDrivers(library.drivers, library.materials, {
    type: ship.type,
    plant,
    years,
    measured: values,
    presence,
  });
}

/** The project's own relationships among the items of the scenario. */
function ownRelationships(project: Project, items: readonly WorkItem[]): ItemRelationship[] {
  const isIn = new Set(items.map(item => item.id));
  return project.relationships
    .filter(({ from, to }) => isIn.has(from) && isIn.has(to))
    .map(({ from, to, kind, lag, maximumLag }) => ({
      from,
      to,
      kind,
      ...(lag && { lag }),
      ...(maximumLag && { maximumLag }),
    }));
}
