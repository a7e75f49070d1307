import { isCollapsed, meanOf, samplerOf, varianceOf } from './distributions';
import { occurrenceOf } from './levels';
import type { PreparedRun } from './prepared';

/** Anything that can be held at its mode: an input with a range, a driver or an event. */
export interface Uncertainty {
  readonly id: string;
  readonly title: string;
  readonly kind: 'range' | 'driver' | 'event';
  /** Chance that it acts at all; 1 for a range. */
  readonly probability: number;
  /** How far it is from its mean, in standard deviations, at a level: for regressions on its own effect. */
  readonly size: (level: number) => number;
}

/** Number of classes of equal probability that the levels of an uncertainty are cut into. */
export const LEVEL_CLASSES = 20;

/** Everything uncertain in a run, in the order of the run. */
export function uncertaintiesOf(prepared: PreparedRun): Uncertainty[] {
  const inputs = prepared.inputs.filter(i => !isCollapsed(i.distribution));
  return [
    ...inputs.map(i => ({
      ...named(i),
      kind: 'range' as const,
      probability: 1,
      size: sizeOf(i.distribution),
    })),
    ...prepared.drivers.map(d => ({
      ...named(d),
      kind: 'driver' as const,
      probability: d.probability,
      size: sizeOf(d.factor),
    })),
    ...prepared.events.map(e => ({
      ...named(e),
      kind: 'event' as const,
      probability: e.probability,
      size: centred,
    })),
  ];
}

/** The class of a trial in which it acts, from 1 to LEVEL_CLASSES; class 0 holds those in which it does not. */
export function actingClass(level: number): number {
  return 1 + Math.min(LEVEL_CLASSES - 1, Math.floor(level * LEVEL_CLASSES));
}

/** The occurrence level of a trial; a range always acts. */
export function occurrenceLevels(
  u: Uncertainty,
  levels: ReadonlyMap<string, Float64Array>,
): Float64Array | undefined {
  return u.kind === 'range' ? undefined : levels.get(occurrenceOf(u.id));
}

function named({ id, title }: { id: string; title: string }): { id: string; title: string } {
  return { id, title };
}

function sizeOf(d: Parameters<typeof meanOf>[0]): (level: number) => number {
  const [mean, deviation, draw] = [meanOf(d), Math.sqrt(varianceOf(d)), samplerOf(d)];
  return deviation > 0 ? level => (draw(level) - mean) / deviation : () => 0;
}

/** An event has several impacts, so its severity level stands for all of them. */
function centred(level: number): number {
  return Math.sqrt(12) * (level - 0.5);
}
