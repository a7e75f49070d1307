/**
 * A unit as a paper shows it: what is counted without a unit of its own is said in a word.
 * @example unitShown('h/1') // 'h/each'
 */
export function unitShown(unit: string): string {
  return unit === '1' ? 'number' : unit.replace(/\/1$/, '/each');
}
