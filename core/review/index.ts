export {
  LIMIT_IDS,
  PRACTICE_IDS,
  growthFile,
  limitOf,
  readGrowthData,
  readReviewData,
  reviewFile,
  type GrowthData,
  type LimitId,
  type PracticeId,
  type ReviewData,
} from './data';
export type { ReviewActivity, ReviewInput, ReviewLine, ReviewRelationship, ReviewSchedule } from './input';
export type { Assessment, Standing } from './standing';
export { estimateClass, type EstimateClass } from './estimate-class';
export { growthView, type GrowthView } from './growth';
export { likeBand, likeHulls, type LikeBand, type LikeHull } from './history';
export { reported, review, reviewFindings, type ReviewRow } from './review';
