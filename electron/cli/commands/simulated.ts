import {
  evaluate,
  prepareRisk,
  simulatedContingency,
  type Evaluation,
  type PreparedEstimate,
} from '../../../core/evaluation';
import { simulate, type PreparedRun, type SimulationResult } from '../../../core/risk';
import { UsageError, type Call, type OptionSpec } from '../command';
import { fileOf, loadProject } from '../load';

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

/** An estimate and the simulation of it that --trials asks for. */
interface SimulatedEstimate {
  readonly evaluation: Evaluation;
  readonly simulation: SimulationResult | undefined;
}

/**
 * An evaluation with the simulation that --trials asks for. Where the contingency follows a confidence, the estimate
 * is evaluated again with the contingency that the runs give.
 */
export function simulatedEstimate(call: Call, evaluation: Evaluation): SimulatedEstimate {
  const simulation = simulatedFor(call, evaluation);
  const { prepared } = simulation === undefined ? {} : prepareRisk(evaluation);
  const { project } = loadProject(fileOf(call));
  const set = simulation && prepared && simulatedContingency(evaluation.project, prepared.run, simulation);
  if (set === undefined || project === undefined) return { evaluation, simulation };
  const { today, scenario } = evaluation;
  return {
    evaluation: evaluate(project, { today, seed: 1, scenario: scenario.id, simulated: set }),
    simulation,
  };
}

function wholeNumber(call: Call, name: string, least: number, most: number): number | undefined {
  const text = call.option(name);
  if (text === undefined) return undefined;
  const value = Number(text);
  if (!/^\d+$/.test(text) || value < least || value > most)
    throw new UsageError(`--${name} takes a whole number from ${least} to ${most}, not "${text}".`);
  return value;
}
