import type { Plant } from '../vessel';
import type { WorkItem } from './schema';

/** What decides which items a scenario has. */
export interface Choices {
  readonly options: Readonly<Record<string, string>>;
  readonly plant: Plant;
  readonly drivers: ReadonlySet<string>;
  /** Items the planner added or left out, by id. */
  readonly include: ReadonlyMap<string, boolean>;
}

/** A relationship between two items that are both in the scenario. */
export interface ItemRelationship {
  readonly from: string;
  readonly to: string;
  readonly kind: 'FS' | 'SS' | 'FF' | 'SF';
  readonly lag?: NonNullable<WorkItem['after'][number]['lag']>;
  readonly maximumLag?: NonNullable<WorkItem['after'][number]['maximumLag']>;
}

/**
 * The items of a scenario, in the order of the library. A stream that none of them fills is not hauled, and what is
 * only done for such a stream is left out.
 */
export function chosenItems(items: readonly WorkItem[], choices: Choices): WorkItem[] {
  const chosen = items.filter(item => choices.include.get(item.id) ?? isIn(item, choices));
  const filled = new Set(chosen.flatMap(item => item.wastes.map(waste => waste.stream)));
  return chosen.filter(
    item => choices.include.get(item.id) === true || streamsOf(item).every(stream => filled.has(stream)),
  );
}

/** The waste streams an item is only there for: the one it hauls, and those its conditions name. */
function streamsOf({ disposes, when }: WorkItem): string[] {
  const named = when.flatMap(condition => ('stream' in condition ? [condition.stream] : []));
  return disposes === undefined ? named : [disposes, ...named];
}

function isIn(item: WorkItem, choices: Choices): boolean {
  if (item.disposes === undefined && !choices.drivers.has(item.driver)) return false;
  return item.when.every(condition => {
    if ('option' in condition) return condition.is.includes(choices.options[condition.option] ?? '');
    if ('plant' in condition) return condition.plant.includes(choices.plant);
    return 'stream' in condition || choices.drivers.has(condition.driver);
  });
}

/**
 * The relationships among the items of a scenario. Where an item is not in it, what came after it comes after its
 * own predecessors (finish to start, without the lag of the missing item).
 */
export function itemRelationships(all: readonly WorkItem[], chosen: readonly WorkItem[]): ItemRelationship[] {
  const byId = new Map(all.map(item => [item.id, item]));
  const isChosen = new Set(chosen.map(item => item.id));
  const found = new Map<string, ItemRelationship>();
  for (const item of chosen) {
    for (const after of item.after) {
      for (const from of standIns(after.item, byId, isChosen, new Set())) {
        const direct = from === after.item;
        const relationship: ItemRelationship = direct
          ? {
              from,
              to: item.id,
              kind: after.kind,
              ...(after.lag && { lag: after.lag }),
              ...(after.maximumLag && { maximumLag: after.maximumLag }),
            }
          : { from, to: item.id, kind: 'FS' };
        const id = `${from} ${item.id} ${relationship.kind}`;
        if (from !== item.id && (direct || !found.has(id))) found.set(id, relationship);
      }
    }
  }
  return [...found.values()];
}

function standIns(
  id: string,
  byId: ReadonlyMap<string, WorkItem>,
  isChosen: ReadonlySet<string>,
  seen: Set<string>,
): string[] {
  if (isChosen.has(id)) return [id];
  if (seen.has(id)) return [];
  seen.add(id);
  return (byId.get(id)?.after ?? []).flatMap(after => standIns(after.item, byId, isChosen, seen));
}
