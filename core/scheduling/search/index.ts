export {
  workDaysOf,
  type RelationshipKind,
  type SearchActivity,
  type SearchConflict,
  type SearchExclusion,
  type SearchOptions,
  type SearchProblem,
  type SearchProgress,
  type SearchRelationship,
  type SearchResource,
  type SearchResult,
  type SearchStatus,
  type WorkDays,
} from './problem';
export { searchSchedule } from './search';
export { TrialDecoder, type Trial } from './trial-decoder';
