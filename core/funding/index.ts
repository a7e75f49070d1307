export {
  RULE_IDS,
  centsOf,
  fundingFile,
  numberOf,
  readFundingRules,
  ruleAt,
  termOf,
  type CountyLimits,
  type DatedRule,
  type FundingRules,
  type RuleId,
  type TermId,
} from './rules';
export {
  pieceKind,
  procurementLimits,
  procurementMethod,
  type ProcurementLimits,
  type ProcurementMethod,
} from './procurement';
export {
  FORM_KINDS,
  PIECE_KINDS,
  activitySchema,
  formsFile,
  labelsOf,
  mapToForm,
  mappingRowSchema,
  readForms,
  type Activity,
  type FormKind,
  type FormsData,
  type MappingRow,
  type PieceKind,
} from './forms';
export type { Contingency, FundingPlan, FundingSource, GrantInput, NotAllowable, Scrap } from './plan';
export {
  CONTRACT_CLASSES,
  indirectSideBySide,
  modifiedTotalDirectCost,
  type BaseItem,
  type ClassResult,
  type ContractClass,
  type IndirectBase,
  type IndirectChoice,
} from './indirect';
export { classSentence, type AwardIndirect, type ContractResults } from './indirect-rows';
export {
  INCOME_METHODS,
  METHOD_IF_NOT_STATED,
  applyProgramIncome,
  netIncome,
  type IncomeMethod,
  type IncomeResult,
} from './program-income';
export { PRE_AWARD_RULE, chargedBefore } from './pre-award';
export { checkContingency } from './contingency';
export { scopePiece, type AwardPeriod, type ScopedPiece } from './award-period';
export { piecesOfLine, type CostPiece } from './cost-pieces';
export { NOT_FOUND, PROGRAM_INCOME, UNFUNDED_TITLE, type BudgetRow, type SharedRow } from './budget-row';
export { printedShares } from './source-checks';
export { buildSf424a, type ActivityAmounts, type Sf424a, type SummaryLine } from './sf-424a';
export { buildSf424c, type ConstructionLine, type Sf424c } from './sf-424c';
export {
  QUARTER_TITLES,
  SECTION_TITLES,
  formSections,
  laterYearTitle,
  resourceLines,
  type FormSection,
  type SectionLine,
} from './form-sections';
export { perCentWords, type NarrativeSentence } from './narrative';
export {
  bookOfForm,
  bookOfNarrative,
  federalRequest,
  formTotal,
  type GrantForm,
  type TieOutRow,
} from './tie-out';
export type { Award } from './award';
export {
  budgetParts,
  grantBook,
  ownersIncome,
  type BudgetPart,
  type GrantBook,
  type GrantOutcome,
  type SourceTotal,
} from './grant-book';
export type { CountyCost } from './county-cost';
export { borneMonths, drawBasisOf, grantCash, type GrantCash } from './grant-cash';
