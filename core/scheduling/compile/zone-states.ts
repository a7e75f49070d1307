import { at, topologicalOrder } from '../../base';
import type { ScheduleProblem } from '../model';

/** A zone state makes one activity wait for another. Positions in `problem.activities`. */
export interface StateOrder {
  readonly from: number;
  readonly to: number;
  readonly state: string;
  readonly zone: string;
}

/** The activities that open, need and end one state of one zone. */
export interface StateUse {
  readonly state: string;
  readonly zone: string;
  readonly openers: readonly number[];
  readonly users: readonly number[];
  readonly enders: readonly number[];
}

/** The uses of states, zone by zone, each list in the order the relationships allow. */
export function stateUses(problem: ScheduleProblem, order: readonly number[]): StateUse[] {
  const zonesInUse = [...new Set(problem.activities.flatMap(a => (a.place === undefined ? [] : [a.place])))];
  const named = order.filter(i => {
    const activity = problem.activities[i];
    return activity?.opensStates ?? activity?.needsStates ?? activity?.endsStates;
  });
  return (problem.zoneStates ?? []).flatMap(({ id: state }) =>
    zonesInUse.flatMap(zone => {
      const having = (key: 'opensStates' | 'needsStates' | 'endsStates') =>
        named.filter(i => {
          const activity = problem.activities[i];
          return activity?.place === zone && (activity[key]?.includes(state) ?? false);
        });
      const use = {
        state,
        zone,
        openers: having('opensStates'),
        users: having('needsStates'),
        enders: having('endsStates'),
      };
      return use.openers.length + use.users.length > 0 ? [use] : [];
    }),
  );
}

/** One opening of a state and the work under it, up to the next opening. */
export interface StateSpell {
  readonly state: string;
  readonly zone: string;
  readonly opener: number;
  readonly users: readonly number[];
}

/**
 * The spells of a state: openings follow each other in the order of the relationships; work that needs the state
 * belongs to the last opening among its predecessors, or else to the first.
 */
export function stateSpells({ state, zone, openers, users }: StateUse, reach: Reach): StateSpell[] {
  const spellOf = spellOfUser(openers, reach);
  return openers.map((opener, spell) => ({
    state,
    zone,
    opener,
    users: users.filter(user => spellOf(user) === spell),
  }));
}

/**
 * The order that zone states impose. What ends the state comes before the first opening, unless it follows an
 * opening or work under it: then it waits for all work of that spell, and the next opening waits for it.
 */
export function stateOrders(use: StateUse, reach: Reach): StateOrder[] {
  const { state, zone, openers, users, enders } = use;
  const spells = stateSpells(use, reach);
  const orders: StateOrder[] = [];
  const add = (from: number | undefined, to: number | undefined) => {
    if (from !== undefined && to !== undefined && from !== to) orders.push({ from, to, state, zone });
  };
  spells.forEach((spell, n) => {
    add(openers[n - 1], spell.opener);
    for (const user of spell.users) add(spell.opener, user);
    // Work of an earlier spell does not run on into the next.
    for (const user of spells[n - 1]?.users ?? []) if (enders.length > 0) add(user, spell.opener);
  });
  const spellOf = spellOfUser(openers, reach);
  for (const ender of enders) {
    const after = Math.max(
      lastOpening(openers, reach, ender),
      ...users.filter(u => reach(u, ender)).map(spellOf),
    );
    for (const user of spells[after]?.users ?? []) add(user, ender);
    add(openers[after], ender);
    add(ender, openers[after + 1]);
  }
  return orders;
}

function lastOpening(openers: readonly number[], reach: Reach, activity: number): number {
  return openers.findLastIndex(opener => reach(opener, activity));
}

function spellOfUser(openers: readonly number[], reach: Reach): (user: number) => number {
  return user => Math.max(0, lastOpening(openers, reach, user));
}

/** Whether the one activity comes before the other by relationships, directly or through others. */
export type Reach = (from: number, to: number) => boolean;

/** Reachability over the relationships, and a topological order of the activities. */
export function reachOf(
  count: number,
  pairs: readonly (readonly [number, number])[],
): { order: readonly number[]; reach: Reach } {
  const sorted = topologicalOrder(count, pairs);
  const successors: number[][] = Array.from({ length: count }, () => []);
  for (const [from, to] of pairs) at(successors, from).push(to);
  const reached = new Map<number, Set<number>>();
  const after = (from: number): Set<number> => {
    const had = reached.get(from);
    if (had) return had;
    const seen = new Set<number>();
    const stack = [from];
    for (let last = stack.pop(); last !== undefined; last = stack.pop()) {
      for (const next of at(successors, last)) {
        if (seen.has(next)) continue;
        seen.add(next);
        stack.push(next);
      }
    }
    reached.set(from, seen);
    return seen;
  };
  return { order: 'order' in sorted ? sorted.order : [], reach: (from, to) => after(from).has(to) };
}
