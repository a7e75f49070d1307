import { at } from '../../base';
import { dayOf } from '../../calendar';
import type { Evaluation } from '../../evaluation';
import { summaryOf, type Comparison, type DecisionTable, type RiskFacts } from '../../scenario';

/** The scenario to choose, and why in three sentences at most. */
export interface Recommendation {
  readonly letter: string;
  readonly scenario: string;
  readonly title: string;
  /** Set when the board itself has chosen it, and not the table. */
  readonly isBoardsChoice: boolean;
  readonly reasons: readonly string[];
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
  return {
    letter: first.letter,
    scenario: first.scenario,
    title: first.title,
    isBoardsChoice: chosen !== undefined,
    reasons: reasonsFor(evaluation, able, table, risks).slice(0, 3),
  };
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
    costReason(own, others, table),
    grantReason(own, others, risks),
    uprightReason(own, others),
    timeReason(own, others),
    weightReason(own, table),
  ].flatMap(reason => reason ?? []);
}

function alone({ leftOut }: DecisionTable): string {
  return leftOut.length > 0
    ? 'It is the only scenario that may be carried out.'
    : 'It is the only scenario of this project.';
}

function costReason(own: Evaluation, others: readonly Evaluation[], { ranked }: DecisionTable): string {
  const cost = (one: Evaluation) => summaryOf(one)?.budget?.cents ?? summaryOf(one)?.total?.cents ?? Infinity;
  const cheaper = others.filter(other => cost(other) < cost(own));
  if (cheaper.length === 0) return 'It costs least of the scenarios that may be carried out.';
  return ranked[0]?.scenario === own.scenario.id
    ? `It costs more than ${lettersOf(cheaper)}, and comes first when all that counts is weighed.`
    : `It costs more than ${lettersOf(cheaper)}.`;
}

function timeReason(own: Evaluation, others: readonly Evaluation[]): string | undefined {
  const day = ({ estimate }: Evaluation) =>
    estimate?.schedule.finish === undefined ? undefined : dayOf(estimate.schedule.finish);
  const finish = day(own);
  if (finish === undefined) return undefined;
  const earlier = others.filter(other => (day(other) ?? Infinity) < finish);
  if (earlier.length === 0) return 'None of the others is done earlier.';
  return undefined;
}

function uprightReason({ upright }: Evaluation, others: readonly Evaluation[]): string | undefined {
  if (upright === undefined) return undefined;
  const isShared = others.every(other => other.upright?.verdict === upright.verdict);
  const said = `The roll-over screen says “${upright.verdict}”`;
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

function lettersOf(evaluations: readonly Evaluation[]): string {
  return evaluations.map(({ letter }) => letter).join(' and ');
}
