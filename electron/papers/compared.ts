import { evaluate, evaluatedWithRuns, type Evaluation } from '../../core/evaluation';
import type { Project } from '../../core/project';
import { compareScenarios, riskFacts, type Comparison } from '../../core/scenario';

/** The seed of a schedule, as in the window. */
const SEED = 1;

/** How scenarios are compared for a paper. */
export interface ComparedOptions {
  readonly today: string;
  readonly isSimulated: boolean;
  /** Told before each scenario: how far the work has come. */
  readonly onProgress?: (words: string) => void;
}

/**
 * All scenarios of a project side by side, each evaluated once, and simulated as the project says when asked for,
 * with the same trials and luck as in the window.
 * @param known evaluations that are there already.
 */
export function comparedScenarios(
  project: Project,
  { today, isSimulated, onProgress }: ComparedOptions,
  known: readonly Evaluation[] = [],
): Comparison {
  const evaluations = project.scenarios.map(({ id, title }) => {
    const found = known.find(one => one.scenario.id === id);
    if (found !== undefined) return found;
    onProgress?.(`working out ${title}`);
    return (isSimulated ? evaluatedWithRuns : evaluate)(project, { today, seed: SEED, scenario: id });
  });
  const risks = isSimulated
    ? evaluations.flatMap(one => {
        onProgress?.(`simulating ${one.scenario.title}`);
        return riskFacts(one) ?? [];
      })
    : [];
  return compareScenarios(evaluations, risks);
}
