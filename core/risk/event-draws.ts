import { BugError, valueAt } from '../base';
import type { Adjustment } from './adjustment';
import { modeOf, samplerOf, type Distribution } from './distributions';
import { TRIALS_PER_CHUNK } from './latin-hypercube';
import type { PreparedRun, RegisterEvent } from './prepared';

/** One impact of an event on the column of a line (dollars) or an activity (work days), trial by trial. */
export interface ImpactColumn {
  readonly column: number;
  readonly values: Float64Array;
}

/** The impacts of one event in the chunk drawn last; zero in trials in which it does not happen. */
export interface EventDraws {
  readonly id: string;
  readonly happens: Uint8Array;
  readonly costs: readonly ImpactColumn[];
  readonly delays: readonly ImpactColumn[];
  /** Fills the impacts from the levels of the two draws of the event. */
  fill(n: number, occurrence: Float64Array, severity: Float64Array): void;
}

interface Impact extends ImpactColumn {
  readonly draw: (u: number) => number;
}

/** Makes the impacts of an event ready to be drawn, as adjusted. */
export function eventDraws(event: RegisterEvent, prepared: PreparedRun, adjustment: Adjustment): EventDraws {
  const mitigation = adjustment.mitigated?.includes(event.id) === true ? event.mitigation : undefined;
  const isHeld = adjustment.held?.includes(event.id) === true;
  const asked = mitigation?.probability ?? event.probability;
  const probability = isHeld ? (asked < 0.5 ? 0 : 1) : asked;
  const share = mitigation?.impactLeft ?? 1;
  const impact = (d: Distribution, ids: readonly string[], id: string): Impact => ({
    column: position(ids, id, event.id),
    values: new Float64Array(TRIALS_PER_CHUNK),
    draw: isHeld ? always(modeOf(d) * share) : scaled(samplerOf(d), share),
  });
  const costs = event.costs.map(c => impact(c.dollars, prepared.lines, c.line));
  const delays = event.delays.map(c => impact(c.workDays, prepared.activities, c.activity));
  const happens = new Uint8Array(TRIALS_PER_CHUNK);
  return {
    id: event.id,
    happens,
    costs,
    delays,
    fill(n, occurrence, severity) {
      for (let t = 0; t < n; t++) happens[t] = valueAt(occurrence, t) < probability ? 1 : 0;
      for (const i of [...costs, ...delays]) fillImpact(i, n, happens, severity);
    },
  };
}

function fillImpact({ values, draw }: Impact, n: number, happens: Uint8Array, severity: Float64Array): void {
  for (let t = 0; t < n; t++) values[t] = happens[t] === 1 ? draw(valueAt(severity, t)) : 0;
}

function always(value: number): (u: number) => number {
  return () => value;
}

function scaled(draw: (u: number) => number, share: number): (u: number) => number {
  return share === 1 ? draw : u => draw(u) * share;
}

function position(ids: readonly string[], id: string, event: string): number {
  const found = ids.indexOf(id);
  if (found < 0) throw new BugError(`the event ${event} names ${id}, which is not in the prepared run`);
  return found;
}
