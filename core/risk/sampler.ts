import { BugError, valueAt, type Finding } from '../base';
import { type Adjustment } from './adjustment';
import { drawKernelOf, meanOf, modeOf, samplerOf, type DrawKernel } from './distributions';
import { eventDraws, type EventDraws } from './event-draws';
import { chunkSize, TRIALS_PER_CHUNK, type TrialPlan } from './latin-hypercube';
import { levelsOf, occurrenceOf } from './levels';
import type { PreparedRun, RiskDriver, UncertainInput } from './prepared';

/** The draws of a run, a chunk at a time, in buffers that stay the same from chunk to chunk. */
export interface Sampler {
  readonly inputs: ReadonlyMap<string, Float64Array>;
  /** The levels behind the draws, by id. */
  readonly levels: ReadonlyMap<string, Float64Array>;
  readonly findings: readonly Finding[];
  /** Draws a chunk as adjusted. Adjusting moves no draw of anything else. */
  fill(chunk: number, adjustment: Adjustment): ChunkDraws;
}

/** Number of trials drawn, and the impacts of the events in them. */
export interface ChunkDraws {
  readonly n: number;
  readonly events: readonly EventDraws[];
}

/** Makes the draws of a run ready. */
export function samplerFor(prepared: PreparedRun, plan: TrialPlan): Sampler {
  const levels = levelsOf(prepared, plan);
  const inputs = prepared.columns;
  const draws = new Map(prepared.inputs.map(i => [i.id, drawKernelOf(i.distribution)]));
  const ready = new Map<string, Adjusted>();
  let drawn = -1;
  return {
    inputs,
    levels: levels.byId,
    findings: levels.findings,
    fill(chunk, adjustment) {
      const n = chunkSize(plan, chunk);
      if (chunk !== drawn) levels.fill(chunk);
      drawn = chunk;
      const key = JSON.stringify(adjustment);
      const adjusted = ready.get(key) ?? adjust(prepared, adjustment, inputs, levels.byId, draws);
      ready.set(key, adjusted);
      for (const fill of adjusted.fills) fill(n);
      return { n, events: adjusted.events };
    },
  };
}

interface Adjusted {
  readonly fills: readonly Fill[];
  readonly events: readonly EventDraws[];
}

type Columns = ReadonlyMap<string, Float64Array>;
type Draws = ReadonlyMap<string, DrawKernel>;

function adjust(
  prepared: PreparedRun,
  a: Adjustment,
  inputs: Columns,
  levels: Columns,
  draws: Draws,
): Adjusted {
  const events = prepared.events.map(e => eventDraws(e, prepared, a));
  const fills = [
    ...prepared.inputs.map(i => inputFill(i, a, columnOf(inputs, i.id), levels.get(i.id), draws)),
    ...prepared.drivers.map(d => driverFill(d, a, inputs, levels)),
    ...events.map(e => {
      const [occurrence, severity] = [columnOf(levels, occurrenceOf(e.id)), columnOf(levels, e.id)];
      return (n: number) => e.fill(n, occurrence, severity);
    }),
  ];
  return { fills, events };
}

function columnOf(columns: Columns, id: string): Float64Array {
  const column = columns.get(id);
  if (column === undefined) throw new BugError(`the prepared run has no input or draw ${id}`);
  return column;
}

type Fill = (n: number) => void;

function inputFill(
  input: UncertainInput,
  a: Adjustment,
  out: Float64Array,
  level: Float64Array | undefined,
  draws: Draws,
): Fill {
  const draw = draws.get(input.id);
  if (level === undefined || draw === undefined || a.held?.includes(input.id) === true) {
    const value = modeOf(input.distribution);
    return n => void out.fill(value, 0, n);
  }
  const left = a.narrowed?.[input.id];
  if (left === undefined) return n => draw(level, out, n);
  const mean = meanOf(input.distribution);
  return n => {
    draw(level, out, n);
    for (let t = 0; t < n; t++) out[t] = mean + left * (valueAt(out, t) - mean);
  };
}

function driverFill(driver: RiskDriver, a: Adjustment, inputs: Columns, levels: Columns): Fill {
  const moved = driver.inputs.map(id => columnOf(inputs, id));
  const [level, occurrence] = [columnOf(levels, driver.id), columnOf(levels, occurrenceOf(driver.id))];
  const isHeld = a.held?.includes(driver.id) === true;
  const probability = isHeld ? (driver.probability < 0.5 ? 0 : 1) : driver.probability;
  const mode = modeOf(driver.factor);
  const draw = isHeld ? () => mode : samplerOf(driver.factor);
  const factor = new Float64Array(TRIALS_PER_CHUNK);
  return n => {
    for (let t = 0; t < n; t++)
      factor[t] = valueAt(occurrence, t) < probability ? draw(valueAt(level, t)) : 1;
    for (const column of moved) multiply(column, factor, n);
  };
}

function multiply(column: Float64Array, factor: Float64Array, n: number): void {
  for (let t = 0; t < n; t++) column[t] = valueAt(column, t) * valueAt(factor, t);
}
