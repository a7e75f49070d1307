import { spawnSync } from 'node:child_process';
import { uprightTimes } from '../upright';
import type { BenchRow } from './row';

const EXAMPLE = 'demo/wrenfield.reef.json';
const TRIALS = 10_000;

/** The screening of the sinking. */
export function uprightRows(): BenchRow[] {
  const { simulation, screening, steps } = uprightTimes();
  return [
    {
      name: 'flooding of 40 compartments over ten minutes',
      figure: simulation,
      unit: 'ms',
      said: `median of 11; ${steps} steps`,
    },
    { name: 'screening of a coaster of 9 compartments', figure: screening, unit: 'ms', said: 'median of 11' },
  ];
}

interface RiskAnswer {
  readonly seconds: number;
  readonly trials: number;
}

const isRiskAnswer = (value: unknown): value is RiskAnswer =>
  typeof value === 'object' && value !== null && 'seconds' in value && 'trials' in value;

/** The simulation of the example as the command line runs it, its workers started cold. */
export function riskRows(): BenchRow[] {
  const runs = Array.from({ length: 3 }, () => {
    const words = ['electron/reefwright.mjs', 'risk', EXAMPLE, '--trials', String(TRIALS), '--json'];
    const answer: unknown = JSON.parse(spawnSync(process.execPath, words, { encoding: 'utf8' }).stdout);
    if (!isRiskAnswer(answer)) throw new Error('the command gave no seconds');
    return answer;
  });
  const figure = runs.map(run => run.seconds).toSorted((a, b) => a - b)[1];
  return [
    {
      name: 'simulation of the example with drivers',
      ...(figure === undefined ? {} : { figure }),
      unit: 's',
      said: `median of 3; ${runs[0]?.trials ?? 0} trials, workers started cold, two threads`,
    },
  ];
}
