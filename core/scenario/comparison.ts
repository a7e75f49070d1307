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
      ...uprightChange(evaluations, from, to),
    })),
  };
}

/** What the work items of a scenario take off the ship, tonnes; absent when one of them is. */
function takenOff({ estimate }: Evaluation): number | undefined {
  if (estimate === undefined) return undefined;
  const { removals, result } = estimate.work;
  const tonnes = removals.scope.rows.map(row => result.number(removals.columns.tonnes, row.key));
  const known = tonnes.filter(one => one !== undefined);
  return known.length < tonnes.length ? undefined : known.reduce((sum, one) => sum + one, 0);
}

/** Days and degrees beside the dollars of a bridge: work days, greatest heel, lowest GM, tonnes taken off. */
function uprightChange(evaluations: readonly Evaluation[], from: string, to: string): JsonObject {
  const ends = [from, to].map(id => evaluations.find(one => one.scenario.id === id));
  const [a, b] = ends;
  if (a === undefined || b === undefined) return {};
  const change = (of: (one: Evaluation) => number | undefined) => {
    const [before, after] = [of(a), of(b)];
    return before === undefined || after === undefined ? undefined : after - before;
  };
  const changes = {
    workDays: change(one => one.estimate?.schedule.workDays),
    greatestHeelDegrees: change(one => one.upright?.greatestHeelDegrees),
    likelyHeelDegrees: change(one => one.upright?.likelyHeelDegrees),
    lowestGmMetres: change(one => one.upright?.lowestGmMetres),
    tonnesTakenOff: change(takenOff),
  };
  return Object.fromEntries(Object.entries(changes).filter(([, value]) => value !== undefined));
}

function directCost({ estimate }: Evaluation): JsonObject {
  const direct = estimate?.money && estimate.money.result.money(estimate.money.sums.direct);
  return direct === undefined ? {} : { directCost: dollarsOf(direct) };
}

function scenarioJson(evaluation: Evaluation): JsonObject {
  const json = estimateJson(evaluation);
  const { upright } = evaluation;
  const screen = upright && {
    verdict: upright.verdict,
    greatestHeelDegrees: upright.greatestHeelDegrees,
    likelyHeelDegrees: upright.likelyHeelDegrees,
    lowestGmMetres: upright.lowestGmMetres,
    uprightCaution: upright.caution,
  };
  const known = SIDE_BY_SIDE.flatMap(key => (json[key] === undefined ? [] : [[key, json[key]]]));
  return {
    id: evaluation.scenario.id,
    title: evaluation.scenario.title,
    letter: evaluation.letter,
    ...(Object.fromEntries(known) as JsonObject),
    ...directCost(evaluation),
    ...screen,
  };
}
