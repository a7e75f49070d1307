import type { Figure, Finding } from '../../base';
import {
  alternatives,
  benefitCase,
  wholeYears,
  type Alternative,
  type BenefitCase,
  type BenefitInput,
  type ReefUse,
  type Spread,
} from '../../benefit';
import { sumCents } from '../../cash-flow';
import type { Benefits } from '../../project';
import { amountIn, isConvertible, isUnit, quantity } from '../../units';
import type { Evaluation } from '../evaluate';
import { bookBasis, type BookBasis } from './book-lines';
import { faultsOfSection } from './faulty-section';
import { afterSinking, type AfterSinking } from './obligations';
import { priceFactors } from './price-factors';
import { shippedBookRules, type BookRules } from './shipped-rules';

/** Benefits, life and obligations of an evaluation: planning figures. What has no input is absent, never zero. */
export interface BenefitView {
  /** What the case is made from. */
  readonly input?: BenefitInput;
  readonly case?: BenefitCase;
  readonly obligations?: AfterSinking;
  readonly alternatives?: readonly Alternative[];
  readonly findings: readonly Finding[];
}

/** The benefit view: life of the plate, benefit against cost, obligations, and what else could be done with the ship. */
export function benefitView(evaluation: Evaluation, rules: BookRules = shippedBookRules()): BenefitView {
  const { basis, findings } = bookBasis(evaluation);
  const faults = faultsOfSection(evaluation, '/benefits');
  if (basis === undefined || faults.length > 0) return { findings: [...findings, ...faults] };
  const { benefits } = evaluation.project;
  const obligations = afterSinking(basis, benefits, rules);
  const factors = priceFactors(basis);
  const total = sumCents(basis.lines.map(line => line.total));
  const input = benefitInput(basis, benefits, obligations);
  const made = benefitCase(input, rules.benefit);
  return {
    input,
    case: made,
    obligations,
    alternatives: alternatives(rules.benefit, total, year => factors[year]),
    findings: made.findings,
  };
}

/** The last year counted where the document names none. */
const NO_HORIZON = { horizonYears: 50, firstBenefitYear: 1 };

function benefitInput(
  { lines, parts, summary }: BookBasis,
  benefits: Benefits | undefined,
  { beside, lineIds }: AfterSinking,
): BenefitInput {
  const later = lines.filter(line => lineIds.includes(line.id));
  const total = summary.total?.cents;
  const cost = total === undefined ? undefined : total - sumCents(later.map(line => line.total));
  const thickness = benefits?.plateThickness && millimetres(benefits.plateThickness);
  const carried = later.flatMap(line => {
    const days = parts.planned.find(plan => plan.item.id === line.id)?.days ?? 0;
    const years = wholeYears(days);
    const basis = { basis: line.basis, source: line.source };
    const costPerYear = Math.round(line.total / years);
    return [
      { id: line.id, title: line.title, party: 'permit holder', costPerYear, firstYear: 1, years, basis },
    ];
  });
  return {
    ...(cost !== undefined && { cost }),
    ...(thickness !== undefined && { plateThickness: thickness }),
    uses: (benefits?.uses ?? []).map(useOf),
    obligations: [...carried, ...beside],
    ...(benefits?.discountRate && { discountRate: Number(benefits.discountRate.value) }),
    horizonYears: benefits?.horizonYears ?? NO_HORIZON.horizonYears,
    firstBenefitYear: benefits?.firstBenefitYear ?? NO_HORIZON.firstBenefitYear,
  };
}

function millimetres(figure: Figure): number | undefined {
  if (!isUnit(figure.unit) || !isConvertible(figure.unit, 'mm')) return undefined;
  return amountIn(quantity(figure.value, figure.unit), 'mm');
}

function useOf({ id, title, visitsPerYear, valuePerVisit }: Benefits['uses'][number]): ReefUse {
  const { basis, source, year } = valuePerVisit;
  return {
    id,
    title,
    visitsPerYear: spreadOf(visitsPerYear),
    valuePerVisit: spreadOf(valuePerVisit),
    basis: { basis, source, ...(year !== undefined && { year }) },
  };
}

/** The range of a figure; one without a range is taken as certain. */
function spreadOf({ low, value, high }: Figure): Spread {
  return { low: Number(low ?? value), likely: Number(value), high: Number(high ?? value) };
}
