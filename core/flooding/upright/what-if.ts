import { simulateFlooding } from '../simulate/simulate';
import { listBeforeUnder } from './hear-simulation';
import { resolveShip } from './resolved';
import { shipToSimulate } from './to-simulate';
import type { UprightCompartment, UprightInput, UprightSizing, UprightWhatIf } from './types';

/** Most doors tried one by one. */
const MOST_DOORS = 6;

/** The likely values a case is run with, and how long. */
export interface WhatIfSetting {
  readonly sizing: readonly UprightSizing[];
  readonly at: { readonly displacement: number; readonly kg: number; readonly mismatch: number };
  readonly seconds: number;
  readonly longestStep: number;
}

function simulated(title: string, input: UprightInput, setting: WhatIfSetting): UprightWhatIf {
  const { sizing, at, seconds, longestStep } = setting;
  const depth = input.site?.waterDepth;
  const run = simulateFlooding(shipToSimulate(resolveShip(input), sizing, at), {
    seconds,
    longestStep,
    ...(depth === undefined ? {} : { waterDepth: depth }),
  });
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
export function whatIfs(input: UprightInput, setting: WhatIfSetting): UprightWhatIf[] {
  const { mismatch } = setting.at;
  const even = { ...setting, at: { ...setting.at, mismatch: 0 } };
  const doors = input.compartments.flatMap(from =>
    from.connections.flatMap((way, i) => (way.closed === true ? [{ from, way, i }] : [])),
  );
  return [
    simulated('all openings even', input, even),
    ...(mismatch > 0 ? [simulated(`port side ${Math.round(mismatch * 100)} % slower`, input, setting)] : []),
    ...doors.slice(0, MOST_DOORS).map(({ from, way, i }) => {
      const to = input.compartments.find(({ id }) => id === way.to)?.title ?? way.to;
      return simulated(
        `door between ${from.title} and ${to} forgotten open`,
        opened(input, from, i),
        setting,
      );
    }),
  ];
}
