import type { Project } from '../../project';
import { simulate } from '../../risk';
import { evaluate, type EvaluateOptions, type Evaluation } from '../evaluate';
import { simulatedContingency } from './policy-contingency';
import { prepareRisk } from './prepare';

/**
 * An evaluation for a paper: where the project leaves its contingency to a confidence of the simulation, the trials that
 * set it are run first, with the draws that the window has. A project with a share is evaluated as it is.
 */
export function evaluatedWithRuns(project: Project, options: EvaluateOptions): Evaluation {
  const evaluation = evaluate(project, options);
  if (evaluation.project.contingency.policy !== 'confidence') return evaluation;
  const { prepared } = prepareRisk(evaluation);
  if (prepared === undefined) return evaluation;
  const { trials, seed } = prepared.section;
  const result = simulate(prepared.run, { trials, seed, ranksDrivers: false });
  const simulated = result && simulatedContingency(evaluation.project, prepared.run, result);
  return simulated === undefined ? evaluation : evaluate(project, { ...options, simulated });
}
