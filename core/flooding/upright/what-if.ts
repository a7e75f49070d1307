import { withId } from '../../base';
import { listBeforeUnder } from './hear-simulation';
import { resolveShip } from './resolved';
import { simulateWith, type LikelyValues } from './run-likely';
import type { UprightCompartment, UprightInput, UprightSizing, UprightWhatIf } from './types';

/** Most doors tried one by one. */
const MOST_DOORS = 6;

function simulated(
  title: string,
  input: UprightInput,
  sizing: readonly UprightSizing[],
  at: LikelyValues,
): UprightWhatIf {
  const run = simulateWith(resolveShip(input), sizing, at);
  return {
    title,
    outcome: run.outcome,
    peakListDegrees: listBeforeUnder(run, input.particulars.depth),
    minutes: run.seconds / 60,
  };
}

function opened(input: UprightInput, from: UprightCompartment, index: number): UprightInput {
  const connections = from.connections.map((way, i) => (i === index ? { ...way, closed: false } : way));
  const compartments = input.compartments.map(c => (c.id === from.id ? { ...from, connections } : c));
  return { ...input, compartments };
}

/**
 * Asymmetric cases of the flooding simulation: all even, one side slower, and each closed door forgotten open.
 * Outcome and greatest list while there is freeboard left.
 */
export function whatIfs(
  input: UprightInput,
  sizing: readonly UprightSizing[],
  likely: LikelyValues,
): UprightWhatIf[] {
  const { mismatch } = likely;
  const doors = input.compartments.flatMap(from =>
    from.connections.flatMap((way, i) => (way.closed === true ? [{ from, way, i }] : [])),
  );
  return [
    simulated('all openings even', input, sizing, { ...likely, mismatch: 0 }),
    ...(mismatch > 0
      ? [simulated(`port side ${Math.round(mismatch * 100)} % slower`, input, sizing, likely)]
      : []),
    ...doors.slice(0, MOST_DOORS).map(({ from, way, i }) => {
      const to = withId(input.compartments, way.to);
      return simulated(
        `door between ${from.title} and ${to.title} forgotten open`,
        opened(input, from, i),
        sizing,
        likely,
      );
    }),
  ];
}
