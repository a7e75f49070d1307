import { at } from '../../base';
import { distinct, screenCases, type ScreenCase } from './cases';
import { UPRIGHT_DEFAULTS } from './defaults';
import type { KgEvidence } from './kg-facts';
import type { ResolvedShip } from './resolved';
import { judge, type Judged } from './verdict';

/** The cases of a screen and the likely one among them. */
export interface Screened {
  readonly cases: readonly ScreenCase[];
  readonly likely: ScreenCase;
  readonly judged: Judged;
}

/** Runs the section check over the ranges; the likely values are among them. */
export function screenRanges(ship: ResolvedShip, evidence: KgEvidence, steps?: number): Screened {
  const { input } = ship;
  const mismatch = input.openingsMismatch ?? UPRIGHT_DEFAULTS.mismatch.value;
  const ranges = {
    displacements: distinct(input.displacement),
    kgs: distinct(evidence.kg),
    mismatches: [...new Set([0, mismatch])],
  };
  const cases = screenCases(ship, ranges, input.limits ?? UPRIGHT_DEFAULTS.limits.value, steps);
  const middle = { displacement: input.displacement.likely, kg: evidence.kg.likely, mismatch };
  const isLikely = (one: ScreenCase): boolean =>
    one.displacement === middle.displacement && one.kg === middle.kg && one.mismatch === middle.mismatch;
  return { cases, likely: at(cases.filter(isLikely), 0), judged: judge(cases, middle, input.kg.basis) };
}
