import type { Finding } from '../base';
import { isCollapsed, type Distribution } from './distributions';
import { cholesky, type Matrix } from './numeric/cholesky';
import type { RankCorrelation } from './prepared';
import { hermiteCoefficients, scoresForRanks, scoresForValues } from './score-correlation';

/** Variables that are correlated with one another, directly or through others, and how. */
export interface CorrelationGroup {
  /** In the order of their ids, which does not depend on the order in the document. */
  readonly ids: readonly string[];
  readonly target: Matrix;
}

/**
 * Joins the correlations asked for into groups. A set of correlations that cannot hold together is pulled
 * towards zero by the least common factor that makes it possible, with a finding.
 */
export function correlationGroups(
  correlations: readonly RankCorrelation[],
  known: ReadonlyMap<string, Distribution>,
): { groups: CorrelationGroup[]; findings: Finding[] } {
  const coefficients = new Map<string, Float64Array>();
  const inScores = correlations.map(c => ({ ...c, inScores: scoreCorrelation(c, known, coefficients) }));
  const findings = inScores.flatMap(c => problemWith(c, known));
  const usable = inScores
    .filter(c => problemWith(c, known).length === 0)
    .map(c => ({ ...c, correlation: c.inScores }));
  const groups = connected(usable).map(ids => possible(ids, matrixOf(ids, usable), findings));
  return { groups, findings };
}

/** The correlation of normal scores behind the one asked for. */
function scoreCorrelation(
  c: RankCorrelation,
  known: ReadonlyMap<string, Distribution>,
  coefficients: Map<string, Float64Array>,
): number {
  if (c.of === 'ranks') return scoresForRanks(c.correlation);
  const [first, second] = [known.get(c.first), known.get(c.second)];
  if (c.of !== 'values' || first === undefined || second === undefined) return c.correlation;
  if (isCollapsed(first) || isCollapsed(second)) return 0;
  const a = coefficients.get(c.first) ?? hermiteCoefficients(first);
  const b = coefficients.get(c.second) ?? hermiteCoefficients(second);
  coefficients.set(c.first, a).set(c.second, b);
  return scoresForValues(a, b, c.correlation);
}

function problemWith(
  c: RankCorrelation & { inScores: number },
  known: ReadonlyMap<string, Distribution>,
): Finding[] {
  const place = `/risk/correlations/${c.first}+${c.second}`;
  const unknown = [c.first, c.second].filter(id => !known.has(id));
  const problems = unknown.map(id => `${id} has no range and is no driver`);
  if (c.first === c.second) problems.push('both sides are the same');
  if (!(Math.abs(c.correlation) < 1)) problems.push(`${c.correlation} is not between -1 and 1`);
  else if (unknown.length === 0 && !(Math.abs(c.inScores) < 1)) {
    problems.push(`ranges of these shapes cannot reach ${c.correlation}`);
  }
  return problems.map(problem => ({
    code: 'risk/correlation',
    weight: 'warns',
    place,
    message: `The correlation of ${c.first} with ${c.second} is left out: ${problem}.`,
    meaning: 'The two are drawn as if neither knew of the other.',
    remedy: 'Name two different ranges or drivers and a correlation above -1 and below 1.',
  }));
}

function connected(correlations: readonly RankCorrelation[]): string[][] {
  const groups: Set<string>[] = [];
  for (const { first, second } of correlations) {
    const touched = groups.filter(g => g.has(first) || g.has(second));
    const joined = new Set([first, second, ...touched.flatMap(g => [...g])]);
    for (const g of touched) groups.splice(groups.indexOf(g), 1);
    groups.push(joined);
  }
  return groups.map(g => [...g].sort((a, b) => (a < b ? -1 : 1)));
}

function matrixOf(ids: readonly string[], correlations: readonly RankCorrelation[]): Matrix {
  return ids.map(a =>
    ids.map(b => {
      if (a === b) return 1;
      const both = correlations.find(c => [c.first, c.second].includes(a) && [c.first, c.second].includes(b));
      return both === undefined ? 0 : both.correlation;
    }),
  );
}

function possible(ids: readonly string[], target: Matrix, findings: Finding[]): CorrelationGroup {
  if (cholesky(target) !== undefined) return { ids, target };
  let kept = 0;
  let tooMuch = 1;
  while (tooMuch - kept > 1e-6) {
    const middle = (kept + tooMuch) / 2;
    if (cholesky(pulled(target, middle)) === undefined) tooMuch = middle;
    else kept = middle;
  }
  findings.push({
    code: 'risk/correlations-impossible',
    weight: 'warns',
    place: `/risk/correlations/${ids.join('+')}`,
    message: `The correlations among ${ids.join(', ')} cannot all hold at once; ${kept.toFixed(2)} times each is used.`,
    meaning: 'The simulation runs with weaker ties than were asked for.',
    remedy: 'Lower the correlations, or give the ones that were left at zero.',
  });
  return { ids, target: pulled(target, kept) };
}

function pulled(target: Matrix, factor: number): Matrix {
  return target.map((row, i) => row.map((value, j) => (i === j ? 1 : value * factor)));
}
