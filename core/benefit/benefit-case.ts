import type { Finding, Provenance } from '../base';
import type { Cents } from '../cash-flow';
import { presentValueOfObligations, type Obligation } from './obligations';
import { annuityFactor } from './present-value';
import { serviceLife, type LifeBand } from './service-life';
import type { BenefitRules } from './rules';

/** A value with its range: low, likely, high. */
export interface Spread {
  readonly low: number;
  readonly likely: number;
  readonly high: number;
}

/** A use of the reef: visits a year and what a visit is worth, the user's own figures with their source. */
export interface ReefUse {
  readonly id: string;
  readonly title: string;
  readonly visitsPerYear: Spread;
  /** Dollars a visit. */
  readonly valuePerVisit: Spread;
  readonly basis: Provenance;
}

/** What the benefit case is made from; whatever is missing makes its figures absent. */
export interface BenefitInput {
  /** What is spent up to the sinking, in cents. */
  readonly cost?: Cents;
  /** Thickness of the plate that matters, mm. */
  readonly plateThickness?: number;
  readonly uses: readonly ReefUse[];
  readonly obligations: readonly Obligation[];
  /** A year, real, the board's own rate. */
  readonly discountRate?: number;
  /** The last year of benefit that is counted. */
  readonly horizonYears: number;
  /** The first year after the sinking in which people come. */
  readonly firstBenefitYear: number;
}

/** One end of the case, or its middle. */
export interface BenefitFigures {
  readonly years: number;
  readonly benefitPerYear: Cents;
  /** What a dollar a year, over the years counted, is worth today. */
  readonly annuity: number;
  readonly presentBenefit: Cents;
  /** What is spent up to the sinking. */
  readonly cost: Cents;
  /** What the obligations after it are worth today. */
  readonly presentObligations: Cents;
  /** The two together. */
  readonly presentCost: Cents;
  readonly netPresentValue: Cents;
  /** Absent where there is no cost. */
  readonly benefitCostRatio?: number;
  /** Visits a year at which benefit and cost are equal; absent when a visit is worth nothing. */
  readonly breakEvenVisits?: number;
}

/** The benefit case. Figures are absent, never zero, while an input they need is missing. */
export interface BenefitCase {
  readonly life?: LifeBand;
  readonly discountRate?: number;
  readonly low?: BenefitFigures;
  readonly likely?: BenefitFigures;
  readonly high?: BenefitFigures;
  readonly findings: readonly Finding[];
}

/** The ends of the case and its middle. */
export const ENDS = ['low', 'likely', 'high'] as const satisfies readonly (keyof Spread)[];
export type End = (typeof ENDS)[number];

/** Makes the benefit case: life, benefit, net present value, ratio and break-even for low, likely and high. */
export function benefitCase(input: BenefitInput, rules: BenefitRules): BenefitCase {
  const { plateThickness, discountRate, cost, uses } = input;
  const life = plateThickness === undefined ? undefined : serviceLife(plateThickness, rules);
  const findings = missingInputs(input);
  const base = { ...(life && { life }), ...(discountRate !== undefined && { discountRate }), findings };
  if (!life || discountRate === undefined || cost === undefined || uses.length === 0) return base;
  const known = { cost, rate: discountRate, life };
  return {
    ...base,
    low: figuresAt('low', input, known),
    likely: figuresAt('likely', input, known),
    high: figuresAt('high', input, known),
  };
}

/** The low case ends with the low end of the life, the others no later than its high end. */
function figuresAt(
  end: End,
  input: BenefitInput,
  { cost, rate, life }: { cost: Cents; rate: number; life: LifeBand },
): BenefitFigures {
  const years = Math.min(input.horizonYears, end === 'low' ? life.lowYears : life.highYears);
  const perYear = input.uses.reduce((sum, use) => sum + use.visitsPerYear[end] * use.valuePerVisit[end], 0);
  const visits = input.uses.reduce((sum, use) => sum + use.visitsPerYear[end], 0);
  const annuity = annuityFactor(rate, input.firstBenefitYear, years);
  const presentBenefit = Math.round(perYear * 100 * annuity);
  const presentObligations = presentValueOfObligations(input.obligations, rate, years);
  const presentCost = cost + presentObligations;
  return {
    years,
    benefitPerYear: Math.round(perYear * 100),
    annuity,
    presentBenefit,
    cost,
    presentObligations,
    presentCost,
    netPresentValue: presentBenefit - presentCost,
    ...(presentCost > 0 && { benefitCostRatio: presentBenefit / presentCost }),
    ...breakEven(presentCost, (perYear / visits) * annuity),
  };
}

function breakEven(presentCost: Cents, presentValuePerVisit: number): { breakEvenVisits?: number } {
  if (!(presentValuePerVisit > 0)) return {};
  return { breakEvenVisits: Math.ceil(presentCost / 100 / presentValuePerVisit) };
}

function missingInputs(input: BenefitInput): Finding[] {
  const findings: Finding[] = [];
  const absent = (code: string, place: string, what: string, meaning: string, remedy: string): void => {
    findings.push({ code, weight: 'notes', place, message: what, meaning, remedy });
  };
  if (input.plateThickness === undefined)
    absent(
      'benefit/plate-missing',
      '/benefits/plateThickness',
      'no plate thickness is given',
      'service life and benefits are absent',
      'measure the plate (ultrasonic), or take it from the drawings',
    );
  if (input.discountRate === undefined)
    absent(
      'benefit/rate-missing',
      '/benefits/discountRate',
      'no discount rate is given',
      'net present value, ratio and break-even visits are absent',
      'enter the rate your board uses, with its source',
    );
  if (input.uses.length === 0)
    absent(
      'benefit/visits-missing',
      '/benefits/uses',
      'no visits and no value of a visit are given',
      'benefits are absent, which does not mean that there are none',
      'enter visits and value with their source, such as a travel cost study of your coast',
    );
  if (input.cost === undefined)
    absent(
      'benefit/cost-missing',
      '/benefits',
      'the cost is absent',
      'benefits cannot be compared with it',
      'clear the findings of the estimate',
    );
  return findings;
}
