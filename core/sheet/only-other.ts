/**
 * The one operand that varies, where all others are the constant that changes nothing: 0 of a sum, 1 of a product.
 * @param constants the operands that do not vary, undefined for those that do.
 */
export function onlyOther(constants: readonly (number | undefined)[], neutral: number): number | undefined {
  const at = constants.indexOf(undefined);
  const isAlone = constants.every((constant, i) => i === at || constant === neutral);
  return at >= 0 && isAlone ? at : undefined;
}
