import { at, valueAt } from '../base';
import type { Finding } from '../base';
import { correlationGroups } from './correlation-groups';
import { isCollapsed, type Distribution } from './distributions';
import { imanConover } from './iman-conover';
import { chunkSize, HypercubeColumn, TRIALS_PER_CHUNK, type TrialPlan } from './latin-hypercube';
import type { Matrix } from './numeric/cholesky';
import type { PreparedRun } from './prepared';

/** Id of the draw that decides whether a driver acts or an event happens. */
export const occurrenceOf = (id: string): string => `${id}#happens`;

/** The levels (0 to 1) of every uncertain thing in the trials of one chunk, by id. */
export interface Levels {
  readonly byId: ReadonlyMap<string, Float64Array>;
  readonly findings: readonly Finding[];
  /** Draws the chunk: the same levels for the same plan, id and chunk, whatever else is drawn. */
  fill(chunk: number): void;
}

/**
 * Lays out the draws of a run: a Latin hypercube column an id, reordered where ranks are correlated.
 * @param only draw no more than these ids and what is correlated with them.
 */
export function levelsOf(prepared: PreparedRun, plan: TrialPlan, only?: ReadonlySet<string>): Levels {
  const isAsked = (id: string) => only === undefined || only.has(id);
  const ids = idsToDraw(prepared).filter(isAsked);
  const byId = new Map(ids.map(id => [id, new Float64Array(TRIALS_PER_CHUNK)]));
  const { groups: all, findings } = correlationGroups(prepared.correlations, correlatable(prepared));
  const groups = all.filter(g => g.ids.some(isAsked));
  for (const g of groups)
    for (const id of g.ids) byId.set(id, byId.get(id) ?? new Float64Array(TRIALS_PER_CHUNK));
  const grouped = new Set(groups.flatMap(g => g.ids));
  const columns = [...byId].map(([id, levels]) => ({ id, levels, column: new HypercubeColumn(plan, id) }));
  const single = columns.filter(c => !grouped.has(c.id));
  const inGroups = groups.map(({ ids: members, target }) => ({
    target,
    members: members.flatMap(id => columns.filter(c => c.id === id)),
  }));
  return {
    byId,
    findings,
    fill(chunk) {
      for (const { column, levels } of single) column.shuffled(chunk, levels);
      for (const { members, target } of inGroups) fillGroup(members, target, chunk, chunkSize(plan, chunk));
    },
  };
}

/** What is wrong with the correlations asked for. */
export function correlationFindings(prepared: PreparedRun): readonly Finding[] {
  return correlationGroups(prepared.correlations, correlatable(prepared)).findings;
}

interface Member {
  readonly levels: Float64Array;
  readonly column: HypercubeColumn;
}

function fillGroup(members: readonly Member[], target: Matrix, chunk: number, n: number): void {
  const orders = members.map(({ column }) => {
    const order = new Uint16Array(n);
    column.strata(chunk, order);
    return order;
  });
  imanConover(orders, n, target);
  const rising = new Float64Array(n);
  members.forEach(({ column, levels }, j) => {
    column.rising(chunk, rising);
    at(orders, j).forEach((stratum, t) => (levels[t] = valueAt(rising, stratum)));
  });
}

function idsToDraw(prepared: PreparedRun): string[] {
  return [
    ...prepared.inputs.filter(i => !isCollapsed(i.distribution)).map(i => i.id),
    ...prepared.drivers.flatMap(d => [d.id, occurrenceOf(d.id)]),
    ...prepared.events.flatMap(e => [e.id, occurrenceOf(e.id)]),
  ];
}

/** Collapsed inputs may stay in a correlation: holding one at its mode moves no other draws. */
function correlatable(prepared: PreparedRun): ReadonlyMap<string, Distribution> {
  return new Map([
    ...prepared.inputs.map(i => [i.id, i.distribution] as const),
    ...prepared.drivers.map(d => [d.id, d.factor] as const),
  ]);
}
