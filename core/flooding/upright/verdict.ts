import { at } from '../../base';
import type { ScreenCase, Standing } from './cases';
import type { KgBasis, MeasurementId, UprightVerdict } from './types';

/** The verdict over a range of cases, with the reasons in words. */
export interface Judged {
  readonly verdict: UprightVerdict;
  readonly reasons: readonly string[];
  readonly settles?: { readonly measurement: MeasurementId; readonly why: string };
}

const ORDER: readonly Standing[] = ['does not sink', 'stays up', 'leans', 'may roll over'];

function standings(cases: readonly ScreenCase[]): Standing[] {
  return ORDER.filter(standing => cases.some(one => one.standing === standing));
}

function metres(value: number): string {
  return `${value.toFixed(2)} m`;
}

/** One case in words: its values, its greatest heel and where. */
export function caseInWords(one: ScreenCase): string {
  const values = `KG ${metres(one.kg)}, ${one.displacement.toFixed(0)} t, ${Math.round(one.mismatch * 100)} % uneven openings`;
  if (one.standing === 'does not sink') return `${values}: she stays afloat`;
  if (one.greatestHeel === undefined)
    return `${values}: no equilibrium below 60 degrees from a flood level of ${metres(one.worst.level)}`;
  if (one.greatestHeel < 0.05) return `${values}: she stays upright at every flood level`;
  return `${values}: greatest equilibrium heel ${one.greatestHeel.toFixed(1)} degrees at a flood level of ${metres(one.worst.level)}`;
}

type Range = 'kg' | 'mismatch' | 'displacement';

/** The range whose likely value alone would leave one standing. */
function settledBy(cases: readonly ScreenCase[], likely: Record<Range, number>): Range | undefined {
  const order: readonly Range[] = ['kg', 'mismatch', 'displacement'];
  return order.find(range => {
    const rest = cases.filter(one => one[range] === likely[range]);
    return standings(rest).length === 1;
  });
}

function measurementFor(
  range: Range | undefined,
  basis: KgBasis,
): { measurement: MeasurementId; why: string } {
  if (range === 'mismatch')
    return {
      measurement: 'bulkhead survey',
      why: 'Known openings and bulkheads would tell how unevenly the sides fill.',
    };
  if (range === 'displacement')
    return { measurement: 'draught survey', why: 'The range of the displacement spans two verdicts.' };
  if (basis === 'weight list')
    return { measurement: 'inclining', why: 'The range of KG in the weight list spans two verdicts.' };
  if (basis === 'inclined')
    return { measurement: 'inclining', why: 'The range that the inclining leaves KG spans two verdicts.' };
  return {
    measurement: 'inclining',
    why: 'The height of the centre of gravity decides, and it has not been measured.',
  };
}

/**
 * The verdict over the ranges: one standing when all cases agree, otherwise "cannot tell" with the one measurement
 * that would settle it. "Stays up" is never given on an assumed KG.
 */
export function judge(cases: readonly ScreenCase[], likely: Record<Range, number>, basis: KgBasis): Judged {
  const found = standings(cases);
  const only = at(found, 0);
  const examples = found.map(standing => {
    const one = worstCase(cases.filter(({ standing: s }) => s === standing));
    return `${standing} with ${caseInWords(one)}`;
  });
  if (found.length > 1)
    return {
      verdict: 'cannot tell',
      reasons: [`What is not known of her allows ${found.length} different outcomes.`, ...examples],
      settles: measurementFor(settledBy(cases, likely), basis),
    };
  if (only === 'stays up' && basis === 'assumed')
    return {
      verdict: 'cannot tell',
      reasons: ['She would stay up, but KG is assumed: nobody has measured it.', ...examples],
      settles: measurementFor('kg', basis),
    };
  const lost = only === 'does not sink' ? ['No verdict can make a plan good that leaves her afloat.'] : [];
  return { verdict: only, reasons: [...examples, ...lost] };
}

/** The case with the greatest heel of one at least; one without rest is worse than any, the earlier the worse. */
export function worstCase(cases: readonly ScreenCase[]): ScreenCase {
  const weight = (one: ScreenCase): number => one.greatestHeel ?? 1000 - one.worst.level;
  return cases.reduce((worst, one) => (weight(worst) >= weight(one) ? worst : one));
}
