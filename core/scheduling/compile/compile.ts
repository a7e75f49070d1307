import { dayOf } from '../../calendar';
import type { ScheduleProblem } from '../model';
import { at, known } from '../../base';
import { crewOf, packActivity, plannedModes } from './compile-activities';
import { packRelationships } from './compile-relationships';
import { demandsOf, packResources } from './compile-resources';
import type { Compiled, CompiledActivity } from './compiled';
import { DayTables } from './day-tables';
import { excludedGroups } from './exclusions';
import { horizonDays } from './horizon';
import { closingMilestones } from './milestones';
import { stateOf } from './progress';
import {
  reachOf,
  stateOrders,
  stateSpells,
  stateUses,
  type StateOrder,
  type StateSpell,
} from './zone-states';

/**
 * Packs a checked problem for the search: days become slots from the horizon start, ids become positions,
 * calendars become index tables, zone states become relationships, crew limits become resources.
 * @param modes the crew of each activity, as positions in its `modes`; absent: the planned ones.
 */
export function compile(
  problem: ScheduleProblem,
  modes: readonly number[] = plannedModes(problem),
): Compiled {
  const horizon = horizonDays(problem);
  const first = dayOf(problem.horizonStart);
  const tables = new DayTables(problem, first, horizon);
  const statusSlot = problem.statusDate === undefined ? 0 : Math.max(0, dayOf(problem.statusDate) - first);
  const position = new Map(problem.activities.map((activity, i) => [activity.id, i]));
  const activities = compileActivities(problem, modes, tables, position);
  const resources = packResources(problem, first, horizon);
  const isAtWork = (i: number) => activities[i]?.isMilestone === false && activities[i].state !== 'finished';
  // Milestones and what has happened exclude nothing.
  const exclusions = excludedGroups(problem, position, isAtWork);
  const states = zoneStateRules(problem, position);
  const relationships = packRelationships(
    problem,
    activities,
    position,
    states.orders,
    tables,
    resources.packed.length,
  );
  const demands = demandsOf(problem, activities, resources.origins);
  const packed = activities.map((compiled, i) =>
    packActivity(at(problem.activities, i), compiled, at(demands, i), tables, statusSlot),
  );
  return {
    problem,
    first,
    activities,
    position,
    statusSlot,
    resources: resources.origins,
    relationships: relationships.origins,
    exclusions: exclusions.map(group => group.exclusion),
    spells: states.spells,
    search: {
      horizon,
      activities: [...packed, ...relationships.anchors],
      resources: resources.packed,
      relationships: relationships.packed,
      calendars: tables.tables,
      exclusions: exclusions.map(({ first, second }) => ({ first, second })),
    },
  };
}

function compileActivities(
  problem: ScheduleProblem,
  modes: readonly number[],
  tables: DayTables,
  position: ReadonlyMap<string, number>,
): CompiledActivity[] {
  const crews = problem.activities.map((activity, i) => crewOf(activity, at(modes, i)));
  const isMilestone = crews.map(
    (crew, i) => crew.workDays === 0 && problem.activities[i]?.consecutive === undefined,
  );
  const isClosing = closingMilestones(problem, position, isMilestone);
  return problem.activities.map((activity, i) => {
    const crew = at(crews, i);
    return {
      mode: at(modes, i),
      crew,
      open: tables.openDays(activity, crew.uses),
      state: stateOf(activity),
      isMilestone: at(isMilestone, i),
      isClosing: at(isClosing, i),
    };
  });
}

function zoneStateRules(
  problem: ScheduleProblem,
  position: ReadonlyMap<string, number>,
): { orders: StateOrder[]; spells: StateSpell[] } {
  if (!problem.zoneStates?.length) return { orders: [], spells: [] };
  const pairs = problem.relationships.map(r => [known(position, r.from), known(position, r.to)] as const);
  const { order, reach } = reachOf(problem.activities.length, pairs);
  const uses = stateUses(problem, order);
  return {
    orders: uses.flatMap(use => stateOrders(use, reach)),
    spells: uses.flatMap(use => stateSpells(use, reach)),
  };
}
