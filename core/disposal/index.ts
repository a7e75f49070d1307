export {
  GENERATOR_CATEGORIES,
  generatorCategory,
  generatorLimits,
  type GeneratorCategory,
  type GeneratorLimits,
  type MonthlyGeneration,
} from './category';
export { plannedEvent, type EpisodicEvent } from './episode';
export { pickUps, type MonthHeld, type MonthPickUps } from './pick-ups';
export { generatorPlan, type GeneratedShare, type GeneratorMonth, type GeneratorPlan } from './plan';
export { monthlyShares, workedDays, type Generation } from './spread';
export { generatorFile, type GeneratorFile } from './fees';
