export { misfit, structuredCloneJson, withScenario } from './overlay';
export { LARGEST, readProject, type ReadResult } from './reader';
export * from './schema';
export type { Benefits, BidChoices, Funding, FundingSourceChoice } from './funding-schema';
export { bodyHash, canonicalJson } from './sha256';
export { writeProject } from './writer';
export { parseJsonText, type Json } from './json-text';
export { checkProject, checkGiven } from './check';
export type { PlacedGiven } from './given-rules';
export { knownItems } from './check-items';
export { ITEM_FIGURES, itemGivens } from './item-rules';
export { rateGivens } from './rate-rules';
export {
  FIRST_HULL_TYPE,
  isStarting,
  isStartingShip,
  startingProject,
  UNNAMED_SHIP,
  type StartingPoint,
} from './starting';
export * from './imports';
export { COPY_READERS, copyForOthers, type LeftOut, type LeftOutBook } from './copy-for-others';
