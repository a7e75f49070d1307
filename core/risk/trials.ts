import { valueAt } from '../base';
import type { ChunkResult } from './trial-runner';

/** All trials of a run, in the order of their draws; a trial without a finite answer is NaN throughout. */
export interface Trials {
  readonly total: Float64Array;
  readonly finish: Float64Array;
  readonly cashNeed: Float64Array | undefined;
  readonly missedSeason: Uint8Array;
  /** By activity: trials in which it drives the finish. */
  readonly drives: Float64Array | undefined;
  readonly lineExcess: Float64Array;
  readonly lineProduct: Float64Array;
  /** By uncertainty and class of its levels: see `screen`. Empty where no job asked for it. */
  readonly classes: Float64Array;
}

/** Joins chunks in the order of their numbers, so that the sums have the same bits whoever ran them. */
export function joinChunks(results: readonly ChunkResult[]): Trials {
  const chunks = results.toSorted((a, b) => a.chunk - b.chunk);
  return {
    total: joined(
      chunks.map(c => c.total),
      numbers,
    ),
    finish: joined(
      chunks.map(c => c.finish),
      numbers,
    ),
    cashNeed: joinedOptional(chunks.map(c => c.cashNeed)),
    missedSeason: joined(
      chunks.map(c => c.missedSeason),
      n => new Uint8Array(n),
    ),
    drives: summedOptional(chunks.map(c => c.drives)),
    lineExcess: summed(chunks.map(c => c.lineExcess)),
    lineProduct: summed(chunks.map(c => c.lineProduct)),
    classes: summed(chunks.flatMap(c => c.classes ?? [])),
  };
}

const numbers = (n: number): Float64Array => new Float64Array(n);

function joined<A extends Float64Array | Uint8Array>(parts: readonly A[], made: (n: number) => A): A {
  const whole = made(parts.reduce((n, part) => n + part.length, 0));
  let at = 0;
  for (const part of parts) {
    whole.set(part, at);
    at += part.length;
  }
  return whole;
}

function joinedOptional(parts: readonly (Float64Array | undefined)[]): Float64Array | undefined {
  const given = parts.filter(part => part !== undefined);
  return given.length === parts.length ? joined(given, numbers) : undefined;
}

function summed(parts: readonly Float64Array[]): Float64Array {
  const sum = new Float64Array(parts[0]?.length ?? 0);
  for (const part of parts) for (let i = 0; i < sum.length; i++) sum[i] = valueAt(sum, i) + valueAt(part, i);
  return sum;
}

function summedOptional(parts: readonly (Float64Array | undefined)[]): Float64Array | undefined {
  const given = parts.filter(part => part !== undefined);
  return given.length === parts.length ? summed(given) : undefined;
}
