import { at } from '../../base';
import type { Evaluation } from '../../evaluation';
import { dollarsOf } from '../../money';
import { isStartingShip, type Criterion } from '../../project';
import {
  criterionValue,
  listed,
  summaryOf,
  turnedByWorseWords,
  type Comparison,
  type DecisionTable,
  type RiskFacts,
} from '../../scenario';
import { trialWords } from './trial-facts';

/** The scenario to choose, and why in three sentences at most. */
export interface Recommendation {
  readonly letter: string;
  readonly scenario: string;
  readonly title: string;
  /** Set when the board itself has chosen it, and not the table. */
  readonly isBoardsChoice: boolean;
  readonly reasons: readonly string[];
  /** What to know beside them: what the trials say against its dates, or that nobody has looked yet. */
  readonly besides?: string;
}

/** The first of the ranking, or the one the board has chosen. One that may not be carried out is never recommended. */
export function recommendation(
  { evaluations, risks }: Comparison,
  table: DecisionTable,
): Recommendation | undefined {
  const wanted = evaluations[0]?.project.decision?.chosen;
  const chosen = table.ranked.find(({ scenario }) => scenario === wanted);
  const first = chosen ?? table.ranked[0];
  const evaluation = evaluations.find(({ scenario }) => scenario.id === first?.scenario);
  if (first === undefined || evaluation === undefined) return undefined;
  const able = evaluations.filter(one => table.ranked.some(({ scenario }) => scenario === one.scenario.id));
  const risk = risks.find(one => one.scenario === first.scenario);
  const besides = [
    isStartingShip(evaluation.project)
      ? 'No ship has been entered yet: this ranks the scenarios of a starting ship, not of yours.'
      : undefined,
    table.reading === 'runs'
      ? trialWords(risk)
      : 'This rests on the plan. The chance to be done in time has not been looked at for every scenario yet.',
    chosen === undefined ? turnedByWorseWords(table) : undefined,
    shortWords(evaluation, risk),
  ].flatMap(said => said ?? []);
  const note = evaluation.project.decision?.note?.trim() ?? '';
  const words = chosen === undefined || note === '' ? [] : [`In the board’s own words: “${note}”`];
  return {
    letter: first.letter,
    scenario: first.scenario,
    title: first.title,
    isBoardsChoice: chosen !== undefined,
    reasons: [...words, ...reasonsFor(evaluation, able, table, risks).slice(0, 3)],
    ...(besides.length > 0 && { besides: besides.join(' ') }),
  };
}

/** That the budget asked for is less than what 80 in 100 runs stay under. */
function shortWords(evaluation: Evaluation, risk: RiskFacts | undefined): string | undefined {
  const budget = summaryOf(evaluation)?.budget;
  if (budget === undefined || risk === undefined || dollarsOf(budget) >= risk.p80) return undefined;
  return 'Its budget is less than what 80 in 100 runs stay under.';
}

function reasonsFor(
  own: Evaluation,
  able: readonly Evaluation[],
  table: DecisionTable,
  risks: readonly RiskFacts[],
): string[] {
  const others = able.filter(other => other.letter !== own.letter);
  if (others.length === 0) return [alone(table), uprightReason(own, others)].flatMap(reason => reason ?? []);
  return [
    costReason(own, lettersBetter('cost', own, others, table, risks), table),
    grantReason(own, others, risks),
    uprightReason(own, others),
    timeReason(lettersBetter('finish', own, others, table, risks), table),
    weightReason(own, table),
  ].flatMap(reason => reason ?? []);
}

function alone({ leftOut }: DecisionTable): string {
  return leftOut.length > 0
    ? 'It is the only scenario that may be carried out.'
    : 'It is the only scenario of this project.';
}

/** Who is better in a criterion; all the others are, where the own scenario has no figure for it. */
function lettersBetter(
  criterion: Criterion,
  own: Evaluation,
  others: readonly Evaluation[],
  { reading }: DecisionTable,
  risks: readonly RiskFacts[],
): string[] {
  const value = (one: Evaluation) => criterionValue(criterion, one, risks, reading);
  const mine = value(own);
  return others
    .filter(other => mine === undefined || (value(other) ?? -Infinity) > mine)
    .map(({ letter }) => letter);
}

function costReason(own: Evaluation, cheaper: readonly string[], { ranked, reading }: DecisionTable): string {
  const isPlan = reading === 'plan';
  if (cheaper.length === 0)
    return isPlan
      ? 'By the plan it costs least of the scenarios that may be carried out.'
      : 'The cost that 80 in 100 runs stay under is the least of the scenarios that may be carried out.';
  const said = isPlan
    ? `By the plan it costs more than ${listed(cheaper)}`
    : `The cost that 80 in 100 runs stay under is more than that of ${listed(cheaper)}`;
  return ranked[0]?.scenario === own.scenario.id
    ? `${said}, yet it comes first when all that counts is weighed.`
    : `${said}.`;
}

function timeReason(earlier: readonly string[], { reading }: DecisionTable): string | undefined {
  if (earlier.length > 0) return undefined;
  return reading === 'plan'
    ? 'By the plan none of the others is done earlier.'
    : 'With none of the others are 80 in 100 runs done earlier.';
}

function uprightReason({ upright }: Evaluation, others: readonly Evaluation[]): string | undefined {
  if (upright === undefined) return undefined;
  const isShared = others.every(other => other.upright?.verdict === upright.verdict);
  const said = `The upright screen says “${upright.verdict}”`;
  return others.length > 0 && isShared ? `${said}, as for the others.` : `${said}.`;
}

/** How often the grant is over before the work is: what is cheap on paper may lose it. */
function grantReason(
  own: Evaluation,
  others: readonly Evaluation[],
  risks: readonly RiskFacts[],
): string | undefined {
  const missed = ({ scenario }: Evaluation) => risks.find(risk => risk.scenario === scenario.id)?.missesGrant;
  const share = missed(own);
  const known = others.flatMap(other => {
    const theirs = missed(other);
    return theirs === undefined ? [] : [{ letter: other.letter, inHundred: Math.round(theirs * 100) }];
  });
  if (share === undefined || known.length === 0) return undefined;
  const inHundred = Math.round(share * 100);
  const best = at(
    known.toSorted((a, b) => a.inHundred - b.inHundred || (a.letter < b.letter ? -1 : 1)),
    0,
  );
  if (known.every(other => other.inHundred === inHundred)) return undefined;
  return best.inHundred < inHundred
    ? `But the grant ends before it is done in ${inHundred} of 100 runs; with ${best.letter}, in ${best.inHundred}.`
    : `The grant ends before it is done in ${inHundred} of 100 runs, no more than with any other.`;
}

/** Whether the order hangs on the weights. */
function weightReason(
  own: Evaluation,
  { sensitivity, isBoardsOwn, ranked }: DecisionTable,
): string | undefined {
  const [first] = ranked;
  if (first === undefined || ranked.length < 2 || sensitivity.length === 0) return undefined;
  const whose = isBoardsOwn ? 'the board’s weights' : 'the usual weights';
  if (first.scenario !== own.scenario.id)
    return `The board has chosen it; by ${whose} ${first.letter} comes first.`;
  const isFirm = sensitivity.every(
    ({ firstBelow, firstAbove }) => firstBelow === undefined && firstAbove === undefined,
  );
  return isFirm
    ? `It comes first by ${whose}, and no change of a single weight turns that.`
    : `It comes first by ${whose}; other weights could turn the order.`;
}
