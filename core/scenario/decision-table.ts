import { at, BugError } from '../base';
import { dayOf } from '../calendar';
import { benefitView, type Evaluation } from '../evaluation';
import { CRITERIA, type Criterion, type DecisionChoices } from '../project';
import type { RiskFacts } from './risk-facts';
import { isPermittable, summaryOf } from './totals';

/** What each criterion asks, in words; less is better unless it says more. */
export const CRITERION_TITLES: Readonly<Record<Criterion, string>> = {
  cost: 'Low budget',
  finish: 'Early finish',
  confidence: 'Likely done before the grant ends, or by the last date',
  upright: 'Sinks upright by the screening',
  checked: 'Small share not yet checked',
  benefit: 'Benefit against cost',
};

/**
 * Weights until the board sets its own: cost and an upright sinking first (judgement, 2026). The chance of the grant period
 * or the deadline counts once every scenario was simulated; until then the others keep their proportions.
 */
export const USUAL_WEIGHTS: DecisionChoices['weights'] = [
  { criterion: 'cost', weight: '0.32' },
  { criterion: 'upright', weight: '0.24' },
  { criterion: 'confidence', weight: '0.2' },
  { criterion: 'finish', weight: '0.16' },
  { criterion: 'checked', weight: '0.08' },
];

/** One scenario in the decision table: its score by criterion, 0 for the worst of those compared and 1 for the best. */
export interface ScoredScenario {
  readonly scenario: string;
  readonly letter: string;
  readonly title: string;
  /** A criterion that has no figure in some scenario counts for none of them and is left out. */
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
  readonly weights: readonly { readonly criterion: Criterion; readonly weight: number }[];
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
  const usable = given.flatMap(({ criterion, weight }) => {
    const values = able.flatMap(one => READ[criterion](one, risks) ?? []);
    return values.length === able.length ? [{ criterion, weight, values }] : [];
  });
  const sum = usable.reduce((all, { weight }) => all + Number(weight), 0);
  const shares = usable.map(({ criterion, weight, values }) => ({
    criterion,
    weight: sum > 0 ? Number(weight) / sum : 1 / usable.length,
    scores: fromWorstToBest(values),
  }));
  const weights = shares.map(({ criterion, weight }) => ({ criterion, weight }));
  const scored = able.map((one, i) => scoredScenario(one, i, shares));
  const ranked = [...scored].sort((a, b) => b.score - a.score || (a.letter < b.letter ? -1 : 1));
  return {
    weights,
    isBoardsOwn: own.length > 0,
    ranked,
    leftOut: evaluations.filter(one => !able.includes(one)).map(leftOut),
    sensitivity: weights.map(({ criterion, weight }) => weightRange(ranked, criterion, weight)),
    dominance: dominance(scored),
  };
}

/** What a criterion reads, more being better. */
const READ: Readonly<
  Record<Criterion, (evaluation: Evaluation, risks: readonly RiskFacts[]) => number | undefined>
> = {
  cost: one => negative(summaryOf(one)?.budget?.cents ?? summaryOf(one)?.total?.cents),
  finish: ({ estimate }) => negative(estimate?.schedule.finish && dayOf(estimate.schedule.finish)),
  confidence: ({ scenario }, risks) => chanceInTime(risks.find(risk => risk.scenario === scenario.id)),
  upright: ({ upright }) => (upright === undefined ? undefined : VERDICTS[upright.verdict]),
  checked: one => negative(summaryOf(one)?.uncheckedShare),
  benefit: one => benefitView(one).case?.likely?.benefitCostRatio,
};

/** The chance that the money is still there; without a grant that ends, of the deadline. */
function chanceInTime(risk: RiskFacts | undefined): number | undefined {
  return risk?.missesGrant === undefined ? risk?.chanceOfDeadline : 1 - risk.missesGrant;
}

/** How good a verdict of the roll-over screen is; one that cannot tell is as bad as one that warns. */
const VERDICTS: Readonly<Record<string, number>> = {
  'stays up': 2,
  leans: 1,
  'may roll over': 0,
  'cannot tell': 0,
  'does not sink': 0,
};

function negative(value: number | '' | undefined): number | undefined {
  return value === undefined || value === '' ? undefined : -value;
}

/** 0 for the least of the values and 1 for the greatest; 1 for all when they are alike. */
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
