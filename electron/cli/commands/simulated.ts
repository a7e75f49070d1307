import { prepareRisk, type Evaluation, type PreparedEstimate } from '../../../core/evaluation';
import { simulate, type PreparedRun, type SimulationResult } from '../../../core/risk';
import { UsageError, type Call, type OptionSpec } from '../command';

/** The option of commands that can rest on a simulation, and do without unless it is given. */
export const TRIALS_OPTION: Readonly<Record<string, OptionSpec>> = {
  trials: { type: 'string', words: 'simulates so many trials first; none unless given', sample: 'N' },
  seed: {
    type: 'string',
    words: 'the same seed gives the same answer, 1 unless told otherwise',
    sample: 'S',
  },
};

const [FEWEST, MOST] = [100, 100_000];

/**
 * Simulates an evaluation where --trials asks for it.
 * @param runOf the run to simulate: the estimate as it is, or what is made of it.
 */
export function simulatedFor(
  call: Call,
  evaluation: Evaluation,
  runOf: (prepared: PreparedEstimate) => PreparedRun | undefined = prepared => prepared.run,
): SimulationResult | undefined {
  const trials = wholeNumber(call, 'trials', FEWEST, MOST);
  const seed = wholeNumber(call, 'seed', 0, 2 ** 31 - 1) ?? 1;
  if (trials === undefined) return undefined;
  const { prepared } = prepareRisk(evaluation);
  const run = prepared && runOf(prepared);
  return run && simulate(run, { trials, seed });
}

function wholeNumber(call: Call, name: string, least: number, most: number): number | undefined {
  const text = call.option(name);
  if (text === undefined) return undefined;
  const value = Number(text);
  if (!/^\d+$/.test(text) || value < least || value > most)
    throw new UsageError(`--${name} takes a whole number from ${least} to ${most}, not "${text}".`);
  return value;
}
