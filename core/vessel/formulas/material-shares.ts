/** Asbestos, kg, for each tonne of steel of a hull. @source Ratios of UK Parliament HC 1336, 2002-03, Annex 1. */
export function asbestosPerSteelTonne(asbestos: number, steel: number): number {
  return (asbestos / steel) * 1000;
}

/** Share by which a mass fell: 1 - after / before. */
export function reductionShare(before: number, after: number): number {
  return 1 - after / before;
}

/** Mass before a share of it was removed, from what was left. */
export function massBeforeRemoval(left: number, removedShare: number): number {
  return left / (1 - removedShare);
}

/** Mean value of a unit from a total value and the number of units it stands for. */
export function meanValue(total: number, units: number): number {
  return total / units;
}
