import { dollarsOf } from '../money';
import { estimateJson, type Evaluation, type JsonObject } from '../evaluation';
import { differenceBridge, type Bridge } from './bridge';
import { decisionTable, type DecisionTable } from './decision-table';
import { differenceTable, type ComparedValue } from './difference-table';
import { pairedRisk, type PairedRisk, type RiskFacts } from './risk-facts';
import { riskStep } from './risk-step';
import { uprightChange } from './upright-change';

/** Scenarios side by side, and what separates the first from each other. */
export interface Comparison {
  readonly evaluations: readonly Evaluation[];
  readonly bridges: readonly Bridge[];
  /** Simulations of the scenarios with one seed; empty when none was run. */
  readonly risks: readonly RiskFacts[];
}

/** Compares scenarios of one project. A bridge that has no total at one end is left out: its findings say why. */
export function compareScenarios(
  evaluations: readonly Evaluation[],
  risks: readonly RiskFacts[] = [],
): Comparison {
  const [first, ...others] = evaluations;
  const bridges = others.flatMap(other => {
    const bridge = first && differenceBridge(first, other);
    if (first === undefined || bridge === undefined) return [];
    const risk = riskStep(first, other, risks);
    return [risk === undefined ? bridge : { ...bridge, risk }];
  });
  return { evaluations, bridges, risks };
}

/** Which of the compared scenarios to choose, by the weights of the document. */
export function decisionOf({ evaluations, risks }: Comparison): DecisionTable {
  return decisionTable(evaluations, evaluations[0]?.project.decision, risks);
}

/** The first scenario against each other, trial by trial. */
export function pairedRisks({ risks, evaluations }: Comparison): PairedRisk[] {
  const riskOf = (one: Evaluation | undefined) => risks.find(risk => risk.scenario === one?.scenario.id);
  const [first, ...others] = evaluations;
  const own = riskOf(first);
  return others.flatMap(other => {
    const risk = riskOf(other);
    return own === undefined || risk === undefined ? [] : (pairedRisk(own, risk) ?? []);
  });
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
  'p50',
  'p80',
  'finishP80',
  'start',
  'finish',
  'workDays',
  'peakCrew',
  'uncheckedShare',
  'estimateClass',
] as const;

/** The comparison as the command line prints it. */
export function comparisonJson(comparison: Comparison): JsonObject {
  const { evaluations, bridges, risks } = comparison;
  const decision = decisionOf(comparison);
  return {
    scenarios: evaluations.map(one => scenarioJson(one, risks)),
    bridges: bridges.map(bridge => ({
      ...bridgeJson(bridge),
      ...uprightChange(evaluations, bridge.from, bridge.to),
    })),
    differences: differenceTable(evaluations).map(({ key, group, title, values }) => ({
      key,
      group,
      title,
      values: values.map(value => plainValue(value)),
    })),
    decision: {
      readFrom: decision.reading,
      alike: decision.alike,
      notCompared: decision.notCompared,
      weights: decision.weights.map(({ criterion, weight }) => ({ criterion, weight: rounded(weight) })),
      boardsOwn: decision.isBoardsOwn,
      ranked: decision.ranked.map(({ scenario, score, scores }) => ({
        id: scenario,
        score: rounded(score),
        scores: Object.fromEntries(Object.entries(scores).map(([key, one]) => [key, rounded(one)])),
      })),
      leftOut: decision.leftOut.map(({ scenario, reason }) => ({ id: scenario, reason })),
      sensitivity: decision.sensitivity.map(({ from, to, weight, ...rest }) => ({
        ...rest,
        weight: rounded(weight),
        from: rounded(from),
        to: rounded(to),
      })),
      dominance: decision.dominance,
    },
    ...(risks.length === 0
      ? {}
      : {
          risk: pairedRisks(comparison).map(({ firstCheaper, ...amounts }) => ({
            ...amounts,
            firstCheaper: rounded(firstCheaper),
          })),
        }),
  };
}

function bridgeJson({ from, to, steps, total, risk }: Bridge): JsonObject {
  return {
    from,
    to,
    steps: steps.map(({ title, amount }) => ({ title, amount: dollarsOf(amount) })),
    total: dollarsOf(total),
    ...(risk && {
      risk: {
        title: risk.title,
        amount: dollarsOf(risk.amount),
        to: { title: risk.end.title, amount: dollarsOf(risk.end.amount) },
      },
    }),
  };
}

function plainValue(value: ComparedValue): JsonObject | string | number {
  switch (value.kind) {
    case 'money':
      return dollarsOf(value.amount);
    case 'number':
      return value.unit === '' ? value.value : `${value.value} ${value.unit}`;
    case 'share':
      return rounded(value.value);
    case 'date':
      return value.iso;
    case 'words':
      return value.words;
    case 'absent':
      return 'absent, see findings';
  }
}

function rounded(value: number): number {
  return Math.round(value * 1e4) / 1e4;
}

function directCost({ estimate }: Evaluation): JsonObject {
  const direct = estimate?.money && estimate.money.result.money(estimate.money.sums.direct);
  return direct === undefined ? {} : { directCost: dollarsOf(direct) };
}

function scenarioJson(evaluation: Evaluation, risks: readonly RiskFacts[]): JsonObject {
  const risk = risks.find(one => one.scenario === evaluation.scenario.id);
  const json: JsonObject = {
    ...estimateJson(evaluation),
    ...(risk && { p50: risk.p50, p80: risk.p80, finishP80: risk.finishP80 }),
  };
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
