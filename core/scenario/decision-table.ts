import { at, BugError } from '../base';
import type { Evaluation } from '../evaluation';
import { CRITERIA, type Criterion, type DecisionChoices } from '../project';
import { criterionValue, readingOf, USUAL_WEIGHTS, type Reading } from './criteria';
import type { RiskFacts } from './risk-facts';
import { isPermittable, summaryOf } from './totals';

/** One scenario in the decision table: its score by criterion, 0 for the worst of those compared and 1 for the best. */
export interface ScoredScenario {
  readonly scenario: string;
  readonly letter: string;
  readonly title: string;
  /** Of what separates the scenarios. What is alike in all, or has no figure in one, counts for none and is left out. */
  readonly scores: Readonly<Partial<Record<Criterion, number>>>;
  /** Weighted sum, 0 to 1. */
  readonly score: number;
}

/** How far a weight may move before another scenario comes first; the others keep their proportions. */
export interface WeightRange {
  readonly criterion: Criterion;
  readonly weight: number;
  /** From and to which weight the first stays first. */
  readonly from: number;
  readonly to: number;
  /** Who comes first beyond the ends; nothing when nobody does. */
  readonly firstBelow?: string;
  readonly firstAbove?: string;
}

/** The decision table: only scenarios that may be carried out are ranked. */
export interface DecisionTable {
  /** What cost and finish are read from. */
  readonly reading: Reading;
  /** What counts: the criteria that separate the scenarios, with weights that sum to 1. */
  readonly weights: readonly { readonly criterion: Criterion; readonly weight: number }[];
  /** Criteria in which all scenarios are the same: they turn no order. */
  readonly alike: readonly Criterion[];
  /** Criteria for which a scenario has no figure yet. */
  readonly notCompared: readonly Criterion[];
  readonly isBoardsOwn: boolean;
  readonly ranked: readonly ScoredScenario[];
  readonly leftOut: readonly {
    readonly scenario: string;
    readonly letter: string;
    readonly reason: string;
  }[];
  readonly sensitivity: readonly WeightRange[];
  /** Pairs in which the first is at least as good in every criterion and better in one. */
  readonly dominance: readonly { readonly better: string; readonly worse: string }[];
  /** Who would come first if those that another leaves behind in everything were not compared; nothing where nobody else would. */
  readonly firstWithoutWorse?: string;
}

/**
 * Ranks scenarios by a weighted sum of scores, each criterion scaled from the worst to the best of those compared.
 * @source R. L. Keeney and H. Raiffa, Decisions with Multiple Objectives, 1976, chapter 3 (additive value functions).
 */
export function decisionTable(
  evaluations: readonly Evaluation[],
  choices: DecisionChoices | undefined,
  risks: readonly RiskFacts[] = [],
): DecisionTable {
  const able = evaluations.filter(one => isPermittable(one) && summaryOf(one)?.total !== undefined);
  const own = choices?.weights ?? [];
  const given = own.length > 0 ? own : USUAL_WEIGHTS;
  const reading = readingOf(able, risks);
  const read = given.map(({ criterion, weight }) => {
    const values = able.flatMap(one => criterionValue(criterion, one, risks, reading) ?? []);
    const isComplete = values.length === able.length;
    return { criterion, weight, values, isComplete, isAlike: isComplete && isAlike(values) };
  });
  const usable = read.filter(one => one.isComplete && !one.isAlike);
  const sum = usable.reduce((all, { weight }) => all + Number(weight), 0);
  const shares = usable.map(({ criterion, weight, values }) => ({
    criterion,
    weight: sum > 0 ? Number(weight) / sum : 1 / usable.length,
    scores: fromWorstToBest(values),
  }));
  const weights = shares.map(({ criterion, weight }) => ({ criterion, weight }));
  const scored = able.map((one, i) => scoredScenario(one, i, shares));
  const ranked = [...scored].sort((a, b) => b.score - a.score || (a.letter < b.letter ? -1 : 1));
  const pairs = dominance(scored);
  const isWorse = ({ letter }: Evaluation) => pairs.some(({ worse }) => worse === letter);
  // Scores run from the worst to the best: one that nobody would choose may stretch them and turn the order.
  const kept = pairs.length === 0 ? [] : able.filter(one => !isWorse(one));
  const otherFirst = kept.length === 0 ? undefined : decisionTable(kept, choices, risks).ranked[0]?.letter;
  return {
    reading,
    weights,
    alike: read.filter(one => one.isAlike).map(({ criterion }) => criterion),
    notCompared: read.filter(one => !one.isComplete).map(({ criterion }) => criterion),
    isBoardsOwn: own.length > 0,
    ranked,
    leftOut: evaluations.filter(one => !able.includes(one)).map(leftOut),
    sensitivity: weights.map(({ criterion, weight }) => weightRange(ranked, criterion, weight)),
    dominance: pairs,
    ...(otherFirst !== undefined && otherFirst !== ranked[0]?.letter && { firstWithoutWorse: otherFirst }),
  };
}

/** Whether values of several scenarios are all the same. One scenario alone stands beside none. */
function isAlike(values: readonly number[]): boolean {
  return values.length > 1 && values.every(value => value === values[0]);
}

/** 0 for the least of the values and 1 for the greatest; 1 for the only one. */
function fromWorstToBest(values: readonly number[]): number[] {
  const [least, most] = [Math.min(...values), Math.max(...values)];
  return values.map(value => (most > least ? (value - least) / (most - least) : 1));
}

interface Share {
  readonly criterion: Criterion;
  readonly weight: number;
  /** By scenario, in their order. */
  readonly scores: readonly number[];
}

function scoredScenario(
  { scenario, letter }: Evaluation,
  which: number,
  shares: readonly Share[],
): ScoredScenario {
  const own = shares.map(({ scores, ...share }) => ({ ...share, score: at(scores, which) }));
  const scores = Object.fromEntries(own.map(({ criterion, score }) => [criterion, score]));
  const score = own.reduce((sum, one) => sum + one.weight * one.score, 0);
  return { scenario: scenario.id, letter, title: scenario.title, scores, score };
}

/** The score in a criterion that counts. @throws BugError for one that does not. */
export function scoreIn({ scores }: ScoredScenario, criterion: Criterion): number {
  const score = scores[criterion];
  if (score === undefined) throw new BugError(`${criterion} does not count in this table`);
  return score;
}

function leftOut(evaluation: Evaluation): DecisionTable['leftOut'][number] {
  const { scenario, letter, estimate } = evaluation;
  const goals = estimate?.unmetGoals.map(({ title }) => title) ?? [];
  return {
    scenario: scenario.id,
    letter,
    reason:
      goals.length > 0
        ? `leaves a clean-up goal unmet: ${goals.join('; ')}`
        : 'has no total: see its findings',
  };
}

/** Scores are straight lines in one weight: where they cross the first one’s, the ranking turns. A sole weight cannot move. */
function weightRange(ranked: readonly ScoredScenario[], criterion: Criterion, weight: number): WeightRange {
  const [first, ...others] = ranked;
  const frame = { criterion, weight, from: 0, to: 1 };
  if (first === undefined) return frame;
  const rest = (one: ScoredScenario) => (one.score - weight * scoreIn(one, criterion)) / (1 - weight);
  return others.reduce<WeightRange>((range, other) => {
    const gap = rest(first) - rest(other);
    const slope = scoreIn(first, criterion) - scoreIn(other, criterion) - gap;
    const turn = -gap / slope;
    if (slope > 0 && turn > range.from && turn <= weight)
      return { ...range, from: turn, firstBelow: other.letter };
    if (slope < 0 && turn < range.to && turn >= weight)
      return { ...range, to: turn, firstAbove: other.letter };
    return range;
  }, frame);
}

function dominance(scored: readonly ScoredScenario[]): { better: string; worse: string }[] {
  return scored.flatMap(a =>
    scored.filter(b => isBetter(a, b)).map(b => ({ better: a.letter, worse: b.letter })),
  );
}

function isBetter(a: ScoredScenario, b: ScoredScenario): boolean {
  const pairs = CRITERIA.flatMap((criterion): [number, number][] => {
    const [x, y] = [a.scores[criterion], b.scores[criterion]];
    return x === undefined || y === undefined ? [] : [[x, y]];
  });
  return pairs.every(([x, y]) => x >= y) && pairs.some(([x, y]) => x > y);
}
