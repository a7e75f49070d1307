export {
  ALTERNATIVE_IDS,
  CORROSION_IDS,
  PLANNING_FIGURE,
  benefitFile,
  corrosionOf,
  readBenefitRules,
  type BenefitRules,
} from './rules';
export { serviceLife, type LifeBand } from './service-life';
export { annuityFactor, presentValueFactor } from './present-value';
export {
  DAYS_A_YEAR,
  obligationsByMonth,
  obligationsByYear,
  presentValueOfObligations,
  usualObligations,
  wholeYears,
  type ContingentObligation,
  type Obligation,
} from './obligations';
export { alternatives, type Alternative } from './alternatives';
export {
  benefitCase,
  ENDS,
  type BenefitCase,
  type BenefitFigures,
  type BenefitInput,
  type End,
  type ReefUse,
  type Spread,
} from './benefit-case';
