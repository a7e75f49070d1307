export { at, byteAt, intAt, known, valueAt, wholeAt, withId } from './at';
export { BugError } from './bug-error';
export { anyBlocks, type Finding, type FindingWeight } from './finding';
export { hashText, randomStream, type RandomStream } from './random';
export { BASES, UNCHECKED_BASES, weakerBasis, type Basis, type Provenance } from './basis';
export { isSameData, keeping, keepingParts, onceFor } from './keeping';
export { recordOf } from './record';
export { topologicalOrder, type TopologicalOrder } from './topological-order';
export {
  decimalText,
  figureSchema,
  isoDate,
  key,
  provenanceSchema,
  sourceWithYear,
  type Figure,
} from './figure';
export { lowerFirst, upperFirst } from './words';
