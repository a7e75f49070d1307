import type { Finding } from '../base';
import { correlationGroups, type CorrelationGroup } from './correlation-groups';
import { isCollapsed, type Distribution } from './distributions';
import { imanConover } from './iman-conover';
import { chunkSize, strata, TRIALS_PER_CHUNK, trialOrder, type TrialPlan } from './latin-hypercube';
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
  const single = [...byId].filter(([id]) => !grouped.has(id));
  const order = new Uint16Array(TRIALS_PER_CHUNK);
  const rising = new Float64Array(TRIALS_PER_CHUNK);
  return {
    byId,
    findings,
    fill(chunk) {
      for (const [id, levels] of single) {
        trialOrder(plan, id, chunk, order);
        place(plan, id, chunk, order, rising, levels);
      }
      for (const group of groups) fillGroup(plan, group, chunk, rising, byId);
    },
  };
}

function fillGroup(
  plan: TrialPlan,
  group: CorrelationGroup,
  chunk: number,
  rising: Float64Array,
  byId: ReadonlyMap<string, Float64Array>,
): void {
  const n = chunkSize(plan, chunk);
  const orders = group.ids.map(() => new Uint16Array(n));
  orders.forEach((order, j) => trialOrder(plan, group.ids[j] ?? '', chunk, order));
  imanConover(orders, n, group.target);
  group.ids.forEach((id, j) => {
    const [order, levels] = [orders[j], byId.get(id)];
    if (order !== undefined && levels !== undefined) place(plan, id, chunk, order, rising, levels);
  });
}

/** Puts the levels of the strata into the order of the trials. */
function place(
  plan: TrialPlan,
  id: string,
  chunk: number,
  order: Uint16Array,
  rising: Float64Array,
  levels: Float64Array,
): void {
  strata(plan, id, chunk, rising);
  const n = chunkSize(plan, chunk);
  for (let t = 0; t < n; t++) levels[t] = rising[order[t] ?? 0] ?? Number.NaN;
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
