export { allocateCents, allocateOver, shareOf, sumCents, type Cents, type Part } from './cents';
export { dollars, firstDollars } from './dollars';
export {
  ELEMENTS,
  STAGES,
  UNNAMED_CONTRACT,
  contractIdOf,
  type Element,
  type EstimateLine,
  type FormHints,
  type MonthAmount,
  type Stage,
} from './estimate-lines';
export { checkLines } from './line-checks';
export {
  daysInside,
  firstDayOf,
  gatherMonths,
  lastDayOf,
  laterMonth,
  monthSpan,
  monthsFrom,
  spreadByDays,
  spreadLike,
  totalOfMonths,
} from './months';
export { byFiscalYear, fiscalYearOf } from './fiscal-year';
export { contingencyByMonth, cumulativeCurve, spendingByMonth, type CumulativeMonth } from './spending';
export {
  contractPayments,
  lastMonths,
  ownPayments,
  paymentsOfLines,
  type Payments,
  type PaymentTerms,
} from './payments';
export { reconcile, type Reconciliation, type ReconciliationStep } from './reconciliation';
export {
  bookOfMonths,
  differenceFindings,
  locateDifferences,
  type Book,
  type BookDifference,
  type BookEntry,
} from './book';
export { receiptsOf, upTo, type CashMonth, type CashView, type Peak, type SourcePayments } from './receipts';
export { carryingCost, cashView, mostCarried } from './cash-view';
export { checkDrawdown, drawdownPlan, type Draw, type DrawBasis } from './drawdown';
