import type { Finding } from '../base';
import type { Project } from '../project';
import type { Library, WorkItem } from '../work';

/** A clean-up goal that a scenario leaves unmet. */
export interface UnmetGoal {
  readonly material: string;
  readonly title: string;
  readonly goal: string;
  /** Items left out that would meet it. */
  readonly leftOut: readonly string[];
}

/**
 * The clean-up goals that a scenario leaves unmet: of a material that is on board, no item meets its goal, or one that
 * would was left out or brought to nothing, and no item of the project's own takes its place.
 * @param drivers the drivers the ship has.
 * @param would the items that would be in the scenario if nothing were left out.
 */
export function unmetGoals(
  project: Project,
  library: Library,
  drivers: ReadonlySet<string>,
  items: readonly WorkItem[],
  would: readonly WorkItem[],
): UnmetGoal[] {
  const nothing = new Set(
    project.items.filter(row => row.quantity && Number(row.quantity.value) === 0).map(row => row.item),
  );
  const done = items.filter(item => !nothing.has(item.id));
  const isDone = new Set(done.map(item => item.id));
  const own = new Set(project.ownItems.map(item => item.id));
  const doing = byGoal(done);
  const wouldDo = byGoal(would);
  return library.materials.flatMap(({ id, title, goal }): UnmetGoal[] => {
    const onBoard = library.drivers.some(driver => driver.material === id && drivers.has(driver.id));
    if (!onBoard) return [];
    const meeting = doing.get(id) ?? [];
    const leftOut = (wouldDo.get(id) ?? []).filter(item => !isDone.has(item.id));
    if (meeting.some(item => own.has(item.id)) || (meeting.length > 0 && leftOut.length === 0)) return [];
    return [{ material: id, title, goal, leftOut: leftOut.map(item => item.id) }];
  });
}

/** Items by the materials whose goal they meet. */
function byGoal(items: readonly WorkItem[]): ReadonlyMap<string, readonly WorkItem[]> {
  const found = new Map<string, WorkItem[]>();
  for (const item of items)
    for (const material of new Set(item.meets)) {
      const list = found.get(material);
      if (list === undefined) found.set(material, [item]);
      else list.push(item);
    }
  return found;
}

/** Each unmet goal as a finding. */
export function goalFindings(unmet: readonly UnmetGoal[]): Finding[] {
  return unmet.map(({ material, title, goal, leftOut }) => ({
    code: 'goals/unmet',
    weight: 'warns',
    place: leftOut[0] === undefined ? `templates/materials/${material}` : `/items/${leftOut[0]}`,
    message: `${title} is on board and the scenario leaves its clean-up goal unmet: ${goal}`,
    meaning: 'The scenario is not permittable; it takes no part in ranking or recommendation.',
    remedy: 'Put the work back, or add an item of your own that meets the goal.',
    rule: 'EPA 842-B-06-002 (May 2006)',
  }));
}
