export {
  BID_RULE_IDS,
  bidFile,
  bidRule,
  bondTiersOf,
  readBidRules,
  type BidRules,
  type BondTier,
} from './rules';
export { bondPremium, buildUp, type BuildUp, type MarkUp } from './mark-ups';
export {
  extension,
  scheduleOfValues,
  type Alternate,
  type BidItem,
  type PricedItem,
  type ScheduleOfValues,
} from './schedule-of-values';
export {
  bidSheet,
  internalSheet,
  type BidSheet,
  type BidSheetRow,
  type BuildUpFact,
  type InternalSheet,
} from './sheets';
export { findLeaks, numbersIn, secretsOf, type Leak, type Secrets } from './leaks';
export {
  compareQuotes,
  type LevelledQuote,
  type Quote,
  type QuoteChoice,
  type QuoteComparison,
} from './quotes';
export { bidMargin, breakEvenGrowth, marginAt, type BidMargin, type Margin } from './margin';
export {
  settleBid,
  type BidPrice,
  type OpenedBid,
  type SettledBid,
  type TabulatedItem,
} from './bid-tabulation';
export {
  compareBids,
  medianOf,
  type BidComparison,
  type BidTotal,
  type ComparisonRow,
} from './bid-comparison';
export { bookOfBid } from './book';
