export { chosenOptions, estimateInput, faultsOf } from './estimate-input';
export {
  DEFAULT_SCHEDULES,
  evaluate,
  type EstimateParts,
  type EvaluateOptions,
  type Evaluation,
} from './evaluate';
export { shippedLibrary, TEMPLATE_FILES } from './templates';
