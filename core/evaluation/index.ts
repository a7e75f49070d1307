export {
  crewPlanJson,
  crewPlanStudy,
  levelledJson,
  levelledPlan,
  type CrewPlanAnswer,
  type CrewPlanAsk,
  type CrewPlanPoint,
  type CrewPlanProgress,
  type CrewsUsed,
  type CrewUse,
  type LevelledPlan,
  type LevellingAsk,
  type Moved,
  type NoPlan,
} from './crews';
export { chosenOptions, estimateInput, faultsOf } from './estimate-input';
export {
  evaluate,
  schedulingSteps,
  type EstimateParts,
  type EvaluateOptions,
  type Evaluation,
} from './evaluate';
export { datesOf, hazardousWaste, pricedGeneration, type Dates } from './generator';
export { type UnmetGoal } from './goals';
export { quotedLines, type QuotedLines } from './line-quotes';
export { sinkingDay, type DatedActivity } from './sinking-day';
export { surveyOf } from './survey';
export { shippedLibrary, TEMPLATE_FILES } from './templates';
export { estimateJson, scheduleJson, uprightJson, type JsonObject } from './json';
export {
  ELEMENTS,
  ELEMENT_TITLES,
  columnOf,
  summarise,
  type ElementKey,
  type EstimateLine,
  type EstimateSummary,
} from './summary';
export { itemTimings, obligationStart } from './timing';
export { SCOPES, milestones, romProject, roughOrder, type RomRequest, type Scope } from './rom';
export { screenUpright, withSizedOpenings } from './upright';
export { heightAllowed } from './upright-figures';
export { type ChoiceLeftOut } from './upright-choice-list';
export { measurementPrices, type MeasurementPrice } from './upright-measurements';
export {
  uprightChoices,
  withChoices,
  type ChoicePrice,
  type PricedChoices,
  type PropellerChoice,
} from './upright-choices';
export { towOf, withTowDays, type TowHoldPoint, type TowView } from './tow';
export { compartmentTitle } from './upright-compartments';
export { uprightInput } from './upright-input';
export { openingWork, type OpeningWork } from './upright-work';
export { classOf, shippedReviewData } from './estimate-class';
export {
  benefitJson,
  benefitView,
  bidJson,
  bidLeaks,
  bidView,
  bidsOfPrices,
  bookBasis,
  bookSteps,
  contractorRun,
  fundingJson,
  grantInput,
  grantView,
  historyJson,
  historyView,
  internalJson,
  lineQuantity,
  lineSpans,
  marginView,
  quoteView,
  reviewInput,
  reviewJson,
  ownTrials,
  reviewRows,
  trialsOfReview,
  type ReviewTrials,
  shippedBookRules,
  tabulationView,
  type AfterSinking,
  type AlternateAsked,
  type AwardDraws,
  type BenefitView,
  type BidView,
  type BookBasis,
  type BookOutcome,
  type BookRules,
  type CashPart,
  type ContractMethod,
  type GrantView,
  type GrowthCase,
  type HistoryView,
  type LineSpan,
  type MarginView,
  type QuoteScope,
  type QuoteView,
  type TabulationView,
  elementKey,
} from './books';
export {
  awardChance,
  grantEnd,
  contingencyOf,
  evaluatedWithRuns,
  prepareRisk,
  rangedGivens,
  riskFile,
  riskJson,
  riskRun,
  riskView,
  shippedRisk,
  simulatedContingency,
  whatIfs,
  type AwardChance,
  type FinishView,
  type GrowthComparison,
  type PolicyContingency,
  type PreparedEstimate,
  type RegisterRow,
  type RiskChoices,
  type RiskFile,
  type RiskProgress,
  type RiskRun,
  type RiskRunChoices,
  type RiskView,
  type SimulatedContingency,
  type WhatIfs,
} from './risk';
export {
  splitAgainstHistory,
  splitLines,
  type LargestStage,
  type SplitAgainstHistory,
} from './split-history';
export { datedNotices, type DatedNotice } from './rules';
