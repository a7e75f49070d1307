/**
 * Quantities with typed units: a closed list of plain units and rates of two, exact factors with their
 * source, and reading of amounts as people type them. Long ton, short ton and tonne never mix.
 */
export {
  PLAIN_UNITS,
  isPlainUnit,
  isUnit,
  unitParts,
  type PlainUnit,
  type RateUnit,
  type Unit,
} from './unit';
export { UNIT_FACTORS, type UnitFactor } from './factors';
export { Quantity, isDecimalText, quantity } from './quantity';
export {
  amountIn,
  compareQuantities,
  conversionFactor,
  convert,
  dimensionOf,
  isConvertible,
} from './convert';
export { isQuantity, parseQuantity, readQuantity, wordsOf, type Expected } from './parse';
export { readTypedAmount, type TypedAmount } from './typed';
export { compareDecimals, decimalDifference, decimalProduct, decimalQuotient } from './decimals';
export { amountWords, inHundred, thousandsApart } from './in-words';
export { countedUnit, unitWords } from './unit-words';
export { converted, measuresOf, unitFor, type Measured, type Measures } from './reader-measures';
export { decimalsFor, roundText } from './rounding';
export { saidIn } from './said-in-measures';
