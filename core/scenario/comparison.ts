import { dollarsOf } from '../money';
import { estimateJson, type Evaluation, type JsonObject } from '../evaluation';
import { differenceBridge, type Bridge } from './bridge';

/** Scenarios side by side, and what separates the first from each other. */
export interface Comparison {
  readonly evaluations: readonly Evaluation[];
  readonly bridges: readonly Bridge[];
}

/** Compares scenarios of one project. A bridge that has no total at one end is left out: its findings say why. */
export function compareScenarios(evaluations: readonly Evaluation[]): Comparison {
  const [first, ...others] = evaluations;
  const bridges = others.flatMap(other => {
    const bridge = first && differenceBridge(first, other);
    return bridge === undefined ? [] : [bridge];
  });
  return { evaluations, bridges };
}

/** Figures of the estimate that stand side by side; what is not known is left out. */
const SIDE_BY_SIDE = [
  'permittable',
  'total',
  'contingency',
  'budget',
  'contractCost',
  'markUps',
  'ownerCost',
  'p80',
  'start',
  'finish',
  'workDays',
  'peakCrew',
  'uncheckedShare',
  'estimateClass',
] as const;

/** The comparison as the command line prints it. */
export function comparisonJson({ evaluations, bridges }: Comparison): JsonObject {
  return {
    scenarios: evaluations.map(scenarioJson),
    bridges: bridges.map(({ from, to, steps, total }) => ({
      from,
      to,
      steps: steps.map(({ title, amount }) => ({ title, amount: dollarsOf(amount) })),
      total: dollarsOf(total),
    })),
  };
}

function scenarioJson(evaluation: Evaluation): JsonObject {
  const json = estimateJson(evaluation);
  const { uprightScreen } = json;
  const screen: JsonObject =
    typeof uprightScreen === 'object' && uprightScreen !== null && 'verdict' in uprightScreen
      ? { verdict: uprightScreen.verdict }
      : {};
  const known = SIDE_BY_SIDE.flatMap(key => (json[key] === undefined ? [] : [[key, json[key]]]));
  return {
    id: evaluation.scenario.id,
    title: evaluation.scenario.title,
    letter: evaluation.letter,
    ...(Object.fromEntries(known) as JsonObject),
    ...screen,
  };
}
